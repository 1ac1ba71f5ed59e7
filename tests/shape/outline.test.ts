import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { attempt, Refusal } from "../../src/core/refusal";
import { crownHeight, type Fuller, fullerArea } from "../../src/core/shape/fuller";
import { type FulleredSection, fulleredArea } from "../../src/core/shape/fullered-area";
import { findGrind, GRINDS } from "../../src/core/shape/grinds";
import { smoothMoments } from "../../src/core/shape/moments";
import { type Outline, outlineOf, type Section } from "../../src/core/shape/section";
import { outlineArea } from "../../src/core/shape/section-area";
import { type Profile, profileOf, stripsOf } from "../../src/core/shape/strips";
import { taperStations } from "../../src/core/shape/taper";

/*
 * Areas stand in closed form, faces as drawn lines: the area between the drawn lines, added up by Simpson's rule, must
 * be the closed form. Circles are held by the school formula R² acos((R - h) / R) - (R - h) √(2 R h - h²).
 */

const outline = (word: string, sizes: Omit<Section, "grind">): Outline =>
  outlineOf({ grind: findGrind(word), ...sizes });

const BASE = { width: 40, thickness: 5 };
const SIZES: Readonly<Record<string, Omit<Section, "grind">>> = {
  flat: { ...BASE, edge: 0.4 },
  "part flat": { ...BASE, edge: 0.4, bevelHeight: 18 },
  chisel: { ...BASE, edge: 0.4 },
  hollow: { ...BASE, edge: 0.6, bevelHeight: 20, curve: 60 },
  convex: { ...BASE, edge: 0.4, bevelHeight: 24, curve: 0.4 },
  lenticular: { ...BASE, edge: 0.8 },
  diamond: { ...BASE, edge: 0.6 },
  hexagonal: { ...BASE, edge: 0.6, flatWidth: 8 },
  rectangle: BASE,
  "t-back": { ...BASE, edge: 0.4, flatWidth: 9, ribHeight: 6 },
};
const words = GRINDS.map(({ word }) => word);

/** Simpson's rule; exact for straight faces. */
function between({ from, to, top, bottom }: Profile, steps = 600): number {
  const step = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) {
    const y = i === steps ? to : from + i * step;
    sum += (top(y) - bottom(y)) * (i === 0 || i === steps ? 1 : i % 2 === 0 ? 2 : 4);
  }
  return (sum * step) / 3;
}
const drawnArea = (strips: readonly Profile[]) => strips.reduce((sum, strip) => sum + between(strip), 0);

/** Area between a chord and its arc by the school formula. */
function segment(chord: number, height: number): number {
  const radius = (chord ** 2 / 4 + height ** 2) / (2 * height);
  const rest = radius - height;
  return radius ** 2 * Math.acos(rest / radius) - rest * Math.sqrt(2 * radius * height - height ** 2);
}

