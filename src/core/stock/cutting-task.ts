/** One length to be cut. Sizes count steps of the task's grid, so that sums are exact. */
export interface Kind {
  /** Place among all kinds of the order; patterns count by it. */
  readonly id: number;
  /** Piece with the kerf beside it, grid steps. */
  readonly size: number;
  /** Pieces wanted. */
  readonly demand: number;
}

/** One length of bar on offer. */
export interface Stock {
  /** Grid steps that pieces with their kerfs may fill: bar less trim, plus the kerf that the last piece saves. */
  readonly room: number;
  /** What a bar counts for: 1 where bars are counted, else its price. */
  readonly cost: number;
  /** Bars to be had; Infinity where they can be bought. */
  readonly available: number;
}

/** A cutting order in grid steps: what the solver works on. */
export interface CuttingTask {
  /** Longest first. */
  readonly kinds: readonly Kind[];
  readonly stocks: readonly Stock[];
  /** Number of kinds of the whole order: length of a pattern's counts. */
  readonly width: number;
  /** True where every cost is a whole number, so that a bound may be rounded up. */
  readonly wholeCosts: boolean;
}

/** How one bar is cut. */
export interface Pattern {
  /** Index of the stock. */
  readonly stock: number;
  /** Pieces of each kind, by the kind's id. */
  readonly counts: readonly number[];
}

/** A pattern and how many bars are cut to it. */
export interface PatternUse {
  readonly pattern: Pattern;
  readonly bars: number;
}

/** What is still to be cut, and from what. */
export interface Rest {
  /** By kind id. */
  readonly demand: readonly number[];
  /** By stock index. */
  readonly available: readonly number[];
}

/** The whole order as it stands before the first cut. */
export function wholeOrder(task: CuttingTask): Rest {
  const demand = new Array<number>(task.width).fill(0);
  for (const kind of task.kinds) demand[kind.id] = kind.demand;
  return { demand, available: task.stocks.map(({ available }) => available) };
}

/** The part of an order that is still to be cut, as an order of its own. */
export function remainingTask(task: CuttingTask, { demand, available }: Rest): CuttingTask {
  return {
    ...task,
    kinds: task.kinds
      .map((kind) => ({ ...kind, demand: demand[kind.id] ?? 0 }))
      .filter((kind) => kind.demand > 0),
    stocks: task.stocks.map((stock, index) => ({ ...stock, available: available[index] ?? 0 })),
  };
}

/** What is left after cutting some bars. */
export function lessUse({ demand, available }: Rest, { pattern, bars }: PatternUse): Rest {
  return {
    demand: demand.map((wanted, id) => wanted - bars * (pattern.counts[id] ?? 0)),
    available: available.map((count, stock) => (stock === pattern.stock ? count - bars : count)),
  };
}

export function isServed({ demand }: Rest): boolean {
  return demand.every((wanted) => wanted === 0);
}

export function costOf(task: CuttingTask, uses: readonly PatternUse[]): number {
  return uses.reduce((sum, { pattern, bars }) => sum + bars * (task.stocks[pattern.stock]?.cost ?? 0), 0);
}

/** Bounds are sums of some hundred products: they are good to this much, and must not be rounded up past it. */
const BOUND_ROUNDING = 1e-6;

/** A lower bound made as high as whole costs allow. */
export function raisedBound(task: CuttingTask, bound: number): number {
  return task.wholeCosts ? Math.ceil(bound - BOUND_ROUNDING) : bound;
}

/** True where no plan can cost less. */
export function isProved(task: CuttingTask, cost: number, bound: number): boolean {
  const slack = task.wholeCosts ? 0 : BOUND_ROUNDING * Math.max(1, Math.abs(cost));
  return cost <= bound + slack;
}
