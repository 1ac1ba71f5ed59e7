import { numberText } from "../../core/quantity-text";
import { Refusal } from "../../core/refusal";
import type { Relation } from "../../core/relation";
import { sourceText } from "../../core/sources";
import { NAMESPACE } from "../../functions/catalogue";
import { relationsOf } from "../../functions/declare";
import { errorText, kindText, rangeText } from "../../functions/evidence";
import type { SelectedCell } from "../../host/port";
import type { PageContext } from "../page";
import { element } from "../parts/dom";
import { button } from "../parts/fields";
import { figureReading, reading } from "../parts/reading";
import { disclosure, facts, refusalNote, table } from "../parts/tables";
import type { Answered, ExplainedCall } from "./explain";
import type { Reading } from "./readings";

/** Relations shown at once; the rest open on demand. */
const SHOWN_RELATIONS = 2;

/**
 * One call of ours in the selected cell: answer or error, inputs as read, relations with range and error.
 *
 * @param selected - The cell, for what it shows.
 */
export function callBlock(call: ExplainedCall, selected: SelectedCell, context: PageContext): HTMLElement {
  const { fn, text, readings, problem } = call;
  const help = button(`Help for ${fn.name}`, () => {
    context.open("functions", fn.name);
  });
  return element(
    "section",
    { "aria-label": `${NAMESPACE}.${fn.name}` },
    element("h3", {}, `${NAMESPACE}.${fn.name}`),
    element("p", { class: "basis" }, fn.summary),
    element("code", { class: "formula" }, text),
    problem === null
      ? answerBlock(call, selected)
      : problemBlock(problem.code, problem.sentence, problem.wayOut),
    ...inputsBlock(readings, problem?.sentence ?? ""),
    element("h4", {}, "Relation, source, range and expected error"),
    ...relationBlocks(call),
    help,
  );
}

/** An error with its sentence, and what to do about it. */
export function problemBlock(code: string, sentence: string, wayOut: string): HTMLElement {
  return element(
    "div",
    {},
    refusalNote(reading(`${code} ${sentence}`.trim())),
    wayOut === "" ? null : element("p", {}, element("strong", {}, "Way out: "), reading(wayOut)),
  );
}

function answerText({ column, cell }: Answered): string {
  if (cell instanceof Refusal) return cell.code;
  const value = typeof cell === "number" ? numberText(cell) : String(cell ?? "");
  return figureReading(value, column.unit);
}

function answerBlock(call: ExplainedCall, selected: SelectedCell): HTMLElement {
  const { answer, rows } = call;
  if (answer.length === 0)
    return element(
      "p",
      {},
      `The cell shows ${selected.value || "nothing"}. Its inputs are worked out in the sheet, so the answer is not repeated here.`,
    );
  const pairs = answer.map((one): [string, string] => {
    const text = answerText(one);
    const isMarked = one.isSelected && answer.length > 1 && text !== "";
    return [one.column.label, isMarked ? `${text} (the selected cell)` : text];
  });
  const note =
    rows > 1 ? element("p", { class: "basis" }, `One of ${rows} rows that the formula fills.`) : null;
  return element("div", {}, facts(pairs), note, staleNote(call, selected.figure));
}

/** A sheet that was not worked out since its inputs changed shows another figure than they give. */
function staleNote({ answer, isWhole }: ExplainedCall, shown: string): HTMLElement | null {
  const cell = answer.find(({ isSelected }) => isSelected)?.cell;
  if (!isWhole || typeof cell !== "number" || shown === "") return null;
  const decimals = shown.split(".")[1]?.length ?? 0;
  // Half a unit of the last figure shown, and a trace for what binary arithmetic adds.
  if (Math.abs(cell - Number(shown)) <= 0.5001 * 10 ** -decimals) return null;
  const sentence = `The cell shows ${shown}; its inputs give ${numberText(cell)} now. Recalculate all on the page Health (Ctrl+Alt+F9 in Excel).`;
  return element("p", { class: "notice" }, sentence);
}

function inputsBlock(readings: readonly Reading[], explained: string): (HTMLElement | null)[] {
  const given = readings.filter((one) => one.given !== "" || one.fault !== "");
  const out = readings.filter((one) => !given.includes(one));
  const names = out.map(({ name, readAs }) => {
    const fallback = readAs.replace(/^left out(: )?/, "");
    return fallback === "" ? name : `${name} (${fallback} taken)`;
  });
  return [
    given.length === 0 ? null : inputsTable(given, explained),
    names.length === 0 ? null : element("p", { class: "basis" }, reading(`Left out: ${names.join(", ")}.`)),
  ];
}

/** @param explained - The sentence that stands above already. */
function inputsTable(readings: readonly Reading[], explained: string): HTMLElement {
  const headings = [{ text: "input" }, { text: "given" }, { text: "read as" }];
  const rows = readings.map(({ name, given, holds, readAs, fault }) => [
    name,
    [given, holds].filter((text) => text !== "").join(": ") || "nothing",
    reading(fault === "" || explained.includes(fault) ? readAs : `not readable: ${fault}`),
  ]);
  return table("Inputs as read", headings, rows);
}

function relationFacts(relation: Relation): HTMLElement {
  const title = relation.note === undefined ? relation.title : `${relation.title}. ${relation.note}`;
  return facts(
    [
      ["Relation", title],
      ["Source", `${sourceText(relation.source)}; ${relation.locator}`],
      ["Range", rangeText(relation)],
      ["Expected error", errorText(relation)],
      ["Kind of evidence", kindText(relation)],
    ].map(([name = "", text = ""]): [string, string] => [name, reading(text)]),
    true,
  );
}

function relationBlocks({ fn, readings }: ExplainedCall): HTMLElement[] {
  const steel = readings.find((one) => one.steel !== null)?.steel ?? null;
  const relations = relationsOf(fn, steel);
  if (relations.length === 0)
    return [element("p", {}, "Exact: it follows from the inputs alone; no error beyond rounding.")];
  const blocks = relations.map(relationFacts);
  const rest = blocks.slice(SHOWN_RELATIONS);
  return [
    ...blocks.slice(0, SHOWN_RELATIONS),
    ...(rest.length === 0 ? [] : [disclosure(`${rest.length} more`, () => rest)]),
  ];
}
