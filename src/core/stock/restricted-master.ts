import type { CuttingTask, Pattern } from "./cutting-task";

/** A column of the master problem: a pattern, or a slack that takes up a difference. */
interface Column {
  readonly cost: number;
  /** Rows with a coefficient: the kinds in their order, then the stocks that are limited. */
  readonly rows: readonly number[];
  readonly entries: readonly number[];
  readonly pattern: Pattern | undefined;
  /** Stands for pieces that no bar is there for; costs more than any plan could. */
  readonly isShortage: boolean;
}

const TINY = 1e-9;
/** A missing piece costs this many of the dearest bars: far more than exchanging bars can ever save. */
const SHORTAGE = 1e5;

/** Steps after which the duals are worked out anew. */
const FRESH_AFTER = 60;

function dualValueOf({ rows, entries }: Column, duals: Float64Array): number {
  let worth = 0;
  for (let at = 0; at < rows.length; at += 1) {
    worth += (entries[at] as number) * (duals[rows[at] as number] as number);
  }
  return worth;
}

/**
 * The relaxed cutting problem (fractions of a bar allowed) by the revised simplex method with an
 * explicit inverse: least cost such that every kind is cut at least as often as wanted and no stock is
 * used beyond what is there.
 */
export class RestrictedMaster {
  private readonly task: CuttingTask;
  private readonly limited: readonly number[];
  private readonly rows: number;
  private readonly inverse: Float64Array;
  private readonly level: Float64Array;
  private readonly basis: Column[];
  /** The duals of the present basis, once they were asked for. */
  private heldDuals: Float64Array | undefined;
  private pivots = 0;

  constructor(task: CuttingTask) {
    this.task = task;
    this.limited = task.stocks.flatMap(({ available }, stock) => (Number.isFinite(available) ? [stock] : []));
    this.rows = task.kinds.length + this.limited.length;
    this.inverse = new Float64Array(this.rows * this.rows);
    this.level = new Float64Array(this.rows);
    this.basis = [];
    this.start();
  }

  /** Each kind from bars of its own where bars can be bought, else short; each limited stock untouched. */
  private start(): void {
    const { kinds, stocks } = this.task;
    kinds.forEach((kind, row) => {
      const column = this.ownBars(row) ?? this.missing(row);
      const [entry = 1] = column.entries;
      this.basis.push(column);
      this.inverse[row * this.rows + row] = 1 / entry;
      this.level[row] = kind.demand / entry;
    });
    this.limited.forEach((stock, index) => {
      const row = kinds.length + index;
      this.basis.push(this.unit(row, 1));
      this.inverse[row * this.rows + row] = 1;
      this.level[row] = stocks[stock]?.available ?? 0;
    });
  }

  private ownBars(row: number): Column | undefined {
    const { kinds, stocks, width } = this.task;
    const { id, size, demand } = kinds[row] as { id: number; size: number; demand: number };
    let best: Column | undefined;
    let least = Number.POSITIVE_INFINITY;
    stocks.forEach(({ room, cost, available }, stock) => {
      const count = Math.min(demand, Math.floor(room / size));
      if (Number.isFinite(available) || count < 1 || cost / count >= least) return;
      least = cost / count;
      const counts = new Array<number>(width).fill(0);
      counts[id] = count;
      best = this.columnOf({ stock, counts });
    });
    return best;
  }

  private missing(row: number): Column {
    const dearest = Math.max(...this.task.stocks.map(({ cost }) => cost), 1);
    return { ...this.unit(row, 1), cost: SHORTAGE * dearest, isShortage: true };
  }

  private unit(row: number, value: number): Column {
    return { cost: 0, rows: [row], entries: [value], pattern: undefined, isShortage: false };
  }

  private columnOf(pattern: Pattern): Column {
    const { kinds, stocks } = this.task;
    const rows: number[] = [];
    const entries: number[] = [];
    kinds.forEach(({ id }, row) => {
      const count = pattern.counts[id] ?? 0;
      if (count === 0) return;
      rows.push(row);
      entries.push(count);
    });
    const limited = this.limited.indexOf(pattern.stock);
    if (limited >= 0) {
      rows.push(kinds.length + limited);
      entries.push(1);
    }
    return { cost: stocks[pattern.stock]?.cost ?? 0, rows, entries, pattern, isShortage: false };
  }

  /** Worth of one more piece of each kind, then of one more bar of each limited stock (0 or below). */
  duals(): Float64Array {
    this.heldDuals ??= this.freshDuals();
    return this.heldDuals;
  }

