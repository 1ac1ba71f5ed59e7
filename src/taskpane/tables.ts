import { element } from "./dom";

export interface Heading {
  readonly text: string;
  /** Figures stand right-aligned under their heading. */
  readonly isFigure?: boolean;
}

/**
 * A table that a screen reader can read row by row. The first cell of each row names the row.
 *
 * @param caption - What the table shows, units included.
 */
export function table(
  caption: string,
  headings: readonly Heading[],
  rows: readonly (readonly string[])[],
): HTMLElement {
  const head = headings.map(({ text, isFigure }) =>
    element("th", { scope: "col", ...aligned(isFigure) }, text),
  );
  const body = rows.map((row) =>
    element("tr", {}, ...row.map((cell, at) => tableCell(cell, at, headings[at]))),
  );
  return element(
    "table",
    {},
    element("caption", {}, caption),
    element("thead", {}, element("tr", {}, ...head)),
    element("tbody", {}, ...body),
  );
}

function aligned(isFigure: boolean | undefined): Record<string, string> {
  return isFigure === true ? { class: "figure" } : {};
}

function tableCell(cell: string, at: number, heading: Heading | undefined): HTMLElement {
  if (at === 0) return element("th", { scope: "row", ...aligned(heading?.isFigure) }, cell);
  return element("td", aligned(heading?.isFigure), cell);
}

/** Named facts, one under the other; facts without a value are left out. */
export function facts(pairs: readonly (readonly [name: string, value: string])[]): HTMLElement {
  const given = pairs.filter(([, value]) => value !== "");
  return element(
    "dl",
    { class: "facts" },
    ...given.map(([name, value]) => element("div", {}, element("dt", {}, name), element("dd", {}, value))),
  );
}

/** Text that opens on demand. */
export function disclosure(summary: string, ...content: readonly (Node | string)[]): HTMLDetailsElement {
  return element("details", {}, element("summary", {}, summary), ...content);
}

/** A sentence that wants attention; a word says so, colour only underlines it. */
export function caution(sentence: string): HTMLElement {
  return element("p", { class: "caution" }, element("strong", {}, "Caution: "), sentence);
}

/** Why a figure is not given. */
export function refusalNote(sentence: string): HTMLElement {
  return element("p", { class: "refusal" }, sentence);
}
