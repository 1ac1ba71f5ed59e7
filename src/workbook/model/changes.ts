import { placeOf } from "../file/addresses";
import type { ChangedCell, Changes } from "../file/patch/patch-workbook";
import type { Book, BookCell, BookSheet, Held, Look } from "./workbook-data";

/** What became of a workbook's cells. */
export interface BookChanges {
  readonly contents: Changes;
  /** Number of cells whose dress became another one. */
  readonly looks: number;
  /** True where widths, hidden columns, merged cells or frozen heads became others. */
  readonly isLaidOutAnew: boolean;
}

/** The content itself; what a formula came to and fills does not count. */
function essence(held: Held | undefined): string {
  if (held === undefined) return "";
  return "formula" in held ? JSON.stringify({ formula: held.formula }) : JSON.stringify(held);
}

const byPlace = ({ cells }: BookSheet) =>
  new Map(cells.map((cell) => [placeOf(cell.row, cell.column), cell]));

function changedCells(before: BookSheet, after: BookSheet): ChangedCell[] {
  const [old, fresh] = [byPlace(before), byPlace(after)];
  const all = new Map<number, BookCell>([...old, ...fresh]);
  return [...all].flatMap(([place, { row, column }]): ChangedCell[] => {
    const held = fresh.get(place)?.held;
    if (essence(old.get(place)?.held) === essence(held)) return [];
    return [{ row, column, ...(held && { held }) }];
  });
}

const sameLook = (a: Look = {}, b: Look = {}) =>
  JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());

function changedLooks(before: BookSheet, after: BookSheet): number {
  const old = byPlace(before);
  return after.cells.filter(({ row, column, look }) => !sameLook(old.get(placeOf(row, column))?.look, look))
    .length;
}

const layoutOf = ({ columns, merged, frozenRows, frozenColumns }: BookSheet) =>
  JSON.stringify([[...columns].sort(([a], [b]) => a - b), merged, frozenRows, frozenColumns]);

/** Compares two states of a workbook that has the same sheets in both. */
export function changesBetween(before: Book, after: Book): BookChanges {
  const pairs = after.sheets.flatMap((sheet) => {
    const old = before.sheets.find(({ name }) => name === sheet.name);
    return old === undefined ? [] : [[old, sheet] as const];
  });
  return {
    contents: new Map(pairs.map(([old, sheet]) => [sheet.name, changedCells(old, sheet)])),
    looks: pairs.reduce((sum, [old, sheet]) => sum + changedLooks(old, sheet), 0),
    isLaidOutAnew: pairs.some(([old, sheet]) => layoutOf(old) !== layoutOf(sheet)),
  };
}