  private freshDuals(): Float64Array {
    const { rows, inverse, basis } = this;
    const duals = new Float64Array(rows);
    basis.forEach(({ cost }, row) => {
      if (cost === 0) return;
      const at = row * rows;
      for (let column = 0; column < rows; column += 1) {
        duals[column] = (duals[column] as number) + cost * (inverse[at + column] as number);
      }
    });
    this.pivots = 0;
    return duals;
  }

  /** The duals after a column came into the basis, from those before; worked out anew before rounding adds up. */
  private moveDuals(duals: Float64Array, gain: number, leaving: number): void {
    const { rows, inverse } = this;
    this.pivots += 1;
    if (this.pivots > FRESH_AFTER) {
      this.heldDuals = undefined;
      return;
    }
    const moved = Float64Array.from(duals);
    for (let k = 0; k < rows; k += 1) {
      moved[k] = (moved[k] as number) + gain * (inverse[leaving * rows + k] as number);
    }
    this.heldDuals = moved;
  }

  /** Lets a slack in where a worth has the wrong sign. */
  enterSlack(duals: Float64Array): boolean {
    const { kinds } = this.task;
    for (let row = 0; row < this.rows; row += 1) {
      const worth = duals[row] as number;
      const sign = row < kinds.length ? -1 : 1;
      if (worth * sign > TINY) return this.enter(this.unit(row, sign));
    }
    return false;
  }

  enterPattern(pattern: Pattern): boolean {
    return this.enter(this.columnOf(pattern));
  }

  /** True where a pattern would lower the cost. */
  wouldHelp(pattern: Pattern, duals: Float64Array): boolean {
    const column = this.columnOf(pattern);
    const { cost } = column;
    const worth = dualValueOf(column, duals);
    return worth > cost + TINY * Math.max(1, cost);
  }

  private enter(column: Column): boolean {
    const change = this.solved(column);
    const leaving = this.leavingRow(change);
    if (leaving < 0) return false;
    const duals = this.duals();
    const gain = column.cost - dualValueOf(column, duals);
    this.pivot(leaving, change);
    this.basis[leaving] = column;
    this.moveDuals(duals, gain, leaving);
    return true;
  }

  private solved(column: Column): Float64Array {
    const { rows, inverse } = this;
    const change = new Float64Array(rows);
    column.rows.forEach((k, at) => {
      const entry = column.entries[at] as number;
      for (let row = 0; row < rows; row += 1) {
        change[row] = (change[row] as number) + entry * (inverse[row * rows + k] as number);
      }
    });
    return change;
  }

  private leavingRow(change: Float64Array): number {
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    change.forEach((step, row) => {
      if (step <= TINY) return;
      const ratio = (this.level[row] as number) / step;
      const isTie = Math.abs(ratio - least) <= TINY;
      if (ratio < least - TINY || (isTie && step > (change[leaving] as number))) {
        least = Math.min(least, ratio);
        leaving = row;
      }
    });
    return leaving;
  }

  private pivot(leaving: number, change: Float64Array): void {
    const { rows, inverse, level } = this;
    const step = change[leaving] as number;
    const own = inverse.subarray(leaving * rows, (leaving + 1) * rows);
    // The inverse stays thin: patterns hold few kinds, so most of a row is 0.
    const filled: number[] = [];
    for (let k = 0; k < rows; k += 1) {
      if (own[k] === 0) continue;
      own[k] = (own[k] as number) / step;
      filled.push(k);
    }
    level[leaving] = (level[leaving] as number) / step;
    for (let row = 0; row < rows; row += 1) {
      const factor = change[row] as number;
      if (row === leaving || factor === 0) continue;
      const at = row * rows;
      for (const k of filled) inverse[at + k] = (inverse[at + k] as number) - factor * (own[k] as number);
      level[row] = Math.max(0, (level[row] as number) - factor * (level[leaving] as number));
    }
  }

  /** Number of rows. */
  get size(): number {
    return this.rows;
  }

  get cost(): number {
    return this.basis.reduce((sum, { cost }, row) => sum + cost * (this.level[row] as number), 0);
  }

  /** Pieces that no bar is there for, even with fractions of a bar allowed. */
  get shortage(): number {
    return this.basis.reduce(
      (sum, { isShortage }, row) => (isShortage ? sum + (this.level[row] as number) : sum),
      0,
    );
  }

  /** The patterns in use and how many bars, fractions allowed, are cut to each. */
  get uses(): { readonly pattern: Pattern; readonly bars: number }[] {
    return this.basis.flatMap(({ pattern }, row) => {
      const bars = this.level[row] as number;
      return pattern === undefined || bars <= TINY ? [] : [{ pattern, bars }];
    });
  }
}
