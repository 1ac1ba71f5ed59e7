import type { InParts } from "../parts";
import type { CuttingTask, PatternUse } from "./cutting-task";
import { Effort } from "./effort";
import { solve } from "./solve";

/** Share of the work that looking for less stock may take, once by cost and once by sets of bars. */
const SHARE = 0.125;
/** Sets of bars that are tried one by one, the least length first. */
const MAX_SETS = 150;

const barsOf = (uses: readonly PatternUse[]) => uses.reduce((sum, { bars }) => sum + bars, 0);

const roomOf = ({ stocks }: CuttingTask, uses: readonly PatternUse[]) =>
  uses.reduce((sum, { pattern, bars }) => sum + bars * (stocks[pattern.stock]?.room ?? 0), 0);

/** Every way to take so many bars, as numbers of each length; `undefined` where there are too many ways. */
function setsOf({ stocks }: CuttingTask, bars: number): number[][] | undefined {
  let sets: number[][] = [[]];
  for (let stock = 0; stock < stocks.length; stock += 1) {
    const isLast = stock === stocks.length - 1;
    sets = sets.flatMap((set) => {
      const left = bars - set.reduce((sum, count) => sum + count, 0);
      const most = Math.min(left, stocks[stock]?.available ?? 0);
      if (isLast) return most === left ? [[...set, left]] : [];
      return Array.from({ length: most + 1 }, (_, count) => [...set, count]);
    });
    if (sets.length > MAX_SETS) return undefined;
  }
  return sets;
}

/** The set of so many bars with the least length that holds the pieces, as far as the search for a plan finds one. */
function* fromSets(
  task: CuttingTask,
  uses: readonly PatternUse[],
  effort: number,
): InParts<readonly PatternUse[]> {
  const { stocks, kinds } = task;
  const needed = kinds.reduce((sum, { size, demand }) => sum + size * demand, 0);
  const room = (set: readonly number[]) =>
    set.reduce((sum, count, at) => sum + count * (stocks[at]?.room ?? 0), 0);
  const sets = (setsOf(task, barsOf(uses)) ?? [])
    .map((set) => ({ set, room: room(set) }))
    .filter((each) => each.room >= needed && each.room < roomOf(task, uses))
    .sort((a, b) => a.room - b.room);
  for (const { set } of sets) {
    const limited = stocks.map((stock, at) => ({ ...stock, available: set[at] ?? 0 }));
    const { uses: found } = yield* solve({ ...task, stocks: limited }, new Effort(effort / sets.length));
    if (found !== undefined) return found;
  }
  return uses;
}

/** The plan whose bars count a large step each and their length: fewest bars first, then the least length. */
function* byCost(
  task: CuttingTask,
  uses: readonly PatternUse[],
  effort: number,
): InParts<readonly PatternUse[]> {
  const each = (barsOf(uses) + 1) * Math.max(...task.stocks.map(({ room }) => room));
  const stocks = task.stocks.map((stock) => ({ ...stock, cost: each + stock.room }));
  const { uses: found } = yield* solve({ ...task, stocks, wholeCosts: true }, new Effort(effort));
  if (found === undefined || barsOf(found) > barsOf(uses)) return uses;
  return barsOf(found) < barsOf(uses) || roomOf(task, found) < roomOf(task, uses) ? found : uses;
}

/**
 * Of plans with as few bars as the one given, the one that takes the least length of bar, as far as found. Small
 * orders are tried set by set, so that nothing shorter is missed.
 *
 * @param task - Every bar counts 1.
 * @param effort - Work that the plan itself was allowed, in cells of the knapsack table.
 */
export function* leastStock(
  task: CuttingTask,
  uses: readonly PatternUse[],
  effort: number,
): InParts<readonly PatternUse[]> {
  const cheaper = yield* byCost(task, uses, effort * SHARE);
  return yield* fromSets(task, cheaper, effort * SHARE);
}
