import { describe, expect, test } from "vitest";
import { barsFor } from "../../src/core/run/bars";
import { bestStarts } from "../../src/core/run/best-starts";
import { chanceOfAtLeast, yieldEnough } from "../../src/core/run/binomial";
import { type LearningModel, nthHours, totalHours } from "../../src/core/run/learning";
import { startsNeeded } from "../../src/core/run/starts";
import { yieldFloor } from "../../src/core/run/yield-floor";

/** Whether two figures agree to a share of themselves. */
const near = (found: number, wanted: number, share: number) =>
  expect(Math.abs(found / wanted - 1)).toBeLessThan(share);

describe("ends of the binomial distribution in closed form (any text on probability)", () => {
  const shares = [0.01, 0.2, 0.5, 0.92, 0.999];

  test.each([1, 2, 7, 19, 20, 21, 150, 1000])("%d starts: all good, at least one, all but one", (n) => {
    for (const y of shares) {
      const all = y ** n;
      if (all > 1e-290) near(chanceOfAtLeast(n, n, y), all, 2e-12);
      near(chanceOfAtLeast(1, n, y), -Math.expm1(n * Math.log1p(-y)), 2e-12);
      if (n > 1 && all > 1e-290) near(chanceOfAtLeast(n - 1, n, y), all + n * y ** (n - 1) * (1 - y), 2e-12);
    }
  });

  test("a perfect yield is certain", () => {
    expect(chanceOfAtLeast(5, 5, 1)).toBe(1);
  });
});

/** P(at least k of n) at a yield of a half: a whole number over 2^n, to 60 places by whole-number arithmetic. */
function atAHalf(k: number, n: number): number {
  let coefficient = 1n;
  let sum = 0n;
  for (let i = 0; i <= n; i += 1) {
    if (i > 0) coefficient = (coefficient * BigInt(n - i + 1)) / BigInt(i);
    if (i >= k) sum += coefficient;
  }
  const places = 10n ** 60n;
  return Number((sum * places) / 2n ** BigInt(n)) / 1e60;
}

describe("at a yield of a half, by whole-number arithmetic", () => {
  // 20 is where the series of Stirling takes over from the sums: its last term there is 5e-13.
  test.each([
    [20, [3, 8, 10, 11, 13, 17]],
    [21, [5, 10, 11, 12, 16]],
    [40, [10, 19, 20, 21, 22, 30]],
    [300, [110, 149, 150, 151, 160, 200]],
    [1000, [450, 500, 501, 520, 600]],
  ] as const)("%d starts", (n, wanted) => {
    for (const k of wanted) near(chanceOfAtLeast(k, n, 0.5), atAHalf(k, n), 3e-13);
  });

  test("the chances on both sides of the middle make up the whole", () => {
    for (const [n, k, y] of [
      [50, 21, 0.37],
      [333, 300, 0.9],
      [10_000, 9210, 0.92],
    ] as const) {
      // Fewer than k good is at least n - k + 1 bad.
      expect(chanceOfAtLeast(k, n, y) + chanceOfAtLeast(n - k + 1, n, 1 - y)).toBeCloseTo(1, 12);
    }
  });
});

test("a million starts keep ten places: chances follow each other as the definition says", () => {
  // P(n/2) = √(2 ÷ π n) (1 - 1/4n + 1/32n² + …), Stirling's series; P(k + 1) = P(k) (n - k) ÷ (k + 1).
  const n = 1_000_000;
  let chance = Math.sqrt(2 / (Math.PI * n)) * (1 - 1 / (4 * n) + 1 / (32 * n * n));
  let k = n / 2;
  for (const steps of [600, 600, 600]) {
    for (let step = 0; step < steps; step += 1, k += 1) chance *= (n - k) / (k + 1);
    near(chanceOfAtLeast(k, n, 0.5) - chanceOfAtLeast(k + 1, n, 0.5), chance, 2e-11);
    // The same share down from the middle, where bad blades are counted.
    near(chanceOfAtLeast(n - k + 1, n, 0.5), 1 - chanceOfAtLeast(k, n, 0.5), 1e-12);
  }
});

