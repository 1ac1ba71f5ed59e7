import { lessUse, type Pattern, type PatternUse, type Rest } from "./cutting-task";

// From a relaxed plan, which may cut fractions of a bar, to whole bars.

export const ROUNDING = 1e-7;

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

/** Bars cut to patterns chosen, and what is left to be cut after them. */
export interface Taken {
  readonly taken: readonly PatternUse[];
  readonly left: Rest;
}

/** Takes the whole bars of a relaxed plan. */
function wholeBars(uses: readonly PatternUse[], rest: Rest): Taken {
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

/** Takes the bars with the largest fractions from a rank on, one each, as long as the fraction reaches the threshold. */
function roundedUp(uses: readonly PatternUse[], threshold: number, rank: number, rest: Rest): Taken {
  const ranked = uses
    .map(({ pattern, bars }) => ({ pattern, fraction: bars - Math.floor(bars + ROUNDING) }))
    .sort((a, b) => b.fraction - a.fraction)
    .slice(rank);
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

/** Ways to round on from a relaxed plan: from bold, many bars at once, to one bar, then the next best one bars. */
export function choices(relaxed: readonly PatternUse[], rest: Rest): Taken[] {
  const whole = wholeBars(relaxed, rest);
  const bold = whole.taken.length > 0 ? whole : roundedUp(relaxed, BOLD, 0, rest);
  const careful = CAREFUL.map((rank) => roundedUp(relaxed, 1, rank, rest));
  return [bold, ...careful].filter(({ taken }) => taken.length > 0);
}

/** Fraction of a bar from which a bold choice takes it whole. */
const BOLD = 0.6;
/** Ranks by fraction of the bars that a careful choice takes alone. */
const CAREFUL = [0, 1, 2] as const;
