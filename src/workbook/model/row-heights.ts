import type { Band, CellContent, CellData, SheetData, WorkbookData } from "./workbook-data";

/**
 * Pixels of a line of text at 10 points, in the tallest font that stands in for Arial; of a letter in a wide font; and of
 * what a cell keeps free at its sides.
 */
const LINE = 18;
const LETTER = 6.4;
const BOLD = 7.3;
const MARGIN = 15;
const PADDING = 3;
/** A row with letters of so many points is a title. */
const TITLE_POINTS = 13;
const TITLE = 28;
const USUAL_WIDTH = 64;

/** Pixels of a row with so many lines of text. */
export const rowOfLines = (lines: number): number => lines * LINE + PADDING;

/** Lines that one paragraph needs where it breaks between words. */
function paragraphLines(paragraph: string, letters: number): number {
  let [lines, filled] = [1, 0];
  for (const { length } of paragraph.split(" ")) {
    const wanted = filled === 0 ? length : filled + 1 + length;
    if (wanted > letters && filled > 0) lines += 1;
    lines += Math.ceil(length / letters) - 1;
    filled = wanted <= letters ? wanted : length % letters || letters;
  }
  return lines;
}

const linesOf = (text: string, letters: number) =>
  text.split("\n").reduce((sum, paragraph) => sum + paragraphLines(paragraph, letters), 0);

/** What a cell shows, as far as it is known. */
function shownText(content: CellContent | undefined): string {
  if (content === undefined) return "";
  if ("formula" in content) return shownText(content.result);
  return "error" in content ? content.error : String(content.value);
}

function linesIn({ content, style, column }: CellData, columns: SheetData["columns"]): number {
  if (!style?.wraps) return 1;
  const width = columns.get(column)?.size ?? USUAL_WIDTH;
  const letters = Math.floor((width - MARGIN) / (style.bold ? BOLD : LETTER));
  return linesOf(shownText(content), Math.max(1, letters));
}

/** Pixels of a row whose texts break into lines; `undefined` where one line does. */
function heightOf(cells: readonly CellData[], columns: SheetData["columns"]): number | undefined {
  const most = Math.max(1, ...cells.map((cell) => linesIn(cell, columns)));
  const isTitle = cells.some(({ style }) => (style?.size ?? 0) >= TITLE_POINTS);
  if (isTitle) return Math.max(TITLE, rowOfLines(most));
  return most === 1 ? undefined : rowOfLines(most);
}

/** Pixels that rows need for the texts in them, for those that need more than one line or are titles. */
export function neededHeights({ cells, columns }: Pick<SheetData, "cells" | "columns">): Map<number, number> {
  const byRow = new Map<number, CellData[]>();
  for (const cell of cells) {
    const row = byRow.get(cell.row);
    if (row === undefined) byRow.set(cell.row, [cell]);
    else row.push(cell);
  }
  const needed = new Map<number, number>();
  for (const [row, held] of byRow) {
    const size = heightOf(held, columns);
    if (size !== undefined) needed.set(row, size);
  }
  return needed;
}

const hasOwnHeight = (band: Band | undefined) => band?.size !== undefined && !band.isFitted;

function fittedRows(sheet: SheetData): ReadonlyMap<number, Band> {
  const fitted = new Map(sheet.rows);
  for (const [row, size] of neededHeights(sheet)) {
    if (!hasOwnHeight(sheet.rows.get(row))) fitted.set(row, { ...sheet.rows.get(row), size });
  }
  return fitted;
}

/** Rows that are as high as the texts known to stand in them: nobody gave them another height. */
export function rowsAsHighAsTheirTexts(sheet: Pick<SheetData, "cells" | "columns" | "rows">): Set<number> {
  const fits = ([row, size]: readonly [number, number]) => sheet.rows.get(row)?.size === size;
  return new Set([...neededHeights(sheet)].filter(fits).map(([row]) => row));
}

/** Rows grown to what their texts need; none becomes lower. */
function grownRows(sheet: SheetData): ReadonlyMap<number, Band> {
  const grown = new Map(sheet.rows);
  for (const [row, size] of neededHeights(sheet)) {
    if (size > (sheet.rows.get(row)?.size ?? 0)) grown.set(row, { ...sheet.rows.get(row), size });
  }
  return grown;
}

/** Rows at least as high as their texts, also where somebody filled them after the heights were written. */
export function withGrownRows(sheets: readonly SheetData[]): SheetData[] {
  return sheets.map((sheet) => ({ ...sheet, rows: grownRows(sheet) }));
}

/**
 * Rows as high as the lines of text that are known to stand in them; heights that are given stay. A file has to say
 * so: LibreOffice does not find it out by itself.
 */
export function withFittedRows(workbook: WorkbookData): WorkbookData {
  return { ...workbook, sheets: workbook.sheets.map((sheet) => ({ ...sheet, rows: fittedRows(sheet) })) };
}