describe("the faces of every grind", () => {
  test.each(words)("%s: the drawn area is the closed form, strip by strip", (word) => {
    const strips = stripsOf(outline(word, SIZES[word] as (typeof SIZES)[string]));
    for (const strip of strips) expect(between(strip)).toBeCloseTo(strip.area, 6);
    expect(strips.reduce((sum, { area }) => sum + area, 0)).toBeGreaterThan(20);
  });

  test.each(words)("%s: strips follow one another, faces meet, and end at the thicknesses given", (word) => {
    const given = outline(word, SIZES[word] as (typeof SIZES)[string]);
    const strips = stripsOf(given).filter(({ from, to }) => to > from);
    expect(strips[0]?.from).toBe(word === "t-back" ? -6 : 0);
    expect(strips.at(-1)?.to).toBe(40);
    strips.slice(1).forEach((here, i) => {
      const before = strips[i] as Profile;
      expect(here.from).toBe(before.to);
      if (word !== "t-back" || here.from !== 0)
        expect(here.top(here.from)).toBeCloseTo(before.top(before.to), 9);
    });
    const thick = (y: number, { top, bottom }: Profile) => top(y) - bottom(y);
    expect(thick(40, strips.at(-1) as Profile)).toBeCloseTo(word === "rectangle" ? 5 : given.edge, 9);
    const twoEdged = ["lenticular", "diamond", "hexagonal"].includes(word);
    if (word !== "t-back") expect(thick(0, strips[0] as Profile)).toBeCloseTo(twoEdged ? given.edge : 5, 9);
  });

  test.each(words)("%s: alike on both sides, but for a chisel, flat on one", (word) => {
    for (const { from, to, top, bottom } of stripsOf(outline(word, SIZES[word] as (typeof SIZES)[string])))
      for (const y of [from, (3 * from + to) / 4, to])
        expect(bottom(y)).toBe(word === "chisel" ? 0 : -top(y));
  });

  test("arcs alone are told from straight faces", () => {
    const straight = (word: string, sizes = SIZES[word] as (typeof SIZES)[string]) =>
      stripsOf(outline(word, sizes)).map((strip) => strip.straight);
    expect(straight("hollow")).toEqual([true, false]);
    expect(straight("convex")).toEqual([true, false]);
    expect(straight("lenticular")).toEqual([false, false]);
    expect(straight("diamond")).toEqual([true, true, true]);
    // Without a bulge, and with an edge as thick as the blade, nothing is round.
    expect(straight("convex", { ...BASE, curve: 0 })).toEqual([true, true]);
    expect(straight("lenticular", { ...BASE, edge: 5 })).toEqual([true]);
    expect(outlineArea(outline("lenticular", { ...BASE, edge: 5 }))).toBe(200);
  });

  test("a hollow and a bulge are arcs of the radius and the height given", () => {
    const middle = (word: string, more: object) => {
      const { width, bevel, thickness, edge, ...rest } = outline(word, {
        ...(SIZES[word] as object),
        ...more,
      } as never);
      const strip = stripsOf({ width, bevel, thickness, edge, ...rest }).at(-1) as Profile;
      const chord = Math.hypot(bevel, (thickness - edge) / 2);
      // Along the normal from the middle of the face's chord.
      const [y, z] = [width - bevel / 2, (thickness + edge) / 4];
      const normal = [(thickness - edge) / 2 / chord, bevel / chord] as const;
      return (height: number) => {
        const at = y + normal[0] * height;
        return strip.top(at) - (z + normal[1] * height);
      };
    };
    expect(middle("convex", {})(0.4)).toBeCloseTo(0, 9);
    // A wheel of radius 60 on the face: R - √(R² - c²/4) deep.
    const half = Math.hypot(20, 2.2) / 2;
    expect(middle("hollow", {})(-(60 - Math.sqrt(60 ** 2 - half ** 2)))).toBeCloseTo(0, 9);
  });

  test("a strip without width has faces all the same", () => {
    const [flat] = stripsOf(outline("flat", SIZES.flat as (typeof SIZES)[string]));
    expect([flat?.from, flat?.to, flat?.top(0), flat?.bottom(0)]).toEqual([0, 0, 2.5, -2.5]);
  });
});

describe("a fuller on each face", () => {
  const FULLER: Fuller = { width: 9, depth: 0.7 };
  const cases: [string, number][] = [
    // Where it begins: along the spine of a wedge, else in the middle of its face.
    ["flat", 0],
    ["chisel", 0],
    ["part flat", (40 - 18 - 9) / 2],
    ["hollow", (40 - 20 - 9) / 2],
    ["convex", (40 - 24 - 9) / 2],
    ["lenticular", (40 - 9) / 2],
    ["diamond", (40 - 9) / 2],
    ["hexagonal", (40 - 9) / 2],
    ["rectangle", (40 - 9) / 2],
  ];
  test.each(cases)(
    "%s: the drawn area is that of the section less both fullers; it begins at %d mm",
    (word, from) => {
      const given = outline(word, SIZES[word] as (typeof SIZES)[string]);
      const strips = profileOf(given, FULLER);
      expect(drawnArea(strips)).toBeCloseTo(outlineArea(given) - 2 * fullerArea(given, FULLER), 5);
      expect(strips.slice(1).map((strip) => strip.from)).toEqual(strips.slice(0, -1).map(({ to }) => to));
      expect(strips.every((strip) => strip.to > strip.from)).toBe(true);
      const grooves = strips.filter((strip) => strip.from >= from && strip.to <= from + 9);
      expect([grooves[0]?.from, grooves.at(-1)?.to]).toEqual([from, from + 9]);
      expect(grooves.map(({ straight }) => straight)).toEqual([false, false]);
    },
  );

  test.each(cases)("%s: it lies its depth under the straight edge over its rims", (word, from) => {
    const given = outline(word, SIZES[word] as (typeof SIZES)[string]);
    const groove = profileOf(given, FULLER).find((strip) => strip.from === from) as Profile;
    const rims = (groove.top(from) + groove.top(from + 9)) / 2;
    expect(rims - groove.top(from + 4.5)).toBeCloseTo(0.7, 9);
    // Rims stand on the face that was there.
    const face = stripsOf(given).find((strip) => strip.to > from) as Profile;
    expect(groove.top(from)).toBeCloseTo(face.top(from), 9);
  });

  test("none leaves the strips as they are; as wide as the bar it leaves nothing beside it", () => {
    const bar = outline("rectangle", BASE);
    expect(profileOf(bar, { width: 0, depth: 0 })).toHaveLength(1);
    expect(profileOf(bar, { width: 40, depth: 1 }).map(({ from, to }) => [from, to])).toEqual([
      [0, 20],
      [20, 40],
    ]);
    const point = outline("lenticular", { width: 0, thickness: 5 });
    expect(profileOf(point, FULLER)).toEqual([]);
  });
});

