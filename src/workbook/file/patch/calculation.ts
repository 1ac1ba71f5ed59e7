import { BudgetEnd } from "../../../engine/budget";
import { type CalculatedWorkbook, calculateWorkbook } from "../../../engine/calculate-workbook";
import type { CellInput, CellValue } from "../../../engine/cell-value";
import { knownFunctionNames } from "../../../engine/known-names";

import type { SheetInput, WorkbookInput } from "../../../engine/workbook-input";
import { cellsOf, holds, placeOf, type Rectangle } from "../../../formula/addresses";
import { wholeCallOfOurs } from "../../../formula/functions-called";
import type { TokenKind } from "../../../formula/pieces";
import { namesOtherFile, readsSpills, withSpillsNamed } from "../../../formula/references";
import { typedForm } from "../../../formula/stored-form";
import { tokensOf } from "../../../formula/tokens";
import { type EngineReach, whyFormsNotCalculated } from "../beyond-engine";
import { contentOf } from "../cell-content";
import { FileRefusal } from "../package/file-refusal";
import type { LiveFormula, LiveSheet, LiveWorkbook } from "../read/live-workbook";
import { isWorkedArea, WORKED_AREA } from "./print-area-names";

/** What is known so far of how each formula has to be handed to the engine; found out by calculating. */
interface Plan {
  /** Formulas that keep their stored value, with the reason. */
  readonly left: Map<LiveFormula, string>;
  /** Formulas of which only the first value is taken. */
  readonly first: Set<LiveFormula>;
  /** Cells that dynamic formulas fill. */
  readonly filled: Map<LiveFormula, Rectangle>;
}

/** The results of a workbook file. */
export interface Calculation {
  /** What a formula came to, in the first of its cells or in one that it fills. */
  resultAt(formula: LiveFormula, row: number, column: number): CellValue;
  /** Cells that a formula fills now. */
  areaOf(formula: LiveFormula): Rectangle;
  /** Formulas that were not calculated, with the reason. */
  readonly left: ReadonlyMap<LiveFormula, string>;
  /** Formulas that give several values of which the file, by its marks, shows only the first. */
  readonly first: ReadonlySet<LiveFormula>;
  /** A formula as the engine was handed it, with its equals sign; `undefined` where it was not calculated. */
  handedOver(formula: LiveFormula): string | undefined;
  /** Rows of the print areas that are worked out by a formula, by the name's place in the list of names. */
  readonly printedRows: ReadonlyMap<number, number>;
  /** Names of the workbook that the engine was handed, and what they stand for. */
  readonly names: Readonly<Record<string, string>>;
}

/** The engine does not know the error of a cell that still waits for its data. */
const known = (content: CellValue | undefined): CellValue | undefined =>
  content !== undefined && "error" in content && content.error === "#GETTING_DATA"
    ? { error: "#N/A" }
    : content;

function formulaText(live: LiveWorkbook, plan: Plan, formula: LiveFormula): string {
  const text = withSpillsNamed(formula.typed, formula.sheet, ({ sheet, area }) => {
    const named = live.sheets.find(({ listed }) => listed.name.toUpperCase() === sheet.toUpperCase());
    const anchor = named?.formulas.get(placeOf(area.row, area.column));
    return anchor && (plan.filled.get(anchor) ?? anchor.area);
  });
  return plan.first.has(formula) ? `=INDEX(${text},1,1)` : `=${text}`;
}

function sheetInput(live: LiveWorkbook, plan: Plan, sheet: LiveSheet): SheetInput {
  const arrays = [...sheet.formulas.values()].filter(
    (formula) => formula.kind !== "plain" && !plan.left.has(formula),
  );
  const rows: (CellInput | undefined)[][] = [];
  for (const { row, cells } of sheet.stored.rows) {
    const filled: (CellInput | undefined)[] = [];
    const near = arrays.filter(({ area }) => row >= area.row && row <= area.lastRow);
    for (const cell of cells) {
      const formula = sheet.formulas.get(placeOf(row, cell.column));
      const content = contentOf(cell, live.strings, live.main.from1904);
      if (formula !== undefined && !plan.left.has(formula))
        filled[cell.column] = { formula: formulaText(live, plan, formula) };
      else if (!near.some(({ area }) => holds(area, row, cell.column))) filled[cell.column] = known(content);
    }
    rows[row] = filled;
  }
  return { name: sheet.listed.name, rows };
}

