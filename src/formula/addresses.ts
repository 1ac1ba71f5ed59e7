/** A column of a sheet, A to XFD (ECMA-376 Part 1, 18.17.2.3, and Excel's own limit), as part of a pattern. */
export const COLUMN = "(?:[A-Za-z]{1,2}|[A-Wa-w][A-Za-z]{2}|[Xx][A-Ea-e][A-Za-z]|[Xx][Ff][A-Da-d])";
/** A row of a sheet, 1 to 1048576, as part of a pattern. */
export const ROW =
  "(?:10485(?:7[0-6]|[0-6]\\d)|1048[0-4]\\d\\d|104[0-7]\\d{3}|10[0-3]\\d{4}|[1-9]\\d{0,5}(?!\\d))";

/** Rows and columns of a sheet. */
export const SHEET_ROWS = 1_048_576;
export const SHEET_COLUMNS = 16_384;

/** Which parts of an address keep their place when the formula is copied: `$A$1`, `A$1`, `$A1` or `A1`. */
export type Fixed = "both" | "row" | "column" | "none";

/** The letters of a column: 0 → A, 26 → AA. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26) - 1;
  return (rest < 0 ? "" : columnLetters(rest)) + String.fromCharCode(65 + (column % 26));
}

/** The column that letters in any case stand for: A → 0. */
export function columnOf(letters: string): number {
  const capitals = letters.toUpperCase();
  let sum = 0;
  for (let at = 0; at < capitals.length; at += 1) sum = sum * 26 + capitals.charCodeAt(at) - 64;
  return sum - 1;
}

/** A cell's address without its sheet: row 2, column 3 → D3. */
export function cellName(row: number, column: number, fixed: Fixed = "none"): string {
  const mark = (part: Fixed) => (fixed === part || fixed === "both" ? "$" : "");
  return `${mark("column")}${columnLetters(column)}${mark("row")}${row + 1}`;
}

const CELL_NAME = new RegExp(`^(\\$?)(${COLUMN})(\\$?)(${ROW})$`);

/** An address of one cell taken apart. */
export interface CellParts {
  readonly row: number;
  readonly column: number;
  readonly isColumnFixed: boolean;
  readonly isRowFixed: boolean;
}

/** An address such as `$D3`; `undefined` where the text is none. */
export function readCellParts(text: string): CellParts | undefined {
  const [, fixedColumn = "", letters, fixedRow = "", digits] = CELL_NAME.exec(text.trim()) ?? [];
  if (letters === undefined || digits === undefined) return undefined;
  return {
    row: Number(digits) - 1,
    column: columnOf(letters),
    isColumnFixed: fixedColumn !== "",
    isRowFixed: fixedRow !== "",
  };
}

/** Row and column of an address such as `D3`; `undefined` where the text is none. */
export function readCellName(text: string): { row: number; column: number } | undefined {
  const parts = readCellParts(text);
  return parts && { row: parts.row, column: parts.column };
}

/** A rectangle of cells; rows and columns count from 0, the last ones included. */
export interface Rectangle {
  readonly row: number;
  readonly column: number;
  readonly lastRow: number;
  readonly lastColumn: number;
}

/** Reads `B2:D4` or `B2`; `undefined` where the text is neither. */
export function readRectangle(text: string | undefined): Rectangle | undefined {
  const [first = "", last = first] = (text ?? "").split(":");
  return rectangleBetween(first, last);
}

/** The rectangle from one cell to another, which may be the same; `undefined` where one of the two is no address. */
export function rectangleBetween(first: string, last: string): Rectangle | undefined {
  const from = readCellParts(first);
  const to = last === first ? from : readCellParts(last);
  if (from === undefined || to === undefined) return undefined;
  return {
    row: Math.min(from.row, to.row),
    column: Math.min(from.column, to.column),
    lastRow: Math.max(from.row, to.row),
    lastColumn: Math.max(from.column, to.column),
  };
}

/** `B2:D4`, or `B2` for a single cell. */
export function rectangleName(
  { row, column, lastRow, lastColumn }: Rectangle,
  fixed: Fixed = "none",
): string {
  const first = cellName(row, column, fixed);
  const isOne = row === lastRow && column === lastColumn;
  return isOne ? first : `${first}:${cellName(lastRow, lastColumn, fixed)}`;
}

export function holds(area: Rectangle, row: number, column: number): boolean {
  return row >= area.row && row <= area.lastRow && column >= area.column && column <= area.lastColumn;
}

/** Every cell of a rectangle, row by row. */
export function* cellsOf(area: Rectangle): Generator<readonly [row: number, column: number]> {
  for (let row = area.row; row <= area.lastRow; row += 1) {
    for (let column = area.column; column <= area.lastColumn; column += 1) yield [row, column];
  }
}

/** One number for a cell's place on its sheet, fit as a key. */
export const placeOf = (row: number, column: number): number => row * SHEET_COLUMNS + column;
