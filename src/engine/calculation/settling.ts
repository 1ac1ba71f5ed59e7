import { CellValueType, type ICellData } from "@univerjs/core";
import { ErrorType } from "@univerjs/engine-formula";
import type { Rectangle } from "../../formula/addresses";
import { meter } from "../budget";
import type { Area } from "./area";
import type { SheetCells } from "./cells";
import type { Evaluator } from "./evaluator";
import type { Formula } from "./formula";
import { answer } from "./own-call";
import type { Readers } from "./readers";
import { formulaBehind, Reading } from "./reading";
import { areaFor, type ShownCells } from "./shown-cells";

/** Formulas that keep filling other cells in turn are stopped after so many rounds. */
const MAX_ROUNDS = 40;
/** Cells of a range that are looked at before the formula that reads it is worked out; in larger ones only then. */
const MAX_LOOKED_AT = 4096;
/** A range of more cells is walked through once in a calculation, not again by each formula that reads it. */
const MAX_WALKED = 8;

const CYCLE: ICellData = { v: ErrorType.CYCLE, t: CellValueType.STRING };

const keyOf = ({ sheet, row, column, lastRow, lastColumn }: Area) =>
  `${sheet},${row},${column},${lastRow},${lastColumn}`;

const sizeOf = ({ row, column, lastRow, lastColumn }: Rectangle) =>
  (lastRow - row + 1) * (lastColumn - column + 1);

