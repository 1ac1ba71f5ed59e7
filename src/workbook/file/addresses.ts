import { cellName, readCellName } from "../model/sheet-model";

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
