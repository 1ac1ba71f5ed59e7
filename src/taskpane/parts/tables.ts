import { element } from "./dom";
import { reading } from "./reading";

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
    element("caption", {}, reading(caption)),
    element("thead", {}, element("tr", {}, ...head)),
    element("tbody", {}, ...body),
  );
}

function aligned(isFigure: boolean | undefined): Record<string, string> {
  return isFigure === true ? { class: "figure" } : {};
}

function tableCell(cell: string, at: number, heading: Heading | undefined): HTMLElement {
  const text = reading(cell);
  if (at === 0) return element("th", { scope: "row", ...aligned(heading?.isFigure) }, text);
  return element("td", aligned(heading?.isFigure), text);
}

/**
 * Named facts; those without a value are left out.
 *
 * @param isLong - True for sentences: each then stands under its name instead of beside it.
 */
export function facts(
  pairs: readonly (readonly [name: string, value: string])[],
  isLong = false,
): HTMLElement {
  const given = pairs.filter(([, value]) => value !== "");
  return element(
    "dl",
    { class: isLong ? "facts long" : "facts" },
    ...given.map(([name, value]) =>
      element("div", {}, element("dt", {}, name), element("dd", {}, reading(value))),
    ),
  );
}

type Content = () => readonly (Node | string)[];

const notYetMade = new WeakMap<HTMLDetailsElement, Content>();

/** Text that opens on demand, and is made when it is first opened. */
export function disclosure(summary: string | HTMLElement, content: Content): HTMLDetailsElement {
  const made = element("details", {}, element("summary", {}, summary));
  notYetMade.set(made, content);
  made.addEventListener("toggle", () => {
    if (made.open) makeContent(made);
  });
  return made;
}

function makeContent(details: HTMLDetailsElement): void {
  details.append(...(notYetMade.get(details)?.() ?? []));
  notYetMade.delete(details);
}

/** Opens a disclosure with its content in place when this returns; by itself the browser tells of it later. */
export function openAtOnce(details: HTMLDetailsElement): void {
  details.open = true;
  makeContent(details);
}

/** What may be folded away but is open at first. */
export function disclosed(summary: string, content: readonly (Node | string)[]): HTMLDetailsElement {
  return element("details", { open: "" }, element("summary", {}, summary), element("div", {}, ...content));
}

/** Sentences that want attention; a word says so, colour only underlines it. */
export function caution(given: string | readonly string[]): HTMLElement {
  const texts = typeof given === "string" ? sentences(given) : given;
  const items = texts.map((sentence) => element("li", {}, reading(sentence)));
  return element("div", { class: "caution" }, element("strong", {}, "Caution"), element("ul", {}, ...items));
}

/** A cell holds all its cautions in one text; each reads better on its own line. */
function sentences(text: string): string[] {
  const parts = text.split(/\. (?=[A-Z0-9])/);
  return parts.map((part, at) => (at < parts.length - 1 ? `${part}.` : part));
}

/** Why a figure is not given. */
export function refusalNote(sentence: string): HTMLElement {
  return element("p", { class: "refusal" }, reading(sentence));
}

/** Where a figure comes from, how sure it is, or how to go on: smaller, beside what it belongs to. */
export function note(sentence: string): HTMLElement {
  return element("p", { class: "basis" }, reading(sentence));
}
