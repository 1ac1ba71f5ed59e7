import { describe, expect, test } from "vitest";
import type { CutRequest } from "../../src/core/stock/cut-order";
import { type CutPlan, cutPlan } from "../../src/core/stock/cut-plan";
import { firstFitBars, leastCost, randomFrom } from "./brute-force";

/** Checks the plan itself: every piece cut exactly as often as wanted, every bar long enough. */
function expectSound(plan: CutPlan, { pieces, kerf = 1.2, trim = 10 }: CutRequest): void {
  const wanted = new Map<number, number>();
  for (const { length, quantity } of pieces) wanted.set(length, (wanted.get(length) ?? 0) + quantity);
  const cut = new Map<number, number>();
  for (const row of plan.rows) {
    let used = trim - kerf;
    for (const { length, count } of row.pieces) {
      cut.set(length, (cut.get(length) ?? 0) + count * row.bars);
      used += count * (length + kerf);
    }
    expect(used).toBeLessThanOrEqual(row.barLength + 1e-6);
  }
  expect(new Map([...cut].sort())).toEqual(new Map([...wanted].sort()));
}

/** 200 orders of one bar length, drawn once and for all by their seeds. */
function instance(seed: number): CutRequest {
  const random = randomFrom(seed);
  const kinds = [5, 15, 15, 40][seed % 4] ?? 5;
  const pieces = Array.from({ length: kinds }, () => ({
    length: 180 + Math.floor(random() * 901),
    quantity: 1 + Math.floor(random() * 20),
  }));
  return { pieces, bars: [{ length: 3660 }], kerf: 3, trim: 0 };
}

describe("200 frozen orders", () => {
  test("optimum proved on at least 95 %, never worse than first-fit decreasing", { timeout: 120_000 }, () => {
    const seeds = Array.from({ length: 200 }, (_, index) => index + 1);
    const results = seeds.map((seed) => {
      const order = instance(seed);
      const plan = cutPlan(order);
      expectSound(plan, order);
      const simple = firstFitBars(order.pieces, 3660, 3);
      expect(plan.bars, `seed ${seed}`).toBeLessThanOrEqual(simple);
      expect(plan.bound).toBeLessThanOrEqual(plan.bars);
      return { isProved: plan.isProved, isBetter: plan.bars < simple };
    });
    const proved = results.filter(({ isProved }) => isProved).length;
    const better = results.filter(({ isBetter }) => isBetter).length;
    console.info(`cut plans: ${proved} of 200 proved, ${better} better than first-fit decreasing`);
    expect(proved).toBeGreaterThanOrEqual(190);
  });
});

describe("small orders against an exhaustive search", () => {
  test("one length of bar", () => {
    for (let seed = 1; seed <= 150; seed += 1) {
      const random = randomFrom(seed);
      const pieces = Array.from({ length: 2 + Math.floor(random() * 3) }, () => ({
        length: 100 + Math.floor(random() * 400),
        quantity: 1 + Math.floor(random() * 2),
      }));
      const order = { pieces, bars: [{ length: 1000 }], kerf: 2, trim: 10 };
      const plan = cutPlan(order);
      expectSound(plan, order);
      const list = pieces.flatMap(({ length, quantity }) => new Array<number>(quantity).fill(length));
      const bars = [{ length: 1000, price: 1, inStock: Number.POSITIVE_INFINITY }];
      const optimum = leastCost(list, bars, 2, 10);
      expect(plan.bars, `seed ${seed}`).toBe(optimum);
      expect(plan.bound).toBeLessThanOrEqual(optimum);
    }
  });

  test("several lengths with prices, one of them limited", () => {
    let met = 0;
    for (let seed = 1; seed <= 150; seed += 1) {
      const random = randomFrom(1000 + seed);
      const pieces = Array.from({ length: 2 + Math.floor(random() * 3) }, () => ({
        length: 100 + Math.floor(random() * 400),
        quantity: 1 + Math.floor(random() * 2),
      }));
      const bars = [
        { length: 1000, price: 10 },
        { length: 700, price: 6 + Math.floor(random() * 4) },
        { length: 520, price: 4, inStock: 1 + Math.floor(random() * 3) },
      ];
      const order = { pieces, bars, kerf: 2, trim: 0 };
      const plan = cutPlan(order);
      expectSound(plan, order);
      const list = pieces.flatMap(({ length, quantity }) => new Array<number>(quantity).fill(length));
      const endless = bars.map((bar) => ({ inStock: Number.POSITIVE_INFINITY, ...bar }));
      const optimum = leastCost(list, endless, 2, 0);
      expect(plan.bound, `bound, seed ${seed}`).toBeLessThanOrEqual(optimum);
      if (plan.isProved) expect(plan.cost, `seed ${seed}`).toBe(optimum);
      expect(plan.cost ?? 0).toBeGreaterThanOrEqual(optimum);
      if (plan.cost === optimum) met += 1;
      const used = plan.rows.filter(({ barLength }) => barLength === 520);
      expect(used.reduce((sum, row) => sum + row.bars, 0)).toBeLessThanOrEqual(bars[2]?.inStock ?? 0);
    }
    console.info(`priced cut plans: ${met} of 150 at the optimum`);
    expect(met).toBeGreaterThanOrEqual(135);
  });
});
