import {
  type CuttingTask,
  costOf,
  isProved,
  isServed,
  lessUse,
  type Pattern,
  type PatternUse,
  type Rest,
  remainingTask,
  wholeOrder,
} from "./cutting-task";
import type { Effort } from "./effort";
import { firstFit } from "./first-fit";
import { type Relaxation, relax } from "./relaxation";
import { settled } from "./settle";

/** The best plan found. */
export interface Solution {
  /** `undefined` where none was found. */
  readonly uses: readonly PatternUse[] | undefined;
  readonly cost: number;
  /** No plan costs less than this. */
  readonly bound: number;
  /** True where the bars to be had cannot hold the pieces, whatever the plan. */
  readonly isShort: boolean;
  /** True where the work limit ended the search. */
  readonly isStopped: boolean;
}

const ROUNDING = 1e-7;

/** Keeps the best plan seen. */
class Best {
  uses: readonly PatternUse[] | undefined;
  cost = Number.POSITIVE_INFINITY;

  constructor(
    private readonly task: CuttingTask,
    private readonly bound: () => number,
  ) {}

  offer(given: readonly PatternUse[]): void {
    const uses = settled(this.task, given);
    const cost = costOf(this.task, uses);
    if (cost >= this.cost) return;
    this.cost = cost;
    this.uses = uses;
  }

  get isProved(): boolean {
    return isProved(this.task, this.cost, this.bound());
  }
}

/** Ways to finish what is left by first-fit decreasing: from all lengths of bar, and from each one alone. */
function endings(task: CuttingTask, rest: Rest): (readonly PatternUse[])[] {
  const only = (stock: number): Rest => ({
    ...rest,
    available: rest.available.map((bars, index) => (index === stock ? bars : 0)),
  });
  const alone = task.stocks.length > 1 ? task.stocks.map((_, stock) => only(stock)) : [];
  return [rest, ...alone].flatMap((from) => {
    const uses = firstFit(task, from);
    return uses === undefined ? [] : [uses];
  });
}

/** A pattern cut to so many bars, no more pieces than are wanted and no more bars than there are. */
function capped({ counts, stock }: Pattern, wished: number, { demand, available }: Rest): PatternUse {
  const fewer = counts.map((count, id) => Math.min(count, demand[id] ?? 0));
  const isWhole = fewer.every((count, id) => count === counts[id]);
  const each = fewer.map((count, id) =>
    count === 0 ? Number.POSITIVE_INFINITY : Math.floor((demand[id] ?? 0) / count),
  );
  const most = Math.min(available[stock] ?? 0, ...each);
  const bars = Math.min(isWhole ? wished : Math.min(1, wished), Number.isFinite(most) ? most : 0);
  return { pattern: { stock, counts: fewer }, bars };
}

/** Takes the whole bars of a relaxed plan. */
function wholeBars(uses: readonly PatternUse[], rest: Rest): { taken: PatternUse[]; left: Rest } {
  const taken: PatternUse[] = [];
  let left = rest;
  for (const { pattern, bars } of uses) {
    const use = capped(pattern, Math.floor(bars + ROUNDING), left);
    if (use.bars < 1) continue;
    taken.push(use);
    left = lessUse(left, use);
  }
  return { taken, left };
}

/** Takes the bars with the largest fractions, one each, as long as the fraction reaches the threshold. */
function roundedUp(
  uses: readonly PatternUse[],
  threshold: number,
  rest: Rest,
): { taken: PatternUse[]; left: Rest } {
  const ranked = uses
    .map(({ pattern, bars }) => ({ pattern, fraction: bars - Math.floor(bars + ROUNDING) }))
    .sort((a, b) => b.fraction - a.fraction);
  const taken: PatternUse[] = [];
  let left = rest;
  for (const { pattern, fraction } of ranked) {
    if (taken.length > 0 && fraction < threshold) break;
    const use = capped(pattern, 1, left);
    const isWhole = use.pattern.counts.every((count, id) => count === pattern.counts[id]);
    if (use.bars < 1 || (taken.length > 0 && !isWhole)) continue;
    taken.push(use);
    left = lessUse(left, use);
  }
  return { taken, left };
}

/** Rounds the relaxed plan down, then re-solves what is left, again and again, until nothing is left. */
function dive(task: CuttingTask, root: Relaxation, threshold: number, best: Best, effort: Effort): void {
  let rest = wholeOrder(task);
  let relaxed: readonly PatternUse[] = root.uses;
  const used: PatternUse[] = [];
  while (!best.isProved) {
    const whole = wholeBars(relaxed, rest);
    const step = whole.taken.length > 0 ? whole : roundedUp(relaxed, threshold, rest);
    if (step.taken.length === 0) return;
    used.push(...step.taken);
    rest = step.left;
    const left = remainingTask(task, rest);
    for (const ending of endings(left, rest)) best.offer([...used, ...ending]);
    if (isServed(rest) || effort.isSpent) return;
    const known = relaxed.map(({ pattern }) => pattern);
    relaxed = relax(left, known, Number.POSITIVE_INFINITY, effort).uses;
  }
}

/** From bold rounding to careful: bold dives are cheap, and one that meets the bound ends the search. */
const THRESHOLDS = [0.6, 1, 0.75, 0.5, 0.9, 0.4] as const;

/**
 * Cheapest way to cut an order: column generation for the bound, rounding with re-solving of the residue
 * for the plan, first-fit decreasing as a floor. Ends as soon as the plan meets the bound.
 *
 * @param task - The order in grid steps.
 * @param effort - Work account; when spent, the best plan so far stands.
 */
export function solve(task: CuttingTask, effort: Effort): Solution {
  const order = wholeOrder(task);
  let bound = Number.NEGATIVE_INFINITY;
  const best = new Best(task, () => bound);
  for (const simple of endings(task, order)) best.offer(simple);
  const known = (best.uses ?? []).map(({ pattern }) => pattern);
  const root = relax(task, known, best.cost, effort);
  bound = root.bound;
  if (!root.isShort) {
    for (const threshold of THRESHOLDS) {
      if (best.isProved || effort.isSpent) break;
      dive(task, root, threshold, best, effort);
    }
  }
  const { uses, cost } = best;
  return { uses, cost, bound, isShort: root.isShort, isStopped: effort.isSpent && !best.isProved };
}
