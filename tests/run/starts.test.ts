import { assert as holds, integer, property } from "fast-check";
import { binomialDistribution } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { chanceOfEnough, startsNeeded } from "../../src/core/run/starts";
import published from "./starts-needed.json";

/**
 * Upper tail of the binomial distribution of a general statistics library. The library stops its list
 * where the sum passes 1 - 1e-4, so it is read as a lower tail.
 */
function libraryChance(starts: number, good: number, yieldShare: number): number {
  const list = binomialDistribution(starts, yieldShare) ?? [];
  return 1 - list.slice(0, good).reduce((sum, chance) => sum + chance, 0);
}

/** The tail by whole-number binomial coefficients, for counts where these are exact. */
function exactChance(starts: number, good: number, yieldShare: number): number {
  let coefficient = 1n;
  let sum = 0;
  for (let k = 0; k <= starts; k += 1) {
    if (k > 0) coefficient = (coefficient * BigInt(starts - k + 1)) / BigInt(k);
    if (k >= good) sum += Number(coefficient) * yieldShare ** k * (1 - yieldShare) ** (starts - k);
  }
  return sum;
}

describe("starts needed", () => {
  it.each(published.rows as [number, number, number, number][])(
    "%i good at yield %f with confidence %f: %i",
    (good, yieldShare, confidence, starts) => {
      expect(startsNeeded(good, yieldShare, confidence)).toBe(starts);
    },
  );

  it("is the smallest number that reaches the confidence, by exact coefficients", () => {
    holds(
      property(
        integer({ min: 1, max: 40 }),
        integer({ min: 30, max: 99 }),
        integer({ min: 50, max: 99 }),
        (good, percentYield, percentSure) => {
          const [yieldShare, confidence] = [percentYield / 100, percentSure / 100];
          const starts = startsNeeded(good, yieldShare, confidence);
          expect(exactChance(starts, good, yieldShare)).toBeGreaterThanOrEqual(confidence - 1e-10);
          if (starts > good) {
            expect(exactChance(starts - 1, good, yieldShare)).toBeLessThan(confidence + 1e-10);
          }
        },
      ),
    );
  });

  it("does not lose a blade to rounding where the chance equals the confidence", () => {
    // One blade at yield 0.9 is good with chance 0.9: by definition.
    expect(startsNeeded(1, 0.9, 0.9)).toBe(1);
    expect(startsNeeded(2, 0.9, 0.81)).toBe(2);
    expect(startsNeeded(12, 1, 0.99)).toBe(12);
  });

  it("holds for large runs, where the first terms underflow", () => {
    // Normal approximation of the binomial (de Moivre-Laplace): mean S·y, standard deviation √(S·y·(1-y)).
    const starts = startsNeeded(10_000, 0.5, 0.975);
    const z = (starts * 0.5 - 10_000) / Math.sqrt(starts * 0.25);
    expect(z).toBeCloseTo(1.96, 1);
  });

  it.each([
    [0, 0.9, 0.9, "good: 0 given"],
    [-3, 0.9, 0.9, "good: -3 given"],
    [2.5, 0.9, 0.9, "good: 2.5 given"],
    [10_001, 0.9, 0.9, "good: 10001 given"],
    [24, 92, 0.9, "yield: 92 given; was 0.92 meant?"],
    [24, 0, 0.9, "yield: 0 given"],
    [24, -0.1, 0.9, "yield: -0.1 given"],
    [24, 0.92, 90, "confidence: 90 given; was 0.9 meant?"],
    [24, 0.92, 1, "confidence: 1 given"],
    [24, Number.NaN, 0.9, "yield: NaN given"],
  ])("refuses %f good, yield %f, confidence %f", (good, yieldShare, confidence, sentence) => {
    expect(() => startsNeeded(good, yieldShare, confidence)).toThrow(sentence);
  });
});

describe("chance of enough", () => {
  // Binomial sums at N 24, y 0.92 and N 10, 20, y 0.90: recomputed with exact coefficients, see exactChance.
  it.each([
    [27, 24, 0.92, 0.834214],
    [28, 24, 0.92, 0.931387],
    [29, 24, 0.92, 0.97492],
    [12, 10, 0.9, 0.88913],
    [13, 10, 0.9, 0.965839],
    [23, 20, 0.9, 0.807269],
    [24, 20, 0.9, 0.914925],
    // Published: 10 made at 12 % rejects, no more than 2 rejects 0.891 (math.techqa.club 4116938).
    [10, 8, 0.88, 0.891318],
    // Published: acceptance of 7 with at most 1 bad at 6 % bad, 0.9382 (novelanswer.com).
    [7, 6, 0.94, 0.938223],
  ])("%i starts, %i good, yield %f: %f", (starts, good, yieldShare, chance) => {
    expect(chanceOfEnough(starts, good, yieldShare)).toBeCloseTo(chance, 6);
    expect(exactChance(starts, good, yieldShare)).toBeCloseTo(chance, 6);
  });

  it("agrees with the distribution of simple-statistics", () => {
    for (const starts of [5, 12, 28, 60]) {
      for (const yieldShare of [0.5, 0.8, 0.92]) {
        for (let good = 1; good <= starts; good += 3) {
          const reference = libraryChance(starts, good, yieldShare);
          expect(Math.abs(chanceOfEnough(starts, good, yieldShare) - reference)).toBeLessThan(1.001e-4);
        }
      }
    }
  });

  it("is 0 with fewer starts than wanted, 1 with a perfect yield, never above 1", () => {
    expect(chanceOfEnough(9, 10, 0.9)).toBe(0);
    expect(chanceOfEnough(10, 10, 1)).toBe(1);
    expect(chanceOfEnough(5000, 10, 0.5)).toBeLessThanOrEqual(1);
  });

  it("refuses a part of a blade", () => {
    expect(() => chanceOfEnough(2.5, 1, 0.9)).toThrow("starts: 2.5 given");
  });
});
