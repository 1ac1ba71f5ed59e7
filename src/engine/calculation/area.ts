import type { Rectangle } from "../../formula/addresses";

/** Cells of one sheet of the workbook, the sheet by its position. */
export interface Area extends Rectangle {
  readonly sheet: number;
}

/** True where two areas have a cell in common. */
export const meet = (a: Area, b: Area): boolean =>
  a.sheet === b.sheet &&
  a.row <= b.lastRow &&
  b.row <= a.lastRow &&
  a.column <= b.lastColumn &&
  b.column <= a.lastColumn;
