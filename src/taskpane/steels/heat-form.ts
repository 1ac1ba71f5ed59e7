import { attempt, Refusal } from "../../core/refusal";
import { findSteel } from "../../core/steel/find";
import type { Grade } from "../../core/steel/steel";
import { functionNamed } from "../../functions/catalogue";
import type { PageContext } from "../page";
import { ask, cellText, firstRow } from "../parts/ask";
import { afterPause, element, fill } from "../parts/dom";
import { evidenceOf } from "../parts/evidence";
import { button, choiceField, linesField } from "../parts/fields";
import { formulaOf } from "../parts/formula";
import { insertControl } from "../parts/insert";
import { refusalNote, table } from "../parts/tables";
import { limitsSeen } from "./composition-table";
import { type HeatFigures, readHeat } from "./heat-text";

const KINDS = ["heat (ladle analysis)", "product (pieces of the bar)"];

const HINT =
  "From the mill certificate, in mass %: C 0.74 Mn 0.62, or a line of symbols over a line of figures";

const HEADINGS = [
  { text: "element" },
  { text: "low", isFigure: true },
  { text: "high", isFigure: true },
  { text: "your heat", isFigure: true },
  { text: "status" },
  { text: "limits" },
];

/** A heat held against the grade shown above it. */
export interface HeatForm {
  readonly block: HTMLElement;
  /** Compares with another grade. */
  readonly hold: (steel: string) => void;
}

/** A form for the analysis of a heat, answered by CERTIFICATE. */
export function heatForm(context: PageContext): HeatForm {
  const analysis = linesField({ label: "Analysis", hint: HINT }, 3);
  const kind = choiceField({ label: "Taken from" }, KINDS);
  const report = element("div", { "aria-live": "polite" });
  let steel = "";
  const show = () => {
    const given = { steel, text: analysis.control.value, kind: kind.control.value.split(" ")[0] ?? "" };
    fill(report, ...reportOf(given, context));
  };
  analysis.control.addEventListener("input", afterPause(show, 300));
  kind.control.addEventListener("change", show);
  const title = element("h3", {}, "Your heat");
  const block = element("section", { "aria-label": "Your heat" }, title, analysis.block, kind.block, report);
  return {
    block,
    hold(name) {
      steel = name;
      show();
    },
  };
}

interface Given {
  readonly steel: string;
  readonly text: string;
  readonly kind: string;
}

function reportOf(given: Given, context: PageContext): HTMLElement[] {
  if (given.text.trim() === "") return [];
  const report = attempt(() => held(given, readHeat(given.text), context));
  return report instanceof Refusal ? [refusalNote(report.message)] : report;
}

const column = <T>(values: readonly T[]) => values.map((value) => [value]);

function held(
  { steel, kind }: Given,
  { elements, values }: HeatFigures,
  context: PageContext,
): HTMLElement[] {
  const reply = ask("CERTIFICATE", steel, column(elements), column(values), kind);
  if (reply.refusal !== null) return [refusalNote(reply.refusal)];
  const [verdict = "", ...notes] = cellText(reply.rows.at(-1)?.[4] ?? null).split("; ");
  const fn = functionNamed("CERTIFICATE");
  const formula = fn === undefined ? "" : formulaOf(fn, [steel, elements, values, kind]);
  const { name, grade } = findSteel(steel);
  return [
    element("p", { class: "verdict" }, `${name}: ${verdict}`),
    ...notes.map((note) => element("p", { class: "basis" }, note)),
    statusTable(
      reply.rows.slice(0, -1).map((row) => row.map(cellText)),
      kind,
      grade,
    ),
    workWith({ elements, values }, context),
    insertControl(context.port, () => formula).block,
    evidenceOf({ functionName: "CERTIFICATE", steel }, "Where limits and permissible variations come from"),
  ];
}

function statusTable(rows: readonly string[][], kind: string, grade: Grade | null): HTMLElement {
  const shown = rows.map(([symbol = "", low = "", high = "", value = "", status = ""]) => [
    symbol,
    ...[low, high, value].map((figure) => figure || "–"),
    status,
    low === "" && high === "" ? "none" : limitsSeen(grade, symbol, true),
  ]);
  const widened = kind === "product" ? ", limits widened by the permissible variation" : "";
  return table(`Your ${kind} in mass %${widened}`, HEADINGS, shown);
}

/** Lets the other pages estimate with the heat instead of the middle of the grade. */
function workWith({ elements, values }: HeatFigures, { state }: PageContext): HTMLElement {
  const status = element("p", { class: "count", role: "status" });
  const take = () => {
    const reply = ask("ANALYSIS", column(elements), column(values));
    if (reply.refusal === null) state.steel = firstRow(reply)[0] ?? state.steel;
    status.textContent = reply.refusal ?? `The other pages now use ${state.steel}.`;
  };
  return element("div", {}, button("Use this heat on the other pages", take), status);
}
