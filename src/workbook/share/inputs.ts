import { cellName, placeOf, type Rectangle } from "../../formula/addresses";
import { referencesIn } from "../../formula/references";
import { contentOf } from "../file/cell-content";
import { WORKED_AREA } from "../file/patch/print-area-names";
import type { LiveSheet, LiveWorkbook } from "../file/read/live-workbook";
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

function areasRead(live: LiveWorkbook): Map<string, Map<string, Rectangle>> {
  const bySheet = new Map<string, Map<string, Rectangle>>();
  const formulas = live.sheets.flatMap((sheet) => [...sheet.formulas.values()]);
  const named = live.main.names
    .filter(({ name }) => !isOfProgram(name))
    .map(({ formula }) => ({ typed: formula, sheet: "" }));
  for (const { typed, sheet } of [...formulas, ...named]) {
    for (const found of referencesIn(typed, sheet)) {
      const { row, column, lastRow, lastColumn } = found.area;
      const areas = bySheet.get(found.sheet.toUpperCase()) ?? new Map<string, Rectangle>();
      areas.set(`${row} ${column} ${lastRow} ${lastColumn}`, found.area);
      bySheet.set(found.sheet.toUpperCase(), areas);
    }
  }
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
    const areas = read.get(sheet.listed.name.toUpperCase())?.values() ?? [];
    return typedCells(sheet, areas).map((cell) => {
      const content = plainContent(contentOf(cell, live.strings, live.main.from1904));
      return [sheet.listed.name, cellName(cell.row, cell.column), content] as const;
    });
  });
}
