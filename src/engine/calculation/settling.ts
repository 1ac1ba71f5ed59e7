import { CellValueType, type ICellData } from "@univerjs/core";
import { ErrorType } from "@univerjs/engine-formula";
import type { Rectangle } from "../../formula/addresses";
import { meter } from "../budget";
import type { Area } from "./area";
import type { SheetCells } from "./cells";
import { DueBefore } from "./due-before";
import { DueFormulas } from "./due-formulas";
import type { Evaluator } from "./evaluator";
import type { Formula } from "./formula";
import { Heights } from "./heights";
import { answer } from "./own-call";
import type { Readers } from "./readers";
import { formulaBehind, Reading } from "./reading";
import { areaFor, type ChangedResult, oneCell, type ShownCells } from "./shown-cells";

/** Formulas that keep filling other cells in turn are stopped after so many rounds. */
const MAX_ROUNDS = 40;
const CYCLE: ICellData = { v: ErrorType.CYCLE, t: CellValueType.STRING };

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
  private readonly heights: Heights;
  private readonly dueBefore: DueBefore;
  /** What is due, while the dependents of changed cells are found as they change. */
  private due: DueFormulas | undefined;
  /** Formulas that were worked out before something that they read became another. */
  private early = new Set<Formula>();

  constructor(
    private readonly sheets: readonly SheetCells[],
    private readonly readers: Readers,
    private readonly shown: ShownCells,
    private readonly evaluator: Evaluator,
  ) {
    this.heights = new Heights(sheets, readers);
    this.dueBefore = new DueBefore(sheets);
  }

  /** Counted up by each formula that is worked out. */
  get now(): number {
    return this.clock;
  }

  /** Finds the order of all formulas, so that the first change need not. */
  prepare(): void {
    this.heights.prepare();
  }

  /** Notes a formula that was entered and listed with what it reads. */
  enter(formula: Formula): void {
    this.heights.enter(formula);
  }

  /** Notes a formula that is gone. */
  drop(): void {
    this.heights.drop();
  }

  /** Works out every one of some formulas, whatever they came to before. */
  all(formulas: readonly Formula[]): void {
    this.begin();
    this.settleEach(formulas);
    this.followRefilled();
  }

  /** Works out formulas and all that depends on them and on changed cells, in the order of their dependence. */
  workOut(roots: Iterable<Formula>, areas: readonly Area[]): void {
    this.heights.prepare();
    this.workOutOnce(roots, areas);
    this.followRefilled();
  }

  private begin(): void {
    this.run += 1;
    this.dueBefore.forget();
    this.evaluator.forgetRanges();
  }

  private settleEach(formulas: Iterable<Formula>): void {
    for (const formula of formulas) formula.state = "due";
    for (const formula of formulas) this.settle(formula);
  }

  private workOutOnce(roots: Iterable<Formula>, areas: readonly Area[]): void {
    this.begin();
    const due = new DueFormulas();
    this.due = due;
    for (const formula of roots) this.noteDue(formula);
    for (const area of areas) this.noteReaders(area);
    for (let formula = due.next(); formula !== undefined; formula = due.next()) this.settle(formula);
    this.due = undefined;
    this.workOutAgain();
  }

  /** A formula is due, unless it is already; one that was worked out in this calculation came too early. */
  private noteDue(formula: Formula): void {
    if (formula.run !== this.run) {
      formula.run = this.run;
      formula.state = "due";
      this.due?.add(formula);
    } else if (formula.state === "done") this.early.add(formula);
  }

  /**
   * Notes each formula that read one of some cells. One that only names them, in a branch that it did not take, comes
   * to the same until something that it did read is another.
   */
  private noteReaders(area: Area, own?: Formula): void {
    this.readers.each(area, (formula) => {
      const isNoted = formula.run === this.run && formula.state !== "done";
      if (!isNoted && formula !== own && formula.mayHaveRead(area)) this.noteDue(formula);
    });
  }

  /**
   * Works out formulas that came too early, and all that may have read them: round a ring, in which no formula comes
   * before the others, each is asked for as it is read.
   */
  private workOutAgain(): void {
    if (this.early.size === 0) return;
    const again = this.early;
    this.early = new Set();
    for (const formula of again)
      this.readers.each(formula.footprint, (reader) => {
        if (reader.mayHaveRead(formula.footprint)) again.add(reader);
      });
    this.begin();
    this.settleEach(again);
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
    // In the order of heights nothing is due any more of what a formula names.
    const before = formula.state === "due" && this.due === undefined ? this.dueBefore.of(formula) : [];
    if (before.length > 0) {
      formula.state = "listed";
      return before;
    }
    formula.state = "waiting";
    const missing = this.tryOut(formula);
    if (missing.length === 0 || !mayTurn(formula, tries)) return [...missing].reverse();
    formula.state = "listed";
    // What it reads first, such as the condition of IF, comes to its value alone: the branch may be another then.
    return missing.slice(0, 1);
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
    const changed = this.shown.show(formula, area, rows, this.clock);
    formula.state = "done";
    if (this.due !== undefined && changed.length > 0) this.follow(formula, changed);
    return [];
  }

  /** Notes what read the cells that a formula changed. */
  private follow(formula: Formula, changed: readonly ChangedResult[]): void {
    formula.run = this.run;
    const before = this.early.size;
    for (const place of changed) this.noteReaders(oneCell(place), formula);
    // What is remembered of ranges may hold what this formula came to before.
    if (this.early.size > before || !this.heights.isExact) this.evaluator.forgetRanges();
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
    this.heights.enter(formula);
  }

  /** A formula reads what stands in the cells that it would fill: once they are free it fills them. */
  private noteWanted(formula: Formula, area: Area | undefined): void {
    if (JSON.stringify(area) === JSON.stringify(formula.wanted)) return;
    this.readers.relist(formula, () => {
      formula.wanted = area;
    });
    this.heights.enter(formula);
    this.evaluator.forgetRanges();
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
