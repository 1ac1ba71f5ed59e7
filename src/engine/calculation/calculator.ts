import { CellValueType, type ICellData, type IWorkbookData } from "@univerjs/core";
import {
  ErrorType,
  IDefinedNamesService,
  IFormulaCurrentConfigService,
  ISuperTableService,
} from "@univerjs/engine-formula";
import type { Rectangle } from "../../formula/addresses";
import { catalogue } from "../../functions/catalogue";
import type { WorksheetFunction } from "../../functions/declare";
import { meter } from "../budget";
import type { CellInput, CellValue, FormulaInput } from "../cell-value";
import { type Headless, startEngine } from "../headless";
import { resultOf } from "../results";
import { resultData, sheetId, type TableInput, UNIT, type WorkbookInput } from "../workbook-input";
import type { Area } from "./area";
import { empty, holdsPlace, isTaken, placesOf, put, putConstant, SheetCells } from "./cells";
import { Evaluator, type Watch } from "./evaluator";
import { type EngineCell, Formula } from "./formula";
import { answer } from "./own-call";
import { Patterns } from "./patterns";
import { Readers } from "./readers";

/** What a cell is to hold from now on; nothing empties it. */
export interface CellChange {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
  readonly content: CellInput | undefined;
}

/** A cell that shows something else than before. */
export interface ChangedResult {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

/** Formulas that keep filling other cells in turn are stopped after so many rounds. */
const MAX_ROUNDS = 40;
/** Cells of a range that are looked at before the formula that reads it is worked out; in larger ones only then. */
const MAX_LOOKED_AT = 4096;

/** A range of more cells is walked through once in a calculation, not again by each formula that reads it. */
const MAX_WALKED = 8;

const CYCLE: ICellData = { v: ErrorType.CYCLE, t: CellValueType.STRING };
const SPILL: ICellData = { v: ErrorType.SPILL, t: CellValueType.STRING };

/**
 * A workbook with what its formulas come to. It knows which formula reads which cells: after a change only what
 * depends on it is worked out, each formula once all that it reads is settled, and none whose cells stayed the same.
 */
export class Calculator {
  readonly engine: Headless;
  private readonly evaluator: Evaluator;
  private readonly patterns: Patterns;
  private readonly sheets: readonly SheetCells[];
  private readonly positionOf: ReadonlyMap<string, number>;
  private readonly volatile = new Set<Formula>();
  private readonly readers = new Readers();
  /** Formulas that are not entered among the readers yet: entering them is left until it is needed. */
  private unlisted: Formula[] = [];

  private run = 0;
  private clock = 0;
  private changed = new Map<EngineCell, ChangedResult>();
  /** Cells that formulas began or ceased to fill, with the time at which they did. */
  private refilled: { readonly area: Area; readonly at: number }[] = [];
  private isCurrent = false;
  /** Large ranges in which nothing is due any more: many formulas look a value up in the same one. */
  private readonly settled = new Set<string>();

  constructor(input: WorkbookInput, functions: readonly WorksheetFunction[] = catalogue) {
    this.sheets = input.sheets.map(({ name }, at) => new SheetCells(sheetId(at), name));
    this.positionOf = new Map(input.sheets.map(({ name }, at) => [name, at]));
    const { names = {}, tables = [] } = input;
    this.patterns = new Patterns({ sheets: this.sheets.map(({ name }) => name), names, tables }, functions);
    this.engine = startEngine(this.workbook(), functions);
    this.enterNames(names);
    for (const table of tables) this.enterTable(table);
    this.evaluator = new Evaluator(this.engine.injector, UNIT);
    this.engine.injector
      .get(IFormulaCurrentConfigService)
      .registerUnitData({ [UNIT]: this.unitData() } as never);
    input.sheets.forEach(({ rows }, at) => {
      this.enterRows(at, rows);
    });
  }

  dispose(): void {
    this.engine.dispose();
  }

