import type { InParts } from "../parts";
import { type CuttingTask, isProved, type Pattern, type PatternUse, raisedBound } from "./cutting-task";
import type { Effort } from "./effort";
import { greedyPattern } from "./greedy-pattern";
import { Knapsack } from "./knapsack";
import { possibleCost } from "./possible-cost";
import { RestrictedMaster } from "./restricted-master";

/** The relaxed problem, solved as far as it pays. */
export interface Relaxation {
  /** No plan costs less. */
  readonly bound: number;
  /** Patterns with fractions of bars. */
  readonly uses: readonly PatternUse[];
  /** True where the bars to be had cannot hold the pieces, whatever the plan. */
  readonly isShort: boolean;
}

/** Pieces: less than this is rounding. */
const TOLERANCE = 1e-6;

/** A pattern cut down to the pieces that are still wanted. */
function clipped({ stock, counts }: Pattern, task: CuttingTask): Pattern {
  const fewer = new Array<number>(task.width).fill(0);
  for (const { id, demand } of task.kinds) fewer[id] = Math.min(demand, counts[id] ?? 0);
  return { stock, counts: fewer };
}

function patternAt(task: CuttingTask, knapsack: Knapsack, stock: number): Pattern {
  const counts = new Array<number>(task.width).fill(0);
  const taken = knapsack.countsAt(task.stocks[stock]?.room ?? 0);
  task.kinds.forEach(({ id }, index) => {
    counts[id] = taken[index] ?? 0;
  });
  return { stock, counts };
}

/** A lower bound from the material alone: every step of length at the rate of the cheapest bar. */
function materialBound(task: CuttingTask): number {
  const length = task.kinds.reduce((sum, { size, demand }) => sum + size * demand, 0);
  return length * Math.min(...task.stocks.map(({ cost, room }) => cost / Math.max(1, room)));
}

/**
 * A lower bound from any dual prices of the pieces (weak duality): scaled down until no bar that can be
 * bought holds pieces worth more than it costs, less what the bars in hand still give away.
 */
function dualBound(task: CuttingTask, knapsack: Knapsack, duals: readonly number[]): number {
  const ratio = ({ cost, room }: { cost: number; room: number }) => {
    const value = knapsack.valueAt(room);
    return value <= cost ? 1 : cost / value;
  };
  const bought = task.stocks.filter(({ available }) => !Number.isFinite(available));
  const scale = Math.min(1, ...bought.map(ratio));
  const pieces = task.kinds.reduce((sum, { demand }, index) => sum + demand * (duals[index] ?? 0), 0);
  const inHand = task.stocks
    .filter(({ available }) => Number.isFinite(available))
    .reduce((sum, { available, cost, room }) => {
      return sum + available * Math.min(0, cost - scale * knapsack.valueAt(room));
    }, 0);
  return scale * pieces + inHand;
}

/** Takes in a pattern found without the knapsack, where there is one. */
function enterGreedy(task: CuttingTask, duals: readonly number[], master: RestrictedMaster): boolean {
  let hasEntered = false;
  task.stocks.forEach(({ available }, stock) => {
    const pattern = available < 1 ? undefined : greedyPattern(task, duals, stock);
    if (pattern === undefined || !master.wouldHelp(pattern, master.duals())) return;
    if (master.enterPattern(pattern)) hasEntered = true;
  });
  return hasEntered;
}

/** Takes in the best pattern of each length of bar that lowers the cost; true where there was one. */
function enterBest(task: CuttingTask, knapsack: Knapsack, master: RestrictedMaster): boolean {
  let hasEntered = false;
  task.stocks.forEach(({ available }, stock) => {
    if (available < 1) return;
    const pattern = patternAt(task, knapsack, stock);
    if (master.wouldHelp(pattern, master.duals()) && master.enterPattern(pattern)) hasEntered = true;
  });
  return hasEntered;
}

function warmUp(task: CuttingTask, master: RestrictedMaster, known: readonly Pattern[]): void {
  for (const pattern of known) {
    const fitting = clipped(pattern, task);
    if (master.wouldHelp(fitting, master.duals())) master.enterPattern(fitting);
  }
}

/** Cells of the knapsack table that a step of the master counts for, by the square of its size and by length of bar. */
const STEP_WORK = 4;

/** Share of the steadiest dual prices known in those that are tried next. */
const STEADINESS = 0.6;

/**
 * StabilizedDuals of the pieces to price patterns by. Those of the master jump from step to step; mixed with the ones
 * that gave the best bound so far they settle in fewer steps.
 */
class StabilizedDuals {
  bound = Number.NEGATIVE_INFINITY;
  private steadiest: readonly number[] | undefined;

  constructor(
    private readonly task: CuttingTask,
    private readonly knapsack: Knapsack,
    private readonly effort: Effort,
  ) {}

  steadied(current: readonly number[]): readonly number[] | undefined {
    return this.steadiest?.map((worth, kind) => STEADINESS * worth + (1 - STEADINESS) * (current[kind] ?? 0));
  }

  /** Finds the best patterns for these dual prices, and the bound they prove. */
  *price(duals: readonly number[]): InParts<void> {
    yield* this.knapsack.fill(duals);
    this.effort.spend(this.knapsack.cells);
    const bound = dualBound(this.task, this.knapsack, duals);
    if (bound <= this.bound) return;
    this.bound = bound;
    this.steadiest = duals;
  }
}

/** One step of column generation; false once no pattern lowers the cost. */
function* step(
  task: CuttingTask,
  knapsack: Knapsack,
  master: RestrictedMaster,
  stabilized: StabilizedDuals,
): InParts<boolean> {
  const duals = master.duals();
  if (master.enterSlack(duals)) return true;
  const current = task.kinds.map((_, row) => Math.max(0, duals[row] as number));
  if (enterGreedy(task, current, master)) return true;
  const steadied = stabilized.steadied(current);
  if (steadied !== undefined) {
    yield* stabilized.price(steadied);
    if (enterBest(task, knapsack, master)) return true;
  }
  yield* stabilized.price(current);
  return enterBest(task, knapsack, master);
}

/**
 * Solves the relaxed cutting problem by column generation: the knapsack proposes the patterns that the
 * present dual prices of the pieces make most attractive, the master takes them in. May pause after each step.
 *
 * @param task - What is to be cut.
 * @param known - Patterns to begin with.
 * @param incumbent - Cost of the best plan known; the search ends once the bound reaches it.
 * @param effort - Work account; when spent, the best bound so far stands.
 */
export function* relax(
  task: CuttingTask,
  known: readonly Pattern[],
  incumbent: number,
  effort: Effort,
): InParts<Relaxation> {
  const master = new RestrictedMaster(task);
  warmUp(task, master, known);
  const knapsack = new Knapsack(task.kinds, Math.max(...task.stocks.map(({ room }) => room)));
  const stabilized = new StabilizedDuals(task, knapsack, effort);
  let bound = raisedBound(task, materialBound(task));
  let isOptimal = false;
  while (!effort.isSpent) {
    effort.spend(STEP_WORK * task.stocks.length * master.size ** 2);
    isOptimal = !(yield* step(task, knapsack, master, stabilized));
    yield;
    bound = Math.max(bound, raisedBound(task, stabilized.bound));
    const isSettled =
      task.wholeCosts && master.shortage <= TOLERANCE && raisedBound(task, master.cost) <= bound;
    if (isOptimal || isSettled || isProved(task, incumbent, bound)) break;
  }
  return {
    bound: possibleCost(task, bound),
    uses: master.uses,
    isShort: isOptimal && master.shortage > TOLERANCE,
  };
}
