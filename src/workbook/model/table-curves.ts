import { columnOf, placeOf, type Rectangle, readRectangle } from "../../formula/addresses";
import type { CellContent, SheetData } from "./workbook-data";

/**
 * Words of a cell whose place is taken by the picture of a table: the table by its address, or the columns that stand
 * beside the picture, in the rows that it covers.
 */
const PICTURED = /^Curve of (?:(\$?[A-Z]+\$?\d+:\$?[A-Z]+\$?\d+)|([A-Z]+):([A-Z]+))$/;
const BEGINNING = "Curve of ";

/** The words for a table: its address with the headings, or columns such as `F:K`. */
export const picturedWords = (table: string) => `${BEGINNING}${table}`;

/** True for words whose place is taken by a picture. */
export const isPicture = (words: string): boolean => words.startsWith(BEGINNING) && PICTURED.test(words);

/** First and last of the columns beside a picture from which it is drawn; `undefined` for other words. */
export function picturedColumns(words: string): readonly [first: number, last: number] | undefined {
  const [, , from, to] = isPicture(words) ? (PICTURED.exec(words) ?? []) : [];
  return from === undefined || to === undefined ? undefined : [columnOf(from), columnOf(to)];
}

/** Cells of the usual size that a picture takes where no merged cells say so. */
export const PICTURE = { rows: 12, columns: 5 } as const;

/**
 * What a column of the table is, by how its heading begins: the line and the ends of what it may come to, the ends of
 * the range that is asked for, the figure aimed at, and the one place that was chosen.
 */
const CURVE_LINES = ["low", "likely", "high", "range low", "range high", "aim", "ordered"] as const;
export type CurveLine = (typeof CURVE_LINES)[number];

/** A table that a cell asks to be drawn. Rows and columns count from 0. */
export interface TableCurve {
  readonly words: string;
  /** The cells that the picture covers. */
  readonly place: Rectangle;
  /** The cell above the first heading, which may say what the table is. */
  readonly title: { readonly row: number; readonly column: number } | undefined;
  readonly headings: number;
  readonly first: number;
  readonly last: number;
  readonly x: { readonly column: number; readonly name: string };
  readonly lines: readonly { readonly column: number; readonly name: string; readonly line: CurveLine }[];
}

type TextAt = (row: number, column: number) => string;

function tableNamed(words: string, place: Rectangle): Rectangle | undefined {
  const [, address, from, to] = words.startsWith(BEGINNING) ? (PICTURED.exec(words) ?? []) : [];
  if (address !== undefined) return readRectangle(address);
  if (from === undefined || to === undefined) return undefined;
  const { row, lastRow } = place;
  return { row, lastRow, column: columnOf(from), lastColumn: columnOf(to) };
}

const lineOf = (heading: string) => CURVE_LINES.find((line) => heading.startsWith(line));

/**
 * The table that the words of a cell ask to be drawn; `undefined` for other words, and for a table without a likely line.
 *
 * @param place - The cells that the picture covers.
 * @param text - What a cell of the sheet shows.
 */
export function curveAskedFor(words: string, place: Rectangle, text: TextAt): TableCurve | undefined {
  const table = tableNamed(words, place);
  if (table === undefined || table.lastRow <= table.row) return undefined;
  const { row, column, lastRow, lastColumn } = table;
  const lines = Array.from({ length: lastColumn - column }, (_, at) => column + 1 + at).flatMap((at) => {
    const name = text(row, at);
    const line = lineOf(name);
    return line === undefined ? [] : [{ column: at, name, line }];
  });
  if (!lines.some(({ line }) => line === "likely")) return undefined;
  return {
    words,
    place,
    title: row > 0 ? { row: row - 1, column } : undefined,
    headings: row,
    first: row + 1,
    last: lastRow,
    x: { column, name: text(row, column) },
    lines,
  };
}

/** A row of the table as figures; a cell without one is left out. */
export type CurvePoint = { readonly x: number } & Readonly<Partial<Record<CurveLine, number>>>;

const figure = (text: string): number | undefined =>
  text.trim() === "" || !Number.isFinite(Number(text)) ? undefined : Number(text);

/** The figures of the table, row by row; rows without an x are left out. */
export function curvePoints({ first, last, x, lines }: TableCurve, text: TextAt): CurvePoint[] {
  return Array.from({ length: last - first + 1 }, (_, at) => first + at).flatMap((row) => {
    const at = figure(text(row, x.column));
    if (at === undefined) return [];
    const found = lines.flatMap(({ column, line }) => {
      const value = figure(text(row, column));
      return value === undefined ? [] : [[line, value] as const];
    });
    return [{ x: at, ...Object.fromEntries(found) }];
  });
}

/** What a cell holds or came to, as text. */
function textOf(content: CellContent | undefined): string {
  if (content === undefined || "error" in content) return "";
  if ("formula" in content) return textOf(content.result);
  return String(content.value);
}

/** What a cell of a sheet holds. */
export type ContentAt = (row: number, column: number) => CellContent | undefined;

/** What the cells of a sheet hold, by their place. */
export function contentsOf({ cells }: Pick<SheetData, "cells">): ContentAt {
  const contents = new Map<number, CellContent>();
  for (const { row, column, content } of cells)
    if (content !== undefined) contents.set(placeOf(row, column), content);
  return (row, column) => contents.get(placeOf(row, column));
}

/** What the cells of a sheet hold or came to, as text. */
export const textsOf =
  (contentAt: ContentAt): TextAt =>
  (row, column) =>
    textOf(contentAt(row, column));

/** The cells that the picture of a cell covers: those merged with it, or as many as usual. */
export function pictureAt(
  { merged }: Pick<SheetData, "merged">,
  { row, column }: { readonly row: number; readonly column: number },
): Rectangle {
  const found = merged.find((area) => area.row === row && area.column === column);
  return found ?? usualPicture(row, column);
}

const usualPicture = (row: number, column: number): Rectangle => ({
  row,
  column,
  lastRow: row + PICTURE.rows - 1,
  lastColumn: column + PICTURE.columns - 1,
});

/** Every table of a sheet that a cell asks to be drawn. */
export function curvesOf(sheet: Pick<SheetData, "cells" | "merged">): TableCurve[] {
  const asking = sheet.cells.filter(({ content }) => textOf(content).startsWith(BEGINNING));
  if (asking.length === 0) return [];
  const text = textsOf(contentsOf(sheet));
  const merged = new Map(sheet.merged.map((area) => [placeOf(area.row, area.column), area]));
  return asking.flatMap(({ row, column, content }) => {
    const place = merged.get(placeOf(row, column)) ?? usualPicture(row, column);
    const curve = curveAskedFor(textOf(content), place, text);
    return curve === undefined ? [] : [curve];
  });
}