describe("metal above the chord of a fuller", () => {
  const arcHeight = (radius: number, chord: number) => radius - Math.sqrt(radius ** 2 - chord ** 2 / 4);

  test("a bulging face: the arc over its whole width", () => {
    const convex = (more: object) => outline("convex", { ...BASE, curve: 0.5, edge: 0.4, ...more });
    const face = Math.hypot(40, 2.3);
    const radius = (face ** 2 / 4 + 0.25) / 1;
    expect(crownHeight(convex({}), 12)).toBeCloseTo(arcHeight(radius, 12), 9);
    expect(fullerArea(convex({}), { width: 12, depth: 1 })).toBeCloseTo(
      segment(12, 1) + segment(12, arcHeight(radius, 12)),
      8,
    );
    // The flat above a part bevel, and a face without a bulge, have none.
    expect(crownHeight(convex({ bevelHeight: 20, curve: 0.3 }), 12)).toBe(0);
    expect(crownHeight(convex({ curve: 0 }), 12)).toBe(0);
  });

  test("a lens with a blunt edge, and one as thick there as in the middle", () => {
    // Rise 2.1 over 40 mm: R = (400 + 4.41) / 4.2.
    expect(crownHeight(outline("lenticular", { ...BASE, edge: 0.8 }), 12)).toBeCloseTo(
      arcHeight((400 + 2.1 ** 2) / 4.2, 12),
      9,
    );
    expect(crownHeight(outline("lenticular", { ...BASE, edge: 5 }), 12)).toBe(0);
  });

  test("a ridge and a flat with sloping sides: straight lines", () => {
    // Slope of the side (5 - 0.6) / 2 over (40 - 8) / 2 = 0.1375; 2 mm of it on either side of the flat of 8 mm.
    const hexagonal = outline("hexagonal", { ...BASE, edge: 0.6, flatWidth: 8 });
    expect(crownHeight(hexagonal, 12)).toBeCloseTo(2 * 0.1375, 12);
    expect([7, 8].map((chord) => crownHeight(hexagonal, chord))).toEqual([0, 0]);
    // Trapezium of 8 and 12 mm.
    expect(fullerArea(hexagonal, { width: 12, depth: 1 })).toBeCloseTo(segment(12, 1) + 10 * 0.275, 8);
    expect(crownHeight(outline("diamond", { ...BASE, edge: 1 }), 10)).toBeCloseTo((5 * 2) / 20, 12);
  });

  test("a fuller needs both figures; it may be as wide as its face and as deep as half its width, no more", () => {
    const bar = outline("rectangle", { width: 40, thickness: 20 });
    expect(fullerArea(bar, { width: 0, depth: 0 })).toBe(0);
    for (const half of [
      { width: 5, depth: 0 },
      { width: 0, depth: 1 },
    ])
      expect(() => fullerArea(bar, half)).toThrow("both a width and a depth");
    expect(fullerArea(bar, { width: 10, depth: 5 })).toBeCloseTo((Math.PI * 25) / 2, 9);
    expect(() => fullerArea(bar, { width: 10, depth: 5.01 })).toThrow("more than half its width, 5 mm");
    expect(fullerArea(bar, { width: 40, depth: 1 })).toBeCloseTo(segment(40, 1), 8);
    expect(() => fullerArea(bar, { width: 40.1, depth: 1 })).toThrow("leaves 40 mm for it");
    // A bevel takes its part of the face; a hollow ground over the whole width leaves none.
    const space = (word: string, sizes: object) => () =>
      fullerArea(outline(word, { ...BASE, ...sizes }), { width: 22.1, depth: 1 });
    expect(space("part flat", { bevelHeight: 18 })).toThrow("leaves 22 mm for it");
    expect(space("hollow", { edge: 0.6, curve: 200 })).toThrow("leaves 0 mm for it");
    expect(space("flat", {})).not.toThrow();
  });

  test("two that meet are refused: on a wedge by the thickness under their middle", () => {
    const meets = (word: string, sizes: Omit<Section, "grind">, width: number, depth: number) => () =>
      fullerArea(outline(word, sizes), { width, depth });
    // 6 mm at the spine and 1 at the edge over 30 mm: 6 - 5 × 5 / 30 = 5.1667 mm under the middle of 10 mm.
    const wedge = { width: 30, thickness: 6, edge: 1 };
    expect(meets("flat", wedge, 10, 2.58)).not.toThrow();
    expect(meets("flat", wedge, 10, 2.59)).toThrow("meet: the blade is only 6 mm thick there");
    expect(meets("rectangle", { width: 30, thickness: 4 }, 10, 1.99)).not.toThrow();
    expect(meets("rectangle", { width: 30, thickness: 4 }, 10, 2)).toThrow("meet");
    // Ridge of 6 mm over 40 mm: the chord of 10 mm lies 0.75 mm under it.
    expect(meets("diamond", { width: 40, thickness: 6 }, 10, 2.24)).not.toThrow();
    expect(meets("diamond", { width: 40, thickness: 6 }, 10, 2.26)).toThrow("meet");
  });
});

