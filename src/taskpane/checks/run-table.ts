import { foldHeading } from "../../functions/run/heading-row";
import { OTHER_WORDS } from "../../functions/run/plan-headings";
import type { HostRows, HostValue } from "../../host/port";

/** A run's table found among the cells of a sheet. */
export interface FoundTable {
  /** Headings first. */
  readonly rows: HostRows;
  /** Of its first cell among the cells searched, from 0. */
  readonly row: number;
  readonly column: number;
}

/** Without these three RUN_PLAN plans nothing; a row that holds them all is a run's headings. */
const NEEDED = ["steel", "good", "yield"];

const isEmpty = (cell: HostValue | undefined) => cell === undefined || cell === null || cell === "";

function heading(cell: HostValue | undefined): string {
  if (isEmpty(cell) || typeof cell === "object") return "";
  const folded = foldHeading(String(cell));
  return Object.hasOwn(OTHER_WORDS, folded) ? OTHER_WORDS[folded as keyof typeof OTHER_WORDS] : folded;
}

function isHeadings(row: readonly HostValue[]): boolean {
  const words = row.map(heading);
  return NEEDED.every((word) => words.includes(word));
}

/** Headings side by side, from the first to the last; a repeat of the first one begins a table of results. */
function columnsOf(row: readonly HostValue[]): readonly [first: number, end: number] {
  const words = row.map(heading);
  const steel = words.indexOf("steel");
  let first = steel;
  while (first > 0 && words[first - 1] !== "") first -= 1;
  const name = words[first];
  let end = first + 1;
  while (end < words.length && words[end] !== "" && words[end] !== name) end += 1;
  return [first, end];
}

/**
 * The run around a row: the nearest row of headings above it, else below it, down to a blank row.
 *
 * @param at - The row looked at, from 0.
 * @returns `null` where no row holds the headings that a run needs.
 */
export function runTableAround(rows: HostRows, at: number): FoundTable | null {
  const all = rows.flatMap((row, index) => (isHeadings(row) ? [index] : []));
  const row = all.filter((index) => index <= at).at(-1) ?? all[0];
  if (row === undefined) return null;
  const [column, end] = columnsOf(rows[row] ?? []);
  const below = rows.slice(row).map((cells) => cells.slice(column, end));
  const blank = below.findIndex((cells) => cells.every(isEmpty));
  return { rows: blank < 0 ? below : below.slice(0, blank), row, column };
}
