import type { Rectangle } from "../../formula/addresses";
import type { Watch } from "./evaluator";
import type { EngineCell, Formula } from "./formula";

/** The formula that a cell shows the result of. */
export const formulaBehind = (cell: EngineCell | undefined) => cell?.formula ?? cell?.filledBy;

/** What a formula reads while it is worked out. */
export class Reading {
  /** Formulas that it reads and that are due. */
  readonly missing: Formula[] = [];
  /** True where it reads itself, by way of others or at once. */
  isRing = false;
  /** The part of each sheet that it reads, by id. */
  readonly seen = new Map<string, Rectangle>();

  constructor(private readonly formula: Formula) {}

  readonly watch: Watch = (id, row, column, cell) => {
    const behind = formulaBehind(cell);
    if (behind?.state === "due" || behind?.state === "listed") this.missing.push(behind);
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
