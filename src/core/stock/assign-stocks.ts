import type { CuttingTask, PatternUse } from "./cutting-task";

/** Stocks that hold the pieces of a bar, the cheapest first, then the shortest. */
function fittingStocks(task: CuttingTask, { pattern }: PatternUse): number[] {
  const filled = task.kinds.reduce((sum, { id, size }) => sum + size * (pattern.counts[id] ?? 0), 0);
  const cost = (stock: number) => task.stocks[stock]?.cost ?? 0;
  const room = (stock: number) => task.stocks[stock]?.room ?? 0;
  return [...task.stocks.keys()]
    .filter((stock) => room(stock) >= filled)
    .sort((a, b) => cost(a) - cost(b) || room(a) - room(b));
}

/** Moves bars to the cheapest, then shortest, stock that holds their pieces and is still to be had. */
export function assignedToStocks(task: CuttingTask, uses: readonly PatternUse[]): PatternUse[] {
  const left = task.stocks.map(({ available }) => available);
  const take = (stock: number, bars: number) => {
    left[stock] = (left[stock] ?? 0) - bars;
  };
  for (const { pattern, bars } of uses) take(pattern.stock, bars);
  return uses.flatMap((use) => {
    const { pattern } = use;
    const moved: PatternUse[] = [];
    let remaining = use.bars;
    for (const stock of fittingStocks(task, use)) {
      const bars = stock === pattern.stock ? remaining : Math.min(remaining, left[stock] ?? 0);
      if (bars < 1) continue;
      take(pattern.stock, -bars);
      take(stock, bars);
      moved.push({ pattern: { ...pattern, stock }, bars });
      remaining -= bars;
    }
    return moved;
  });
}
