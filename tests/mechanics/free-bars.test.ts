import { describe, expect, test } from "vitest";
import { addBlock, bandedZeros, factor, solve, times } from "../../src/core/mechanics/banded";
import { bladeOf } from "../../src/core/mechanics/beam";
import { ring } from "../../src/core/mechanics/ring";
import { rootBetween, rootNear } from "../../src/core/mechanics/root";
import { findGrind } from "../../src/core/shape/grinds";
import type { Station } from "../../src/core/shape/stations";
import { bar, bisected, LENGTH, PER_LENGTH, scaledFrequency } from "./beams";

const TOTAL = PER_LENGTH * LENGTH;

/** A fitting of so many times the mass of the bar, its inertia in times mass × length² of the bar. */
const fitting = (mass: number, position: number, inertia = 0) => ({
  mass: mass * TOTAL * 1e6,
  position: position * LENGTH,
  inertia: (inertia * TOTAL * LENGTH ** 2) / 1e3,
});

/** What the free end w = A (cos + cosh) + B (sin + sinh) has at b: place, slope, curvature and shear, of A and of B. */
function freeEnd(b: number) {
  const [c, s, ch, sh] = [Math.cos(b), Math.sin(b), Math.cosh(b), Math.sinh(b)];
  return {
    place: [c + ch, s + sh],
    slope: [sh - s, c + ch],
    bend: [ch - c, sh - s],
    shear: [s + sh, ch - c],
  } as const;
}

const determinant = (p: (of: 0 | 1) => number, q: (of: 0 | 1) => number) => p(0) * q(1) - p(1) * q(0);

/**
 * Mass m and inertia J joined rigidly at a distance e beyond the end, all in terms of the bar (Euler-Bernoulli; any text on
 * vibration gives the conditions for e = 0): w''' = -m b⁴ (w + e w'), w'' = J b⁴ w' + m b⁴ e (w + e w').
 */
function beyondEnd(b: number, mass: number, inertia: number, e: number): number {
  const { place, slope, bend, shear } = freeEnd(b);
  const moved = (of: 0 | 1) => place[of] + e * b * slope[of];
  return determinant(
    (of) => shear[of] + mass * b * moved(of),
    (of) => bend[of] - inertia * b ** 3 * slope[of] - mass * b ** 2 * e * moved(of),
  );
}

describe("fittings beyond the end, by closed form", () => {
  test.each([
    [0.4, 0, 0.1],
    [0.8, 0.02, 0.15],
    [0.2, 0.005, 0.05],
  ])("%d of the bar's mass, inertia %d, %d of its length out", (mass, inertia, e) => {
    const found = ring(bar(), [fitting(mass, -e, inertia)]);
    const first = bisected((b) => beyondEnd(b, mass, inertia, e), 2, 4.72);
    expect(scaledFrequency(found.first) / first ** 2).toBeCloseTo(1, 4);
    const second = bisected((b) => beyondEnd(b, mass, inertia, e), first + 0.3, 7.8);
    expect(scaledFrequency(found.second) / second ** 2).toBeCloseTo(1, 3);
  });
});

describe("a fitting in the middle of the bar, by the symmetry of its halves", () => {
  test.each([0.1, 0.5, 2])(
    "a mass of %d times the bar slows the first mode and leaves the second",
    (mass) => {
      // Half a bar with half the mass at an end that keeps level: w' = 0, w''' = -m b⁴ w, lengths and masses of the half.
      const half = (b: number) => {
        const { place, slope, shear } = freeEnd(b);
        return determinant(
          (of) => slope[of],
          (of) => shear[of] + mass * b * place[of],
        );
      };
      const found = ring(bar(), [fitting(mass, 0.5)]);
      const b = 2 * bisected(half, 1.5, 2.4);
      expect(scaledFrequency(found.first) / b ** 2).toBeCloseTo(1, 4);
      expect(found.second / ring(bar(), []).second).toBeCloseTo(1, 9);
    },
  );

  test.each([0.001, 0.01, 0.05])("an inertia of %d slows the second mode and leaves the first", (inertia) => {
    // Half a bar with half the inertia at an end that stays in place: w = 0, w'' = J b⁴ w'. In terms of the half, of
    // half the mass and a quarter of the length squared, J is four times what it is of the whole.
    const half = (b: number) => {
      const { place, slope, bend } = freeEnd(b);
      return determinant(
        (of) => place[of],
        (of) => bend[of] - 4 * inertia * b ** 3 * slope[of],
      );
    };
    const found = ring(bar(), [fitting(0, 0.5, inertia)]);
    const b = 2 * bisected(half, 2, 3.92);
    expect(scaledFrequency(found.second) / b ** 2).toBeCloseTo(1, 3);
    expect(found.first / ring(bar(), []).first).toBeCloseTo(1, 9);
  });
});

const rectangle = findGrind("rectangle");

