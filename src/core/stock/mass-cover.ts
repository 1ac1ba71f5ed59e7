/** A bar that may be bought by the piece. */
export interface WeighedBar {
  readonly kilograms: number;
  readonly cost: number;
  /** Bars to be had. */
  readonly available: number;
}

export interface MassCover {
  /** Bars of each kind, in the order given. */
  readonly taken: readonly number[];
  readonly cost: number;
  /** No set of bars costs less. */
  readonly bound: number;
}

/** A mass that is short by less is there: scales are no better. */
const SHORT = 1e-9;
const MAX_STEPS = 100_000;

/**
 * The cheapest set of bars that together weigh as much as is needed. Tries the numbers of each kind of bar, the
 * cheapest a kg first, and leaves out what cannot become the cheapest.
 *
 * @returns `undefined` where all bars together weigh less.
 */
export function massCover(needed: number, bars: readonly WeighedBar[]): MassCover | undefined {
  const rate = ({ cost, kilograms }: WeighedBar) => cost / kilograms;
  const order = [...bars.keys()].sort((a, b) => rate(bars[a] as WeighedBar) - rate(bars[b] as WeighedBar));
  const ranked = order.map((place) => bars[place] as WeighedBar);
  let best = Number.POSITIVE_INFINITY;
  let found: number[] | undefined;
  let steps = 0;
  const take = (rank: number, left: number, cost: number, counts: readonly number[]): void => {
    steps += 1;
    const bar = ranked[rank];
    if (left <= SHORT && cost < best) {
      best = cost;
      found = [...counts];
    }
    if (left <= SHORT || bar === undefined || steps > MAX_STEPS) return;
    if (cost + left * rate(bar) >= best) return;
    for (
      let count = Math.min(bar.available, Math.ceil(left / bar.kilograms - SHORT));
      count >= 0;
      count -= 1
    ) {
      take(rank + 1, left - count * bar.kilograms, cost + count * bar.cost, [...counts, count]);
    }
  };
  take(0, needed, 0, []);
  if (found === undefined) return undefined;
  const taken = new Array<number>(bars.length).fill(0);
  found.forEach((count, rank) => {
    taken[order[rank] ?? 0] = count;
  });
  const cheapest = ranked[0] === undefined ? 0 : rate(ranked[0]);
  return { taken, cost: best, bound: steps > MAX_STEPS ? needed * cheapest : best };
}
