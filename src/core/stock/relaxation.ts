import type { CuttingTask, Pattern, PatternUse } from "./cutting-task";
import { isProved, raisedBound } from "./cutting-task";
import type { Effort } from "./effort";
import { Knapsack } from "./knapsack";
import { Master } from "./master";

/** The relaxed problem, solved as far as it pays. */
export interface Relaxation {
  /** No plan costs less. */
  readonly bound: number;
  /** Patterns with fractions of bars. */
  readonly uses: readonly PatternUse[];
  /** True where the bars to be had cannot hold the pieces, whatever the plan. */
  readonly isShort: boolean;
}

const TINY = 1e-9;
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

/**
 * A lower bound from any worths of the pieces (weak duality): scaled down until no bar that can be
 * bought holds pieces worth more than it costs, less what the bars in hand still give away.
 */
function dualBound(task: CuttingTask, knapsack: Knapsack, worths: readonly number[]): number {
  const ratio = ({ cost, room }: { cost: number; room: number }) => {
    const value = knapsack.valueAt(room);
    return value <= cost ? 1 : cost / value;
  };
  const bought = task.stocks.filter(({ available }) => !Number.isFinite(available));
  const scale = Math.min(1, ...bought.map(ratio));
  const pieces = task.kinds.reduce((sum, { demand }, index) => sum + demand * (worths[index] ?? 0), 0);
  const inHand = task.stocks
    .filter(({ available }) => Number.isFinite(available))
    .reduce((sum, { available, cost, room }) => {
      return sum + available * Math.min(0, cost - scale * knapsack.valueAt(room));
    }, 0);
  return scale * pieces + inHand;
}

/** The length of bar whose best pattern lowers the cost most, `-1` where none does. */
function bestStock(task: CuttingTask, knapsack: Knapsack, master: Master, duals: Float64Array): number {
  let best = -1;
  let most = TINY;
  task.stocks.forEach(({ room, cost, available }, stock) => {
    const gain = knapsack.valueAt(room) + master.barWorth(duals, stock) - cost;
    if (available < 1 || gain <= most * Math.max(1, cost)) return;
    most = gain;
    best = stock;
  });
  return best;
}

function warmUp(task: CuttingTask, master: Master, known: readonly Pattern[]): void {
  for (const pattern of known) {
    const fitting = clipped(pattern, task);
    if (master.wouldHelp(fitting, master.duals())) master.enterPattern(fitting);
  }
}

/**
 * Solves the relaxed cutting problem by column generation: the knapsack proposes the pattern that the
 * present worths of the pieces make most attractive, the master takes it in.
 *
 * @param task - What is to be cut.
 * @param known - Patterns to begin with.
 * @param incumbent - Cost of the best plan known; the search ends once the bound reaches it.
 * @param effort - Work account; when spent, the best bound so far stands.
 */
export function relax(
  task: CuttingTask,
  known: readonly Pattern[],
  incumbent: number,
  effort: Effort,
): Relaxation {
  const master = new Master(task);
  warmUp(task, master, known);
  const knapsack = new Knapsack(task.kinds, Math.max(...task.stocks.map(({ room }) => room)));
  let bound = Number.NEGATIVE_INFINITY;
  let isOptimal = false;
  while (!effort.isSpent) {
    const duals = master.duals();
    effort.spend(duals.length * duals.length);
    if (master.enterSlack(duals)) continue;
    const worths = task.kinds.map((_, row) => Math.max(0, duals[row] as number));
    knapsack.fill(worths);
    effort.spend(knapsack.cells);
    bound = Math.max(bound, raisedBound(task, dualBound(task, knapsack, worths)));
    const stock = bestStock(task, knapsack, master, duals);
    isOptimal = stock < 0 || !master.enterPattern(patternAt(task, knapsack, stock));
    const isSettled =
      task.wholeCosts && master.shortage <= TOLERANCE && raisedBound(task, master.cost) <= bound;
    if (isOptimal || isSettled || isProved(task, incumbent, bound)) break;
  }
  return { bound, uses: master.uses, isShort: isOptimal && master.shortage > TOLERANCE };
}