test("the lowest yield that is enough, in closed form for one and for all", () => {
  // y^n = c, and 1 - (1 - y)^n = c.
  for (const [n, c] of [
    [5, 0.9],
    [40, 0.75],
  ] as const) {
    expect(yieldEnough(n, n, c, 0.01, 1)).toBeCloseTo(c ** (1 / n), 9);
    expect(yieldEnough(n, 1, c, 1e-6, 1)).toBeCloseTo(1 - (1 - c) ** (1 / n), 9);
  }
});

test("one good blade needs the whole number over ln (1 - c) ÷ ln (1 - y) of starts", () => {
  // From (1 - y)^S ≤ 1 - c: the success-run theorem.
  for (const y of [0.02, 0.11, 0.37, 0.83]) {
    for (const c of [0.5, 0.9, 0.999]) {
      expect(startsNeeded(1, y, c)).toBe(Math.ceil(Math.log(1 - c) / Math.log(1 - y)));
    }
  }
});

describe("the one-sided exact bound of a yield (Clopper and Pearson 1934), where it has a closed form", () => {
  test.each([1, 2, 10, 59, 5000])("of %d tried", (n) => {
    for (const c of [0.5, 0.9, 0.95]) {
      // All good: floor^n = 1 - c. One good: 1 - (1 - floor)^n = 1 - c.
      expect(yieldFloor(n, n, c)).toBeCloseTo((1 - c) ** (1 / n), 12);
      if (n > 1) near(yieldFloor(1, n, c), -Math.expm1(Math.log(c) / n), 1e-9);
    }
  });

  test("59 of 59 support 95 % with 95 % confidence, 58 do not: the sample size of the handbooks", () => {
    expect(yieldFloor(59, 59)).toBeGreaterThan(0.95);
    expect(yieldFloor(58, 58)).toBeLessThan(0.95);
  });

  test("two of three: 3 y² - 2 y³ = 1 - c", () => {
    for (const c of [0.8, 0.95]) {
      const y = yieldFloor(2, 3, c);
      expect(3 * y ** 2 - 2 * y ** 3).toBeCloseTo(1 - c, 12);
    }
  });

  test("the more tried, the nearer to the share that was good, never above it", () => {
    const floors = [10, 100, 1000, 10_000].map((n) => yieldFloor(0.9 * n, n));
    expect(floors).toEqual([...floors].sort((a, b) => a - b));
    // Normal approximation for 10 000: 0.9 - 1.645 × √(0.09 ÷ 10 000).
    expect(floors.at(-1)).toBeCloseTo(0.9 - 1.645 * 0.003, 3);
    expect(floors.at(-1)).toBeLessThan(0.9);
  });
});

describe("sums of the learning curve against sums of any table", () => {
  const unit = (rate: number) => ({ first: 1, rate, model: "unit" as LearningModel });

  test.each([
    // Harmonic numbers: ln n + γ + 1/2n - 1/12n², γ = 0.5772156649015329.
    [1, 1],
    [64, Math.log(64) + 0.5772156649015329 + 1 / 128 - 1 / (12 * 64 ** 2) + 1 / (120 * 64 ** 4)],
    [65, Math.log(65) + 0.5772156649015329 + 1 / 130 - 1 / (12 * 65 ** 2) + 1 / (120 * 65 ** 4)],
    [1000, 7.485470860550345],
    [1_000_000, 14.392726722865724],
  ])("at 0.5 the hours of %d pieces are the harmonic number", (n, wanted) => {
    near(totalHours(unit(0.5), n), wanted, 1e-12);
  });

  test("at 1/√2 they are the sum of 1/√k: 2 √n + ζ(1/2) + 1/2√n - …", () => {
    for (const n of [100, 10_000, 1_000_000]) {
      const wanted =
        2 * Math.sqrt(n) -
        1.4603545088095868 +
        0.5 / Math.sqrt(n) -
        1 / (24 * n ** 1.5) +
        1 / (384 * n ** 3.5);
      near(totalHours(unit(Math.SQRT1_2), n), wanted, 1e-11);
    }
  });

  test("without learning every piece takes as long; each doubling leaves the rate of the hours", () => {
    for (const model of ["unit", "average"] as const) {
      expect(totalHours({ first: 2.4, rate: 1, model }, 500)).toBeCloseTo(1200, 9);
      expect(nthHours({ first: 2.4, rate: 1, model }, 500)).toBeCloseTo(2.4, 9);
      expect(nthHours({ first: 2.4, rate: 0.8, model }, 1)).toBe(2.4);
    }
    // Unit model: of the piece itself. Average model: of the mean of all so far.
    for (const n of [1, 5, 48]) {
      expect(nthHours(unit(0.85), 2 * n) / nthHours(unit(0.85), n)).toBeCloseTo(0.85, 12);
      const mean = (count: number) => totalHours({ first: 3, rate: 0.85, model: "average" }, count) / count;
      expect(mean(2 * n) / mean(n)).toBeCloseTo(0.85, 12);
    }
  });
});

