import { Refusal, sentenceOf } from "../../core/refusal";
import type { SelectedCell } from "../../host/port";
import type { PageContext, RenderPage } from "../page";
import { afterPause, element, fill } from "../parts/dom";
import { button } from "../parts/fields";
import { facts } from "../parts/tables";
import { type Explanation, explain } from "./explain";
import { callBlock, problemBlock } from "./this-cell";
import { hostError } from "./way-out";

const START =
  "Select a cell that holds a BLADE formula. This page then shows its inputs as they were read, where the answer comes from, and what to do about an error.";

/** This cell: follows the selection and explains every formula of ours in it. */
export const render: RenderPage = (root, context) => {
  const { port } = context;
  if (!port.hasSheet) {
    root.append(
      element("p", {}, `${START} There is no sheet beside this page: open it in Excel or in the workbench.`),
    );
    return undefined;
  }
  const head = element("div", { "aria-live": "polite" });
  const body = element("div", {});
  root.append(head, body);
  let asked = 0;
  let shown = "";
  const refresh = async () => {
    asked += 1;
    const own = asked;
    const found = await look(context);
    // A slow answer must not push out the cell selected since, and nothing is drawn anew that says the same.
    if (own !== asked || found.key === shown) return;
    shown = found.key;
    fill(head, ...found.head());
    fill(body, ...found.body());
  };
  void refresh();
  return port.onSelection(afterPause(() => void refresh()));
};

interface Found {
  /** Two looks with the same key would be drawn the same. */
  readonly key: string;
  readonly head: () => HTMLElement[];
  readonly body: () => HTMLElement[];
}

async function look(context: PageContext): Promise<Found> {
  try {
    const selected = await context.port.selection();
    if (selected === null) return { key: "none", head: () => [element("p", {}, START)], body: () => [] };
    const explanation = await explain(context.port, selected);
    return {
      key: keyOf(selected, explanation),
      head: () => headOf(selected),
      body: () => bodyOf(selected, explanation, context),
    };
  } catch (problem) {
    const text = `The selected cell could not be read: ${sentenceOf(problem)}`;
    return { key: text, head: () => [element("p", { class: "refusal" }, text)], body: () => [] };
  }
}

function keyOf(selected: SelectedCell, explanation: Explanation | null): string {
  const calls = explanation?.calls.map(({ text, readings, answer, problem }) => [
    text,
    readings.map(({ given, holds, readAs, fault }) => [given, holds, readAs, fault]),
    answer.map(({ cell }) => (cell instanceof Refusal ? cell.message : cell)),
    problem,
  ]);
  return JSON.stringify([selected, calls]);
}

function headOf({ address, value, filledBy }: SelectedCell): HTMLElement[] {
  return [
    element("p", { class: "answer" }, value === "" ? `${address}: empty` : `${address}: ${value}`),
    ...(filledBy === null ? [] : [element("p", {}, `Filled by the formula in ${filledBy.address}.`)]),
  ];
}

function bodyOf(
  selected: SelectedCell,
  explanation: Explanation | null,
  context: PageContext,
): HTMLElement[] {
  const fault = faultOf(selected, explanation);
  if (explanation === null) return [...fault, ...withoutOurs(selected, context)];
  if (!explanation.isReadable)
    return [
      ...fault,
      element("code", { class: "formula" }, shownFormula(selected, explanation)),
      element("p", {}, "This formula cannot be taken apart here: check its brackets, quotes and commas."),
    ];
  const [outer, ...inner] = explanation.calls;
  return [
    ...fault,
    ...(outer?.text === explanation.formula.slice(1)
      ? []
      : [facts([["Formula", shownFormula(selected, explanation)]], true)]),
    ...(outer === undefined ? [] : [callBlock(outer, selected, context)]),
    ...inner.map((call) => callBlock(call, selected, context)),
  ];
}

/** The formula as the reader's program writes it; one that only fills this cell, and one with broken names, in English. */
function shownFormula({ filledBy, formula, shown }: SelectedCell, explanation: Explanation): string {
  return filledBy === null && formula === explanation.formula ? shown : explanation.formula;
}

/** An error that no call of ours explains: the host's own, or one whose sentence only the host has. */
function faultOf(selected: SelectedCell, explanation: Explanation | null): HTMLElement[] {
  const isExplained = explanation?.calls.some(({ problem }) => problem !== null) ?? false;
  const advice = hostError(selected.error);
  if (isExplained || (selected.sentence === "" && advice === "")) return [];
  return [problemBlock(selected.error, selected.sentence, advice)];
}

function withoutOurs({ formula, value }: SelectedCell, context: PageContext): HTMLElement[] {
  const kind = formula.startsWith("=")
    ? "This formula holds no BLADE function."
    : "This cell holds no formula.";
  const name = value.trim();
  const steel = button("Look for it among the steels", () => {
    context.state.steel = name;
    context.open("steels");
  });
  const isText = name !== "" && !formula.startsWith("=") && !name.startsWith("#");
  return [element("p", {}, `${kind} ${START}`), ...(isText ? [steel] : [])];
}
