import type { CellData, SheetData } from "../model/workbook-data";
import { type Kept, numbered, withRows, wordsOf } from "./kept-rows";

/** First and last row of each page of a paper. */
export function pagesOf({ cells, print }: SheetData): (readonly [first: number, last: number])[] {
  const last = cells.reduce((most, { row }) => Math.max(most, row), 0);
  const ends = [...(print?.breaksAfter ?? [])].filter((row) => row < last).sort((a, b) => a - b);
  return [...ends, last].map((end, at) => [at === 0 ? 0 : (ends[at - 1] ?? 0) + 1, end] as const);
}

const TO = "To";

/** Whom a page is addressed to. */
export function addressee(cells: readonly CellData[]): string {
  const label = cells.find((cell) => wordsOf(cell) === TO);
  const value = label && cells.find(({ row, column }) => row === label.row && column === label.column + 1);
  return value === undefined ? "" : wordsOf(value);
}

/** Cells of the rows of a page. */
export const cellsOn = ({ cells }: SheetData, [first, last]: readonly [number, number]) =>
  cells.filter(({ row }) => row >= first && row <= last);

export const rowsOn = ([first, last]: readonly [number, number]) =>
  Array.from({ length: last - first + 1 }, (_, at) => first + at);

/** A paper of which only these rows are left, page by page. */
export function withPages(
  sheet: SheetData,
  pages: readonly (readonly number[])[],
): readonly [SheetData, Kept] {
  const rows = pages.flat();
  const kept = numbered(rows);
  const breaksAfter = pages.slice(0, -1).map((page) => kept.get(page.at(-1) ?? 0) ?? 0);
  const print = { ...sheet.print, landscape: sheet.print?.landscape ?? false, breaksAfter };
  const area = print.area && { ...print.area, row: 0, lastRow: Math.max(0, rows.length - 1) };
  return [{ ...withRows(sheet, kept), print: { ...print, ...(area && { area }) } }, kept];
}
