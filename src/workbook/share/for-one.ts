import { cellName, readCellName } from "../../formula/addresses";
import type { CellData, SheetData } from "../model/workbook-data";
import { type Kept, numbered, withRows, wordsOf } from "./kept-rows";
import { ownQuote } from "./own-quote";
import type { AskedForm, Recipient } from "./recipient";

/** Sheets of which only the rows of one recipient are left. */
export interface ForOne {
  readonly sheets: readonly SheetData[];
  /** Where a cell of the workbook stands in the copy; `undefined` where it does not travel. */
  moved(sheet: string, cell: string): string | undefined;
}

/** First and last row of each page of a paper. */
function pagesOf({ cells, print }: SheetData): (readonly [first: number, last: number])[] {
  const last = cells.reduce((most, { row }) => Math.max(most, row), 0);
  const ends = [...(print?.breaksAfter ?? [])].filter((row) => row < last).sort((a, b) => a - b);
  return [...ends, last].map((end, at) => [at === 0 ? 0 : (ends[at - 1] ?? 0) + 1, end] as const);
}

const TO = "To";

/** Whom a page is addressed to. */
function addressee(cells: readonly CellData[]): string {
  const label = cells.find((cell) => wordsOf(cell) === TO);
  const value = label && cells.find(({ row, column }) => row === label.row && column === label.column + 1);
  return value === undefined ? "" : wordsOf(value);
}

const isOf = (whom: string, name: string) => whom.trim().toLowerCase() === name.trim().toLowerCase();

/** The pages of a paper that are addressed to one. */
function ownPages(sheet: SheetData, name: string): readonly [SheetData, Kept] {
  const pages = pagesOf(sheet).filter(([first, last]) =>
    isOf(addressee(sheet.cells.filter(({ row }) => row >= first && row <= last)), name),
  );
  const rows = pages.flatMap(([first, last]) =>
    Array.from({ length: last - first + 1 }, (_, at) => first + at),
  );
  const kept = numbered(rows);
  const breaksAfter = pages.slice(0, -1).map(([, last]) => kept.get(last) ?? 0);
  const print = { ...sheet.print, landscape: sheet.print?.landscape ?? false, breaksAfter };
  const area = print.area && { ...print.area, row: 0, lastRow: Math.max(0, rows.length - 1) };
  return [{ ...withRows(sheet, kept), print: { ...print, ...(area && { area }) } }, kept];
}

/** Sheets of which everything travels. */
export const forAll = (sheets: readonly SheetData[]): ForOne => ({ sheets, moved: (_, cell) => cell });

/**
 * Keeps of the papers what concerns one recipient: pages addressed to that one, or the lines of that customer.
 *
 * @param papers - Names of the sheets that are papers; of other sheets nothing is taken out.
 * @param hasOthers - Whether the plan has other customers, whose address must not travel.
 */
export function forOne(
  sheets: readonly SheetData[],
  { word, name }: Recipient,
  forms: readonly AskedForm[],
  hasOthers: boolean,
): ForOne {
  if (name === undefined) return forAll(sheets);
  const papers = new Map(
    forms.map(({ form, lines }) => [form.paper, new Set(lines.map(({ line }) => line))]),
  );
  const moves = new Map<string, Kept>();
  const own = sheets.flatMap((sheet): SheetData[] => {
    const lines = papers.get(sheet.name);
    if (lines === undefined) return [];
    const [left, kept] =
      word === "customer" ? ownQuote(sheet, { name, lines, hasOthers }) : ownPages(sheet, name);
    moves.set(sheet.name, kept);
    return left.cells.length === 0 ? [] : [left];
  });
  return {
    sheets: own,
    moved(sheet, cell) {
      const place = readCellName(cell);
      const row = place && moves.get(sheet)?.get(place.row);
      return place === undefined || row === undefined ? undefined : cellName(row, place.column);
    },
  };
}
