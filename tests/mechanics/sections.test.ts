import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sectionProperties } from "../../src/core/mechanics/cross-section";
import { fullerArea } from "../../src/core/shape/fuller";
import { findGrind, GRINDS } from "../../src/core/shape/grinds";
import { outlineOf, type Section } from "../../src/core/shape/section";
import { outlineArea } from "../../src/core/shape/section-area";

const NONE = { width: 0, depth: 0 };

function section(word: string, width: number, thickness: number, more: Partial<Section> = {}) {
  return outlineOf({ grind: findGrind(word), width, thickness, ...more });
}

describe("second moments against the formulas of any table of sections", () => {
  const cases: [string, ReturnType<typeof section>, number, number, number][] = [
    // rectangle b h³ ÷ 12
    ["rectangle 30 × 4", section("rectangle", 30, 4), (30 * 4 ** 3) / 12, (4 * 30 ** 3) / 12, 2],
    // a triangle about its centre line along the height: h b³ ÷ 48; about its centroid across the height: b h³ ÷ 36
    ["full flat 30 × 4", section("flat", 30, 4), (30 * 4 ** 3) / 48, (4 * 30 ** 3) / 36, 2],
    // rhombus: b h³ ÷ 48 about either diagonal
    ["diamond 50 × 6", section("diamond", 50, 6), (50 * 6 ** 3) / 48, (6 * 50 ** 3) / 48, 3],
    // circle: π d⁴ ÷ 64
    ["lens as wide as thick", section("lenticular", 10, 10), (Math.PI * 1e4) / 64, (Math.PI * 1e4) / 64, 5],
    // right triangle, one face flat: about the centroid b h³ ÷ 36, farthest fibre 2 h ÷ 3
    ["chisel 30 × 6", section("chisel", 30, 6), (30 * 6 ** 3) / 36, (6 * 30 ** 3) / 36, 4],
  ];
  test.each(cases)("%s", (_name, outline, across, edgewise, fibre) => {
    const found = sectionProperties(outline, NONE);
    expect(found.secondMoment / across).toBeCloseTo(1, 9);
    expect(found.edgewiseMoment / edgewise).toBeCloseTo(1, 9);
    expect(found.extremeFibre).toBeCloseTo(fibre, 9);
  });

  test("a rib adds its own second moment", () => {
    const tee = section("t-back", 30, 3, { flatWidth: 8, ribHeight: 5, bevelHeight: 30 });
    const body = section("flat", 30, 3);
    const { secondMoment, extremeFibre } = sectionProperties(tee, NONE);
    expect(secondMoment).toBeCloseTo(sectionProperties(body, NONE).secondMoment + (5 * 8 ** 3) / 12, 9);
    expect(extremeFibre).toBe(4);
  });
});

describe("the area is that of SECTION_AREA and the fullers, whatever the grind", () => {
  const figures: Readonly<Record<string, Partial<Section>>> = {
    "part flat": { bevelHeight: 18, edge: 0.4 },
    hollow: { curve: 125, bevelHeight: 20, edge: 0.4 },
    convex: { curve: 0.4, edge: 0.3 },
    hexagonal: { flatWidth: 12 },
    "t-back": { flatWidth: 9, ribHeight: 6 },
  };
  test.each(GRINDS.map(({ word }) => word))("%s", (word) => {
    const outline = section(word, 40, 5, figures[word]);
    expect(sectionProperties(outline, NONE).area / outlineArea(outline)).toBeCloseTo(1, 9);
  });

  test.each(["lenticular", "diamond", "rectangle", "hexagonal"])(
    "%s with fullers of any size that fits",
    (word) => {
      fc.assert(
        fc.property(
          fc.double({ min: 1, max: 14, noNaN: true }),
          fc.double({ min: 0.05, max: 1, noNaN: true }),
          (w, d) => {
            fc.pre(d < w / 2);
            const outline = section(word, 45, 7, figures[word]);
            const fuller = { width: w, depth: d };
            const metal = outlineArea(outline) - 2 * fullerArea(outline, fuller);
            expect(sectionProperties(outline, fuller).area / metal).toBeCloseTo(1, 8);
          },
        ),
        { numRuns: 200 },
      );
    },
  );

  test("a fuller makes the blade less stiff across the flat", () => {
    const outline = section("lenticular", 45, 6);
    const plain = sectionProperties(outline, NONE);
    const fullered = sectionProperties(outline, { width: 12, depth: 1 });
    expect(fullered.secondMoment).toBeLessThan(plain.secondMoment);
    // Edgewise, for its weight, it gains: the metal taken lies near the middle.
    expect(fullered.edgewiseMoment / fullered.area).toBeGreaterThan(plain.edgewiseMoment / plain.area);
  });
});
