import { describe, expect, test } from "vitest";
import { COST_RANGE, PRICE_BREAKS } from "../../src/functions/money";
import { HISTORY } from "../../src/functions/run";
import { answer, first } from "../stock/call";
import { PRICE_TABLE } from "./price-table";

describe("price breaks", () => {
  test.each(PRICE_TABLE)("%d pieces", (quantity, unitCost, price) => {
    const [row = []] = answer(PRICE_BREAKS, quantity, 120, 1.5, 0.9, "unit", 45, 14, 9, 150, 0, 0.35);
    expect(row[5]).toBeCloseTo(unitCost, 2);
    expect(row[6]).toBe(price);
  });

  test("pieces lost on the way are paid for by the good ones", () => {
    // 24 good at 0.92 take 28 starts: 28 × (2 h × 10 + 5) = 700 over 24.
    const [row = []] = answer(PRICE_BREAKS, 24, 0, 2, 1, "unit", 10, 5, null, null, null, null, null, 0.92);
    expect(row[1]).toBe(28);
    expect(row[5]).toBeCloseTo(700 / 24, 9);
  });

  test("a bad quantity spoils its own row", () => {
    const rows = answer(PRICE_BREAKS, [[5], [2.5], [10]], 0, 1, 1, "unit", 10, 5);
    expect(rows[1]?.[5]).toMatch(/^#VALUE! quantity: 2.5 given/);
    expect(rows[2]?.[5]).toBe(15);
  });
});

/** A plain linear congruential generator (Numerical Recipes' constants), so that the check repeats. */
function* randoms(): Generator<number> {
  for (let state = 12_345; ; ) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    yield (state + 0.5) / 2 ** 32;
  }
}

/** A triangular figure by its definition for equal ends, the sum of two even ones, stretched about the peak. */
function triangular(low: number, likely: number, high: number, u: number): number {
  const cut = (likely - low) / (high - low);
  return u < cut
    ? low + Math.sqrt(u * (high - low) * (likely - low))
    : high - Math.sqrt((1 - u) * (high - low) * (high - likely));
}

/** Smallest number of starts, by adding up chances blade by blade. */
function startsFor(good: number, share: number): number {
  let known = [1];
  for (let starts = 0; ; starts += 1) {
    const enough = known.slice(good).reduce((sum, chance) => sum + chance, 0);
    if (enough >= 0.9) return starts;
    known = [...known, 0].map((chance, k) => chance * (1 - share) + (known[k - 1] ?? 0) * share);
  }
}

describe("cost range", () => {
  const LOT = [24, 0.85, 0.92, 0.96, 1.6, 2, 3.2, 48, 14, 16, 21, 550];

  test("agrees with 40 000 lots drawn at random", () => {
    const next = randoms();
    const draw = () => next.next().value as number;
    const starts = new Map<number, number>();
    const costs = Array.from({ length: 40_000 }, () => {
      // Yields to a thousandth: the number to start hardly ever changes inside one.
      const share = Math.round(triangular(0.85, 0.92, 0.96, draw()) * 1000) / 1000;
      const count = starts.get(share) ?? startsFor(24, share);
      starts.set(share, count);
      const each = triangular(1.6, 2, 3.2, draw()) * 48 + triangular(14, 16, 21, draw());
      return (550 + count * each) / 24;
    }).sort((a, b) => a - b);
    const [low, likely, high] = (answer(COST_RANGE, ...LOT)[0] ?? []) as number[];
    // Quantiles of 40 000 draws scatter by about 0.3 % here.
    expect(Math.abs((low as number) - (costs[2000] as number))).toBeLessThan(0.8);
    expect(Math.abs((high as number) - (costs[38_000] as number))).toBeLessThan(1);
    // By hand: 28 starts × (2 × 48 + 16) + 550, over 24.
    expect(likely).toBeCloseTo((28 * 112 + 550) / 24, 9);
  });

  test("best and worst are the corners, by hand", () => {
    const [row = []] = answer(COST_RANGE, ...LOT);
    // 24 good at 0.96: 26 starts; at 0.85: 31 (tables of binomial sums: 0.9306 and 0.9226).
    expect(startsFor(24, 0.96)).toBe(26);
    expect(startsFor(24, 0.85)).toBe(31);
    expect(row[3]).toBeCloseTo((26 * (1.6 * 48 + 14) + 550) / 24, 9);
    expect(row[4]).toBeCloseTo((31 * (3.2 * 48 + 21) + 550) / 24, 9);
    expect(row[5]).toMatch(/^hours: alone it moves the cost from/);
  });

  test("is the same every time, and nothing where all is certain", () => {
    expect(answer(COST_RANGE, ...LOT)).toEqual(answer(COST_RANGE, ...LOT));
    const [row = []] = answer(COST_RANGE, 10, 1, 1, 1, 2, 2, 2, 50, 20, 20, 20, 100);
    expect(row.slice(0, 5)).toEqual([130, 130, 130, 130, 130]);
    expect(row[5]).toBe("nothing: all figures are certain");
  });

  // By hand: one good blade takes 1 start from a yield of 0.9 up, 2 below. Chance of a yield under 0.9 in a triangle:
  // (0.9 - 0.880)² / (0.100 × 0.060) = 0.067, over one in twenty; (0.9 - 0.885)² / (0.095 × 0.055) = 0.043, under it.
  test.each([
    [0.88, 240],
    [0.885, 120],
  ])("a second start counts from one lot in twenty: yield from %d", (lowest, high) => {
    const [row = []] = answer(COST_RANGE, 1, lowest, 0.94, 0.98, 2, 2, 2, 50, 20, 20, 20);
    expect(row.slice(0, 3)).toEqual([120, 120, expect.closeTo(high, 6)]);
  });

  test("a likely figure at the end of its range stays inside the band", () => {
    const [low, likely, high] = (answer(COST_RANGE, 10, 1, 1, 1, 2, 2, 6, 50, 20, 20, 20)[0] ??
      []) as number[];
    expect(likely).toBe(120);
    expect(low).toBe(120);
    expect(high).toBeGreaterThan(120);
  });

  test("figures out of order are refused", () => {
    expect(first(COST_RANGE, 10, 0.9, 0.8, 1, 2, 2, 2, 50, 20, 20, 20)).toMatch(
      /^#VALUE! yield: low 0.9, likely 0.8, high 1 given; give them from the lowest to the highest/,
    );
  });
});

describe("history", () => {
  const top = ["item", "started", "good", "hours", "loads", "kWh"];

  test("hours and energy come from the lots where both figures are known", () => {
    // By hand: 30 h over 10 starts; the lot without hours counts for the yield only.
    const rows = answer(HISTORY, [top, ["Machete", 10, 9, 30, 2, 26], ["machete ", 14, 14, null, 3, null]]);
    expect(rows.length).toBe(1);
    expect(rows[0]?.slice(0, 4)).toEqual(["Machete", 2, 24, 23]);
    expect(rows[0]?.slice(6)).toEqual([3, 13]);
  });

  test("a bad lot stops its item and no other", () => {
    const rows = answer(HISTORY, [
      top,
      ["Machete", 10, 12, 30, 2, 26],
      ["Sword", 4, 3, null, null, null],
      ["Axe", -4, 3],
    ]);
    expect(rows[0]?.[4]).toMatch(/^#VALUE! good: 12 of 10 started given/);
    expect(rows[1]?.slice(0, 5)).toEqual(["Sword", 1, 4, 3, 0.75]);
    expect(rows[2]?.[1]).toMatch(/^#VALUE! row 4: started: -4 given/);
  });
});
