import { describe, expect, test } from "vitest";
import { cutPlan } from "../../src/core/stock/cut-plan";
import { CUT_PLAN } from "../../src/functions/stock";
import { answer, first, testExamples } from "./call";

describe("worked cases", () => {
  testExamples({ CUT_PLAN });

  // By hand: n = floor((bar - trim + kerf) / (piece + kerf)), drop = bar - trim - n (piece + kerf), not below 0.
  test.each([
    [346, 1.2, 8, 212.4],
    [241, 1.2, 12, 83.6],
    [611, 1.2, 4, 541.2],
    [128, 1.6, 23, 9.2],
  ])("bar 3000, trim 10: pieces of %d with kerf %d", (length, kerf, perBar, drop) => {
    const plan = cutPlan({
      pieces: [{ length, quantity: perBar }],
      bars: [{ length: 3000 }],
      kerf,
      trim: 10,
    });
    expect(plan.rows).toEqual([{ pieces: [{ length, count: perBar }], bars: 1, drop, barLength: 3000 }]);
    const more = cutPlan({
      pieces: [{ length, quantity: perBar + 1 }],
      bars: [{ length: 3000 }],
      kerf,
      trim: 10,
    });
    expect(more.bars).toBe(2);
  });

  test("3 pieces of 0.1 from 0.3: binary fractions lose no piece", () => {
    const plan = cutPlan({
      pieces: [{ length: 0.1, quantity: 3 }],
      bars: [{ length: 0.3 }],
      kerf: 0,
      trim: 0,
    });
    expect(plan.bars).toBe(1);
    expect(plan.rows[0]?.drop).toBe(0);
  });

  test("the last piece that ends at the end of the bar needs no last cut: the drop is 0, not below", () => {
    // By hand: 2 × 499 + 1 × 2 = 1000.
    const plan = cutPlan({
      pieces: [{ length: 499, quantity: 2 }],
      bars: [{ length: 1000 }],
      kerf: 2,
      trim: 0,
    });
    expect(plan.rows[0]?.drop).toBe(0);
  });
});

describe("several lengths, prices and stock in hand", () => {
  test("cost decides where prices are given", () => {
    // By hand: 4 × 450 needs two bars of 1000 at 10 (20), or four of 500 at 6 (24).
    expect(answer(CUT_PLAN, 450, 4, [[1000], [500]], 0, 0, [[10], [6]])).toEqual([
      ["2 × 450 mm", 2, 2, 100, 1000],
      ["bars", 2, "", "", ""],
      ["lower bound", 20, "no plan costs less", "", ""],
      ["waste %", 10, "", "", ""],
      ["cost", 20, "", "", ""],
    ]);
  });

  test("a shorter bar that holds the same pieces is taken when bars are counted", () => {
    const plan = cutPlan({
      pieces: [{ length: 450, quantity: 1 }],
      bars: [{ length: 1000 }, { length: 500 }],
      kerf: 0,
      trim: 0,
    });
    expect(plan.rows.map(({ barLength }) => barLength)).toEqual([500]);
  });

  test("stock in hand is not exceeded, and a lack of it is said", () => {
    const pieces = [{ length: 450, quantity: 6 }];
    const plan = cutPlan({ pieces, bars: [{ length: 1000, inStock: 2 }, { length: 500 }], kerf: 0, trim: 0 });
    expect(plan.bars).toBe(4);
    expect(first(CUT_PLAN, 450, 6, 1000, 0, 0, null, 2)).toMatch(
      /^#N\/A the 2 bars in stock do not hold all the pieces/,
    );
  });

  test("off-cuts worth keeping are named and are not waste", () => {
    expect(answer(CUT_PLAN, 611, 4, 3000, null, null, null, null, 500)).toEqual([
      ["4 × 611 mm; keep 541.2 mm", 1, 4, 541.2, 3000],
      ["bars", 1, "", "", ""],
      ["lower bound", 1, "no plan needs fewer bars", "", ""],
      // By hand: trim 10 and four kerfs of 1.2 of 3000.
      ["waste %", expect.closeTo((100 * 14.8) / 3000, 9), "", "", ""],
    ]);
  });
});

describe("the work limit", () => {
  test("falls back on what was found so far and says so", () => {
    const pieces = Array.from({ length: 30 }, (_, index) => ({
      length: 181 + 29 * index,
      quantity: 1 + (index % 7),
    }));
    const order = { pieces, bars: [{ length: 3660 }], kerf: 3, trim: 0 };
    const short = cutPlan({ ...order, effort: 0.0001 });
    expect(short.isStopped || short.isProved).toBe(true);
    expect(short.bars).toBeGreaterThanOrEqual(cutPlan(order).bars);
  });

  test("the same order gives the same plan", () => {
    const pieces = [
      { length: 346, quantity: 28 },
      { length: 241, quantity: 44 },
      { length: 611, quantity: 14 },
    ];
    const order = { pieces, bars: [{ length: 3000 }, { length: 2400 }], kerf: 1.2, trim: 10 };
    expect(cutPlan(order)).toEqual(cutPlan({ ...order, pieces: [...pieces].reverse() }));
  });
});

describe("bad input", () => {
  test.each([
    [
      [3100, 2, 3000],
      /^#VALUE! a piece of 3100 mm is longer than the bar: 3000 mm less 10 mm trim leaves 2990 mm/,
    ],
    [[346, 28, 3000, -1], /^#VALUE! kerf: -1 mm given; give a length in mm, from 0 mm up to 20 mm/],
    [[[[346], [""]], [[28], [3]], 3000], /^#VALUE! row 2: length is empty/],
    [[[[346], [200]], [[28], [""]], 3000], /^#VALUE! row 2: quantity is empty/],
    [[[[346], [200], [100]], [[28], [3]], 3000], /^#VALUE! quantity: 2 cells given beside 3 rows/],
    [[346, 2.5, 3000], /^#VALUE! quantity: 2.5 given; give a whole number/],
    [[346, 2, [[3000], [2000]], null, null, [[30], [""]]], /^#VALUE! bar 2 has no price/],
    [[346, 2, ""], /^#VALUE! no bar length given/],
  ])("%j", (given, sentence) => {
    expect(first(CUT_PLAN, ...given)).toMatch(sentence);
  });

  test("rows left blank are no pieces", () => {
    expect(answer(CUT_PLAN, [[346], [""], [0]], [[28], [""], [0]], 3000)).toEqual(
      answer(CUT_PLAN, 346, 28, 3000),
    );
  });
});
