import { describe, expect, test } from "vitest";
import { cutPlan } from "../../src/core/stock/cut-plan";
import { randomFrom } from "./brute-force";
import { triplets, uniform } from "./drawn-orders";

function plan(lengths: readonly number[], bar: number) {
  return cutPlan({
    pieces: lengths.map((length) => ({ length, quantity: 1 })),
    bars: [{ length: bar }],
    kerf: 0,
    trim: 0,
  });
}

describe("within 2 % of the optimum", () => {
  // No plan needs fewer bars than the length of all pieces fills.
  test.each([120, 250, 500])("%d uniform pieces", (count) => {
    for (const seed of [1, 2]) {
      const lengths = uniform(count, 1000 * seed + count);
      const filled = Math.ceil(lengths.reduce((sum, length) => sum + length, 0) / 150);
      const { bars, bound } = plan(lengths, 150);
      expect(bound).toBeGreaterThanOrEqual(filled);
      expect(bars).toBeLessThanOrEqual(1.02 * bound);
    }
  });

  test.each([60, 120, 249, 501])("%d pieces in triplets", { timeout: 60_000 }, (count) => {
    for (const seed of [1, 2]) {
      const { bars, bound } = plan(triplets(count, 1000 * seed + count), 1000);
      expect(bound).toBeLessThanOrEqual(count / 3);
      expect(bars).toBeLessThanOrEqual((1.02 * count) / 3);
    }
  });
});

describe("priced orders", () => {
  const BARS = [
    { length: 3660, price: 41.3 },
    { length: 3000, price: 35.9 },
    { length: 2440, price: 30.1, inStock: 5 },
    { length: 1830, price: 23.7 },
  ];

  test("cost within 0.5 % of the bound on twenty orders", { timeout: 60_000 }, () => {
    for (let seed = 1; seed <= 20; seed += 1) {
      const random = randomFrom(seed);
      const pieces = Array.from({ length: 20 }, () => ({
        length: 180 + Math.floor(random() * 901),
        quantity: 1 + Math.floor(random() * 10),
      }));
      const { cost = 0, bound } = cutPlan({ pieces, bars: BARS, kerf: 3, trim: 10 });
      expect(cost, `seed ${seed}`).toBeGreaterThanOrEqual(bound);
      expect(cost, `seed ${seed}`).toBeLessThanOrEqual(1.005 * bound);
    }
  });

  test("the bound is a cost that bars can come to, by hand", () => {
    // 3 × 900 from bars of 1000 at 5 and 500 at 3: three long bars, 15; 2.7 bars of length alone would be 13.50, and
    // the next cost of bars with 2,700 mm of room is 3 × 5, as 2 × 5 + 3 has 2,500.
    const order = { pieces: [{ length: 900, quantity: 3 }], kerf: 0, trim: 0 };
    const { cost, bound, isProved } = cutPlan({
      ...order,
      bars: [
        { length: 1000, price: 5 },
        { length: 500, price: 3 },
      ],
    });
    expect([cost, bound, isProved]).toEqual([15, 15, true]);
  });
});
