import type { InParts } from "../parts";
import { assignedToStocks } from "./assign-stocks";
import {
  type CuttingTask,
  costOf,
  isProved,
  isServed,
  type Pattern,
  type PatternUse,
  type Rest,
  remainingTask,
  wholeOrder,
} from "./cutting-task";
import type { Effort } from "./effort";
import { firstFit } from "./first-fit";
import { relax } from "./relaxation";
import { choices, ROUNDING, type Taken } from "./rounding";

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

/** Keeps the best plan seen. */
class Incumbent {
  uses: readonly PatternUse[] | undefined;
  cost = Number.POSITIVE_INFINITY;

  constructor(
    private readonly task: CuttingTask,
    private readonly bound: () => number,
  ) {}

  offer(given: readonly PatternUse[]): void {
    const uses = assignedToStocks(this.task, given);
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
function* endings(task: CuttingTask, rest: Rest): InParts<(readonly PatternUse[])[]> {
  const only = (stock: number): Rest => ({
    ...rest,
    available: rest.available.map((bars, index) => (index === stock ? bars : 0)),
  });
  const alone = task.stocks.length > 1 ? task.stocks.map((_, stock) => only(stock)) : [];
  const found: (readonly PatternUse[])[] = [];
  for (const from of [rest, ...alone]) {
    const uses = firstFit(task, from);
    if (uses !== undefined) found.push(uses);
    yield;
  }
  return found;
}

/** Relaxations in a row that bring no better plan, after which the search gives up. */
const PATIENCE = 300;
/** Steps of the work account that ending a plan by first fit counts for, by kind and length of bar. */
const ENDING_WORK = 2000;

/** A plan half made. */
interface Node {
  readonly used: readonly PatternUse[];
  readonly rest: Rest;
  /** No plan that goes on from here costs less. */
  readonly bound: number;
  /** Ways to go on that were not tried yet. */
  readonly choices: Taken[];
  readonly known: readonly Pattern[];
}

/**
 * Rounds a relaxed plan and solves again what is left, until nothing is left. What is left has a bound of its own:
 * a choice that raises the bound is put aside and the next one tried; where all raise it the least is taken. From
 * an end that is not proved the search goes back to what was put aside, now near that end, now near the beginning.
 */
class Branching {
  private readonly open: Node[] = [];
  private fruitless = 0;
  private returns = 0;

  constructor(
    private readonly task: CuttingTask,
    private readonly best: Incumbent,
    private readonly effort: Effort,
  ) {}

  *search(rest: Rest, relaxed: readonly PatternUse[], bound: number): InParts<void> {
    let node: Node | undefined = this.node([], rest, relaxed, bound);
    while (node !== undefined && !this.isOver) node = (yield* this.step(node)) ?? this.putAside();
  }

  private node(used: readonly PatternUse[], rest: Rest, relaxed: readonly PatternUse[], bound: number): Node {
    return {
      used,
      rest,
      bound,
      choices: choices(relaxed, rest),
      known: relaxed.map(({ pattern }) => pattern),
    };
  }

  private get isOver(): boolean {
    return this.best.isProved || this.effort.isSpent || this.fruitless > PATIENCE;
  }

  private isWorthIt({ bound }: { readonly bound: number }): boolean {
    return !isProved(this.task, this.best.cost, bound);
  }

  /** One choice further; `undefined` at an end. */
  private *step(node: Node): InParts<Node | undefined> {
    const raised: Node[] = [];
    for (let choice = node.choices.shift(); choice !== undefined; choice = node.choices.shift()) {
      const next = yield* this.taken(node, choice);
      if (this.isOver) return undefined;
      if (next === undefined) continue;
      if (next.bound <= node.bound + ROUNDING) {
        if (node.choices.length > 0) raised.push(node);
        this.open.push(...raised);
        return next;
      }
      raised.push(next);
    }
    raised.sort((a, b) => a.bound - b.bound);
    const least = raised.shift();
    this.open.push(...raised.reverse());
    return least;
  }

  /** A node put aside that may still lead to a better plan: by turns the last and the first. */
  private putAside(): Node | undefined {
    this.returns += 1;
    while (this.open.length > 0) {
      const node = this.returns % 2 === 1 ? this.open.pop() : this.open.shift();
      if (node !== undefined && this.isWorthIt(node)) return node;
    }
    return undefined;
  }

  /** What is left after a choice; `undefined` where nothing better can come of it. */
  private *taken({ used, known }: Node, { taken, left }: Taken): InParts<Node | undefined> {
    const all = [...used, ...taken];
    const task = remainingTask(this.task, left);
    this.effort.spend(ENDING_WORK * task.kinds.length * (2 * task.stocks.length - 1));
    const before = this.best.cost;
    for (const ending of yield* endings(task, left)) {
      this.best.offer([...all, ...ending]);
      yield;
    }
    this.fruitless = this.best.cost < before ? 0 : this.fruitless + 1;
    if (isServed(left) || this.isOver) return undefined;
    const spent = costOf(this.task, all);
    const below = yield* relax(task, known, this.best.cost - spent, this.effort);
    const next = this.node(all, left, below.uses, spent + below.bound);
    return below.isShort || !this.isWorthIt(next) ? undefined : next;
  }
}

/**
 * Cheapest way to cut an order: column generation for the bound, rounding with re-solving of the residue
 * for the plan, first-fit decreasing as a floor. Ends as soon as the plan meets the bound. May pause after each step.
 *
 * @param task - The order in grid steps.
 * @param effort - Work account; when spent, the best plan so far stands.
 */
export function* solve(task: CuttingTask, effort: Effort): InParts<Solution> {
  const order = wholeOrder(task);
  let bound = Number.NEGATIVE_INFINITY;
  const best = new Incumbent(task, () => bound);
  for (const simple of yield* endings(task, order)) {
    best.offer(simple);
    yield;
  }
  const known = (best.uses ?? []).map(({ pattern }) => pattern);
  const root = yield* relax(task, known, best.cost, effort);
  bound = root.bound;
  if (!root.isShort) yield* new Branching(task, best, effort).search(order, root.uses, bound);
  const { uses, cost } = best;
  return { uses, cost, bound, isShort: root.isShort, isStopped: effort.isSpent && !best.isProved };
}
