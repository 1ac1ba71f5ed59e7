import type { ICellData } from "@univerjs/core";
import { type Area, meet } from "./area";
import type { Pattern } from "./patterns";
import type { ReadCells } from "./read-cells";

/** A cell as the engine reads it, with what is known of the formulas behind it. */
export interface EngineCell extends ICellData {
  /** The formula that stands in the cell. */
  formula?: Formula | undefined;
  /** The formula of another cell that fills this one. */
  filledBy?: Formula | undefined;
}

/**
 * How far a formula is within a calculation. `listed`: what its text names comes first; it was not tried yet, and need
 * not read all of that. `waiting`: it was tried, and waits for what it did read.
 */
export type State = "done" | "due" | "listed" | "waiting";

/** Most formulas read no cells but those that they name: they share an empty list. */
const NONE: readonly never[] = [];

/** A formula in its place. */
export class Formula {
  state: State = "due";
  /** Cells that it fills, its own included; `undefined` for one that fills its own alone. */
  fills: Area | undefined;
  /** Cells that it would fill if nothing stood in them. */
  wanted: Area | undefined;
  /** What it was last seen to read, for one whose cells move with values (OFFSET, INDIRECT). */
  seen: readonly Area[] = NONE;
  /** What it read of the cells that its text names when it was worked out; nothing where it may be any of them. */
  read: ReadCells | undefined;

  /** The calculation in which it was due last. */
  run = 0;
  /** How many formulas lie one behind the other below it, itself counted; 0 where that is not known. */
  height = 0;
  /** When it was worked out last, counted up by each formula. */
  workedOut = 0;

  constructor(
    readonly place: { readonly sheet: number; readonly row: number; readonly column: number },
    readonly cell: EngineCell,
    readonly text: string,
    readonly pattern: Pattern,
  ) {}

  /** Cells that it reads. */
  get reads(): readonly Area[] {
    const areas = this.pattern.areasAt(this.place.row);
    const moving = this.pattern.isMoving ? this.seen : [];
    return this.wanted === undefined ? [...areas, ...moving] : [...areas, ...moving, this.wanted];
  }

  /** False where it read none of some cells, named though they are: the branch was not taken, or others were chosen. */
  mayHaveRead(area: Area): boolean {
    if (this.read === undefined) return true;
    if (this.pattern.mayHaveRead(area, this.place.row, this.read)) return true;
    return this.wanted !== undefined && meet(this.wanted, area);
  }

  /** Cells that show what it comes to. */
  get footprint(): Area {
    const { sheet, row, column } = this.place;
    return this.fills ?? { sheet, row, column, lastRow: row, lastColumn: column };
  }
}
