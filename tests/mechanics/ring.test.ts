import { describe, expect, test } from "vitest";
import { ring } from "../../src/core/mechanics/ring";
import { bar, bisected, LENGTH, PER_LENGTH, scaledFrequency } from "./beams";

describe("a uniform free bar: cos b cosh b = 1", () => {
  const found = ring(bar(), []);

  test.each([
    ["first", 4, 5, found.first],
    ["second", 7, 8.5, found.second],
  ])("%s frequency", (_name, low, high, hertz) => {
    const b = bisected((x) => Math.cos(x) * Math.cosh(x) - 1, low, high);
    expect(scaledFrequency(hertz) / b ** 2).toBeCloseTo(1, 4);
  });

  test("quiet points at 0.22416 and 0.77584 of the length", () => {
    // Nodes of cosh z + cos z - k (sinh z + sin z) with b = 4.73004, as any text gives them.
    expect((found.quietNearHeel ?? 0) / LENGTH).toBeCloseTo(0.224158, 5);
    expect((found.quietNearTip ?? 0) / LENGTH).toBeCloseTo(0.775842, 5);
  });
});

describe("linear tapers, free at both ends", () => {
  // Computed apart from this code with 400 Hermite elements, converged better than 1e-4 (frequency of heel's section).
  test.each([
    [0.5, 1, 16.7240415, 45.5026648, 0.21690548, undefined],
    [0.2, 1, 13.3835718, 34.488388, 0.20983344, undefined],
    [0.5, 0.5, 17.0794881, 45.963013, undefined, 0.744820534],
  ])("thickness to %d, width to %d", (thickness, width, first, second, heel, tip) => {
    const found = ring(bar(thickness, width), []);
    expect(scaledFrequency(found.first) / first).toBeCloseTo(1, 4);
    expect(Math.abs(scaledFrequency(found.second) / second - 1)).toBeLessThan(2e-4);
    if (heel !== undefined) expect(Math.abs((found.quietNearHeel ?? 0) / LENGTH - heel)).toBeLessThan(1e-4);
    if (tip !== undefined) expect(Math.abs((found.quietNearTip ?? 0) / LENGTH - tip)).toBeLessThan(1e-4);
  });
});

/**
 * A free bar with a mass m and inertia J at its end, by closed form: from the free end
 * w = A (cos + cosh) + B (sin + sinh); at the mass w''' = -(m / ρA) b⁴ w and w'' = (J / ρA) b⁴ w'.
 */
function withEndMass(b: number, mass: number, inertia: number): number {
  const [c, s, ch, sh] = [Math.cos(b), Math.sin(b), Math.cosh(b), Math.sinh(b)];
  const shear = (third: number, place: number) => third + mass * b * place;
  const moment = (bend: number, slope: number) => bend - inertia * b ** 3 * slope;
  const a = [shear(s + sh, c + ch), moment(-c + ch, -s + sh)] as const;
  const d = [shear(-c + ch, s + sh), moment(-s + sh, c + ch)] as const;
  return a[0] * d[1] - a[1] * d[0];
}

describe("fittings", () => {
  const total = PER_LENGTH * LENGTH;

  test.each([
    [0.1, 0],
    [0.5, 0],
    [1, 0.01],
    [2, 0.05],
  ])("a mass of %d times the bar at its end, inertia %d", (mass, inertia) => {
    const b = bisected((x) => withEndMass(x, mass, inertia), 2, 4.72);
    const fitting = {
      mass: mass * total * 1e6,
      position: 0,
      inertia: (inertia * total * LENGTH ** 2) / 1e3,
    };
    expect(scaledFrequency(ring(bar(), [fitting]).first) / b ** 2).toBeCloseTo(1, 4);
  });

  test("a mass on a quiet point, without inertia, leaves the first frequency as it is", () => {
    const plain = ring(bar(), []);
    const found = ring(bar(), [{ mass: 400, position: plain.quietNearHeel ?? 0, inertia: 0 }]);
    expect(found.first / plain.first).toBeCloseTo(1, 4);
  });

  test("a heavy pommel draws the quiet point near the heel toward itself", () => {
    const at = (mass: number) =>
      ring(bar(), [{ mass, position: -60, inertia: 0 }]).quietNearHeel ?? Number.NaN;
    expect(at(100)).toBeLessThan(at(0));
    expect(at(300)).toBeLessThan(at(100));
    expect(at(300)).toBeGreaterThan(-60);
  });

  test("two halves of a fitting are the whole fitting", () => {
    const one = ring(bar(0.5), [{ mass: 200, position: -40, inertia: 0 }]);
    const halves = { mass: 100, position: -40, inertia: 0 };
    expect(ring(bar(0.5), [halves, halves])).toEqual({
      first: expect.closeTo(one.first, 8),
      second: expect.closeTo(one.second, 7),
      quietNearHeel: expect.closeTo(one.quietNearHeel ?? 0, 5),
      quietNearTip: expect.closeTo(one.quietNearTip ?? 0, 5),
    });
  });
});
