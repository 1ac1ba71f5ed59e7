import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bladeOf } from "../../src/core/mechanics/beam";
import { heldBlade } from "../../src/core/mechanics/flex";
import { thicknessForFlex } from "../../src/core/mechanics/thickness-for-flex";
import { findGrind } from "../../src/core/shape/grinds";
import { bar, bisected, LENGTH, RIGIDITY, THICKNESS, WIDTH } from "./beams";

/** Simpson's rule with many steps. */
function integral(f: (x: number) => number, from: number, to: number, steps = 20_000): number {
  const h = (to - from) / steps;
  let sum = f(from) + f(to);
  for (let step = 1; step < steps; step += 1) sum += f(from + step * h) * (step % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
}

/**
 * Bisshopp and Drucker 1945: with p² = (1 + sin φ) / 2 and sin a = 1 / (p √2), √(P L² / EI) = K(p) - F(p, a)
 * and deflection / L = 1 - 2 (E(p) - E(p, a)) / √(P L² / EI); φ is the slope at the load.
 */
function elastica(slope: number): { load: number; deflection: number } {
  const p2 = (1 + Math.sin(slope)) / 2;
  const a = Math.asin(1 / Math.sqrt(2 * p2));
  const root = (t: number) => Math.sqrt(1 - p2 * Math.sin(t) ** 2);
  const first = integral((t) => 1 / root(t), a, Math.PI / 2);
  const second = integral(root, a, Math.PI / 2);
  return { load: first ** 2, deflection: 1 - (2 * second) / first };
}

describe("the elastica of a uniform cantilever (Bisshopp and Drucker 1945)", () => {
  const held = heldBlade(bar(), 0, LENGTH);

  test.each([1, 5, 14.0107459, 30, 45, 60, 75, 81.9493249, 86])("slope %d° at the load", (degrees) => {
    const { load, deflection } = elastica((degrees * Math.PI) / 180);
    const found = held.bend((load * RIGIDITY) / LENGTH ** 2);
    expect(Math.abs(found.slope - degrees)).toBeLessThan(1e-3);
    expect(Math.abs(found.deflection / LENGTH - deflection)).toBeLessThan(1e-5);
  });

  // The figures as the paper's table is usually reprinted, P L² / EI 0.5 and 10.
  test.each([
    [0.5, 0.16214],
    [10, 0.81061],
  ])("P L² / EI = %d", (load, deflection) => {
    expect(held.bend((load * RIGIDITY) / LENGTH ** 2).deflection / LENGTH).toBeCloseTo(deflection, 5);
  });
});

describe("tapered cantilevers, constant width, by closed form", () => {
  // With b the thickness at the tip over that at the clamp and c = 1 - b:
  // deflection = P L³ / (E I₀ c³) × (-ln b - 2 c + (1 - b²) / 2); stress ∝ (1 - s) / (1 - c s)², largest at s = (2c - 1) / c.
  test.each([0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.25, 0.2, 0.15])("tip %d of the clamp", (b) => {
    const c = 1 - b;
    const share = (-Math.log(b) - 2 * c + (1 - b * b) / 2) / c ** 3;
    const held = heldBlade(bar(b), 0, LENGTH);
    expect(RIGIDITY / LENGTH ** 3 / held.stiffness / share).toBeCloseTo(1, 6);
    const at = Math.max(0, (2 * c - 1) / c);
    const stress = (6 * LENGTH * (1 - at)) / (WIDTH * THICKNESS ** 2 * (1 - c * at) ** 2);
    const bend = held.bend(1e-3);
    expect(bend.stress / (1e-3 * stress)).toBeCloseTo(1, 4);
    expect(Math.abs(bend.stressAt / LENGTH - at)).toBeLessThan(2e-3);
  });
});

describe("what must hold for any blade", () => {
  const diamond = findGrind("diamond");
  const blades = fc
    .record({
      length: fc.integer({ min: 100, max: 1000 }),
      width: fc.integer({ min: 15, max: 60 }),
      thickness: fc.double({ min: 2, max: 9, noNaN: true }),
      taper: fc.double({ min: 0.3, max: 1, noNaN: true }),
    })
    .map(({ length, width, thickness, taper }) => [
      { x: 0, grind: diamond, width, thickness },
      { x: length, grind: diamond, width: width * taper, thickness: thickness * taper },
    ]);

  test("the load at the set brings the fibre to its yield, and more yield takes more load and more bend", () => {
    fc.assert(
      fc.property(blades, fc.integer({ min: 600, max: 1700 }), (stations, strength) => {
        const held = heldBlade(bladeOf(stations, 7.85), 0, stations[1]?.x ?? 0);
        const set = held.set(strength);
        expect(set.stress / strength).toBeCloseTo(1, 6);
        const stronger = held.set(strength * 1.1);
        expect(stronger.load).toBeGreaterThan(set.load);
        expect(stronger.slope).toBeGreaterThan(set.slope);
        expect(stronger.slope).toBeLessThan(90);
      }),
      { numRuns: 100 },
    );
  });

  test("a small load bends by itself over the stiffness", () => {
    fc.assert(
      fc.property(blades, (stations) => {
        const held = heldBlade(bladeOf(stations, 7.85), 0, stations[1]?.x ?? 0);
        const load = held.stiffness * (stations[1]?.x ?? 0) * 1e-5;
        expect((held.bend(load).deflection * held.stiffness) / load).toBeCloseTo(1, 4);
      }),
      { numRuns: 100 },
    );
  });

  test("the thickness for a stiffness has that stiffness", () => {
    fc.assert(
      fc.property(blades, fc.double({ min: 0.3, max: 3, noNaN: true }), (stations, times) => {
        const tip = stations[1]?.x ?? 0;
        const stiffness = heldBlade(bladeOf(stations, 7.85), 0, tip).stiffness * times;
        const { factor } = thicknessForFlex(stations, stiffness, 0, tip);
        const thicker = stations.map((station) => ({ ...station, thickness: station.thickness * factor }));
        expect(heldBlade(bladeOf(thicker, 7.85), 0, tip).stiffness / stiffness).toBeCloseTo(1, 8);
      }),
      { numRuns: 60 },
    );
  });

  test("more stations of the same blade change nothing", () => {
    const one = heldBlade(bar(0.4, 0.6, 1), 0, LENGTH).bend(40);
    const many = heldBlade(bar(0.4, 0.6, 40), 0, LENGTH).bend(40);
    expect(many.deflection / one.deflection).toBeCloseTo(1, 6);
    expect(many.stress / one.stress).toBeCloseTo(1, 4);
  });

  test("the line of the bent blade keeps its length and ends at the deflection", () => {
    const held = heldBlade(bar(0.5), 0, LENGTH);
    const line = held.line(300);
    const length = line.slice(1).reduce((sum, point, index) => {
      const before = line[index] ?? point;
      return sum + Math.hypot(point.along - before.along, point.across - before.across);
    }, 0);
    expect(length / LENGTH).toBeCloseTo(1, 3);
    expect(line.at(-1)?.across).toBeCloseTo(held.bend(300).deflection, 9);
    expect(line[0]).toEqual({ x: 0, along: expect.closeTo(0, 9), across: expect.closeTo(0, 9) });
  });

  test("the elastica itself is right: the integral above against P L² / EI of a slope", () => {
    const slope = bisected((x) => elastica(x).load - 1, 0.01, 1.2);
    expect((slope * 180) / Math.PI).toBeCloseTo(26.4335196, 4);
  });
});
