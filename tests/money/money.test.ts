import fc from "fast-check";
import { binomialDistribution } from "simple-statistics";
import { describe, expect, test } from "vitest";
import { roundMoney } from "../../src/core/money/rounding";
import { bestStarts } from "../../src/core/run/best-starts";
import { type LearningModel, nthHours, totalHours } from "../../src/core/run/learning";
import { yieldFloor } from "../../src/core/run/yield-floor";
import * as money from "../../src/functions/money";
import * as run from "../../src/functions/run";
import { answer, first, testExamples } from "../stock/call";
import { PRICE_TABLE } from "./price-table";

const { LOT_COST, OUTSIDE_CHARGE, PRICE_AT_MARGIN, PRICE_AT_MARKUP, ROUND_MONEY } = money;
const { CHANCE_OF_ENOUGH, LEARNING, STARTS_BY_PROFIT, YIELD_FLOOR } = run;

describe("examples of the declarations", () => {
  testExamples({
    CHANCE_OF_ENOUGH,
    LEARNING,
    LOT_COST,
    OUTSIDE_CHARGE,
    PRICE_AT_MARGIN,
    PRICE_AT_MARKUP,
    ROUND_MONEY,
    STARTS_BY_PROFIT,
    YIELD_FLOOR,
  });
});

/** Chances of 0, 1, 2 … good of `starts`, one blade after the other: the definition, no formula. */
function chances(starts: number, share: number): number[] {
  let known = [1];
  for (let blade = 0; blade < starts; blade += 1) {
    known = [...known, 0].map((chance, good) => chance * (1 - share) + (known[good - 1] ?? 0) * share);
  }
  return known;
}

function atLeast(good: number, tried: number, share: number): number {
  return chances(tried, share)
    .slice(good)
    .reduce((sum, chance) => sum + chance, 0);
}

