import { placeOf } from "../../formula/addresses";
import type { ChangedLook, ChangedLooks } from "../file/patch/patch-styles";
import type { ChangedCell, Changes } from "../file/patch/patch-workbook";
import type { CellContent, CellData, CellStyle, SheetData, WorkbookData } from "./workbook-data";

/** What became of a workbook's cells. */
export interface WorkbookChanges {
  readonly contents: Changes;
  /** Letters, number formats and hidden rows that became others. */
  readonly looks: ReadonlyMap<string, ChangedLooks>;
  /** Number of cells whose style became another one in what no file is told of. */
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

const withoutLook = ({ bold: _b, format: _f, ...rest }: CellStyle = {}) => rest;

/** What of a style a file can be told that became another. */
const lookBetween = (before: CellStyle = {}, after: CellStyle = {}): Omit<ChangedLook, "row" | "column"> => ({
  ...((before.bold === true) === (after.bold === true) ? {} : { bold: after.bold === true }),
  ...(before.format === after.format ? {} : { format: after.format ?? "" }),
});

/** Cells whose style became another one, and how many in more than a file can be told. */
function changedStyles(before: SheetData, after: SheetData): { looks: ChangedLook[]; others: number } {
  const old = byPlace(before);
  const pairs = after.cells
    .map(({ row, column, style }) => ({ row, column, style, was: old.get(placeOf(row, column))?.style }))
    .filter(({ style, was }) => !sameStyle(was, style));
  const looks = pairs.flatMap(({ row, column, style, was }): ChangedLook[] => {
    const look = lookBetween(was, style);
    return Object.keys(look).length === 0 ? [] : [{ row, column, ...look }];
  });
  const others = pairs.filter(({ style, was }) => !sameStyle(withoutLook(was), withoutLook(style))).length;
  return { looks, others };
}

/** Rows that were hidden or shown. */
function changedRows(before: SheetData, after: SheetData): ChangedLooks["rows"] {
  const isHidden = (sheet: SheetData, row: number) => sheet.rows.get(row)?.isHidden === true;
  return [...new Set([...before.rows.keys(), ...after.rows.keys()])]
    .filter((row) => isHidden(before, row) !== isHidden(after, row))
    .map((row) => ({ row, isHidden: isHidden(after, row) }));
}

const layoutOf = ({ columns, merged, frozenRows, frozenColumns }: SheetData) =>
  JSON.stringify([[...columns].sort(([a], [b]) => a - b), merged, frozenRows, frozenColumns]);

/** Compares two states of a workbook that has the same sheets in both. */
export function changesBetween(before: WorkbookData, after: WorkbookData): WorkbookChanges {
  const pairs = after.sheets.flatMap((sheet) => {
    const old = before.sheets.find(({ name }) => name === sheet.name);
    return old === undefined ? [] : [[old, sheet] as const];
  });
  const styles = pairs.map(([old, sheet]) => [old, sheet, changedStyles(old, sheet)] as const);
  return {
    looks: new Map(
      styles.map(([old, sheet, { looks: cells }]) => [sheet.name, { cells, rows: changedRows(old, sheet) }]),
    ),
    contents: new Map(pairs.map(([old, sheet]) => [sheet.name, changedCells(old, sheet)])),
    styles: styles.reduce((sum, [, , { others }]) => sum + others, 0),
    isLaidOutAnew: pairs.some(([old, sheet]) => layoutOf(old) !== layoutOf(sheet)),
  };
}
