import { describe, expect, test } from "vitest";
import { furnaceLoads } from "../../src/core/run/loads";
import { cutPlan } from "../../src/core/stock/cut-plan";
import { evaluate } from "../../src/functions/evaluate";
import { LOADS } from "../../src/functions/run";
import { leastCost, randomFrom } from "./brute-force";

const KERF = 1;
const TRIM = 5;

/** 200 small orders: 2 to 4 lengths of bar, 2 to 5 kinds, up to 10 pieces. */
const ORDERS = Array.from({ length: 200 }, (_, seed) => {
  const random = randomFrom(seed + 77);
  const upTo = (most: number) => 1 + Math.floor(random() * most);
  const bars = Array.from({ length: 1 + upTo(3) }, () => ({ length: 500 + upTo(1200) }));
  const pieces = Array.from({ length: 1 + upTo(4) }, () => ({ length: 60 + upTo(380), quantity: upTo(2) }));
  return { bars, pieces, kerf: KERF, trim: TRIM };
});

const stockOf = (plan: ReturnType<typeof cutPlan>) =>
  plan.rows.reduce((sum, row) => sum + row.bars * row.barLength, 0);

describe("CUT_PLAN where bars are counted", () => {
  test("takes the least stock among the fewest bars, as an exhaustive search does", () => {
    // A bar counts a million and its length, so that the search finds the fewest bars and then the least length.
    const worse = ORDERS.filter((order) => {
      const plan = cutPlan(order);
      const all = order.pieces.flatMap(({ length, quantity }) => new Array<number>(quantity).fill(length));
      const priced = order.bars.map(({ length }) => ({ length, price: 1e6 + length, inStock: 99 }));
      return plan.bars * 1e6 + stockOf(plan) !== leastCost(all, priced, KERF, TRIM);
    });
    expect(worse).toEqual([]);
  });

  test("does not depend on the order of bars and pieces", () => {
    for (const order of ORDERS) {
      const turned = { ...order, bars: [...order.bars].reverse(), pieces: [...order.pieces].reverse() };
      expect(cutPlan(turned).rows).toEqual(cutPlan(order).rows);
    }
  });

  test("a piece more never needs a bar less", () => {
    for (const order of ORDERS) {
      const [first, ...rest] = order.pieces;
      if (first === undefined) continue;
      const more = { ...order, pieces: [{ ...first, quantity: first.quantity + 1 }, ...rest] };
      expect(cutPlan(more).bars).toBeGreaterThanOrEqual(cutPlan(order).bars);
    }
  });

  test("more than 50 lengths of bar are refused with a sentence", () => {
    const bars = Array.from({ length: 51 }, (_, index) => ({ length: 3000 + index }));
    expect(() => cutPlan({ pieces: [{ length: 100, quantity: 1 }], bars, kerf: 1, trim: 1 })).toThrow(
      "51 bar lengths given; one plan takes up to 50: leave out those that differ little",
    );
  });
});

test("LOADS of more rows than a sheet has is refused with a sentence", () => {
  const lines = Array.from({ length: 11 }, () => ({ recipe: "52100", pieces: 100_000, mass: 0.2 }));
  expect(() => furnaceLoads(lines, { pieces: 1, mass: Number.POSITIVE_INFINITY })).toThrow(
    "1100000 loads come of this, more than the 1048576 rows of a sheet: give what the furnace holds at a time, or part the run",
  );
  expect(furnaceLoads(lines.slice(1), { pieces: 1, mass: Number.POSITIVE_INFINITY })).toHaveLength(1_000_000);
});

test("LOADS takes 100,000 lines with pieces and says so of more; lines without pieces do not count", () => {
  const line = { recipe: "52100", pieces: 1, mass: 0.2 };
  const limits = { pieces: 7, mass: Number.POSITIVE_INFINITY };
  expect(
    furnaceLoads(
      Array.from({ length: 100_000 }, () => line),
      limits,
    ),
  ).toHaveLength(14_286); // 100,000 / 7 = 14,285.7
  expect(() =>
    furnaceLoads(
      Array.from({ length: 100_001 }, () => line),
      limits,
    ),
  ).toThrow(
    "100001 lines with pieces given; give 100000 at most: lines of one recipe and one mass can stand as one, their count added",
  );
  const column = (last: number | null) => [
    ["a", 3, 0.2],
    ...Array.from({ length: 100_000 }, () => ["", last, ""]),
  ];
  const asked = (rows: readonly (readonly unknown[])[]) =>
    evaluate(LOADS, [...[0, 1, 2].map((at) => rows.map((row) => [row[at]])), 7]);
  expect(asked(column(null))).toEqual([[1, "a", 3, 0.6]]);
  expect(String(asked(column(0))[0]?.[1])).toBe("a");
});
