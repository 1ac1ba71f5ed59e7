import { describe, expect, test } from "vitest";
import { bladeOf } from "../../src/core/mechanics/beam";
import { heldBlade } from "../../src/core/mechanics/flex";
import { thicknessForFlex } from "../../src/core/mechanics/thickness-for-flex";
import { findGrind } from "../../src/core/shape/grinds";
import type { Station } from "../../src/core/shape/stations";
import { ELASTIC_MODULUS } from "../../src/core/steel/elastic-modulus";
import { bar, LENGTH, RIGIDITY, THICKNESS, WIDTH } from "./beams";

// A cantilever of one section under an end load, small bends: the formulas of any handbook of strength of materials
// (Roark, Formulas for Stress and Strain, table of beams). Deflection F a³ ÷ 3 E I, slope F a² ÷ 2 E I, line
// F x² (3 a - x) ÷ 6 E I, largest stress 6 F a ÷ b h² where it is held.

const HELD = 100;
const LOADED = 700;
const ARM = LOADED - HELD;
const SMALL = 1e-4;

describe("a uniform bar held and loaded between its ends", () => {
  const held = heldBlade(bar(), HELD, LOADED);
  const bend = held.bend(SMALL);

  test("its stiffness, slope and deflection are those of the arm between the two places", () => {
    expect((held.stiffness * ARM ** 3) / (3 * RIGIDITY)).toBeCloseTo(1, 9);
    expect((bend.deflection * 3 * RIGIDITY) / (SMALL * ARM ** 3)).toBeCloseTo(1, 7);
    expect(((bend.slope * Math.PI) / 180) * 2 * RIGIDITY).toBeCloseTo(SMALL * ARM ** 2, 6);
  });

  test("the largest stress stands where it is held, and the set comes when it is the yield strength", () => {
    expect(bend.stressAt).toBe(HELD);
    expect((bend.stress * WIDTH * THICKNESS ** 2) / (6 * SMALL * ARM)).toBeCloseTo(1, 7);
    // So little that the lever does not shorten: F = σ b h² ÷ 6 a.
    expect((held.set(0.01).load * 6 * ARM) / (0.01 * WIDTH * THICKNESS ** 2)).toBeCloseTo(1, 6);
  });

  test("its line is the cubic of the handbook from the one place to the other", () => {
    const line = held.line(SMALL);
    expect([line[0]?.x, line.at(-1)?.x]).toEqual([HELD, LOADED]);
    for (const { x, along, across } of line) {
      const at = x - HELD;
      expect(along).toBeCloseTo(at, 6);
      expect(across).toBeCloseTo((SMALL * at ** 2 * (3 * ARM - at)) / (6 * RIGIDITY), 9);
    }
  });

  test("a load past any use still bends to less than a right angle, the more the heavier", () => {
    // The elastica has several shapes for a heavy load; the one that a blade takes has one sign of curvature.
    const slopes = [1e3, 1e4, 1e5].map((load) => held.bend(load).slope);
    expect(slopes).toEqual([...slopes].sort((a, b) => a - b));
    expect(slopes.at(-1)).toBeLessThan(90);
    expect(slopes.at(-1)).toBeGreaterThan(89);
  });
});

test("no load bends nothing", () => {
  const { deflection, slope, stress } = heldBlade(bar(0.5), 0, LENGTH).bend(0);
  expect([deflection, slope, stress].map(Math.abs)).toEqual([0, 0, 0]);
});

/*
 * Dimensional scaling of the elastica: a bar s times as large in every size, loaded s² times as much, bends to the same
 * slope with the same stress, s times as far.
 */
test.each([0.25, 3])("a blade %d times as large under its square as much load", (s) => {
  const scaled = (factor: number) =>
    bladeOf(
      [0, 300, 700].map((x, at) => ({
        x: x * factor,
        grind: findGrind("diamond"),
        width: (40 - 8 * at) * factor,
        thickness: (6 - at) * factor,
      })),
      7.85,
    );
  const one = heldBlade(scaled(1), 50, 650).bend(60);
  const other = heldBlade(scaled(s), 50 * s, 650 * s).bend(60 * s * s);
  expect(other.slope / one.slope).toBeCloseTo(1, 9);
  expect(other.stress / one.stress).toBeCloseTo(1, 9);
  expect(other.deflection / one.deflection / s).toBeCloseTo(1, 9);
  expect(other.stressAt / one.stressAt / s).toBeCloseTo(1, 9);
});