/** A name for cells that are counted from the cell in which it stands: the engine knows fixed ones alone. */
const FIXED: Readonly<Partial<Record<TokenKind, RegExp>>> = {
  cell: /^\$[A-Z]+\$\d+$/i,
  columns: /^\$[A-Z]+:\$[A-Z]+$/i,
  rows: /^\$\d+:\$\d+$/,
};
const movesWithItsCell = (typed: string): boolean =>
  tokensOf(typed).some(({ kind, text }) => FIXED[kind]?.test(text) === false);

/** Names of the workbook that the engine takes: those of the whole workbook, and those of one sheet alone. */
function usableNames(live: LiveWorkbook): { names: Record<string, string>; unusable: Set<string> } {
  const names: Record<string, string> = {};
  const unusable = new Set<string>();
  for (const { name, formula } of live.main.names) {
    if (name.startsWith("_xlnm.") || name === WORKED_AREA) continue;
    const typed = typedForm(formula);
    if (namesOtherFile(typed) || movesWithItsCell(typed) || (name in names && names[name] !== typed))
      unusable.add(name.toUpperCase());
    else names[name] = typed;
  }
  return { names, unusable };
}

function formulasIn(live: LiveWorkbook): LiveFormula[] {
  return live.sheets.flatMap(({ formulas }) => [...formulas.values()]);
}

function firstPlan(live: LiveWorkbook, reach: EngineReach): Plan {
  const left = new Map<LiveFormula, string>();
  const whyNot = whyFormsNotCalculated(reach);
  for (const formula of formulasIn(live)) {
    const reason = formula.kind === "dataTable" ? "it belongs to a what-if table" : whyNot(formula);
    if (reason !== undefined) left.set(formula, reason);
  }
  return { left, first: new Set(), filled: new Map() };
}

const isBlocked = (result: CellValue | undefined) =>
  result !== undefined && "error" in result && result.error === "#SPILL!";

function areaIn(done: CalculatedWorkbook, { sheet, cell }: LiveFormula): Rectangle {
  const { rows, columns } = done.spillAt(sheet, cell.row, cell.column) ?? { rows: 1, columns: 1 };
  return {
    row: cell.row,
    column: cell.column,
    lastRow: cell.row + rows - 1,
    lastColumn: cell.column + columns - 1,
  };
}

const sizeOf = ({ row, column, lastRow, lastColumn }: Rectangle) =>
  [lastRow - row, lastColumn - column] as const;
const fits = (inner: Rectangle, outer: Rectangle) =>
  sizeOf(inner)[0] <= sizeOf(outer)[0] && sizeOf(inner)[1] <= sizeOf(outer)[1];

/** A file marks every formula that may fill several cells; one without the mark shows a single value. */
function learnOne(plan: Plan, formula: LiveFormula, done: CalculatedWorkbook): boolean {
  const { sheet, cell } = formula;
  const area = areaIn(done, formula);
  if (formula.kind === "dynamic") {
    const before = plan.filled.get(formula) ?? formula.area;
    plan.filled.set(formula, area);
    return String(sizeOf(before)) !== String(sizeOf(area));
  }
  const isTooLarge = !fits(area, formula.area) || isBlocked(done.at(sheet, cell.row, cell.column));
  if (!isTooLarge || plan.left.has(formula) || plan.first.has(formula)) return false;
  const isSingle = String(sizeOf(formula.area)) === "0,0";
  if (isSingle && (formula.kind === "array" || wholeCallOfOurs(formula.typed) !== undefined))
    plan.first.add(formula);
  else plan.left.set(formula, "it gives more values than the file has cells for");
  return true;
}

const MAX_PASSES = 6;

/** Whether a changed size matters to another formula, which then has to be handed over with the new cells. */
const usesSpills = (formulas: readonly LiveFormula[]) => formulas.some(({ typed }) => readsSpills(typed));

/** A sheet of the calculation alone, on which the sizes of print areas are worked out. */
const PRINTED = "Rows that are printed";

/** Print areas that a formula works out, by their place in the list of names. */
function worked(live: LiveWorkbook): (readonly [place: number, formula: string])[] {
  return live.main.names.flatMap(({ name, formula }, place) =>
    isWorkedArea({ name, formula }) ? [[place, typedForm(formula)] as const] : [],
  );
}

function printedInput(live: LiveWorkbook): SheetInput[] {
  const areas = worked(live);
  if (areas.length === 0 || live.main.listed.includes(PRINTED)) return [];
  return [{ name: PRINTED, rows: areas.map(([, formula]) => [{ formula: `=ROWS(${formula})` }]) }];
}

