import type { CuttingTask, Kind, Pattern } from "./cutting-task";

interface Valued {
  readonly kind: Kind;
  readonly worth: number;
}

/** Fills a bar with one piece of the first kind, then with the most worth a step of length. */
function filledFrom(
  first: Valued,
  ranked: readonly Valued[],
  smallest: number,
  room: number,
  counts: number[],
): number {
  counts.fill(0);
  counts[first.kind.id] = 1;
  let left = room - first.kind.size;
  let value = first.worth;
  for (const { kind, worth } of ranked) {
    if (left < smallest) break;
    if (kind.size > left) continue;
    const wanted = kind.demand - (counts[kind.id] ?? 0);
    const taken = Math.min(wanted, Math.floor(left / kind.size));
    if (taken <= 0) continue;
    counts[kind.id] = (counts[kind.id] ?? 0) + taken;
    left -= taken * kind.size;
    value += taken * worth;
  }
  return value;
}

/**
 * A good pattern for given dual prices of the pieces, found by filling a bar greedily once from each kind: not
 * always the best one, but a thousand times cheaper than the knapsack.
 *
 * @param duals - One a kind, in the order of the task.
 * @returns The most valuable pattern tried for that length of bar; `undefined` where no piece fits.
 */
export function greedyPattern(
  task: CuttingTask,
  duals: readonly number[],
  stock: number,
): Pattern | undefined {
  const room = task.stocks[stock]?.room ?? 0;
  const ranked = task.kinds
    .map((kind, index) => ({ kind, worth: duals[index] ?? 0 }))
    .filter(({ kind, worth }) => worth > 0 && kind.size <= room)
    .sort((a, b) => b.worth / b.kind.size - a.worth / a.kind.size);
  const smallest = ranked.reduce((least, { kind }) => Math.min(least, kind.size), room);
  let best: number[] | undefined;
  let most = 0;
  const counts = new Array<number>(task.width).fill(0);
  for (const first of ranked) {
    const value = filledFrom(first, ranked, smallest, room, counts);
    if (value <= most) continue;
    most = value;
    best = [...counts];
  }
  return best === undefined ? undefined : { stock, counts: best };
}
