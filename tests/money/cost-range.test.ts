import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { costRange, type UncertainLot } from "../../src/core/money/cost-range";
import {
  chanceOfSum,
  chanceUpTo,
  scaled,
  slices,
  spread,
  type Triangle,
} from "../../src/core/money/triangle";
import { startsBetween, yieldEnough } from "../../src/core/run/binomial";
import { chanceOfEnough, startsNeeded } from "../../src/core/run/starts";

const triangle = (min: number, max: number): fc.Arbitrary<Triangle> =>
  fc
    .tuple(...[0, 1, 2].map(() => fc.double({ min, max, noNaN: true })))
    .map((three) => three.sort((a, b) => a - b))
    .map(([low = min, likely = min, high = min]) => ({ low, likely, high }));

describe("sum of two triangles", () => {
  // Outside figure: the mean over 4,000 slices of one of them, which comes near the integral from below and above.
  test("is the integral", () => {
    fc.assert(
      fc.property(
        triangle(0, 10),
        triangle(0, 10),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (a, b, share) => {
          fc.pre(spread(a) > 1e-3 && spread(b) > 1e-3);
          const value = a.low + b.low + share * (spread(a) + spread(b));
          const others = slices(a, 4000);
          const mean = others.reduce((sum, other) => sum + chanceUpTo(b, value - other), 0) / others.length;
          expect(chanceOfSum(a, b, value)).toBeCloseTo(mean, 3);
        },
      ),
      { numRuns: 200 },
    );
  });

  test("by hand: two of 0, 1, 2 come to no more than their middle in half of all cases, to 1 in a 24th", () => {
    // Four uniform figures of 0 to 1: the chance of a sum up to 1 is 1/4!.
    const two = { low: 0, likely: 1, high: 2 };
    expect(chanceOfSum(two, two, 2)).toBeCloseTo(1 / 2, 14);
    expect(chanceOfSum(two, two, 1)).toBeCloseTo(1 / 24, 14);
    expect(chanceOfSum(two, two, 3)).toBeCloseTo(23 / 24, 14);
  });
});

describe("yield at which a number of starts is enough", () => {
  const sure = fc.double({ min: 0.5, max: 0.999, noNaN: true });

  test("just above it the starts are enough, just below they are not", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 0, max: 200 }),
        sure,
        (good, bad, asked) => {
          const share = yieldEnough(good + bad, good, asked, 0.01, 1);
          fc.pre(share > 0.02 && share < 0.999999);
          expect(chanceOfEnough(good + bad, good, share + 1e-7)).toBeGreaterThan(asked);
          expect(chanceOfEnough(good + bad, good, share - 1e-7)).toBeLessThan(asked);
        },
      ),
    );
  });

  test("the starts between two are those that STARTS counts", () => {
    const share = fc.double({ min: 0.05, max: 0.99, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2000 }), share, sure, (good, yieldShare, asked) => {
        const starts = startsNeeded(good, yieldShare, asked);
        expect(startsBetween(good, yieldShare, asked, good, 3 * starts + 50)).toBe(starts);
      }),
    );
  });
});

/** Chance of a cost by what stood here before: labour or material in 64 slices. */
function chanceInSlices(lot: UncertainLot): (cost: number) => number {
  const labour = scaled(lot.hours, lot.hourRate);
  const [wide, narrow] =
    spread(labour) > spread(lot.material) ? [labour, lot.material] : [lot.material, labour];
  const counts = new Map<number, number>();
  for (const share of slices(lot.yieldShare, 2000)) {
    const starts = startsNeeded(lot.good, share, lot.confidence);
    counts.set(starts, (counts.get(starts) ?? 0) + 1 / 2000);
  }
  const others = slices(narrow, 64);
  const within = (room: number) =>
    others.reduce((sum, other) => sum + chanceUpTo(wide, room - other), 0) / 64;
  return (cost) =>
    [...counts].reduce(
      (sum, [count, share]) => sum + share * within((cost * lot.good - lot.lotCost) / count),
      0,
    );
}

/** Every bound by halving. */
function byHalving(lot: UncertainLot, chance: number, from: number, to: number): number {
  const chanceUpToCost = chanceInSlices(lot);
  let [low, high] = [from, to];
  for (let step = 0; step < 50; step += 1) {
    const cost = (low + high) / 2;
    if (chanceUpToCost(cost) < chance) low = cost;
    else high = cost;
  }
  return high;
}

test("the band is that of slices and halving to 0.2 %", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 60 }),
      triangle(0.6, 0.99),
      triangle(1, 12),
      triangle(10, 80),
      (good, yieldShare, hours, material) => {
        const lot = { good, yieldShare, hours, hourRate: 45, material, lotCost: 200, confidence: 0.9 };
        const { low, likely, high, best, worst } = costRange(lot);
        const tolerance = 0.002 * worst;
        const bottom = Math.min(likely, byHalving(lot, 0.05, best, worst));
        const top = Math.max(likely, byHalving(lot, 0.95, best, worst));
        expect(Math.abs(low - bottom)).toBeLessThan(tolerance);
        expect(Math.abs(high - top)).toBeLessThan(tolerance);
      },
    ),
    { numRuns: 60 },
  );
});