describe("fullers side by side", () => {
  const row = (word: string, more: Partial<FulleredSection>) =>
    fulleredArea({
      grind: findGrind(word),
      width: 40,
      thickness: 6,
      fullerWidth: 8,
      fullerDepth: 1,
      aSide: 1,
      sides: 2,
      datum: "chord",
      ...more,
    });
  const one = segment(8, 1);

  test("each takes as much of a bar as any other", () => {
    for (const aSide of [1, 2, 3, 5])
      for (const sides of [1, 2])
        expect(row("rectangle", { aSide, sides })).toBeCloseTo(240 - aSide * sides * one, 8);
    // Five of 8 mm fill 40 mm.
    expect(() => row("rectangle", { aSide: 5, fullerWidth: 8.01 })).toThrow(
      "5 fullers of 8.01 mm do not fit side by side on 40 mm",
    );
  });

  test("each of a lens takes its crown too, an arc looking the same all along", () => {
    const radius = (400 + 9) / 6;
    const crown = segment(8, radius - Math.sqrt(radius ** 2 - 16));
    const lens = 2 * segment(40, 3);
    for (const aSide of [1, 2, 3])
      expect(row("lenticular", { aSide })).toBeCloseTo(lens - 2 * aSide * (one + crown), 7);
  });

  test("on a ridge only the one in the middle takes it: of an even number none", () => {
    // Triangle over the chord of 8 mm: 4 × 3 / 20 = 0.6 mm high.
    const ridge = (8 * 0.6) / 2;
    expect(row("diamond", { aSide: 1 })).toBeCloseTo(120 - 2 * (one + ridge), 8);
    expect(row("diamond", { aSide: 2 })).toBeCloseTo(120 - 2 * 2 * one, 8);
    expect(row("diamond", { aSide: 3 })).toBeCloseTo(120 - 2 * (3 * one + ridge), 8);
  });

  test("the outer ones must not cut through where the blade is thinner", () => {
    const cut = (word: string, more: Partial<FulleredSection>) => () => row(word, more);
    // Wedge of 6 mm over 40: the second of 10 mm has its middle at 15 mm, 6 × 25 / 40 = 3.75 mm thick.
    const wedge = { aSide: 2, fullerWidth: 10 };
    expect(cut("flat", { ...wedge, fullerDepth: 1.87 })).not.toThrow();
    expect(cut("flat", { ...wedge, fullerDepth: 1.88 })).toThrow(
      "the outer fullers, 1.88 mm deep, cut through",
    );
    expect(cut("flat", { ...wedge, fullerDepth: 2.6, sides: 1 })).not.toThrow();
    // Ridge of 4 mm: the middle of the outer of three of 5 mm lies 5 mm off it, 4 × 15 / 20 = 3 mm thick.
    const ridge = { thickness: 4, aSide: 3, fullerWidth: 5 };
    expect(cut("diamond", { ...ridge, fullerDepth: 1.49 })).not.toThrow();
    expect(cut("diamond", { ...ridge, fullerDepth: 1.51 })).toThrow("cut through");
    // Lens: 10 mm off the middle R - √(R² - 100) = 0.7376 mm less a side, R 68.1667: 4.5249 mm thick.
    const lens = { aSide: 2, fullerWidth: 10 };
    expect(cut("lenticular", { ...lens, fullerDepth: 2.26 })).not.toThrow();
    expect(cut("lenticular", { ...lens, fullerDepth: 2.27 })).toThrow("cut through");
  });

  test("depth from the crown is that from the chord and the crown; one that only takes the crown is none", () => {
    expect(row("diamond", { datum: "crown", fullerDepth: 1.6 })).toBeCloseTo(row("diamond", {}), 9);
    expect(row("rectangle", { datum: "crown" })).toBe(row("rectangle", {}));
    expect(() => row("diamond", { datum: "crown", fullerDepth: 0.6 })).toThrow("does not reach below it");
    expect(() => row("hollow", {})).toThrow(
      'grind "hollow" given; give flat, rectangle, lenticular, diamond',
    );
  });
});

