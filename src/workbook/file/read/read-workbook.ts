import { placeOf } from "../../../formula/addresses";
import type { CellContent, CellData, CellFormula, SheetData, WorkbookData } from "../../model/workbook-data";
import { contentOf } from "../cell-content";
import { bodyOf, type Calculation, calculateFile, storedCalculation } from "../patch/calculation";
import { type CellRemark, leftAsTheyWere } from "../patch/recalculate";
import { APP, PROPERTIES, VERSION } from "../write/package-parts";
import { type LiveFormula, type LiveSheet, type LiveWorkbook, readLiveWorkbook } from "./live-workbook";
import { hasOwnChartsOnly } from "./own-charts";
import { printNames } from "./print-names";
import { DRAWN, readLayout } from "./read-layout";
import type { Styles } from "./read-styles";
import type { StoredCell } from "./stored-sheet";
import { readStylesOf } from "./workbook-styles";

/** A workbook file as a grid can show it. */
export interface ReadWorkbook {
  readonly workbook: WorkbookData;
  /** What is in the file but not shown, in words. */
  readonly unshown: readonly string[];
  /** Formulas that stand with the value the file held, with the reason. */
  readonly left: readonly CellRemark[];
}

/** Sheets that hold more formatted cells than this show only those with a content. */
const MAX_EMPTY_CELLS = 50_000;

/** What a formula comes to, and what stands in the cells that it fills. */
function resultsOf(done: Calculation, formula: LiveFormula): Partial<CellFormula> {
  const { row, column } = formula.cell;
  const result = done.resultAt(formula, row, column);
  const fills = done.areaOf(formula);
  if (fills.row === fills.lastRow && fills.column === fills.lastColumn) return { result };
  const filled = Array.from({ length: fills.lastRow - fills.row + 1 }, (_, r) =>
    Array.from({ length: fills.lastColumn - fills.column + 1 }, (_x, c) =>
      done.resultAt(formula, fills.row + r, fills.column + c),
    ),
  );
  return { result, fills, filled };
}

/** True for a file that this very version wrote, whose values it would work out the same. Other programs name themselves. */
function isOfThisVersion(live: LiveWorkbook): boolean {
  const { core } = PROPERTIES;
  return isOfOurs(live) && live.file.has(core) && live.file.text(core).includes(VERSION);
}

/** True for a file that no other program has saved since one of ours wrote it. */
export function isOfOurs({ file }: LiveWorkbook): boolean {
  return file.has(PROPERTIES.app) && file.text(PROPERTIES.app) === APP;
}

function contentBy(
  live: LiveWorkbook,
  done: Calculation,
  sheet: LiveSheet,
  cell: StoredCell,
): CellContent | undefined {
  const formula = sheet.formulas.get(placeOf(cell.row, cell.column));
  const handed = formula && done.handedOver(formula);
  if (formula !== undefined && handed !== undefined) return { formula: handed, ...resultsOf(done, formula) };
  return contentOf(cell, live.strings, live.main.from1904);
}

/** Places that formulas fill beside their own cell; what the file holds there is their result, not a constant. */
function filledPlaces(done: Calculation, sheet: LiveSheet): ReadonlySet<number> {
  const filling = [...sheet.formulas.values()].filter(
    (formula) => formula.kind !== "plain" && !done.left.has(formula),
  );
  return new Set(
    filling.flatMap((formula) =>
      [...bodyOf(formula.area), ...bodyOf(done.areaOf(formula))].map(([row, column]) => placeOf(row, column)),
    ),
  );
}

function cellsOf(live: LiveWorkbook, done: Calculation, sheet: LiveSheet, styles: Styles): CellData[] {
  const filled = filledPlaces(done, sheet);
  const all = sheet.stored.rows.flatMap(({ cells }) => cells);
  const isShown = ({ content }: CellData, { style }: StoredCell) =>
    content !== undefined || (style !== undefined && all.length <= MAX_EMPTY_CELLS);
  return all.flatMap((stored): CellData[] => {
    const { row, column } = stored;
    const content = filled.has(placeOf(row, column)) ? undefined : contentBy(live, done, sheet, stored);
    const style = styles.styles[Number(stored.style ?? 0)];
    const cell = { row, column, ...(content && { content }), ...(style && { style }) };
    return isShown(cell, stored) ? [cell] : [];
  });
}

function chartSheets({ main }: LiveWorkbook): string[] {
  const shown = new Set(main.sheets.map(({ name }) => name));
  return main.listed.filter((name) => !shown.has(name)).map((name) => `sheet ${name}, which holds no cells`);
}

/**
 * Reads a workbook file for showing: contents, style, sizes, frozen heads, lists. Formulas come as typed; one that
 * cannot be calculated here stands with the value the file holds.
 *
 * @throws FileRefusal for a file that cannot be read or must not be touched.
 */
export async function readWorkbook(bytes: Uint8Array): Promise<ReadWorkbook> {
  const live = readLiveWorkbook(bytes);
  const done = isOfThisVersion(live) ? storedCalculation(live) : await calculateFile(live);
  const styles = readStylesOf(live);
  const unshown = new Set(chartSheets(live));
  const sheets = live.sheets.map((sheet): SheetData => {
    const { listed, stored } = sheet;
    const layout = readLayout(listed.part, stored, styles.ruleFills);
    for (const words of layout.unshown)
      if (words !== DRAWN || !hasOwnChartsOnly(live.file, listed.part)) unshown.add(words);
    const { columns, rows, frozenRows, frozenColumns, merged, offers, colors, hidesGridLines } = layout;
    return {
      name: listed.name,
      isHidden: listed.isHidden,
      cells: cellsOf(live, done, sheet, styles),
      ...{ columns, rows, frozenRows, frozenColumns, merged, offers, colors, hidesGridLines },
      print: { ...layout.print, ...printNames(live, sheet) },
    };
  });
  const workbook = { sheets, names: done.names, tables: live.tables };
  return { workbook, unshown: [...unshown], left: leftAsTheyWere(done) };
}
