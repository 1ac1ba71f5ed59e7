import { cellsOf, holds, placeOf, type Rectangle } from "../../formula/addresses";
import type { Layout } from "../file/read/read-layout";
import type { CellStyle } from "../model/workbook-data";

/** The cells of a sheet that nobody sees: what stands there does not travel. */
export interface OutOfSight {
  readonly rows: ReadonlySet<number>;
  readonly columns: readonly (readonly [first: number, last: number])[];
  /** Merged cells; only the first of each shows what it holds. */
  readonly merged: readonly Rectangle[];
  /** Places of the cells under merged ones that cover few: a paper has some on each of its pages. */
  readonly covered: ReadonlySet<number>;
  /** Merged cells that cover many. */
  readonly wide: readonly Rectangle[];
}

/** Cells under one merged cell that are kept one by one. */
const FEW = 1000;

const sizeOf = ({ row, column, lastRow, lastColumn }: Rectangle) =>
  (lastRow - row + 1) * (lastColumn - column + 1);

const isFirstOf = (area: Rectangle, row: number, column: number) =>
  row === area.row && column === area.column;

/** Hidden rows and columns of a sheet, and cells that lie under merged ones; a height of 0 hides as well. */
export function outOfSightOn({ rows, hiddenColumns, merged }: Layout): OutOfSight {
  const hidden = [...rows].filter(([, { isHidden, size }]) => isHidden || size === 0);
  const covered = new Set<number>();
  for (const area of merged.filter((each) => sizeOf(each) <= FEW)) {
    for (const [row, column] of cellsOf(area))
      if (!isFirstOf(area, row, column)) covered.add(placeOf(row, column));
  }
  return {
    rows: new Set(hidden.map(([row]) => row)),
    columns: hiddenColumns,
    merged,
    covered,
    wide: merged.filter((area) => sizeOf(area) > FEW),
  };
}

const meets = (a: Rectangle, b: Rectangle) =>
  a.row <= b.lastRow && a.lastRow >= b.row && a.column <= b.lastColumn && a.lastColumn >= b.column;

/** True for a cell that stands in a hidden row or column or under a merged one. */
export function isOutOfSight(
  { rows, columns, covered, wide }: OutOfSight,
  row: number,
  column: number,
): boolean {
  if (rows.has(row) || columns.some(([first, last]) => column >= first && column <= last)) return true;
  return (
    covered.has(placeOf(row, column)) ||
    wide.some((area) => holds(area, row, column) && !isFirstOf(area, row, column))
  );
}

/** True where an area reaches into what is out of sight. */
export function reachesOutOfSight(hidden: OutOfSight, area: Rectangle): boolean {
  if (sizeOf(area) === 1) return isOutOfSight(hidden, area.row, area.column);
  const { rows, columns, merged } = hidden;
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
