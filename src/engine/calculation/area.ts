import type { Rectangle } from "../../formula/addresses";

/** Cells of one sheet of the workbook, the sheet by its position. */
export interface Area extends Rectangle {
  readonly sheet: number;
}