  /**
   * Works out every formula.
   *
   * @param isTimed - Whether it ends after the seconds of the budget.
   * @returns The cells that show something else than before.
   * @throws BudgetEnd with a sentence where the workbook takes more than the budget.
   */
  calculateAll({ isTimed = false } = {}): ChangedResult[] {
    meter.begin(isTimed);
    const formulas = this.unlisted;
    for (const formula of formulas) formula.state = "due";
    this.settled.clear();
    this.evaluator.forgetRanges();
    this.changed = new Map();
    this.refilled = [];
    for (const formula of formulas) this.settle(formula);
    this.followRefilled();
    this.isCurrent = true;
    return [...this.changed.values()];
  }

  /**
   * Takes the results that the formulas came with and works out the others.
   *
   * @returns The cells that show something else, and all cells of formulas that fill several.
   */
  calculateRest(): ChangedResult[] {
    const formulas = this.unlisted;
    const rest = formulas.filter(
      ({ state, pattern }) => state === "due" || pattern.isVolatile || pattern.isMoving,
    );
    if (rest.length === formulas.length) return this.calculateAll();
    meter.begin(false);
    this.changed = new Map();
    this.refilled = [];
    for (const { fills } of formulas) if (fills !== undefined) this.noteAll(fills);
    this.isCurrent = true;
    this.listAll();
    this.workOut(rest, []);
    this.followRefilled();
    return [...this.changed.values()];
  }

  private noteAll({ sheet, ...area }: Area): void {
    for (const [row, column] of placesOf(area)) {
      const cell = this.sheets[sheet]?.at(row, column);
      if (cell) this.changed.set(cell, { sheet, row, column });
    }
  }

  /** Works out what depends on changed cells. @returns The cells that show something else than before. */
  change(changes: readonly CellChange[]): ChangedResult[] {
    if (!this.isCurrent) this.calculateAll();
    meter.begin(false);
    this.listAll();
    this.changed = new Map();
    this.refilled = [];
    const due = new Set<Formula>(this.volatile);
    for (const change of changes) {
      const anchor = this.sheets[change.sheet]?.at(change.row, change.column)?.filledBy;
      const made = this.enter(change);
      for (const formula of [anchor, made]) if (formula !== undefined) due.add(formula);
      // What was typed is to be shown whatever stood there before.
      if (made !== undefined) this.changed.set(made.cell, made.place);
    }
    this.listAll();
    this.workOut(
      due,
      changes.map(({ sheet, row, column }) => ({ sheet, row, column, lastRow: row, lastColumn: column })),
    );
    this.followRefilled();
    return [...this.changed.values()];
  }

