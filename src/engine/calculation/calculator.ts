import { placeOf } from "../../formula/addresses";
import { catalogue } from "../../functions/catalogue";
import type { WorksheetFunction } from "../../functions/declare";
import { meter, secondsFor } from "../budget";
import type { CellInput, CellValue, FormulaInput } from "../cell-value";
import { type Headless, startEngine } from "../headless";
import { resultOf } from "../results";
import { resultData, sheetId, UNIT, type WorkbookInput } from "../workbook-input";
import type { Area } from "./area";
import { empty, placesOf, put, putConstant, SheetCells } from "./cells";
import { engineWorkbook, enterNames, enterSheets, enterTable } from "./engine-book";
import { Evaluator } from "./evaluator";
import { type EngineCell, Formula } from "./formula";
import { Patterns } from "./patterns";
import { Readers } from "./readers";
import { Settling } from "./settling";
import { type ChangedResult, oneCell, ShownCells } from "./shown-cells";

/** What a cell is to hold from now on; nothing empties it. */
export interface CellChange {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly content: CellInput | undefined;
}

/** What the formulas of a sheet came to, by place. */
export interface SheetResults {
  readonly values: ReadonlyMap<number, CellValue>;
  /** Rows and columns of formulas that fill other cells than their own. */
  readonly spills: ReadonlyMap<number, { readonly rows: number; readonly columns: number }>;
}

/**
 * A workbook with what its formulas come to. It knows which formula reads which cells: after a change only what
 * depends on it is worked out, each formula once all that it reads is settled, and none whose cells stayed the same.
 */
export class Calculator {
  readonly engine: Headless;
  private readonly patterns: Patterns;
  private readonly sheets: readonly SheetCells[];
  private readonly positionOf: ReadonlyMap<string, number>;
  private readonly renewing = { "each day": new Set<Formula>(), always: new Set<Formula>() };
  /** The day on which all that depends on it was worked out last. */
  private day = "";
  private readonly readers = new Readers();
  private readonly shown: ShownCells;
  private readonly settling: Settling;
  private isCurrent = false;

  constructor(input: WorkbookInput, functions: readonly WorksheetFunction[] = catalogue) {
    this.sheets = input.sheets.map(({ name }, at) => new SheetCells(sheetId(at), name));
    this.shown = new ShownCells(this.sheets);
    this.positionOf = new Map(input.sheets.map(({ name }, at) => [name, at]));
    const { names = {}, tables = [] } = input;
    this.patterns = new Patterns({ sheets: this.sheets.map(({ name }) => name), names, tables }, functions);
    this.engine = startEngine(engineWorkbook(this.sheets), functions);
    const { injector } = this.engine;
    enterNames(injector, names);
    for (const table of tables) enterTable(injector, table, this.positionOf.get(table.sheet));
    this.settling = new Settling(this.sheets, this.readers, this.shown, new Evaluator(injector, UNIT));
    // An evaluator begins with what the engine itself holds; from here on the cells stand in its place.
    enterSheets(injector, this.sheets);
    input.sheets.forEach(({ rows }, at) => {
      this.enterRows(at, rows);
      // The texts by which formulas of a sheet are known to be alike fill more memory than all else of it.
      this.patterns.forget();
    });
  }

  dispose(): void {
    this.engine.dispose();
  }

  /**
   * Works out every formula.
   *
   * @param isTimed - Whether it ends after the seconds that the budget gives so many formulas.
   * @returns The cells that show something else than before.
   * @throws BudgetEnd with a sentence where the workbook takes more than the budget.
   */
  calculateAll({ isTimed = false } = {}): ChangedResult[] {
    const formulas = this.readers.unlisted;
    meter.begin(isTimed ? secondsFor(formulas.length) : undefined);
    this.shown.begin();
    this.settling.all(formulas);
    this.isAnotherDay();
    this.isCurrent = true;
    return this.shown.results();
  }

  /**
   * Takes the results that the formulas came with and works out the others.
   *
   * @returns The cells that show something else, and all cells of formulas that fill several.
   */
  calculateRest(): ChangedResult[] {
    const formulas = this.readers.unlisted;
    const rest = formulas.filter(
      ({ state, pattern }) => state === "due" || pattern.renewal !== "never" || pattern.isMoving,
    );
    if (rest.length === formulas.length) return this.calculateAll();
    meter.begin();
    this.shown.begin();
    for (const { fills } of formulas) if (fills !== undefined) this.shown.markAll(fills);
    this.isCurrent = true;
    this.isAnotherDay();
    this.readers.listAll();
    this.settling.workOut(rest, []);
    return this.shown.results();
  }

  /** Finds out which formulas read which cells, and in which order they come, so that the first change need not. */
  prepare(): void {
    this.readers.listAll();
    this.settling.prepare();
  }

