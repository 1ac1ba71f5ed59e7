import { InvalidValue } from "../../core/refusal";
import { editDistance } from "../../core/steel/name-suggestions";
import { type Cell, quoted } from "../cells";
import type { Parameter } from "../parameters";
import { QUANTITIES } from "../quantities";

/** One column that a table may have; the label is its heading. */
// biome-ignore lint/suspicious/noExplicitAny: each column is read into its own type, which a record cannot express
export type Headings = Readonly<Record<string, Parameter<any>>>;

/** The cells of one row, read by its headings. */
export type RowValues<H extends Headings> = {
  readonly [K in keyof H]: H[K] extends Parameter<infer T> ? T : never;
};

/** Other words for a heading, folded, by the key of the column. */
export type OtherWords = Readonly<Record<string, string>>;

/** Where the columns of a table stand. */
export interface TableColumns {
  /** Position by key; only those that the table has. */
  readonly known: ReadonlyMap<string, number>;
  /** Positions of the smith's own columns, left to right. */
  readonly own: readonly number[];
  /** A sentence for each heading that is not known though it is nearly spelt like one that is. */
  readonly remarks: readonly string[];
}

/** Case, spaces and brackets around a unit do not tell headings apart. */
export function foldHeading(text: string): string {
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[()[\]_]/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

const UNITS: ReadonlySet<string> = new Set(
  Object.values(QUANTITIES).flatMap(({ units }) => Object.keys(units)),
);

interface Words {
  readonly keys: ReadonlyMap<string, string>;
  readonly headings: Headings;
}

function wordsOf(headings: Headings, others: OtherWords): Words {
  const labels = Object.entries(headings).map(([key, { label }]) => [foldHeading(label), key] as const);
  return { keys: new Map([...labels, ...Object.entries(others)]), headings };
}

/** A heading with a unit behind it: its own is welcome, another would turn every figure of the column wrong. */
function keyBeforeUnit({ keys, headings }: Words, folded: string, shown: string): string | undefined {
  const space = folded.lastIndexOf(" ");
  const key = keys.get(folded.slice(0, Math.max(0, space)));
  const unit = folded.slice(space + 1);
  if (key === undefined) return undefined;
  const own = headings[key]?.unit ?? "";
  if (unit === foldHeading(own)) return key;
  if (own === "" || !UNITS.has(unit)) return undefined;
  throw new InvalidValue(
    `heading ${shown}: a bare number in this column counts as ${own}; call it "${headings[key]?.label} ${own}" and ` +
      `type the unit in the cells where it is another, "12 ${unit}"`,
  );
}

function refuseTwice(shown: string): never {
  throw new InvalidValue(
    `the heading ${shown} stands in the table twice: which column counts is not guessed, rename one`,
  );
}

function refuseUnknown(headings: Headings): never {
  const labels = Object.values(headings).map(({ label }) => label);
  throw new InvalidValue(
    `the first row holds none of the headings known here: it has to read ${labels.slice(0, 6).join(", ")} and so on`,
  );
}

/** Edits by which a heading may differ from the one that was meant: a letter left out, two changed round. */
const SLIP = 2;
const SHORTEST = 4;

/** Two neighbouring letters changed round: "kref" for "kerf". */
function isTurned(a: string, b: string): boolean {
  const at = [...a].findIndex((letter, place) => letter !== b.charAt(place));
  return at >= 0 && a.slice(0, at) + a.charAt(at + 1) + a.charAt(at) + a.slice(at + 2) === b;
}

/**
 * True where a heading is probably a slip of another. In words of up to four letters a letter left out, doubled or
 * changed round with the next is one ("ker", "kref"); a letter replaced makes words that smiths have of their own
 * ("date" is near to "rate").
 */
function isSlip(folded: string, other: string): boolean {
  const shorter = Math.min(folded.length, other.length);
  if (folded === "" || other.length < SHORTEST) return false;
  if (shorter > SHORTEST) return editDistance(folded, other, SLIP) <= SLIP;
  return folded.length === other.length ? isTurned(folded, other) : editDistance(folded, other, 1) <= 1;
}

/** A column that is probably read by another word: nobody is to miss that it counts for nothing. */
function nearRemark(cell: Cell, headings: Headings, known: ReadonlyMap<string, number>): string[] {
  const folded = foldHeading(String(cell ?? ""));
  const near = Object.entries(headings).find(
    ([key, { label }]) => !known.has(key) && isSlip(folded, foldHeading(label)),
  );
  if (near === undefined) return [];
  return [`The heading ${quoted(cell)} is not known and counts for nothing; was "${near[1].label}" meant?`];
}

/**
 * Reads a row of headings, in any order.
 *
 * @throws InvalidValue for a heading twice, a heading with the wrong unit, and a row without any known one.
 */
export function readHeadings(row: readonly Cell[], headings: Headings, others: OtherWords): TableColumns {
  const words = wordsOf(headings, others);
  const known = new Map<string, number>();
  const own: number[] = [];
  const seen = new Set<string>();
  row.forEach((cell, position) => {
    const folded = foldHeading(String(cell ?? ""));
    const key = words.keys.get(folded) ?? keyBeforeUnit(words, folded, quoted(cell));
    const column = key ?? `own ${folded}`;
    if (folded !== "" && seen.has(column)) refuseTwice(quoted(cell));
    seen.add(column);
    if (key === undefined) own.push(position);
    else known.set(key, position);
  });
  if (known.size === 0) return refuseUnknown(headings);
  const remarks = own.flatMap((position) => nearRemark(row[position] ?? null, headings, known));
  return { known, own, remarks };
}
