import { SHEET_ROWS } from "../../formula/addresses";
import type { SheetCells } from "./cells";
import type { Formula } from "./formula";
import type { Readers } from "./readers";
import { formulaBehind } from "./reading";

/** Cells of a column from one row on, as far as they were looked at, with the height of the highest formula in them. */
interface Stretch {
  next: number;
  height: number;
}

/** Cells of one column that a formula reads. */
interface Part {
  readonly sheet: SheetCells;
  readonly column: number;
  readonly row: number;
  readonly lastRow: number;
}

/** A formula whose height is being found, with the part of what it reads that is looked at. */
interface Visit {
  readonly formula: Formula;
  readonly parts: readonly Part[];
  at: number;
  height: number;
}

/** What stands for the height of a formula that is not known, or is being found. */
const [UNKNOWN, FINDING] = [0, -1];

/**
 * How many formulas lie one behind the other below a formula: 1 for one that names constants alone, for any other one
 * more than the highest that it names. Worked out in the order of their heights, formulas come after all they read.
 */
export class Heights {
  private readonly stretches = new Map<SheetCells, Map<number, Stretch>>();
  private isReady = false;
  private hasRing = false;

  constructor(
    private readonly sheets: readonly SheetCells[],
    private readonly readers: Readers,
  ) {}

  /**
   * False where formulas name one another in a ring, though their branches may never take it: no order suits all then,
   * and a formula may be worked out before one that it reads.
   */
  get isExact(): boolean {
    return !this.hasRing;
  }

  /** Finds the heights of all formulas that are listed with what they read, unless they are known. */
  prepare(): void {
    if (this.isReady) return;
    for (const formula of this.readers.all()) this.find(formula);
    this.stretches.clear();
    this.isReady = true;
  }

  /** A formula reads or fills other cells than before: it, and what reads it, may have to come later. */
  enter(formula: Formula): void {
    if (!this.isReady) return;
    formula.height = UNKNOWN;
    const found = this.find(formula);
    this.stretches.clear();
    for (const one of found) this.lift(one);
  }

  /** A formula is gone, and a ring may have gone with it. */
  drop(): void {
    if (!this.hasRing) return;
    for (const formula of this.readers.all()) formula.height = UNKNOWN;
    this.hasRing = false;
    this.isReady = false;
  }

  /** Lifts what reads a formula above it. */
  private lift(first: Formula): void {
    const lifted = [first];
    for (const formula of lifted)
      this.readers.each(formula.footprint, (reader) => {
        if (reader === formula || reader.height > formula.height || reader.height <= UNKNOWN) return;
        this.hasRing ||= reader === first;
        // Round a ring it would go on for ever.
        if (this.hasRing) return;
        reader.height = formula.height + 1;
        lifted.push(reader);
      });
  }

  /**
   * Walks down to what is known, with a list of its own instead of calls: columns are deeper than calls may be.
   *
   * @returns The formulas whose heights were found.
   */
  private find(first: Formula): readonly Formula[] {
    if (first.height !== UNKNOWN) return [];
    const found: Formula[] = [];
    const path = [this.visit(first)];
    for (let visit = path.at(-1); visit !== undefined; visit = path.at(-1)) {
      const below = this.nextUnknown(visit);
      if (below === undefined) {
        visit.formula.height = visit.height + 1;
        found.push(visit.formula);
        path.pop();
      } else path.push(this.visit(below));
    }
    return found;
  }

  private visit(formula: Formula): Visit {
    formula.height = FINDING;
    return { formula, parts: formula.reads.flatMap((area) => this.partsOf(area)), at: 0, height: 0 };
  }

  private partsOf(area: Formula["footprint"]): Part | Part[] {
    const sheet = this.sheets[area.sheet];
    if (sheet === undefined) return [];
    const { row, column, lastRow, lastColumn } = sheet.filledPart(area);
    if (column === lastColumn) return { sheet, column, row, lastRow };
    const width = Math.max(0, lastColumn - column + 1);
    return Array.from({ length: width }, (_, at) => ({ sheet, column: column + at, row, lastRow }));
  }

  /** Looks on through what a formula reads. @returns The next formula whose height has to be found before. */
  private nextUnknown(visit: Visit): Formula | undefined {
    for (let part = visit.parts[visit.at]; part !== undefined; part = visit.parts[visit.at]) {
      // Ranges that begin in one cell are walked through once, however many formulas read on down the column.
      const stretch = part.row === part.lastRow ? { next: part.row, height: 0 } : this.stretchOf(part);
      const unknown = this.walk(stretch, part, visit.formula);
      if (unknown !== undefined) return unknown;
      visit.height = Math.max(visit.height, stretch.height);
      visit.at += 1;
    }
    return undefined;
  }

  private stretchOf({ sheet, column, row }: Part): Stretch {
    const key = column * SHEET_ROWS + row;
    const known = this.stretches.get(sheet) ?? new Map<number, Stretch>();
    const stretch = known.get(key) ?? { next: row, height: 0 };
    this.stretches.set(sheet, known.set(key, stretch));
    return stretch;
  }

  private walk(stretch: Stretch, { sheet, column, lastRow }: Part, own: Formula): Formula | undefined {
    for (; stretch.next <= lastRow; stretch.next += 1) {
      const behind = formulaBehind(sheet.at(stretch.next, column));
      if (behind === undefined || behind === own) continue;
      if (behind.height === UNKNOWN) return behind;
      // What is met again while its own height is being found names itself, by way of others.
      this.hasRing ||= behind.height === FINDING;
      stretch.height = Math.max(stretch.height, behind.height);
    }
    return undefined;
  }
}
