import {
  type CuttingTask,
  isServed,
  type Kind,
  lessUse,
  type Pattern,
  type PatternUse,
  type Rest,
} from "./cutting-task";

interface Filled {
  readonly pattern: Pattern;
  /** Share of the room that pieces fill. */
  readonly fill: number;
}

/** Fills one bar with the longest pieces that still fit: a bar of first-fit decreasing. */
function filled(kinds: readonly Kind[], task: CuttingTask, stock: number, demand: readonly number[]): Filled {
  const room = task.stocks[stock]?.room ?? 0;
  const counts = new Array<number>(task.width).fill(0);
  let left = room;
  for (const { id, size } of kinds) {
    const count = Math.min(demand[id] ?? 0, Math.floor(left / size));
    counts[id] = count;
    left -= count * size;
  }
  return { pattern: { stock, counts }, fill: (room - left) / Math.max(1, room) };
}

/** The next bar: the length of bar whose filling costs least a grid step. */
function nextBar(
  kinds: readonly Kind[],
  task: CuttingTask,
  { demand, available }: Rest,
): Pattern | undefined {
  const longest = kinds.find(({ id }) => (demand[id] ?? 0) > 0);
  let chosen: Pattern | undefined;
  let least = Number.POSITIVE_INFINITY;
  task.stocks.forEach(({ room, cost }, stock) => {
    if ((available[stock] ?? 0) < 1 || longest === undefined || longest.size > room) return;
    const { pattern, fill } = filled(kinds, task, stock, demand);
    const rate = cost / (fill * room);
    if (rate >= least) return;
    least = rate;
    chosen = pattern;
  });
  return chosen;
}

/** Bars that come out alike one after the other. */
function repeats({ counts, stock }: Pattern, { demand, available }: Rest): number {
  const each = counts.map((count, id) =>
    count === 0 ? Number.POSITIVE_INFINITY : Math.floor((demand[id] ?? 0) / count),
  );
  return Math.max(1, Math.min(available[stock] ?? 0, ...each));
}

/**
 * First-fit decreasing: longest pieces first, each bar filled before the next is begun. With one length
 * of bar this is the classic rule; with several, each bar is of the length that is filled most cheaply.
 *
 * @returns The bars, or `undefined` where the bars to be had do not hold the pieces in this way.
 */
export function firstFit(task: CuttingTask, start: Rest): PatternUse[] | undefined {
  const uses: PatternUse[] = [];
  let rest = start;
  while (!isServed(rest)) {
    const pattern = nextBar(task.kinds, task, rest);
    if (pattern === undefined) return undefined;
    const use = { pattern, bars: repeats(pattern, rest) };
    uses.push(use);
    rest = lessUse(rest, use);
  }
  return uses;
}
