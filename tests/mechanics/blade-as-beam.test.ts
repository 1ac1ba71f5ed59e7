import { describe, expect, test } from "vitest";
import { bladeAt, bladeOf, hasSubstance, stepsAlong } from "../../src/core/mechanics/beam";
import { sectionProperties } from "../../src/core/mechanics/cross-section";
import { findGrind, GRINDS } from "../../src/core/shape/grinds";
import { outlineOf, type Section } from "../../src/core/shape/section";
import type { Station } from "../../src/core/shape/stations";

const DENSITY = 7.8;

/** A figure of the heel and one of the tip for every size that a grind may have. */
const SIZES: Readonly<Record<string, readonly [Partial<Section>, Partial<Section>]>> = {
  rectangle: [{}, {}],
  diamond: [{}, {}],
  lenticular: [{}, {}],
  flat: [{ edge: 0.6 }, { edge: 0.2 }],
  chisel: [{ edge: 0.5 }, { edge: 0.3 }],
  "part flat": [
    { bevelHeight: 20, edge: 0.6 },
    { bevelHeight: 9, edge: 0.3 },
  ],
  hollow: [
    { curve: 150, bevelHeight: 20, edge: 0.5 },
    { curve: 110, bevelHeight: 12, edge: 0.3 },
  ],
  convex: [
    { curve: 0.5, edge: 0.4 },
    { curve: 0.2, edge: 0.2 },
  ],
  hexagonal: [{ flatWidth: 14 }, { flatWidth: 5 }],
  "t-back": [
    { flatWidth: 10, ribHeight: 7 },
    { flatWidth: 6, ribHeight: 3 },
  ],
};

function stationsOf(word: string, more: readonly [object, object] = [{}, {}]): Station[] {
  const grind = findGrind(word);
  const [heel, tip] = SIZES[word] ?? [{}, {}];
  return [
    { x: 20, grind, width: 42, thickness: 6, ...heel, ...more[0] },
    { x: 220, grind, width: 36, thickness: 5, ...heel, ...more[0] },
    { x: 420, grind, width: 22, thickness: 3.4, ...tip, ...more[1] },
  ];
}

/** Simpson's rule in many steps between two places. */
function integral(f: (x: number) => number, from: number, to: number): number {
  const [steps, h] = [400, (to - from) / 400];
  let sum = f(from) + f(to);
  for (let step = 1; step < steps; step += 1) sum += f(from + step * h) * (step % 2 === 1 ? 4 : 2);
  return (sum * h) / 3;
}

// Conservation: the mass between two places is the density times the integral of the area between them, and what lies
// beyond both counts in neither (Cavalieri's principle). The sizes run in a straight line from station to station.
describe("the mass beyond a place, whatever the grind", () => {
  const unlike = GRINDS.filter(({ word }) => !(word in SIZES)).map(({ word }) => word);

  test("every grind is asked about", () => {
    expect(unlike).toEqual([]);
  });

  test.each(GRINDS.map(({ word }) => word))("%s", (word) => {
    const stations = stationsOf(word);
    const at = (x: number) => bladeAt(x, stations, DENSITY);
    const { mass } = bladeOf(stations, DENSITY);
    expect(at(20).massToTip / mass).toBeCloseTo(1, 9);
    expect(at(420).massToTip).toBe(0);
    for (const [from, to] of [
      [20, 100],
      [100, 220],
      [250, 330],
      [330, 420],
    ] as const) {
      const grams = (DENSITY / 1000) * integral((x) => at(x).area, from, to);
      expect((at(from).massToTip - at(to).massToTip) / grams).toBeCloseTo(1, 6);
    }
  });

  test.each(["lenticular", "rectangle"])("%s with fullers that narrow and run out", (word) => {
    const stations = stationsOf(word, [{ fuller: { width: 12, depth: 0.8 } }, {}]);
    const at = (x: number) => bladeAt(x, stations, DENSITY);
    for (const [from, to] of [
      [100, 220],
      [230, 300],
      [300, 400],
    ] as const) {
      const grams = (DENSITY / 1000) * integral((x) => at(x).area, from, to);
      expect((at(from).massToTip - at(to).massToTip) / grams).toBeCloseTo(1, 5);
    }
  });

  test("sizes lie on the straight line between the stations", () => {
    const { width, thickness, area, secondMoment, edgewiseMoment, extremeFibre } = bladeAt(
      270,
      stationsOf("rectangle"),
      DENSITY,
    );
    // A quarter of the way from 36 × 5 to 22 × 3.4: 32.5 × 4.6; b h³ ÷ 12 and h b³ ÷ 12.
    expect([width, thickness, area]).toEqual([32.5, 4.6, 149.5].map((size) => expect.closeTo(size, 9)));
    expect(secondMoment).toBeCloseTo((32.5 * 4.6 ** 3) / 12, 9);
    expect(edgewiseMoment).toBeCloseTo((4.6 * 32.5 ** 3) / 12, 8);
    expect(extremeFibre).toBeCloseTo(2.3, 12);
  });

  test("a place off the blade is refused on either side", () => {
    for (const x of [19.999, 420.001]) {
      expect(() => bladeAt(x, stationsOf("flat"), DENSITY)).toThrow(
        /^at: .* give a place on the blade, 20 mm to 420 mm/,
      );
    }
  });
});

