import { describe, expect, test } from "vitest";
import { bestStarts } from "../../src/core/run/best-starts";
import { askIfPercent, chanceOfEnough, startsNeeded } from "../../src/core/run/starts";

// The limits are those that the sentences print; the figures are powers worked by hand.

describe("ends of what is accepted", () => {
  test("a yield of 0.01 and of 1 is one, 0.0099 and 1.01 are not", () => {
    expect(chanceOfEnough(1, 1, 0.01)).toBeCloseTo(0.01, 12);
    expect(chanceOfEnough(3, 3, 1)).toBe(1);
    expect(() => chanceOfEnough(1, 1, 0.0099)).toThrow("give the share that comes out good, 0.01 to 1");
    expect(() => chanceOfEnough(1, 1, 1.01)).toThrow("was 0.0101 meant?");
  });

  test("good blades from 1 to 10 000, whole", () => {
    expect(startsNeeded(1, 1, 0.9)).toBe(1);
    expect(startsNeeded(10_000, 1, 0.9)).toBe(10_000);
    for (const good of [0, -1, 10_001, 1.5]) {
      expect(() => startsNeeded(good, 0.9, 0.9)).toThrow("give a whole number of blades from 1 to 10000");
    }
  });

  test("a confidence of 0 or 1 has no answer, 92 is asked about, 1.5 too", () => {
    for (const confidence of [0, 1, -0.1, 0.9999999, 1 - 1e-16]) {
      expect(() => startsNeeded(5, 0.9, confidence)).toThrow("above 0, up to 0.999999");
    }
    expect(() => startsNeeded(5, 0.9, 92)).toThrow("confidence: 92 given; was 0.92 meant?");
    expect(() => startsNeeded(5, 0.9, 1.5)).toThrow("was 0.015 meant?");
  });

  test("starts are a whole number, 0 among them", () => {
    expect(chanceOfEnough(0, 1, 0.9)).toBe(0);
    for (const starts of [-1, 2.5]) {
      expect(() => chanceOfEnough(starts, 1, 0.9)).toThrow(`starts: ${starts} given`);
    }
  });

  test("a share of 1 to 100 may be a percentage, more may not", () => {
    expect(askIfPercent(100)).toBe("was 1 meant?");
    expect(askIfPercent(101)).toBe("give a fraction from 0 to 1");
    expect(askIfPercent(1)).toBe("give a fraction from 0 to 1");
  });
});

test("the surest answer of the largest run comes to an end", () => {
  // Found by the long fuzz: nearer to certain than this the sum of a million rounded terms never came there.
  // A normal approximation with z = 4.753 puts it near 1 + 4.753 × √(0.99 / 10 000) times the mean of a million.
  const starts = startsNeeded(10_000, 0.01, 0.999999);
  expect(Math.abs(starts / (1_000_000 * (1 + 4.753 * Math.sqrt(0.99 / 10_000))) - 1)).toBeLessThan(0.001);
});

test("the dearest order of the lowest yield comes to an end, its best number near where a start no longer pays", () => {
  // Found by the long fuzz: summing anew for each start took minutes. A start pays while the chance of being short
  // is over cost ÷ (yield × price) = 1e-9, which a normal approximation puts 6 standard deviations over the mean.
  const { starts } = bestStarts({ good: 10_000, yield: 0.01, cost: 0.01, price: 1e9, spare: 0, penalty: 0 });
  expect(Math.abs(starts / (1_000_000 * (1 + 6 * Math.sqrt(0.99 / 10_000))) - 1)).toBeLessThan(0.002);
});

test("more starts than rounding can tell from certain are certain", () => {
  expect(chanceOfEnough(100_000, 1000, 0.5)).toBe(1);
  expect(chanceOfEnough(10, 10, 1)).toBe(1);
});

test("a confidence that is met exactly needs no further start", () => {
  // One blade at a yield of 0.5: two starts give 1 - 0.5² = 0.75 exactly.
  expect(startsNeeded(1, 0.5, 0.75)).toBe(2);
  expect(startsNeeded(1, 0.5, 0.75 + 1e-6)).toBe(3);
});
