import { cellName, placeOf, type Rectangle, SHEET_COLUMNS } from "../../formula/addresses";
import { referencesIn } from "../../formula/references";
import { contentOf } from "../file/cell-content";
import { WORKED_AREA } from "../file/patch/print-area-names";
import type { LiveFormula, LiveSheet, LiveWorkbook } from "../file/read/live-workbook";
import type { StoredCell } from "../file/read/stored-sheet";
import { plainContent } from "./values";

const isInside = ({ row, column }: StoredCell, area: Rectangle) =>
  row >= area.row && row <= area.lastRow && column >= area.column && column <= area.lastColumn;

/** The first of the rows, which stand in their order, that is not above a row. */
function firstRowFrom(rows: LiveSheet["stored"]["rows"], wanted: number): number {
  let [low, high] = [0, rows.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rows[middle]?.row ?? 0) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Cells that a sheet holds inside an area, without walking through empty ones or through the rows above: a plan's
 * formulas name an area for each of its lines.
 */
function* cellsIn(rows: LiveSheet["stored"]["rows"], area: Rectangle): Generator<StoredCell> {
  for (let at = firstRowFrom(rows, area.row); at < rows.length; at += 1) {
    const { row, cells } = rows[at] as (typeof rows)[number];
    if (row > area.lastRow) return;
    for (const cell of cells) if (isInside(cell, area)) yield cell;
  }
}

/** Names by which a program knows what is printed or filtered: they read no cell. */
const isOfProgram = (name: string) => name.startsWith("_xlnm.") || name === WORKED_AREA;

/** Rows from the first to the last, both of them included. */
type Rows = readonly [row: number, lastRow: number];

/** Rows that are read of one sheet, by the first and the last of the columns that they are read of. */
class RowsRead {
  private readonly byColumns = new Map<number, [row: number, lastRow: number][]>();

  add({ row, column, lastRow, lastColumn }: Rectangle): void {
    const columns = placeOf(column, lastColumn);
    const rows = this.byColumns.get(columns);
    const latest = rows?.at(-1);
    // Down a column mostly the same rows are read again, or as many as before and one more.
    if (rows === undefined) this.byColumns.set(columns, [[row, lastRow]]);
    else if (latest?.[0] === row) latest[1] = Math.max(latest[1], lastRow);
    else rows.push([row, lastRow]);
  }

  /** The areas, none of which meets another one of the same columns. */
  *areas(): Generator<Rectangle> {
    for (const [columns, rows] of this.byColumns) {
      const [column, lastColumn] = [Math.floor(columns / SHEET_COLUMNS), columns % SHEET_COLUMNS];
      for (const [row, lastRow] of joined(rows)) yield { row, column, lastRow, lastColumn };
    }
  }
}

/** Rows that meet or follow on one another, as one: a sum down to each line names them in every line anew. */
function joined(rows: readonly Rows[]): Rows[] {
  const found: [row: number, lastRow: number][] = [];
  for (const [row, lastRow] of [...rows].sort(([a], [b]) => a - b)) {
    const before = found.at(-1);
    if (before !== undefined && row <= before[1] + 1) before[1] = Math.max(before[1], lastRow);
    else found.push([row, lastRow]);
  }
  return found;
}

function areasRead(live: LiveWorkbook): Map<string, RowsRead> {
  const bySheet = new Map<string, RowsRead>();
  const rowsOn = (sheet: string) => {
    const rows = bySheet.get(sheet) ?? new RowsRead();
    bySheet.set(sheet, rows);
    return rows;
  };
  const note = ({ typed, sheet }: Pick<LiveFormula, "typed" | "sheet">) => {
    for (const found of referencesIn(typed, sheet)) rowsOn(found.sheet.toUpperCase()).add(found.area);
  };
  for (const { formulas } of live.sheets) for (const formula of formulas.values()) note(formula);
  for (const { name, formula } of live.main.names)
    if (!isOfProgram(name)) note({ typed: formula, sheet: "" });
  return bySheet;
}

function typedCells(sheet: LiveSheet, areas: Iterable<Rectangle>): StoredCell[] {
  const found = new Map<number, StoredCell>();
  const rows = [...sheet.stored.rows].sort((a, b) => a.row - b.row);
  for (const area of areas) {
    for (const cell of cellsIn(rows, area)) {
      const place = placeOf(cell.row, cell.column);
      const isTyped = !sheet.formulas.has(place) && cell.type !== "str" && cell.raw !== undefined;
      if (isTyped) found.set(place, cell);
    }
  }
  return [...found].sort(([a], [b]) => a - b).map(([, cell]) => cell);
}

/** The typed cells that formulas read by address, in the order of sheets and cells: sheet, cell, content. */
export function inputsOf(live: LiveWorkbook): (readonly [sheet: string, cell: string, content: string])[] {
  const read = areasRead(live);
  return live.sheets.flatMap((sheet) => {
    const areas = read.get(sheet.listed.name.toUpperCase())?.areas() ?? [];
    return typedCells(sheet, areas).map((cell) => {
      const content = plainContent(contentOf(cell, live.strings, live.main.from1904));
      return [sheet.listed.name, cellName(cell.row, cell.column), content] as const;
    });
  });
}