describe("sections at the limit of what can be ground", () => {
  const area = (word: string, sizes: object) => () =>
    outlineArea(outline(word, { ...BASE, ...sizes } as Omit<Section, "grind">));
  const farthest = (word: string, sizes: object, pick: (...values: number[]) => number) => {
    const { from, to, top } = stripsOf(outline(word, { ...BASE, ...sizes } as Omit<Section, "grind">)).at(
      -1,
    ) as Profile;
    return pick(...Array.from({ length: 4001 }, (_, i) => top(from + ((to - from) * i) / 4000)));
  };
  /** The figure at which a measure of the drawn face passes a limit. */
  const limitOf = (isBeyond: (figure: number) => boolean, low: number, high: number) => {
    let [a, b] = [low, high];
    for (let step = 0; step < 60; step += 1) {
      const middle = (a + b) / 2;
      if (isBeyond(middle)) b = middle;
      else a = middle;
    }
    return (a + b) / 2;
  };

  test.each([0, 0.3, 1])("a wheel just leaves metal in the hollow, edge %d mm", (edge) => {
    const sizes = (curve: number) => ({ edge, thickness: 4, curve });
    // A sharp edge holds none at its very end: there the face must not dip below it.
    const radius = limitOf((curve) => farthest("hollow", sizes(curve), Math.min) > -1e-12, 21, 2000);
    expect(radius).toBeGreaterThan(30);
    expect(area("hollow", sizes(radius * 1.002))).not.toThrow();
    expect(area("hollow", sizes(radius * 0.998))).toThrow("would grind through");
  });

  test.each([0, 0.4, 2])("a bulge just stays within the thickness, edge %d mm", (edge) => {
    const sizes = (curve: number) => ({ edge, curve });
    const bulge = limitOf((curve) => farthest("convex", sizes(curve), Math.max) > 2.5 + 1e-9, 0.01, 2);
    expect(area("convex", sizes(bulge * 0.998))).not.toThrow();
    expect(area("convex", sizes(bulge * 1.002))).toThrow("would make the blade thicker than its 5 mm");
  });

  test("a face without a slope has room for no bulge", () => {
    expect(area("convex", { edge: 5, curve: 0 })()).toBe(200);
    expect(area("convex", { edge: 5, curve: 0.1 })).toThrow("at most 0 mm fits");
  });

  test("a wheel as large as half the face, a lens of two half circles, a flat as wide as the blade", () => {
    // Face √(16² + 1.75²) = 16.0954 mm.
    expect(area("hollow", { thickness: 4, edge: 0.5, bevelHeight: 16, curve: 8 })).toThrow(
      /must be at least half of it, 8\.0477\d? mm/,
    );
    // Two half circles of 4 mm with 2 mm between: π 2² + 4 × 2.
    expect(area("lenticular", { width: 4, thickness: 6, edge: 2 })()).toBeCloseTo(4 * Math.PI + 8, 9);
    expect(area("lenticular", { width: 4, thickness: 6, edge: 1.9 })).toThrow("cannot be only 4 mm wide");
    expect(area("hexagonal", { flatWidth: 40 })()).toBe(200);
    expect(area("t-back", { flatWidth: 5, ribHeight: 2, edge: 5 })()).toBe(210);
  });

  test("a point has no area and needs no figure of its grind", () => {
    for (const word of words) expect(area(word, { width: 0 })()).toBe(0);
    // Nor does a face as high as the blade is thick there make one.
    expect(area("convex", { width: 0, curve: 0.3 })()).toBe(0);
    expect(area("hollow", { width: 0, curve: 60 })()).toBe(0);
  });

  test("a hollow has less metal than a straight bevel and never less than none, however steep its face", () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        size(0.001, 60),
        size(0.5, 20),
        size(0, 1),
        size(1, 400),
        (width, thickness, share, curve) => {
          const edge = share * thickness;
          const found = attempt(() => outlineArea(outline("hollow", { width, thickness, edge, curve })));
          if (found instanceof Refusal) return;
          expect(found).toBeGreaterThanOrEqual(0);
          expect(found).toBeLessThanOrEqual(((width * (thickness + edge)) / 2) * (1 + 1e-12));
        },
      ),
    );
    // Nearly upright face of 10 mm: the wheel takes two segments of 9.06 mm², there is 1 mm².
    expect(area("hollow", { width: 0.1, thickness: 20, curve: 10 })()).toBe(0);
  });

  test("a figure of 0 is none: refused where one is needed, passed over where the grind takes none", () => {
    expect(area("part flat", { bevelHeight: 0 })).toThrow("needs a bevel height");
    expect(area("hollow", { curve: 0, edge: 0.5 })).toThrow("needs a wheel radius");
    expect(area("hexagonal", { flatWidth: 0 })).toThrow("needs a flat width");
    expect(area("convex", { bevelHeight: 0, curve: 0 })()).toBe(100);
    expect(area("rectangle", { edge: 0, bevelHeight: 0, curve: 0, flatWidth: 0, ribHeight: 0 })()).toBe(200);
    expect(area("rectangle", { flatWidth: 3 })).toThrow("takes no flat or rib width, 3 mm given");
    expect(area("hexagonal", { flatWidth: 8, ribHeight: 3 })).toThrow("takes no rib height");
  });

  test("a grind by its word is the grind itself", () => {
    expect(outlineOf({ ...BASE, grind: "lens" })).toEqual(outline("lenticular", BASE));
  });
});