  /** Works out what depends on changed cells. @returns The cells that show something else than before. */
  change(changes: readonly CellChange[]): ChangedResult[] {
    if (!this.isCurrent) this.calculateAll();
    meter.begin();
    this.readers.listAll();
    this.shown.begin();
    const due = this.dueAnyway();
    for (const change of changes) {
      const anchor = this.sheets[change.sheet]?.at(change.row, change.column)?.filledBy;
      const made = this.enter(change);
      for (const formula of [anchor, made]) if (formula !== undefined) due.add(formula);
      // What was typed is to be shown whatever stood there before.
      if (made !== undefined) this.shown.mark(made.cell, made.place);
    }
    for (const formula of this.readers.listAll()) this.settling.enter(formula);
    this.settling.workOut(due, changes.map(oneCell));
    return this.shown.results();
  }

  /** What a formula, or one that fills the cell, came to; `undefined` for a cell without a result. */
  at(sheet: number, row: number, column: number): CellValue | undefined {
    const cell = this.sheets[sheet]?.at(row, column);
    return cell && (cell.formula ?? cell.filledBy) !== undefined ? resultOf(cell) : undefined;
  }

  /** All results of a sheet. */
  resultsOn(sheet: number): SheetResults {
    const values = new Map<number, CellValue>();
    const spills = new Map<number, { readonly rows: number; readonly columns: number }>();
    this.sheets[sheet]?.cells.forValue((row, column, cell) => {
      const { formula, filledBy } = cell;
      if (formula === undefined && filledBy === undefined) return;
      values.set(placeOf(row, column), resultOf(cell));
      const area = formula?.fills;
      if (area === undefined) return;
      const { row: first, column: left, lastRow, lastColumn } = area;
      spills.set(placeOf(row, column), { rows: lastRow - first + 1, columns: lastColumn - left + 1 });
    });
    return { values, spills };
  }

  /** The cell as the engine holds it. */
  cellAt(sheet: number, row: number, column: number): EngineCell | undefined {
    return this.sheets[sheet]?.at(row, column);
  }

  /** The cells that the formula of a cell fills; `undefined` where it fills its own alone. */
  fillsOf(sheet: number, row: number, column: number): Area | undefined {
    return this.sheets[sheet]?.at(row, column)?.formula?.fills;
  }

  position(sheet: string): number | undefined {
    return this.positionOf.get(sheet);
  }

  /** Formulas that may come to something else though nothing that they read became another. */
  private dueAnyway(): Set<Formula> {
    const { always, "each day": daily } = this.renewing;
    return new Set(this.isAnotherDay() ? [...always, ...daily] : always);
  }

  /** True once a day, and at the first asking. */
  private isAnotherDay(): boolean {
    const before = this.day;
    this.day = new Date().toDateString();
    return this.day !== before;
  }

  private enterRows(sheet: number, rows: WorkbookInput["sheets"][number]["rows"]): void {
    rows.forEach((cells, row) => {
      cells.forEach((content, column) => {
        if (content !== undefined) this.enter({ sheet, row, column, content });
      });
    });
  }

  /** Puts a content into its cell. @returns The formula, where it is one. */
  private enter({ sheet, row, column, content }: CellChange): Formula | undefined {
    const cells = this.sheets[sheet];
    const cell = content === undefined ? cells?.at(row, column) : cells?.make(row, column);
    if (!cell) return undefined;
    if (cell.formula !== undefined) this.drop(cell.formula);
    if (content === undefined || "formula" in content) empty(cell);
    cell.filledBy = undefined;
    if (content === undefined) return undefined;
    if ("formula" in content) return this.enterFormula({ sheet, row, column }, cell, content);
    putConstant(cell, content);
    return undefined;
  }

  private enterFormula(place: ChangedResult, cell: EngineCell, content: FormulaInput): Formula {
    const { formula: text } = content;
    const pattern = this.patterns.of(text, place.sheet, place.row, place.column);
    const formula = new Formula(place, cell, text, pattern);
    cell.formula = formula;
    cell.f = text;
    if (pattern.renewal !== "never") this.renewing[pattern.renewal].add(formula);
    this.readers.addLater(formula);
    if (content.result !== undefined) this.enterResult(formula, content);
    return formula;
  }

  /** Takes over what a formula came to. An error is worked out again: its sentence is not known. */
  private enterResult(formula: Formula, { result, fills, filled }: FormulaInput): void {
    if (result === undefined || "error" in result) return;
    put(formula.cell, resultData(result));
    formula.state = "done";
    if (fills === undefined || filled === undefined) return;
    const { sheet } = formula.place;
    formula.wanted = { ...fills, sheet };
    formula.fills = formula.wanted;
    for (const [r, c] of placesOf(fills)) {
      const cell = this.sheets[sheet]?.make(r, c);
      if (cell === undefined || cell === formula.cell) continue;
      cell.filledBy = formula;
      put(cell, resultData(filled[r - fills.row]?.[c - fills.column] ?? { value: "" }));
    }
  }

  private drop(formula: Formula): void {
    this.readers.remove(formula);
    this.settling.drop();
    for (const formulas of Object.values(this.renewing)) formulas.delete(formula);
    this.shown.clear(formula, undefined, this.settling.now);
    formula.fills = undefined;
    formula.state = "done";
    formula.cell.formula = undefined;
    formula.cell.f = undefined as never;
  }
}