function printedRows(live: LiveWorkbook, done: CalculatedWorkbook): Map<number, number> {
  const rows = worked(live).map(([place], row) => [place, done.at(PRINTED, row, 0)] as const);
  return new Map(
    rows.flatMap(([place, found]) =>
      found !== undefined && "value" in found && typeof found.value === "number"
        ? [[place, found.value]]
        : [],
    ),
  );
}

/** A workbook that takes more than the budget is a file to be refused. */
async function withinBudget<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (fault) {
    throw fault instanceof BudgetEnd ? new FileRefusal(fault.message) : fault;
  }
}

async function calculateUntilStable(live: LiveWorkbook, input: Omit<WorkbookInput, "sheets">, plan: Plan) {
  const formulas = formulasIn(live);
  const areSizesUsed = usesSpills(formulas);
  for (let pass = 1; ; pass += 1) {
    const sheets = [...live.sheets.map((sheet) => sheetInput(live, plan, sheet)), ...printedInput(live)];
    const done = await withinBudget(calculateWorkbook({ ...input, sheets }));
    const calculated = formulas.filter((formula) => !plan.left.has(formula));
    const learned = calculated.filter((formula) => learnOne(plan, formula, done));
    const matters = learned.some(({ kind }) => kind !== "dynamic" || areSizesUsed);
    if (!matters || pass === MAX_PASSES) return done;
  }
}

/** The value of a cell inside a fixed area: one row or column of values repeats, what is missing is `#N/A`. */
function inFixedArea(done: CalculatedWorkbook, formula: LiveFormula, row: number, column: number): CellValue {
  const { cell, sheet } = formula;
  const [rows, columns] = sizeOf(areaIn(done, formula));
  const r = rows === 0 ? 0 : row - cell.row;
  const c = columns === 0 ? 0 : column - cell.column;
  if (r > rows || c > columns) return { error: "#N/A", message: undefined };
  return done.at(sheet, cell.row + r, cell.column + c) ?? { value: 0 };
}

/**
 * Calculates every formula of a workbook file that the engine can calculate.
 *
 * @returns Results by formula. What could not be calculated is named, with the reason, and keeps its stored value.
 */
export async function calculateFile(live: LiveWorkbook): Promise<Calculation> {
  const { names, unusable } = usableNames(live);
  const defined = new Set(Object.keys(names).map((name) => name.toUpperCase()));
  const plan = firstPlan(live, { functions: knownFunctionNames(), defined, unusable });
  const done = await calculateUntilStable(live, { names, tables: live.tables }, plan);
  const areaOf = (formula: LiveFormula) =>
    formula.kind === "dynamic" && !plan.left.has(formula) ? areaIn(done, formula) : formula.area;
  return {
    resultAt(formula, row, column) {
      if (formula.kind === "array") return inFixedArea(done, formula, row, column);
      return done.at(formula.sheet, row, column) ?? { value: 0 };
    },
    areaOf,
    left: plan.left,
    first: plan.first,
    handedOver: (formula) => (plan.left.has(formula) ? undefined : formulaText(live, plan, formula)),
    printedRows: printedRows(live, done),
    names,
  };
}

/** What the file holds, taken for what its formulas come to: for a file whose values need no calculation. */
export function storedCalculation(live: LiveWorkbook): Calculation {
  const { names, unusable } = usableNames(live);
  const defined = new Set(Object.keys(names).map((name) => name.toUpperCase()));
  const plan = firstPlan(live, { functions: knownFunctionNames(), defined, unusable });
  const cells = new Map(
    live.sheets.map(({ listed, stored }) => [
      listed.name,
      new Map(stored.rows.flatMap((row) => row.cells.map((cell) => [placeOf(row.row, cell.column), cell]))),
    ]),
  );
  return {
    resultAt(formula, row, column) {
      const cell = cells.get(formula.sheet)?.get(placeOf(row, column));
      return (cell && contentOf(cell, live.strings, live.main.from1904)) ?? { value: "" };
    },
    areaOf: ({ area }) => area,
    left: plan.left,
    first: plan.first,
    handedOver: (formula) => (plan.left.has(formula) ? undefined : formulaText(live, plan, formula)),
    // Only a share copy asks how far print areas reach, and that is made from a calculation.
    printedRows: new Map(),
    names,
  };
}

/** Cells of a formula apart from its own. */
export function* bodyOf(area: Rectangle): Generator<readonly [number, number]> {
  for (const [row, column] of cellsOf(area))
    if (row !== area.row || column !== area.column) yield [row, column];
}
