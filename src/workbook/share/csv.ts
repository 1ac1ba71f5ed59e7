import { unparse } from "papaparse";
import { contentOf } from "../file/cell-content";
import { type LiveSheet, type LiveWorkbook, readLiveWorkbook } from "../file/read/live-workbook";
import type { StoredCell } from "../file/read/stored-sheet";
import { type Moment, momentStyles } from "./date-styles";
import { momentText } from "./moments";

/** A sheet as a text file. */
export interface CsvFile {
  /** Name for a file, fit for any system. */
  readonly name: string;
  readonly text: string;
}

/**
 * How a text begins that a spreadsheet program would run as a formula on opening the file: the signs with any
 * blanks before them, in both widths, and the line marks that hide one (OWASP, "CSV Injection").
 */
const RUNS = /^(?:[\t\r\n]|\s*[=+\-@\uff1d\uff0b\uff0d\uff20])/;
/** Tells programs that the text is UTF-8; without it some read ° and é as two letters. */
const BYTE_ORDER_MARK = "\ufeff";

type Written = string | number | null;

/** Rows of values as CSV (RFC 4180): texts that would run as formulas get an apostrophe, numbers stay numbers. */
export function csvText(rows: readonly (readonly Written[])[]): string {
  const lines = unparse([...rows.map((row) => [...row])], { newline: "\r\n", escapeFormulae: RUNS });
  return `${BYTE_ORDER_MARK}${lines}\r\n`;
}

function written(cell: StoredCell, live: LiveWorkbook, momentOf: (style?: string) => Moment): Written {
  const content = contentOf(cell, live.strings, live.main.from1904);
  if (content === undefined) return null;
  if ("error" in content) return content.error;
  const { value } = content;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  const moment = typeof value === "number" ? momentOf(cell.style) : undefined;
  if (typeof value === "string" || moment === undefined) return value;
  return momentText(value, moment, live.main.from1904) ?? value;
}

/** No sheet has more; a damaged file may say so. */
const MAX_ROWS = 1_048_576;

function rowOf(cells: readonly StoredCell[], content: (cell: StoredCell) => Written): Written[] {
  const line: Written[] = [];
  for (const cell of cells) line[cell.column] = content(cell);
  while (line.length > 0 && (line.at(-1) ?? null) === null) line.pop();
  return Array.from(line, (value) => value ?? null);
}

function rowsOf(sheet: LiveSheet, live: LiveWorkbook, momentOf: (style?: string) => Moment): Written[][] {
  const rows: Written[][] = [];
  for (const { row, cells } of sheet.stored.rows) {
    const line = rowOf(cells, (cell) => written(cell, live, momentOf));
    if (line.length > 0 && row < MAX_ROWS) rows[row] = line;
  }
  return Array.from(rows, (row) => row ?? []);
}

/** Letters that some file system refuses, and a point at the end. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: no file name may hold them
const fileName = (sheet: string) => `${sheet.replace(/[<>:"/\\|?*\u0000-\u001f]|\.$/g, "_")}.csv`;

/**
 * The sheets of a workbook as CSV files, by the values that the file holds; hidden sheets are left out. Days and
 * times are written in the notation of ISO 8601.
 *
 * @param bytes - The .xlsx file, as a rule a shared copy.
 * @throws FileRefusal where it cannot be read.
 */
export function csvFiles(bytes: Uint8Array): CsvFile[] {
  const live = readLiveWorkbook(bytes);
  const momentOf = momentStyles(live);
  return live.sheets
    .filter(({ listed }) => !listed.isHidden)
    .map((sheet) => ({
      name: fileName(sheet.listed.name),
      text: csvText(rowsOf(sheet, live, momentOf)),
    }));
}
