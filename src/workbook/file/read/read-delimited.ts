import { parse } from "papaparse";
import type { CellData, SheetData, WorkbookData } from "../../model/workbook-data";
import { decodedText } from "../decoded-text";
import { FileRefusal } from "../package/file-refusal";

/** Longer texts are tables of another kind than a workshop's. */
const MAX_BYTES = 20 * 2 ** 20;
const MAX_CELLS = 400_000;
/** A sheet of the file format has no more columns. */
const MAX_COLUMNS = 16_384;

/** A figure as it is written everywhere; more digits than these would not survive as one. */
const NUMBER = /^[+-]?(?:0|[1-9]\d{0,14})(?:\.\d{1,12})?(?:e[+-]?\d{1,3})?$/i;
const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
/** 1 January 1970 in days of the 1900 calendar. */
const EPOCH = 25_569;
const DAY_MS = 86_400_000;

function serialOf(text: string): number | undefined {
  if (!DAY.test(text)) return undefined;
  const time = Date.parse(`${text}T00:00:00Z`);
  return Number.isNaN(time) ? undefined : time / DAY_MS + EPOCH;
}

/**
 * A cell by its text. Figures and days in the order of ISO 8601 count as such; all else stays a text, one that begins
 * like a formula too: a table from elsewhere must not run anything.
 */
function cellOf(text: string, row: number, column: number): CellData[] {
  const trimmed = text.trim();
  if (trimmed === "") return [];
  const day = serialOf(trimmed);
  if (day !== undefined) return [{ row, column, content: { value: day }, style: { format: "yyyy-mm-dd" } }];
  const value = NUMBER.test(trimmed) ? Number(trimmed) : text;
  return [{ row, column, content: { value } }];
}

const LETTER = 7;
const [NARROWEST, WIDEST] = [56, 320];

function widths(rows: readonly (readonly string[])[]): Map<number, { size: number }> {
  const found = new Map<number, { size: number }>();
  for (const row of rows)
    for (const [column, text] of row.entries()) {
      const wanted = Math.min(WIDEST, Math.max(NARROWEST, text.length * LETTER + 14));
      if (wanted > (found.get(column)?.size ?? 0)) found.set(column, { size: wanted });
    }
  return found;
}

/** A name that a sheet may have, from that of a file. */
const sheetName = (file: string) =>
  file
    .replace(/\.[^.]*$/, "")
    .replace(/[[\]:*?/\\]/g, " ")
    .slice(0, 31)
    .trim() || "Sheet1";

/** True for a file whose name says that it is a text table; a workbook by another name is none. */
export const isTextTable = ([first, second]: Uint8Array, file: string) =>
  /\.(?:csv|tsv|tab|txt)$/i.test(file) && !(first === 0x50 && second === 0x4b);

/**
 * Reads a text table (.csv, .tsv, .txt) as a workbook of one sheet: commas, semicolons or tabs between cells, as the
 * text has them.
 *
 * @throws FileRefusal where it is too large, or no text.
 */
export function readDelimited(bytes: Uint8Array, file: string): WorkbookData {
  if (bytes.length > MAX_BYTES) throw new FileRefusal(`${file}: more than 20 MB of text; split the table.`);
  const text = decodedText(bytes).replace(/^\uFEFF/, "");
  if (text.includes("\0"))
    throw new FileRefusal(`${file}: no text; give a workbook (.xlsx) or a table (.csv, .tsv).`);
  const { data } = parse<string[]>(text, { ...(/\.tsv$/i.test(file) && { delimiter: "\t" }) });
  const rows = data.map((row) => row.slice(0, MAX_COLUMNS));
  const cells = rows.flatMap((row, at) => row.flatMap((value, column) => cellOf(value, at, column)));
  if (cells.length === 0) throw new FileRefusal(`${file}: the table is empty.`);
  if (cells.length > MAX_CELLS)
    throw new FileRefusal(`${file}: more than ${MAX_CELLS} filled cells; split the table.`);
  const sheet: SheetData = {
    name: sheetName(file),
    isHidden: false,
    cells,
    columns: widths(rows),
    rows: new Map(),
    frozenRows: 0,
    frozenColumns: 0,
    merged: [],
    offers: [],
    colors: [],
  };
  return { sheets: [sheet], names: {}, tables: [] };
}