describe("learning", () => {
  // Table of n = 2, 5, 10, 20, 50, 100 by direct summation: unit, unit total, average total of the first hour.
  test.each([
    [5, 0.8, 0.5956, 3.7377, 2.9782],
    [10, 0.85, 0.5828, 7.1161, 5.8282],
    [20, 0.9, 0.6342, 14.6078, 12.6844],
    [50, 0.8, 0.2838, 20.1217, 14.1914],
    [100, 0.8, 0.2271, 32.6508, 22.7062],
    [100, 0.95, 0.7112, 76.5864, 71.1212],
  ])("n %d at %d", (n, rate, unit, unitTotal, averageTotal) => {
    expect(first(LEARNING, 1, n, rate, "unit")).toBeCloseTo(unit, 4);
    expect(first(LEARNING, 1, n, rate, "Crawford", "total")).toBeCloseTo(unitTotal, 4);
    expect(first(LEARNING, 1, n, rate, "average", "total")).toBeCloseTo(averageTotal, 4);
  });

  // Learning-curve reference pages (rdocumentation.org, learningCurve 1.1.2).
  test.each([
    [0.8, 21.13225],
    [0.9, 48.00243],
    [0.95, 69.9564],
  ])("125th unit of 100 hours at %d", (rate, hours) => {
    expect(first(LEARNING, 100, 125, rate, "unit")).toBeCloseTo(hours, 5);
  });

  test("totals are the sums of the pieces, far beyond the directly summed ones", () => {
    const model = fc.constantFrom<LearningModel>("unit", "average");
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 3000 }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        model,
        (n, rate, which) => {
          const curve = { first: 2.4, rate, model: which };
          let sum = 0;
          for (let piece = 1; piece <= n; piece += 1) sum += nthHours(curve, piece);
          expect(Math.abs(totalHours(curve, n) - sum)).toBeLessThanOrEqual(1e-9 * sum);
        },
      ),
      { numRuns: 60 },
    );
  });

  test.each([
    [[2, 5, 85, "unit"], /^#VALUE! rate: 85 given; was 0.85 meant\?/],
    [[2, 5, 0.85], /^#VALUE! model is empty: give "unit" or "average"/],
    [[2, 5, 0.85, "both"], /^#VALUE! model "both" given; give "unit" or "average"/],
    [[-2, 5, 0.85, "unit"], /^#VALUE! first h: -2 h given/],
    [[2, 5.5, 0.85, "unit"], /^#VALUE! n: 5.5 given; give a whole number/],
  ])("%j", (given, sentence) => {
    expect(first(LEARNING, ...given)).toMatch(sentence);
  });
});

describe("starts by profit", () => {
  test("no other number of starts gains more, by full expectation, blade by blade", () => {
    const amount = (min: number, max: number) => fc.integer({ min, max });
    const order = fc.record({
      good: fc.integer({ min: 1, max: 12 }),
      yield: fc.integer({ min: 50, max: 99 }).map((percent) => percent / 100),
      cost: amount(300, 600),
      price: amount(500, 1500),
      spare: amount(0, 300),
      penalty: amount(0, 900),
    });
    fc.assert(
      fc.property(order, (one) => {
        const expected = (starts: number) =>
          chances(starts, one.yield).reduce((sum, chance, good) => {
            const sold = Math.min(good, one.good);
            const over = good - sold;
            const missing = one.good - sold;
            return sum + chance * (one.price * sold + one.spare * over - one.penalty * missing);
          }, 0) -
          one.cost * starts;
        const { starts, gain } = bestStarts(one);
        expect(gain).toBeCloseTo(expected(starts), 6);
        const gains = Array.from({ length: 40 }, (_, count) => expected(count));
        expect(gain).toBeGreaterThanOrEqual(Math.max(...gains) - 1e-6);
      }),
      { numRuns: 80 },
    );
  });

  test.each([
    [[4, 92, 420, 900], /^#VALUE! yield: 92 given; was 0.92 meant\?/],
    [[4, 0.85, 420, 900, 600, 150], /^#VALUE! spares at 600 pay for themselves/],
    [[4, 0.85, 420, 900, 2000, 150], /^#VALUE! spare 2000 is more than price and penalty together, 1050/],
    [[4, 0.85, "420 EUR", 900], /^#VALUE! cost: "420 EUR"/],
  ])("%j", (given, sentence) => {
    expect(first(STARTS_BY_PROFIT, ...given)).toMatch(sentence);
  });

  test("where no start pays, none is started", () => {
    // By hand: 0.85 × 400 is less than 420 and nothing is lost by a missing blade.
    expect(answer(STARTS_BY_PROFIT, 4, 0.85, 420, 400)).toEqual([[0, 0]]);
  });
});

describe("yield floor", () => {
  // Two-sided 95 % Clopper-Pearson limits from statistics texts: 18 of 20 and 95 of 100.
  test.each([
    [18, 20, 0.68302],
    [95, 100, 0.88717],
  ])("%d of %d", (good, tried, floor) => {
    expect(first(YIELD_FLOOR, good, tried, 0.975)).toBeCloseTo(floor, 5);
  });

  test("at the floor, so many good or more have just the chance that the confidence leaves", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.nat(),
        fc.constantFrom(0.8, 0.9, 0.95, 0.99),
        (tried, pick, confidence) => {
          const good = 1 + (pick % tried);
          const floor = yieldFloor(good, tried, confidence);
          expect(atLeast(good, tried, floor)).toBeCloseTo(1 - confidence, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("none good is no floor; more good than tried is a slip", () => {
    expect(first(YIELD_FLOOR, 0, 50)).toBe(0);
    expect(first(YIELD_FLOOR, 51, 50)).toMatch(/^#VALUE! good 51 is more than tried, 50/);
  });

  test("the chance of enough agrees with the definition, and with a library that stops at 0.9999", () => {
    for (const [starts, good, share] of [
      [27, 24, 0.92],
      [12, 10, 0.9],
      [24, 20, 0.9],
      [60, 40, 0.7],
    ] as const) {
      const chance = first(CHANCE_OF_ENOUGH, starts, good, share) as number;
      expect(chance).toBeCloseTo(atLeast(good, starts, share), 12);
      const library = binomialDistribution(starts, share) ?? [];
      const sum = library.slice(good).reduce((total, each) => total + each, 0);
      expect(Math.abs(chance - sum)).toBeLessThan(2e-4);
    }
  });
});

describe("price table by hand", () => {
  test.each(PRICE_TABLE)("%d blades", (n, unitCost, price) => {
    const hours = first(LEARNING, 1.5, n, 0.9, "unit", "total");
    const outside = first(OUTSIDE_CHARGE, n, 9, 150);
    const unit = (first(LOT_COST, 120, hours, 45, 14, outside, n) as number) / n;
    expect(first(ROUND_MONEY, unit)).toBe(unitCost);
    expect(first(ROUND_MONEY, first(PRICE_AT_MARGIN, unit, 0.35))).toBe(price);
  });
});

describe("margin and markup", () => {
  test("40 % margin is 66.667 % markup, 40 % markup is 28.571 % margin", () => {
    // By hand: k = m / (1 - m).
    expect(first(PRICE_AT_MARGIN, 100, 0.4)).toBeCloseTo(first(PRICE_AT_MARKUP, 100, 2 / 3) as number, 9);
    expect(first(PRICE_AT_MARKUP, 100, 0.4)).toBeCloseTo(first(PRICE_AT_MARGIN, 100, 2 / 7) as number, 9);
    expect(first(PRICE_AT_MARGIN, 100, 40)).toMatch(/^#VALUE! margin: 40 given; was 0.4 meant\?/);
    expect(first(PRICE_AT_MARGIN, 100, 1)).toMatch(/^#VALUE! margin: 1 given/);
  });
});

describe("rounding of money", () => {
  // By hand on the decimal as typed; half even as IEEE 754 and accounting texts define it.
  test.each([
    [1.005, 0.01, "half up", 1.01],
    [-1.005, 0.01, "half up", -1.01],
    [8.345, 0.01, "half even", 8.34],
    [8.355, 0.01, "half even", 8.36],
    [1.001, 0.01, "up", 1.01],
    [1.01, 0.01, "up", 1.01],
    [1.009, 0.01, "down", 1],
    [0.3, 0.1, "down", 0.3],
    [0.7, 0.1, "up", 0.7],
    [12.34, 0.05, "half up", 12.35],
    [1_234_567.895, 0.01, "half up", 1_234_567.9],
    [297.88, 1, "half up", 298],
  ] as const)("%d to %d, %s", (value, step, rule, rounded) => {
    expect(roundMoney(value, step, rule)).toBe(rounded);
  });

  test("agrees with decimal arithmetic on every amount of three decimals", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), (thousandths) => {
        const wanted = Math.floor((thousandths + 5) / 10) / 100;
        expect(roundMoney(thousandths / 1000, 0.01, "half up")).toBe(wanted);
      }),
    );
  });

  test("an unknown rule is refused", () => {
    expect(first(ROUND_MONEY, 1.005, 0.01, "banker")).toMatch(/^#VALUE! rule "banker" given; give "half up"/);
  });
});
