import { placeOf } from "../../formula/addresses";
import type { ChangedCell, Changes } from "../file/patch/patch-workbook";
import type { CellContent, CellData, CellStyle, SheetData, WorkbookData } from "./workbook-data";

/** What became of a workbook's cells. */
export interface WorkbookChanges {
  readonly contents: Changes;
  /** Number of cells whose style became another one. */
  readonly styles: number;
  /** True where widths, hidden columns, merged cells or frozen heads became others. */
  readonly isLaidOutAnew: boolean;
}

/** The content itself; what a formula came to and fills does not count. */
function essence(content: CellContent | undefined): string {
  if (content === undefined) return "";
  return "formula" in content ? JSON.stringify({ formula: content.formula }) : JSON.stringify(content);
}

const byPlace = ({ cells }: SheetData) =>
  new Map(cells.map((cell) => [placeOf(cell.row, cell.column), cell]));

function changedCells(before: SheetData, after: SheetData): ChangedCell[] {
  const [old, fresh] = [byPlace(before), byPlace(after)];
  const all = new Map<number, CellData>([...old, ...fresh]);
  return [...all].flatMap(([place, { row, column }]): ChangedCell[] => {
    const content = fresh.get(place)?.content;
    if (essence(old.get(place)?.content) === essence(content)) return [];
    return [{ row, column, ...(content && { content }) }];
  });
}

const sameStyle = (a: CellStyle = {}, b: CellStyle = {}) =>
  JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());

function changedStyles(before: SheetData, after: SheetData): number {
  const old = byPlace(before);
  return after.cells.filter(
    ({ row, column, style }) => !sameStyle(old.get(placeOf(row, column))?.style, style),
  ).length;
}

const layoutOf = ({ columns, merged, frozenRows, frozenColumns }: SheetData) =>
  JSON.stringify([[...columns].sort(([a], [b]) => a - b), merged, frozenRows, frozenColumns]);

/** Compares two states of a workbook that has the same sheets in both. */
export function changesBetween(before: WorkbookData, after: WorkbookData): WorkbookChanges {
  const pairs = after.sheets.flatMap((sheet) => {
    const old = before.sheets.find(({ name }) => name === sheet.name);
    return old === undefined ? [] : [[old, sheet] as const];
  });
  return {
    contents: new Map(pairs.map(([old, sheet]) => [sheet.name, changedCells(old, sheet)])),
    styles: pairs.reduce((sum, [old, sheet]) => sum + changedStyles(old, sheet), 0),
    isLaidOutAnew: pairs.some(([old, sheet]) => layoutOf(old) !== layoutOf(sheet)),
  };
}
