import type { InParts } from "../parts";

/** What a supplier adds to the price of the goods. */
export interface Terms {
  /** Least amount charged for the goods of an order. */
  readonly minimum: number;
  /** Added once to an order. */
  readonly freight: number;
}

/** Which supplier delivers what. Costs by item, then by supplier; `undefined` where he does not offer it. */
export interface MixTask {
  readonly costs: readonly (readonly (number | undefined)[])[];
  readonly terms: readonly Terms[];
  /** Most suppliers to order from. */
  readonly most: number;
}

export interface SupplierMix {
  /** Supplier of each item. */
  readonly choice: readonly number[];
  readonly cost: number;
  /** No mix costs less. */
  readonly bound: number;
}

/** Sets of suppliers looked at, and steps of the search in them; beyond, the bound says how far off the mix may be. */
const MAX_SETS = 4100;
const MAX_STEPS = 300_000;
/** Sets that are made ready between two pauses. */
const SETS_A_PART = 64;
/** Sums of money that differ by less are equal. */
const EQUAL = 1e-7;

/** Sets of suppliers by size, then in order of their places, no more than are looked at. */
function supplierSets(suppliers: number, most: number): { sets: number[][]; isWhole: boolean } {
  const sets: number[][] = [];
  const extend = (set: readonly number[], from: number, size: number): boolean => {
    if (set.length === size) {
      sets.push([...set]);
      return sets.length < MAX_SETS;
    }
    for (let next = from; next < suppliers; next += 1) {
      if (!extend([...set, next], next + 1, size)) return false;
    }
    return true;
  };
  for (let size = 1; size <= Math.min(most, suppliers); size += 1) {
    if (extend([], 0, size)) continue;
    if (most >= suppliers) sets.push(Array.from({ length: suppliers }, (_, place) => place));
    return { sets, isWhole: false };
  }
  return { sets, isWhole: true };
}

/** Freight and what is missing to the minimums, of the suppliers that are ordered from. */
function termsOf({ terms }: MixTask, goods: readonly number[], chosen: readonly number[]): number {
  let sum = 0;
  for (const supplier of new Set(chosen)) {
    const { minimum = 0, freight = 0 } = terms[supplier] ?? {};
    sum += freight + Math.max(0, minimum - (goods[supplier] ?? 0));
  }
  return sum;
}

/** Sums of the cheapest costs in a set from each item on; `Infinity` where the set does not offer one of them. */
function leastFrom(costs: MixTask["costs"], set: readonly number[]): Float64Array {
  const least = new Float64Array(costs.length + 1);
  for (let item = costs.length - 1; item >= 0; item -= 1) {
    const cheapest = set.reduce(
      (best, supplier) => Math.min(best, costs[item]?.[supplier] ?? Number.POSITIVE_INFINITY),
      Number.POSITIVE_INFINITY,
    );
    least[item] = (least[item + 1] ?? 0) + cheapest;
  }
  return least;
}

/** The cheapest way to buy everything from a set of suppliers, each of them charging his terms. */
class SetSearch {
  choice: number[] | undefined;
  cost = Number.POSITIVE_INFINITY;
  /** No way to buy everything from this set costs less; `Infinity` where the set does not offer everything. */
  readonly bound: number;
  /** Least cost of the items from each place on. */
  private readonly least: Float64Array;
  private readonly fixed: number;
  private readonly goods: number[];
  private readonly chosen: number[] = [];
  private order: readonly (readonly number[])[] = [];

  constructor(
    private readonly task: MixTask,
    private readonly set: readonly number[],
    private readonly steps: { left: number },
  ) {
    const { costs, terms } = task;
    this.least = leastFrom(costs, set);
    this.fixed = set.reduce((sum, supplier) => sum + (terms[supplier]?.freight ?? 0), 0);
    this.goods = terms.map(() => 0);
    const minimums = set.reduce((sum, supplier) => sum + (terms[supplier]?.minimum ?? 0), 0);
    this.bound = this.fixed + Math.max(minimums, this.leastGoods);
    this.shortage = minimums;
  }

  /** What the suppliers of the set still charge up to their minimums. */
  private shortage: number;