/** A beam in two steps by Mohr's integral ∫ m² ÷ E I dx with m = a - x: each step a difference of cubes. */
test("a bar that is thinner from the middle on bends as its two halves", () => {
  const station = (x: number, thickness: number): Station => ({
    x,
    grind: findGrind("rectangle"),
    width: WIDTH,
    thickness,
  });
  const stations = [station(0, 8), station(400, 8), station(400.001, 4), station(800, 4)];
  const held = heldBlade(bladeOf(stations, 7.85), 0, 800);
  const rigidity = (h: number) => (ELASTIC_MODULUS * WIDTH * h ** 3) / 12;
  const byHand = (800 ** 3 - 400 ** 3) / 3 / rigidity(8) + 400 ** 3 / 3 / rigidity(4);
  expect(held.stiffness * byHand).toBeCloseTo(1, 4);
  // 6 F a ÷ b h²: at the clamp 800 ÷ 8², at the step 400 ÷ 4², which is twice as much.
  const bend = held.bend(SMALL);
  expect((bend.stress * WIDTH * 16) / (6 * SMALL * 400)).toBeCloseTo(1, 3);
  expect(bend.stressAt).toBeCloseTo(400, 1);
});

describe("places", () => {
  test("both ends of the blade are on it, a hair beyond is not", () => {
    expect(heldBlade(bar(), 0, LENGTH).stiffness).toBeGreaterThan(0);
    expect(() => heldBlade(bar(), -1e-9, LENGTH)).toThrow(/^held at: .*give a place on the blade/);
    expect(() => heldBlade(bar(), 0, LENGTH + 1e-9)).toThrow(/^load at: .*give a place on the blade/);
  });

  test("the arm has to be a thousandth of the blade at least", () => {
    const thousandth = LENGTH / 1000;
    expect(heldBlade(bar(), 400, 400 + thousandth).stiffness).toBeGreaterThan(0);
    for (const load of [400, 400 + thousandth * 0.99]) {
      expect(() => heldBlade(bar(), 400, load)).toThrow(/must lie beyond the place where the blade is held/);
    }
  });

  test("a point cannot be loaded, a place before it can; held at a point it cannot be", () => {
    const grind = findGrind("diamond");
    const toPoint = bladeOf(
      [
        { x: 0, grind, width: 40, thickness: 5 },
        { x: 300, grind, width: 0, thickness: 0 },
      ],
      7.85,
    );
    expect(() => heldBlade(toPoint, 0, 300)).toThrow(/^at 300 mm the blade comes to nothing/);
    expect(heldBlade(toPoint, 0, 290).stiffness).toBeGreaterThan(0);
    const fromPoint = bladeOf(
      [
        { x: 0, grind, width: 0, thickness: 0 },
        { x: 300, grind, width: 40, thickness: 5 },
      ],
      7.85,
    );
    expect(() => heldBlade(fromPoint, 0, 300)).toThrow(/^at 0 mm the blade comes to nothing/);
    expect(heldBlade(fromPoint, 10, 300).stiffness).toBeGreaterThan(0);
  });
});

describe("the thickness for a stiffness", () => {
  const grind = findGrind("rectangle");
  const stations = [0, 200, 500].map((x) => ({ x, grind, width: 30 - x / 50, thickness: 5 - x / 200 }));
  const { stiffness } = heldBlade(bladeOf(stations, 7.85), 0, 450);

  // The second moment of a rectangle grows with the cube of its thickness: the factor is the cube root.
  test.each([1 / 64 + 1e-9, 0.1, 0.5, 0.999, 1.001, 2, 8, 64 - 1e-6])("%d times as stiff", (times) => {
    const { factor, heel } = thicknessForFlex(stations, stiffness * times, 0, 450);
    expect(factor).toBeCloseTo(Math.cbrt(times), 8);
    expect(heel).toBeCloseTo(5 * factor, 9);
  });

  test("as stiff as it is takes no change", () => {
    expect(thicknessForFlex(stations, stiffness, 0, 450)).toEqual({ factor: 1, heel: 5 });
  });

  test.each([1 / 66, 66])("%d times as stiff is beyond a quarter and four times", (times) => {
    expect(() => thicknessForFlex(stations, stiffness * times, 0, 450)).toThrow(
      /no thickness from a quarter to four times/,
    );
  });

  test("thinner than its edge no blade can be ground: refused, while what lies before that is found", () => {
    const ground = stations.map((station) => ({ ...station, grind: findGrind("flat"), edge: 2 }));
    const own = heldBlade(bladeOf(ground, 7.85), 0, 450).stiffness;
    expect(() => thicknessForFlex(ground, own / 60, 0, 450)).toThrow(/no thickness from a quarter/);
    const { factor } = thicknessForFlex(ground, own / 1.3, 0, 450);
    const thinner = ground.map((station) => ({ ...station, thickness: station.thickness * factor }));
    expect((heldBlade(bladeOf(thinner, 7.85), 0, 450).stiffness * 1.3) / own).toBeCloseTo(1, 8);
  });
});