/** Functions that work out one of their branches alone. */
const BRANCHING = /\bIF(?:ERROR)?\s*\(/i;
/** So often a formula with branches may turn to another one while what it reads comes to its values. */
const MAX_TURNS = 8;

/**
 * A formula with branches that was tried before its condition had its value may have read the wrong one: whoever reads
 * it in turn asks for it once more, and only what it reads then makes a ring.
 */
function mayTurn(formula: Formula, tries: Map<Formula, number>): boolean {
  if (!BRANCHING.test(formula.text)) return false;
  const count = (tries.get(formula) ?? 0) + 1;
  tries.set(formula, count);
  return count <= MAX_TURNS;
}

/** Works formulas out in the order in which they depend on one another. */
export class Settling {
  private run = 0;
  private clock = 0;
  /** Large ranges in which nothing is due any more: many formulas look a value up in the same one. */
  private readonly settled = new Set<string>();

  constructor(
    private readonly sheets: readonly SheetCells[],
    private readonly readers: Readers,
    private readonly shown: ShownCells,
    private readonly evaluator: Evaluator,
  ) {}

  /** Counted up by each formula that is worked out. */
  get now(): number {
    return this.clock;
  }

  /** Works out every one of some formulas, whatever they came to before. */
  all(formulas: readonly Formula[]): void {
    for (const formula of formulas) formula.state = "due";
    this.settled.clear();
    this.evaluator.forgetRanges();
    for (const formula of formulas) this.settle(formula);
    this.followRefilled();
  }

  /** Works out formulas and all that depends on them and on changed cells, in the order of their dependence. */
  workOut(roots: Iterable<Formula>, areas: readonly Area[]): void {
    this.workOutOnce(roots, areas);
    this.followRefilled();
  }

  private workOutOnce(roots: Iterable<Formula>, areas: readonly Area[]): void {
    this.settled.clear();
    this.evaluator.forgetRanges();
    this.run += 1;
    const affected: Formula[] = [];
    const reach = (formula: Formula, isDue: boolean) => {
      if (formula.run !== this.run) {
        formula.run = this.run;
        formula.open = 0;
        formula.isDue = false;
        formula.forgetReaders();
        formula.state = "due";
        affected.push(formula);
      }
      formula.isDue ||= isDue;
    };
    for (const formula of roots) reach(formula, true);
    const due = (formula: Formula) => reach(formula, true);
    for (const area of areas) this.eachThatRead(area, due);
    for (const formula of affected) {
      this.eachThatRead(formula.footprint, (reader) => {
        if (reader === formula || formula.readers.at(-1) === reader) return;
        reach(reader, false);
        formula.addReader(reader);
        reader.open += 1;
      });
    }
    this.settleInOrder(affected);
  }

  /**
   * Calls back with each formula that read one of some cells; with some of them more than once. One that only names
   * them, in a branch that it did not take, comes to the same until something that it did read is another.
   */
  private eachThatRead(area: Area, visit: (formula: Formula) => void): void {
    this.readers.each(area, (formula) => {
      if (formula.mayHaveRead(area)) visit(formula);
    });
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
    const stack: Formula[] = [first];
    const tries = new Map<Formula, number>();
    for (let formula = stack.at(-1); formula !== undefined; formula = stack.at(-1)) {
      const before = formula.state === "done" ? [] : this.tryOrList(formula, tries);
      if (before.length === 0) stack.pop();
      else stack.push(...before);
    }
  }

  /** Works a formula out. @returns What comes before it where that is due, the first that it needs last. */
  private tryOrList(formula: Formula, tries: Map<Formula, number>): readonly Formula[] {
    const before = formula.state === "due" ? this.dueBefore(formula) : [];
    if (before.length > 0) {
      formula.state = "listed";
      return before;
    }
    formula.state = "waiting";
    const missing = this.tryOut(formula);
    if (missing.length > 0 && mayTurn(formula, tries)) formula.state = "listed";
    // What it reads first, such as the condition of IF, comes to its value first: the branch may be another then.
    return [...missing].reverse();
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
    formula.read = undefined;
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
    else if (!reading.isRing) formula.read = this.evaluator.lastRead;
    return this.settleWith(formula, reading.isRing ? [[CYCLE]] : rows);
  }

  private settleWith(formula: Formula, rows: readonly (readonly ICellData[])[]): readonly Formula[] {
    this.clock += 1;
    formula.workedOut = this.clock;
    const area = areaFor(formula, rows);
    this.noteWanted(formula, area);
    formula.hasChanged = this.shown.show(formula, area, rows, this.clock);
    formula.state = "done";
    return [];
  }

  /** The value of a formula that only calls one of our functions, all that it reads being settled. */
  private ownAnswer({ pattern, place }: Formula): ICellData | undefined {
    if (pattern.own === undefined) return undefined;
    const cells = pattern
      .areasAt(place.row)
      .map(({ sheet, row, column }) => this.sheets[sheet]?.at(row, column));
    return cells.some((cell) => (formulaBehind(cell)?.state ?? "done") !== "done")
      ? undefined
      : answer(pattern.own, cells);
  }

  private noteSeen(formula: Formula, seen: ReadonlyMap<string, Rectangle>): void {
    const areas = [...seen].map(([id, area]) => ({
      ...area,
      sheet: this.sheets.findIndex((sheet) => sheet.id === id),
    }));
    this.readers.relist(formula, () => {
      formula.seen = areas;
    });
  }

  /** A formula reads what stands in the cells that it would fill: once they are free it fills them. */
  private noteWanted(formula: Formula, area: Area | undefined): void {
    if (JSON.stringify(area) === JSON.stringify(formula.wanted)) return;
    this.readers.relist(formula, () => {
      formula.wanted = area;
    });
  }

  /** Works out again what read cells before a formula began or ceased to fill them. */
  private followRefilled(): void {
    let refilled = this.shown.takeRefilled();
    for (let round = 0; refilled.length > 0 && round < MAX_ROUNDS; round += 1) {
      this.readers.listAll();
      const late = new Set<Formula>();
      for (const { area, at } of refilled)
        this.readers.each(area, (formula) => {
          if (formula.workedOut < at && !this.fillsItself(formula, area)) late.add(formula);
        });
      if (late.size > 0) this.workOutOnce(late, []);
      refilled = this.shown.takeRefilled();
    }
  }

  private fillsItself(formula: Formula, { sheet, row, column }: Area): boolean {
    return this.sheets[sheet]?.at(row, column)?.filledBy === formula;
  }
}