describe("a taper keeps the character of its section", () => {
  const tip = (word: string, more: object) =>
    taperStations({ grind: word, length: 200, width: 40, thickness: 4, ...more })[1];

  test("a bulge keeps its share of the thickness above the edge, a wheel stays the same", () => {
    // From 3 mm above an edge of 1 mm to 1 mm above it: a third.
    expect(tip("convex", { edge: 1, curve: 0.3, tipThickness: 2 }).curve).toBeCloseTo(0.1, 12);
    expect(tip("convex", { edge: 1, curve: 0.3, tipThickness: 1 }).curve).toBe(0);
    expect(tip("convex", { edge: 1, curve: 0.3, tipThickness: 0.5 }).curve).toBe(0);
    expect(tip("convex", { edge: 4, curve: 0.3, tipThickness: 2 }).curve).toBe(0.3);
    expect(tip("hollow", { edge: 1, curve: 60, tipThickness: 2 }).curve).toBe(60);
  });

  test("bevel and flat keep their share of the width", () => {
    const { bevelHeight, width, thickness } = tip("part flat", { bevelHeight: 20, tipWidth: 10 });
    expect([bevelHeight, width, thickness]).toEqual([5, 10, 4]);
    expect(tip("hexagonal", { flatWidth: 8, tipWidth: 10 }).flatWidth).toBe(2);
  });
});

test("moments of an area that begins with a vertical slope: √x over 1 gives 2/3, 2/5 and 2/7", () => {
  const { volume, first, second } = smoothMoments(Math.sqrt, 1);
  expect(volume).toBeCloseTo(2 / 3, 10);
  expect(first).toBeCloseTo(2 / 5, 10);
  expect(second).toBeCloseTo(2 / 7, 10);
  // Twice as long: 2^1.5, 2^2.5 and 2^3.5 times as much.
  const long = smoothMoments(Math.sqrt, 2);
  expect(long.first / first).toBeCloseTo(2 ** 2.5, 9);
});
