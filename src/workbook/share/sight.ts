import type { Rectangle } from "../../formula/addresses";
import type { Layout } from "../file/read/read-layout";
import type { CellStyle } from "../model/workbook-data";

/** The cells of a sheet that nobody sees: what stands there does not travel. */
export interface OutOfSight {
  readonly rows: ReadonlySet<number>;
  readonly columns: readonly (readonly [first: number, last: number])[];
  /** Merged cells; only the first of each shows what it holds. */
  readonly merged: readonly Rectangle[];
}

/** Hidden rows and columns of a sheet, and cells that lie under merged ones; a height of 0 hides as well. */
export function outOfSightOn({ rows, hiddenColumns, merged }: Layout): OutOfSight {
  const hidden = [...rows].filter(([, { isHidden, size }]) => isHidden || size === 0);
  return { rows: new Set(hidden.map(([row]) => row)), columns: hiddenColumns, merged };
}

const within = (area: Rectangle, row: number, column: number) =>
  row >= area.row && row <= area.lastRow && column >= area.column && column <= area.lastColumn;

const meets = (a: Rectangle, b: Rectangle) =>
  a.row <= b.lastRow && a.lastRow >= b.row && a.column <= b.lastColumn && a.lastColumn >= b.column;

/** True for a cell that stands in a hidden row or column or under a merged one. */
export function isOutOfSight({ rows, columns, merged }: OutOfSight, row: number, column: number): boolean {
  if (rows.has(row) || columns.some(([first, last]) => column >= first && column <= last)) return true;
  return merged.some((area) => within(area, row, column) && (row !== area.row || column !== area.column));
}

/** True where an area reaches into what is out of sight. */
export function reachesOutOfSight({ rows, columns, merged }: OutOfSight, area: Rectangle): boolean {
  const hasRow = [...rows].some((row) => row >= area.row && row <= area.lastRow);
  const hasColumn = columns.some(([first, last]) => first <= area.lastColumn && last >= area.column);
  const isFirst = ({ row, column }: Rectangle) => area.row <= row && area.column <= column;
  return hasRow || hasColumn || merged.some((other) => meets(other, area) && !isFirst(other));
}

/** Number formats with nothing between their semicolons show nothing. */
const SHOWS_NOTHING = /^\s*;[\s;]*$/;
const WHITE = "#ffffff";
/** Letters smaller than this, in points, cannot be read. */
const SMALLEST_READ = 4;

/** True where nobody can read what a cell of this style holds. */
export function cannotBeRead({
  color = "#000000",
  fill = WHITE,
  size = 11,
  format = "",
}: CellStyle): boolean {
  return color.toLowerCase() === fill.toLowerCase() || size < SMALLEST_READ || SHOWS_NOTHING.test(format);
}