/** A tapered blade, and the same turned end for end. */
function tapered(
  length = 800,
  scale = 1,
  density = 7.85,
): { one: Station[]; other: Station[]; density: number } {
  const sizes = [
    [0, 40, 7],
    [0.3, 36, 6],
    [1, 20, 3],
  ] as const;
  const one = sizes.map(([share, width, thickness]) => ({
    x: share * length,
    grind: rectangle,
    width,
    thickness: thickness * scale,
  }));
  const other = [...one].reverse().map((station) => ({ ...station, x: length - station.x }));
  return { one, other, density };
}

describe("what must hold for any free blade", () => {
  const { one, other, density } = tapered();
  const fittings = [
    { mass: 150, position: 90, inertia: 2e-5 },
    { mass: 60, position: -50, inertia: 0 },
    { mass: 25, position: 830, inertia: 1e-5 },
  ];

  test("turned end for end it rings alike, its quiet points turned too", () => {
    const turned = fittings.map((each) => ({ ...each, position: 800 - each.position }));
    const a = ring(bladeOf(one, density), fittings);
    const b = ring(bladeOf(other, density), turned);
    expect(b.first / a.first).toBeCloseTo(1, 9);
    expect(b.second / a.second).toBeCloseTo(1, 9);
    expect((b.quietNearTip ?? 0) + (a.quietNearHeel ?? 0)).toBeCloseTo(800, 4);
    expect((b.quietNearHeel ?? 0) + (a.quietNearTip ?? 0)).toBeCloseTo(800, 4);
  });

  test("moved along the x of its stations it rings alike", () => {
    const moved = one.map((station) => ({ ...station, x: station.x + 250 }));
    const a = ring(bladeOf(one, density), fittings);
    const b = ring(
      bladeOf(moved, density),
      fittings.map((each) => ({ ...each, position: each.position + 250 })),
    );
    expect(b.first / a.first).toBeCloseTo(1, 8);
    expect(b.second / a.second).toBeCloseTo(1, 8);
    expect((b.quietNearHeel ?? 0) - (a.quietNearHeel ?? 0)).toBeCloseTo(250, 4);
    expect((b.quietNearTip ?? 0) - (a.quietNearTip ?? 0)).toBeCloseTo(250, 4);
  });

  // Dimensional analysis of a bar: f ∝ t ÷ L² × √(E ÷ ρ).
  test("twice as thick twice as high, half as long four times, denser by the root lower", () => {
    const frequency = (given: ReturnType<typeof tapered>) => ring(bladeOf(given.one, given.density), []);
    const plain = frequency(tapered());
    for (const [changed, times] of [
      [tapered(800, 2), 2],
      [tapered(400), 4],
      [tapered(800, 1, 7.85 * 3), Math.sqrt(1 / 3)],
      [tapered(800, 1, 7.85 / 4), 2],
    ] as const) {
      const found = frequency(changed);
      expect(found.first / plain.first / times).toBeCloseTo(1, 8);
      expect(found.second / plain.second / times).toBeCloseTo(1, 8);
    }
    expect((frequency(tapered(400)).quietNearTip ?? 0) * 2).toBeCloseTo(plain.quietNearTip ?? 0, 4);
  });

  test("more mass anywhere never rings higher (Rayleigh)", () => {
    const plain = ring(bladeOf(one, density), []);
    for (const position of [-60, 0, 100, 240, 333, 600, 800, 850]) {
      for (const inertia of [0, 5e-5]) {
        const heavier = ring(bladeOf(one, density), [{ mass: 80, position, inertia }]);
        expect(heavier.first).toBeLessThanOrEqual(plain.first * (1 + 1e-9));
        expect(heavier.second).toBeLessThanOrEqual(plain.second * (1 + 1e-9));
      }
    }
  });

  test("so heavy a mass stands still: the first mode is that of a bar clamped or hung there", () => {
    // cos b cosh b = -1 for a bar clamped at one end (b = 1.8751), tan b = tanh b for one on a hinge (b = 3.9266).
    const held = ring(bar(), [fitting(1e5, 0, 1e5)]);
    expect(Math.sqrt(scaledFrequency(held.first))).toBeCloseTo(1.87510407, 3);
    const hinged = ring(bar(), [fitting(1e5, 0)]);
    expect(Math.sqrt(scaledFrequency(hinged.first))).toBeCloseTo(3.92660231, 3);
    expect(hinged.quietNearHeel).toBeCloseTo(0, 1);
  });
});