describe("bars by hand", () => {
  const cut = { piece: 100, pieces: 25, kerf: 5, trim: 0 };

  test("the last piece of a bar needs no cut: ten of 100 and nine cuts of 5 are 1045", () => {
    expect(barsFor({ ...cut, barLength: 1045 })).toMatchObject({ piecesABar: 10, bars: 3, drop: 0 });
    expect(barsFor({ ...cut, barLength: 1044.9 })).toMatchObject({ piecesABar: 9, bars: 3 });
    // 9 pieces and 9 cuts are 945 of 1000.
    expect(barsFor({ ...cut, barLength: 1000 })).toMatchObject({ piecesABar: 9, drop: 55, use: 2500 / 3000 });
  });

  test("a piece as long as the bar without its trim is one a bar; longer is refused with what is left", () => {
    const long = { pieces: 2, barLength: 1000, kerf: 5, trim: 10 };
    expect(barsFor({ ...long, piece: 990 })).toMatchObject({ piecesABar: 1, bars: 2, drop: 0 });
    expect(() => barsFor({ ...long, piece: 991 })).toThrow(
      "a blank of 991 mm is longer than the bar: 1000 mm less 10 mm trim leaves 990 mm",
    );
  });

  test("kerf and trim of the trade where nothing is said: 1.2 and 10 mm (common practice, no source)", () => {
    // (1000 - 10 + 1.2) ÷ 101.2 = 9.79.
    expect(barsFor({ piece: 100, pieces: 9, barLength: 1000 }).drop).toBeCloseTo(990 - 9 * 101.2, 9);
  });

  test("no pieces need no bar; parts of pieces and fewer than none are refused", () => {
    expect(barsFor({ ...cut, pieces: 0, barLength: 1000 })).toMatchObject({ bars: 0, use: 0 });
    for (const pieces of [2.5, -1]) {
      expect(() => barsFor({ ...cut, pieces, barLength: 1000 })).toThrow(`pieces: ${pieces} given`);
    }
  });
});

describe("starts by gain at the edge of what has a best number", () => {
  const order = { good: 1, yield: 0.5, cost: 50, price: 100, spare: 0, penalty: 0 };

  test("a start that brings in just what it costs is not made", () => {
    // 0.5 × 100 - 50 = 0; a penny more of price and one is.
    expect(bestStarts(order)).toEqual({ starts: 0, gain: 0 });
    expect(bestStarts({ ...order, price: 100.02 }).starts).toBe(1);
  });

  test("a spare worth as much as an ordered blade is accepted, a penny more is not", () => {
    expect(bestStarts({ ...order, cost: 60, spare: 100 })).toEqual({ starts: 0, gain: 0 });
    expect(() => bestStarts({ ...order, cost: 60, spare: 100.01 })).toThrow(/is more than price and penalty/);
  });

  test("spares that just pay for themselves have no best number", () => {
    expect(() => bestStarts({ ...order, price: 200, spare: 100 })).toThrow(/pay for themselves/);
    expect(bestStarts({ ...order, price: 200, spare: 99.9 }).starts).toBeGreaterThan(0);
  });

  test("where no start pays, the penalties are what is lost", () => {
    expect(bestStarts({ ...order, good: 3, cost: 500, penalty: 20 })).toEqual({ starts: 0, gain: -60 });
  });
});