describe("what is metal enough", () => {
  const of = (width: number, thickness: number) => () =>
    bladeOf(
      [0, 100].map((x) => ({ x, grind: findGrind("rectangle"), width, thickness })),
      DENSITY,
    );

  // The limit that the sentence prints, 0.01 mm, is itself accepted.
  test("a hundredth of a millimetre somewhere, in both directions", () => {
    expect(of(0.01, 0.01)().mass).toBeCloseTo((0.01 * 0.01 * 100 * DENSITY) / 1000, 12);
    for (const [width, thickness] of [
      [0.0099, 5],
      [30, 0.0099],
    ] as const) {
      expect(of(width, thickness)).toThrow(/give width and thickness in mm, from 0.01 mm somewhere/);
    }
  });

  test("a section bears load from a hundredth of a millimetre on both sides, with a second moment", () => {
    const section = { area: 1, edgewiseMoment: 1, extremeFibre: 1 };
    expect(hasSubstance({ ...section, width: 0.01, thickness: 0.01, secondMoment: 1e-12 })).toBe(true);
    expect(hasSubstance({ ...section, width: 0.0099, thickness: 1, secondMoment: 1 })).toBe(false);
    expect(hasSubstance({ ...section, width: 1, thickness: 0.0099, secondMoment: 1 })).toBe(false);
    expect(hasSubstance({ ...section, width: 1, thickness: 1, secondMoment: 0 })).toBe(false);
  });
});

describe("steps along a blade", () => {
  test("are even within each panel, at least two of them, in proportion to its length", () => {
    // 60 steps over 600 mm: 100 and 500 mm get 10 and 50; a panel of 1 mm gets two all the same.
    const all = stepsAlong([0, 100, 600], 0, 600, 60);
    expect(all).toEqual(Array.from({ length: 61 }, (_, at) => expect.closeTo(at * 10, 9)));
    expect(stepsAlong([0, 300, 301, 600], 0, 600, 6)).toEqual(
      [0, 100, 200, 300, 300.5, 301, 400.67, 500.33, 600].map((x) => expect.closeTo(x, 2)),
    );
  });

  test("begin and end at the places asked, stations outside and at the ends not counted twice", () => {
    expect(stepsAlong([0, 50, 100, 150, 200], 50, 150, 4)).toEqual([50, 75, 100, 125, 150]);
    expect(stepsAlong([0, 200], 60, 100, 2)).toEqual([60, 80, 100]);
  });
});

describe("sections without symmetry, by the parallel-axis theorem", () => {
  const none = { width: 0, depth: 0 };
  const outline = (word: string, more: Partial<Section>) =>
    outlineOf({ grind: findGrind(word), width: 30, thickness: 6, ...more });

  test("a chisel grind with a thick edge is a trapezium with two right angles", () => {
    // Spine a = 6, edge b = 2, height h = 30, one side straight: area (a + b) h ÷ 2, centroid from the flat face
    // (a² + a b + b²) ÷ 3 (a + b); second moment about that face h (a⁴ - b⁴) ÷ 12 (a - b), moved by area × distance².
    const { area, secondMoment, extremeFibre, edgewiseMoment } = sectionProperties(
      outline("chisel", { edge: 2 }),
      none,
    );
    expect(area).toBeCloseTo(120, 9);
    const centroid = (36 + 12 + 4) / 24;
    expect(extremeFibre).toBeCloseTo(6 - centroid, 9);
    expect(secondMoment).toBeCloseTo((30 * (6 ** 4 - 2 ** 4)) / 48 - 120 * centroid ** 2, 8);
    // Trapezium about its centroid across the height: h³ (a² + 4 a b + b²) ÷ 36 (a + b), of any table of sections.
    expect(edgewiseMoment).toBeCloseTo((30 ** 3 * (36 + 48 + 4)) / (36 * 8), 6);
  });

  test("a flat grind is the same trapezium set symmetrically", () => {
    const { secondMoment, extremeFibre } = sectionProperties(outline("flat", { edge: 2 }), none);
    // h (a + b) (a² + b²) ÷ 48 about its line of symmetry.
    expect(secondMoment).toBeCloseTo((30 * 8 * 40) / 48, 9);
    expect(extremeFibre).toBe(3);
  });

  test("a section twice as large has four times the area and sixteen times the second moments", () => {
    for (const word of ["hollow", "convex", "lenticular"]) {
      const [figures = {}] = SIZES[word] ?? [];
      const twice = Object.fromEntries(Object.entries(figures).map(([key, mm]) => [key, 2 * (mm as number)]));
      const one = sectionProperties(outline(word, figures), none);
      const two = sectionProperties(
        outlineOf({ grind: findGrind(word), width: 60, thickness: 12, ...twice }),
        none,
      );
      expect(two.area / one.area).toBeCloseTo(4, 8);
      expect(two.secondMoment / one.secondMoment).toBeCloseTo(16, 7);
      expect(two.edgewiseMoment / one.edgewiseMoment).toBeCloseTo(16, 7);
      expect(two.extremeFibre / one.extremeFibre).toBeCloseTo(2, 9);
    }
  });

  test("no metal has no stiffness", () => {
    const empty = outlineOf({ grind: findGrind("diamond"), width: 0, thickness: 0 });
    expect(sectionProperties(empty, none)).toEqual({
      area: 0,
      secondMoment: 0,
      edgewiseMoment: 0,
      extremeFibre: 0,
    });
  });
});
