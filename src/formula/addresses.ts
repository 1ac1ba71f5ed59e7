/** The letters of a column: 0 → A, 26 → AA. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26) - 1;
  return (rest < 0 ? "" : columnLetters(rest)) + String.fromCharCode(65 + (column % 26));
}

/** A cell's address without its sheet: row 2, column 3 → D3. */
export function cellName(row: number, column: number): string {
  return `${columnLetters(column)}${row + 1}`;
}

const CELL_NAME = /^\$?([A-Z]{1,3})\$?([1-9][0-9]{0,6})$/i;

/** Row and column of an address such as `D3`; `undefined` where the text is none. */
export function readCellName(text: string): { row: number; column: number } | undefined {
  const [, letters, digits] = CELL_NAME.exec(text.trim()) ?? [];
  if (letters === undefined || digits === undefined) return undefined;
  const column = [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  return { row: Number(digits) - 1, column: column - 1 };
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
  const [from, to] = [readCellName(first), readCellName(last)];
  if (from === undefined || to === undefined) return undefined;
  return {
    row: Math.min(from.row, to.row),
    column: Math.min(from.column, to.column),
    lastRow: Math.max(from.row, to.row),
    lastColumn: Math.max(from.column, to.column),
  };
}

/** `B2:D4`, or `B2` for a single cell. */
export function rectangleName({ row, column, lastRow, lastColumn }: Rectangle): string {
  const first = cellName(row, column);
  return row === lastRow && column === lastColumn ? first : `${first}:${cellName(lastRow, lastColumn)}`;
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

/** One number for a cell's place on its sheet, fit as a key; no sheet has more than 16,384 columns. */
export const placeOf = (row: number, column: number): number => row * 16_384 + column;
