import type { CellData, SheetData } from "../model/workbook-data";
import { type Kept, numbered, withRows, wordsOf } from "./kept-rows";

/** A page of a paper: its first and last row, and the cells in them. */
export interface Page {
  readonly first: number;
  readonly last: number;
  readonly cells: readonly CellData[];
}

/** The pages of a paper, each cell handed to its page: a plan of many lines has hundreds of them. */
export function pagesOf({ cells, print }: SheetData): readonly Page[] {
  const last = cells.reduce((most, { row }) => Math.max(most, row), 0);
  const ends = [...(print?.breaksAfter ?? [])].filter((row) => row < last).sort((a, b) => a - b);
  const pages = [...ends, last].map((end, at) => ({
    first: at === 0 ? 0 : (ends[at - 1] ?? 0) + 1,
    last: end,
    cells: [] as CellData[],
  }));
  const pageOf = new Map(pages.flatMap((page) => rowsOn(page).map((row) => [row, page] as const)));
  for (const cell of cells) pageOf.get(cell.row)?.cells.push(cell);
  return pages;
}

const TO = "To";

/** Whom a page is addressed to. */
export function addressee(cells: readonly CellData[]): string {
  const label = cells.find((cell) => wordsOf(cell) === TO);
  const value = label && cells.find(({ row, column }) => row === label.row && column === label.column + 1);
  return value === undefined ? "" : wordsOf(value);
}

export const rowsOn = ({ first, last }: Pick<Page, "first" | "last">) =>
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