  /** What the goods cost at least. */
  get leastGoods(): number {
    return this.least[0] ?? 0;
  }

  /** Looks for a way that costs less than the limit. */
  search(limit: number): void {
    this.cost = limit;
    this.order = this.task.costs.map((row) =>
      this.set
        .filter((supplier) => row[supplier] !== undefined)
        .sort((a, b) => (row[a] ?? 0) - (row[b] ?? 0) || a - b),
    );
    this.place(0, 0);
  }

  private missing(supplier: number): number {
    return Math.max(0, (this.task.terms[supplier]?.minimum ?? 0) - (this.goods[supplier] ?? 0));
  }

  private place(item: number, spent: number): void {
    const bound = this.fixed + spent + Math.max(this.shortage, this.least[item] ?? 0);
    if (bound >= this.cost - EQUAL || this.steps.left <= 0) return;
    this.steps.left -= 1;
    if (item === this.order.length) {
      const cost = spent + termsOf(this.task, this.goods, this.chosen);
      if (cost < this.cost - EQUAL) this.keep(cost);
      return;
    }
    for (const supplier of this.order[item] ?? []) {
      const cost = this.task.costs[item]?.[supplier] ?? 0;
      const [before, shortage] = [this.goods[supplier] ?? 0, this.shortage];
      const missing = this.missing(supplier);
      this.goods[supplier] = before + cost;
      this.shortage += this.missing(supplier) - missing;
      this.chosen[item] = supplier;
      this.place(item + 1, spent + cost);
      this.goods[supplier] = before;
      this.shortage = shortage;
    }
  }

  private keep(cost: number): void {
    this.cost = cost;
    this.choice = [...this.chosen];
  }
}

/** The fewest suppliers that together offer every item; `undefined` where no set looked at does. */
export function fewestSuppliers({ costs, terms }: MixTask): number | undefined {
  const offersAll = (set: readonly number[]) =>
    costs.every((row) => set.some((supplier) => row[supplier] !== undefined));
  return supplierSets(terms.length, terms.length).sets.find(offersAll)?.length;
}

/** Goes through the sets, those that may cost least first, and keeps the cheapest way found. */
function* searched(
  searches: readonly SetSearch[],
  steps: { readonly left: number },
): InParts<{ readonly best: SetSearch | undefined; readonly unfinished: number }> {
  let best: SetSearch | undefined;
  let unfinished = Number.POSITIVE_INFINITY;
  for (const search of searches) {
    const limit = best?.cost ?? Number.POSITIVE_INFINITY;
    if (search.bound >= limit - EQUAL) break;
    search.search(limit);
    if (steps.left <= 0) unfinished = Math.min(unfinished, search.bound);
    if (search.choice !== undefined) best = search;
    yield;
  }
  return { best, unfinished };
}

/**
 * The cheapest choice of a supplier for every item: the goods of each supplier ordered from count at least his
 * minimum, his freight once. Looks at every set of suppliers in the order of what it must cost at least, and inside a
 * set at every choice that can still be the cheapest; of equal costs the one with fewer suppliers is taken.
 *
 * @param task - Costs in one currency; every item is offered by somebody.
 * @returns The mix and the bound, which are equal unless the search ended at its limit; `undefined` where no set of so
 * many suppliers offers everything.
 */
export function* cheapestMix(task: MixTask): InParts<SupplierMix | undefined> {
  const { sets, isWhole } = supplierSets(task.terms.length, task.most);
  const steps = { left: MAX_STEPS };
  const searches: SetSearch[] = [];
  for (const set of sets) {
    const search = new SetSearch(task, set, steps);
    if (Number.isFinite(search.bound)) searches.push(search);
    if (searches.length % SETS_A_PART === 0) yield;
  }
  searches.sort((a, b) => a.bound - b.bound);
  const { best, unfinished } = yield* searched(searches, steps);
  if (best?.choice === undefined) return undefined;
  const anyone = new SetSearch(task, [...task.terms.keys()], { left: 0 });
  const unseen = isWhole ? Number.POSITIVE_INFINITY : anyone.leastGoods;
  return { choice: best.choice, cost: best.cost, bound: Math.min(best.cost, unfinished, unseen) };
}