describe("what is refused", () => {
  test("a fitting has a mass and an inertia from 0 and a place", () => {
    const plain = { mass: 10, position: 50, inertia: 0 };
    expect(ring(bar(), [{ ...plain, mass: 0 }]).first).toBeCloseTo(ring(bar(), []).first, 9);
    for (const wrong of [
      { mass: -1 },
      { inertia: -1e-9 },
      { position: Number.NaN },
      { position: Infinity },
    ]) {
      expect(() => ring(bar(), [plain, { ...plain, ...wrong }])).toThrow(/give mass and own inertia from 0/);
    }
  });

  test("a blade may end in a point, but not be two blades", () => {
    const point = (at: number) =>
      [0, 200, 400].map((x, index) => ({
        x,
        grind: findGrind("diamond"),
        width: index === at ? 0 : 30,
        thickness: index === at ? 0 : 5,
      }));
    expect(ring(bladeOf(point(2), 7.85), []).first).toBeGreaterThan(0);
    expect(ring(bladeOf(point(0), 7.85), []).first).toBeGreaterThan(0);
    expect(() => ring(bladeOf(point(1), 7.85), [])).toThrow(
      /^at 200 mm the blade comes to nothing between its ends/,
    );
  });
});

describe("banded matrices against whole ones", () => {
  const SIZE = 10;
  const blocks = [0, 2, 4, 6];

  /** B B' + 1 for a block B of small whole numbers: symmetric and positive. */
  const block = (first: number) => (row: number, column: number) => {
    const entry = (i: number, j: number) => ((first * 7 + i * 3 + j * j * 5) % 11) - 5;
    const sum = [0, 1, 2, 3].reduce((total, k) => total + entry(row, k) * entry(column, k), 0);
    return sum + (row === column ? 1 : 0);
  };

  const whole = Array.from({ length: SIZE }, () => new Array<number>(SIZE).fill(0));
  for (const first of blocks) {
    for (let row = 0; row < 4; row += 1) {
      for (let column = 0; column < 4; column += 1) {
        const line = whole[first + row] as number[];
        line[first + column] = (line[first + column] as number) + block(first)(row, column);
      }
    }
  }
  const vector = Float64Array.from({ length: SIZE }, (_, at) => (at % 3) - 1.25 + at / 7);
  const product = whole.map((row) => row.reduce((sum, entry, at) => sum + entry * (vector[at] as number), 0));

  const banded = () => {
    const matrix = bandedZeros(SIZE);
    for (const first of blocks) addBlock(matrix, first, block(first));
    return matrix;
  };

  test("times a vector is the sum over rows and columns", () => {
    expect([...times(banded(), vector)]).toEqual(product.map((value) => expect.closeTo(value, 9)));
  });

  test("solved, the product gives the vector back", () => {
    const matrix = banded();
    factor(matrix);
    const side = Float64Array.from(product);
    solve(matrix, side);
    expect([...side]).toEqual([...vector].map((value) => expect.closeTo(value, 8)));
  });
});

describe("roots that are known", () => {
  const cases: [string, (x: number) => number, number, number, number][] = [
    ["x² = 2", (x) => x * x - 2, 0, 2, Math.SQRT2],
    ["cos x = x, Dottie's number", (x) => x - Math.cos(x), 0, 1, 0.7390851332151607],
    ["x³ - 2 x - 5, Wallis on Newton's method 1685", (x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
    ["falling through 0", (x) => 1 - Math.exp(x - 1), -3, 4, 1],
    ["flat at one end", (x) => x ** 9 - 1e-4, 0, 2, 1e-4 ** (1 / 9)],
  ];

  test.each(cases)("%s", (_name, f, low, high, root) => {
    expect(rootBetween(f, low, high, { tolerance: 1e-13 })).toBeCloseTo(root, 11);
    expect(rootBetween(f, high, low, { tolerance: 1e-13 })).toBeCloseTo(root, 11);
    // Close enough to 0 is close enough, and no step more is asked for.
    const asked: number[] = [];
    const near = rootBetween(
      (x) => {
        asked.push(x);
        return f(x);
      },
      low,
      high,
      { tolerance: 0, within: 1e-4 },
    );
    expect(Math.abs(f(near))).toBeLessThanOrEqual(1e-4);
    expect(asked.at(-1)).toBe(near);
    expect(asked.slice(2, -1).every((x) => Math.abs(f(x)) > 1e-4)).toBe(true);
  });

  test("a bracket that is narrow enough is not looked into", () => {
    let asked = 0;
    rootBetween(
      (x) => {
        asked += 1;
        return x - 0.3;
      },
      0,
      1,
      { tolerance: 1 },
    );
    expect(asked).toBe(2);
  });

  test("from two guesses near by in a few steps, or not at all", () => {
    for (const [, f, , , root] of cases.slice(0, 4)) {
      expect(rootNear(f, [root * 1.05, root * 1.01], 1e-13)).toBeCloseTo(root, 11);
    }
    expect(rootNear((x) => x - 2, [5, 2], 0)).toBe(2);
    // x² + 1 has no root; a constant has no slope to follow.
    expect(rootNear((x) => x * x + 1, [1, 0.9], 1e-9)).toBeUndefined();
    expect(rootNear(() => 1, [1, 0.9], 1e-9)).toBeUndefined();
  });
});
