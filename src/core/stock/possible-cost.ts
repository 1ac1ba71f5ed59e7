import type { CuttingTask, Stock } from "./cutting-task";

/** Costs looked through at most: beyond, the bound stays as it is. */
const MAX_COSTS = 2_000_000;

/** Bars of one length bought together: any number of them, or bundles of 1, 2, 4 … that make every number there is. */
function bundles({ room, cost, available }: Stock): { room: number; cost: number; isEndless: boolean }[] {
  if (!Number.isFinite(available)) return [{ room, cost, isEndless: true }];
  const found: { room: number; cost: number; isEndless: boolean }[] = [];
  let left = available;
  for (let count = 1; left > 0; count *= 2) {
    const taken = Math.min(count, left);
    found.push({ room: taken * room, cost: taken * cost, isEndless: false });
    left -= taken;
  }
  return found;
}

/** The most room that bars of exactly each cost can have, up to a limit; below 0 where no bars cost that much. */
function roomByCost({ stocks }: CuttingTask, limit: number): Float64Array {
  const most = new Float64Array(limit + 1).fill(Number.NEGATIVE_INFINITY);
  most[0] = 0;
  for (const { room, cost, isEndless } of stocks.flatMap(bundles)) {
    for (let step = cost; step <= limit; step += 1) {
      const at = isEndless ? step : limit + cost - step;
      most[at] = Math.max(most[at] as number, (most[at - cost] as number) + room);
    }
  }
  return most;
}

/**
 * Raises a bound to a cost that bars can come to: the first from the bound on at which some set of bars has room for
 * all the pieces. With bars at 41.30 and 23.70 no plan costs 60.
 *
 * @param bound - A whole number of cost steps that no plan is under.
 * @returns The bound, raised where costs are whole and bars come in several lengths.
 */
export function possibleCost(task: CuttingTask, bound: number): number {
  const { stocks, kinds, wholeCosts } = task;
  const limit = bound + Math.max(...stocks.map(({ cost }) => cost));
  const isFree = stocks.some(({ cost }) => cost === 0);
  if (!wholeCosts || isFree || stocks.length < 2 || !(bound > 0 && limit <= MAX_COSTS)) return bound;
  const needed = kinds.reduce((sum, { size, demand }) => sum + size * demand, 0);
  const most = roomByCost(task, limit);
  for (let cost = bound; cost <= limit; cost += 1) if ((most[cost] as number) >= needed) return cost;
  return bound;
}