  /** What a formula, or one that fills the cell, came to; `undefined` for a cell without a result. */
  at(sheet: number, row: number, column: number): CellValue | undefined {
    const cell = this.sheets[sheet]?.at(row, column);
    return cell && (cell.formula ?? cell.filledBy) !== undefined ? resultOf(cell) : undefined;
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

  private unitData() {
    return Object.fromEntries(
      this.sheets.map((sheet) => [
        sheet.id,
        {
          cellData: sheet.cells,
          get rowCount() {
            return sheet.rows;
          },
          get columnCount() {
            return sheet.columns;
          },
          rowData: {},
          columnData: {},
        },
      ]),
    );
  }

  private workbook(): Partial<IWorkbookData> {
    const sheets = this.sheets.map(
      ({ id, name, cells }) => [id, { id, name, cellData: cells.getMatrix() }] as const,
    );
    return { id: UNIT, sheetOrder: sheets.map(([id]) => id), sheets: Object.fromEntries(sheets) };
  }

  private enterRows(sheet: number, rows: WorkbookInput["sheets"][number]["rows"]): void {
    rows.forEach((cells, row) => {
      cells.forEach((content, column) => {
        if (content !== undefined) this.enter({ sheet, row, column, content });
      });
    });
  }

  private enterNames(names: Readonly<Record<string, string>>): void {
    const service = this.engine.injector.get(IDefinedNamesService);
    for (const [name, formulaOrRefString] of Object.entries(names))
      service.registerDefinedName(UNIT, { id: name, name, formulaOrRefString });
  }

  private enterTable(table: TableInput): void {
    const at = this.positionOf.get(table.sheet);
    if (at === undefined) throw new RangeError(`table ${table.name}: no sheet "${table.sheet}"`);
    this.engine.injector.get(ISuperTableService).registerTable(UNIT, table.name, {
      sheetId: sheetId(at),
      titleMap: new Map(table.headings.map((heading, position) => [heading, position])),
      range: {
        startRow: table.row,
        endRow: table.row + table.rows - 1,
        startColumn: table.column,
        endColumn: table.column + table.headings.length - 1,
      },
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
    if (pattern.isVolatile) this.volatile.add(formula);
    this.unlisted.push(formula);
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
    this.volatile.delete(formula);
    this.clearFilled(formula, undefined);
    formula.fills = undefined;
    formula.state = "done";
    formula.cell.formula = undefined;
    formula.cell.f = undefined as never;
  }

  private listAll(): void {
    for (const formula of this.unlisted) if (formula.cell.formula === formula) this.readers.add(formula);
    this.unlisted = [];
  }

  /** What a formula reads became other cells. */
  private relist(formula: Formula, change: () => void): void {
    const isListed = this.isCurrent || this.unlisted.length === 0;
    if (isListed) this.readers.remove(formula);
    change();
    if (isListed) this.readers.add(formula);
  }

  /** Works out formulas and all that depends on them and on changed cells, in the order of their dependence. */
  private workOut(roots: Iterable<Formula>, areas: readonly Area[]): void {
    this.settled.clear();
    this.evaluator.forgetRanges();
    this.run += 1;
    const affected: Formula[] = [];
    const reach = (formula: Formula, isDue: boolean) => {
      if (formula.run !== this.run) {
        formula.run = this.run;
        formula.open = 0;
        formula.isDue = false;
        formula.readers.length = 0;
        formula.state = "due";
        affected.push(formula);
      }
      formula.isDue ||= isDue;
    };
    for (const formula of roots) reach(formula, true);
    for (const area of areas) this.readers.each(area, (formula) => reach(formula, true));
    for (const formula of affected) {
      this.readers.each(formula.footprint, (reader) => {
        if (reader === formula || formula.readers.at(-1) === reader) return;
        reach(reader, false);
        formula.readers.push(reader);
        reader.open += 1;
      });
    }
    this.settleInOrder(affected);
  }

  private settleInOrder(affected: readonly Formula[]): void {
    const ready = affected.filter(({ open }) => open === 0);
    let settled = 0;
    for (const formula of ready) {
      settled += 1;
      const hasChanged = this.settleIfDue(formula);
      for (const reader of formula.readers) {
        reader.isDue ||= hasChanged;
        reader.open -= 1;
        if (reader.open === 0) ready.push(reader);
      }
    }
    if (settled === affected.length) return;
    // What is left reads itself round a ring, or seems to: it is asked for as it is read.
    for (const formula of affected) if (formula.open > 0) this.settle(formula);
  }

  private settleIfDue(formula: Formula): boolean {
    if (formula.state !== "due") return formula.hasChanged;
    if (!formula.isDue) {
      formula.state = "done";
      formula.hasChanged = false;
      return false;
    }
    this.settle(formula);
    return formula.hasChanged;
  }

  /** Works out a formula, before it those that it reads and that are still due. */
  private settle(first: Formula): void {
    const waiting: Formula[] = [first];
    for (let formula = waiting.at(-1); formula !== undefined; formula = waiting.at(-1)) {
      if (formula.state === "done") {
        waiting.pop();
        continue;
      }
      const before = formula.state === "due" ? this.dueBefore(formula) : [];
      formula.state = "waiting";
      if (before.length > 0) {
        waiting.push(...before);
        continue;
      }
      const missing = this.tryOut(formula);
      if (missing.length > 0) waiting.push(...missing);
      else waiting.pop();
    }
  }

  /** Formulas that are due and stand in the cells that a formula names. */
  private dueBefore(formula: Formula): Formula[] {
    const found: Formula[] = [];
    for (const area of formula.pattern.areasAt(formula.place.row)) {
      const part = this.sheets[area.sheet]?.filledPart(area);
      if (part === undefined) continue;
      const size = sizeOf(part);
      if (size <= MAX_WALKED) this.findDue({ ...part, sheet: area.sheet }, formula, found);
      else if (size <= MAX_LOOKED_AT) this.findDueOnce({ ...part, sheet: area.sheet }, formula, found);
    }
    return found;
  }

  private findDueOnce(area: Area, formula: Formula, found: Formula[]): void {
    const key = keyOf(area);
    if (this.settled.has(key)) return;
    const before = found.length;
    this.findDue(area, formula, found);
    if (found.length === before) this.settled.add(key);
  }

  private findDue(area: Area, formula: Formula, found: Formula[]): void {
    const sheet = this.sheets[area.sheet];
    for (let { row } = area; row <= area.lastRow; row += 1)
      for (let { column } = area; column <= area.lastColumn; column += 1) {
        const behind = formulaBehind(sheet?.at(row, column));
        if (behind?.state === "due" && behind !== formula) found.push(behind);
      }
  }

  /** Works a formula out. @returns Formulas that have to be worked out before it; with any, the result is void. */
  private tryOut(formula: Formula): readonly Formula[] {
    meter.check();
    const own = this.ownAnswer(formula);
    if (own !== undefined) return this.settleWith(formula, [[own]]);
    const sheet = this.sheets[formula.place.sheet] as SheetCells;
    const reading = new Reading(formula);
    if (formula.pattern.isMoving) this.evaluator.forgetRanges();
    const rows = this.evaluator.evaluate(formula, sheet, reading.watch);
    // What was read of cells that are still due must not be taken for what they come to.
    if (reading.missing.length > 0 || reading.isRing) this.evaluator.forgetRanges();
    if (reading.missing.length > 0) return reading.missing;
    if (formula.pattern.isMoving) this.noteSeen(formula, reading.seen);
    return this.settleWith(formula, reading.isRing ? [[CYCLE]] : rows);
  }

  private settleWith(formula: Formula, rows: readonly (readonly ICellData[])[]): readonly Formula[] {
    this.clock += 1;
    formula.workedOut = this.clock;
    formula.hasChanged = this.show(formula, rows);
    formula.state = "done";
    return [];
  }

  /** The value of a formula that only calls one of our functions, all that it reads being settled. */
  private ownAnswer({ pattern, place }: Formula): ICellData | undefined {
    if (pattern.own === undefined) return undefined;
    const cells = pattern
      .areasAt(place.row)
      .map(({ sheet, row, column }) => this.sheets[sheet]?.at(row, column));
    return cells.some((cell) => formulaBehind(cell)?.state === "waiting")
      ? undefined
      : answer(pattern.own, cells);
  }

  private noteSeen(formula: Formula, seen: ReadonlyMap<string, Rectangle>): void {
    const areas = [...seen].map(([id, area]) => ({
      ...area,
      sheet: this.sheets.findIndex((sheet) => sheet.id === id),
    }));
    this.relist(formula, () => {
      formula.seen = areas;
    });
  }

  /** Writes what a formula came to into its cells. @returns True where one of them shows something else. */
  private show(formula: Formula, rows: readonly (readonly ICellData[])[]): boolean {
    const { sheet, row, column } = formula.place;
    const [height, width] = [rows.length, rows[0]?.length ?? 0];
    const isOne = height <= 1 && width <= 1;
    const wanted = { sheet, row, column, lastRow: row + height - 1, lastColumn: column + width - 1 };
    const area = isOne ? undefined : wanted;
    this.noteWanted(formula, area);
    const isBlocked = area !== undefined && this.isBlocked(formula, area);
    const fills = isBlocked ? undefined : area;
    const isCleared = this.clearFilled(formula, fills);
    formula.fills = fills;
    const isOther = this.write(
      formula.place,
      formula.cell,
      isBlocked ? SPILL : (rows[0]?.[0] ?? { v: null }),
    );
    const isFilled = fills !== undefined && this.fill(formula, fills, rows);
    return isFilled || isOther || isCleared;
  }

  /** A formula reads what stands in the cells that it would fill: once they are free it fills them. */
  private noteWanted(formula: Formula, area: Area | undefined): void {
    if (JSON.stringify(area) === JSON.stringify(formula.wanted)) return;
    this.relist(formula, () => {
      formula.wanted = area;
    });
  }

  private isBlocked(formula: Formula, area: Area): boolean {
    const sheet = this.sheets[area.sheet] as SheetCells;
    if (area.lastRow >= sheet.rows || area.lastColumn >= sheet.columns) return true;
    for (const [r, c] of placesOf(area)) {
      const cell = sheet.at(r, c);
      if (cell !== formula.cell && isTaken(cell, formula)) return true;
    }
    return false;
  }

  private fill(formula: Formula, area: Area, rows: readonly (readonly ICellData[])[]): boolean {
    const sheet = this.sheets[area.sheet] as SheetCells;
    let isOther = false;
    for (const [r, c] of placesOf(area)) {
      const cell = sheet.make(r, c);
      if (cell === formula.cell) continue;
      const isNew = cell.filledBy === undefined;
      cell.filledBy = formula;
      const place = { sheet: area.sheet, row: r, column: c };
      const isChanged = this.write(place, cell, rows[r - area.row]?.[c - area.column] ?? { v: null });
      isOther ||= isChanged || isNew;
      if (isNew) this.refilled.push({ area: { ...place, lastRow: r, lastColumn: c }, at: this.clock });
    }
    return isOther;
  }

  /** Empties the cells that a formula fills no longer. */
  private clearFilled(formula: Formula, kept: Area | undefined): boolean {
    const { fills, cell: own } = formula;
    if (fills === undefined) return false;
    const sheet = this.sheets[fills.sheet] as SheetCells;
    let isOther = false;
    for (const [r, c] of placesOf(fills)) {
      const cell = sheet.at(r, c);
      if (cell === undefined || cell === own || holdsPlace(kept, r, c)) continue;
      if (cell.filledBy !== formula || !empty(cell)) continue;
      isOther = true;
      const place = { sheet: fills.sheet, row: r, column: c };
      this.changed.set(cell, place);
      this.refilled.push({ area: { ...place, lastRow: r, lastColumn: c }, at: this.clock });
    }
    return isOther;
  }

  private write(place: ChangedResult, cell: EngineCell, content: ICellData): boolean {
    if (!put(cell, content)) return false;
    const { sheet, row, column } = place;
    this.changed.set(cell, { sheet, row, column });
    return true;
  }

  /** Works out again what read cells before a formula began or ceased to fill them. */
  private followRefilled(): void {
    for (let round = 0; this.refilled.length > 0 && round < MAX_ROUNDS; round += 1) {
      this.listAll();
      const refilled = this.refilled;
      this.refilled = [];
      const late = new Set<Formula>();
      for (const { area, at } of refilled)
        this.readers.each(area, (formula) => {
          if (formula.workedOut < at && !this.fillsItself(formula, area)) late.add(formula);
        });
      if (late.size > 0) this.workOut(late, []);
    }
  }

  private fillsItself(formula: Formula, { sheet, row, column }: Area): boolean {
    return this.sheets[sheet]?.at(row, column)?.filledBy === formula;
  }
}

const keyOf = ({ sheet, row, column, lastRow, lastColumn }: Area) =>
  `${sheet},${row},${column},${lastRow},${lastColumn}`;

const sizeOf = ({ row, column, lastRow, lastColumn }: Rectangle) =>
  (lastRow - row + 1) * (lastColumn - column + 1);

/** The formula that a cell shows the result of. */
const formulaBehind = (cell: EngineCell | undefined) => cell?.formula ?? cell?.filledBy;

/** What a formula reads while it is worked out. */
class Reading {
  /** Formulas that it reads and that are due. */
  readonly missing: Formula[] = [];
  /** True where it reads itself, by way of others or at once. */
  isRing = false;
  /** The part of each sheet that it reads, by id. */
  readonly seen = new Map<string, Rectangle>();

  constructor(private readonly formula: Formula) {}

  readonly watch: Watch = (id, row, column, cell) => {
    const behind = formulaBehind(cell);
    if (behind?.state === "due") this.missing.push(behind);
    // The cells that it fills itself are no ring until their own formula is read.
    else if (behind?.state === "waiting") this.isRing ||= behind !== this.formula || cell?.formula === behind;
    if (this.formula.pattern.isMoving) widen(this.seen, id, row, column);
  };
}

function widen(seen: Map<string, Rectangle>, id: string, row: number, column: number): void {
  const known = seen.get(id);
  seen.set(id, {
    row: Math.min(row, known?.row ?? row),
    column: Math.min(column, known?.column ?? column),
    lastRow: Math.max(row, known?.lastRow ?? row),
    lastColumn: Math.max(column, known?.lastColumn ?? column),
  });
}
