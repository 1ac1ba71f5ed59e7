import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { heatContent } from "../../src/core/run/heat-content";
import { furnaceLoads } from "../../src/core/run/loads";
import { oilRise, USUAL_OIL } from "../../src/core/run/oil";
import { FURNACE, HEAT_CONTENT, LOADS, OIL_LITRES, OIL_RISE } from "../../src/functions/run";
import { answer, first, testExamples } from "../stock/call";

describe("examples of the declarations", () => {
  testExamples({ FURNACE, HEAT_CONTENT, LOADS, OIL_LITRES, OIL_RISE });
});

/** Specific heat of carbon steel as EN 1993-1-2, 3.4.1.2, prints it, J/(kg K). */
function specificHeat(celsius: number): number {
  if (celsius < 600) return 425 + 0.773 * celsius - 1.69e-3 * celsius ** 2 + 2.22e-6 * celsius ** 3;
  if (celsius < 735) return 666 + 13_002 / (738 - celsius);
  if (celsius < 900) return 545 + 17_820 / (celsius - 731);
  return 650;
}

/** Midpoint rule in steps of 1/200 °C. */
function integrated(to: number): number {
  const steps = Math.round((to - 20) * 200);
  const width = (to - 20) / steps;
  let sum = 0;
  for (let step = 0; step < steps; step += 1) sum += specificHeat(20 + (step + 0.5) * width) * width;
  return sum / 1000;
}

describe("heat content", () => {
  // EN 1993-1-2, integrated numerically here; two decimals as worked out before by another hand.
  test.each([
    [200, 88.19],
    [400, 201.34],
    [600, 335.74],
    [760, 524.35],
    [815, 573.28],
    [870, 612.23],
    [1080, 749.06],
  ])("20 to %d °C", (to, heat) => {
    expect(heatContent(20, to)).toBeCloseTo(heat, 2);
    expect(heatContent(20, to)).toBeCloseTo(integrated(to), 3);
  });

  test("adds up over any step between", () => {
    const celsius = fc.double({ min: 20, max: 1200, noNaN: true });
    fc.assert(
      fc.property(celsius, celsius, celsius, (a, b, c) => {
        expect(Math.abs(heatContent(a, b) + heatContent(b, c) - heatContent(a, c))).toBeLessThan(1e-9);
      }),
    );
  });

  test("outside 20 to 1200 °C is refused in both scales", () => {
    expect(first(HEAT_CONTENT, 20, 1250)).toMatch(
      /^#N\/A temperature 1250 °C \(2282 °F\) is outside 20 °C \(68 °F\) to 1200 °C \(2192 °F\)/,
    );
    expect(first(HEAT_CONTENT, 20, "1553 °F")).toBeCloseTo(595.07, 1);
  });
});

describe("quench oil", () => {
  test("the caution comes within 28 K of the flash point", () => {
    // By hand: 31.9 K on 50 °C is 81.9 °C; 50 °F is 27.8 K.
    expect(answer(OIL_RISE, 2, 815, 100, 20, 50, 200)[0]?.[2]).toBe("");
    const near = answer(OIL_RISE, 2, 815, 60, 20, 50, 100)[0]?.[2];
    expect(near).toMatch(
      /^the oil would reach 82 °C \(179 °F\), within 28 K \(50 °F as a difference\) of its flash point 100 °C \(212 °F\)/,
    );
    expect(near).toMatch(/the oil ends hotter, 82 °C \(179 °F\), than the 60 °C \(140 °F\) given/);
    expect(answer(OIL_RISE, 2, 815, 60, 20, 50, 80)[0]?.[2]).toMatch(/^DANGER: the oil would reach 82 °C/);
    expect(answer(OIL_RISE, 2, 815, 100, 20)[0]?.[2]).toMatch(/^flash point not given/);
  });

  test("one US gallon a pound gives about 70 °F", () => {
    // thermalprocessing.com, the one-to-one rule: from 1500 to 100 °F, oil of 7.3 lb a gallon, 72.5 °F at 0.17 Btu/(lb °F)
    // and 0.475; with the specific heat of EN 1993-1-2 the rise is of that order.
    const rise = answer(OIL_RISE, "1 lb", "1500 °F", "100 °F", "1 gal", null, null, 0.8747)[0]?.[0] as number;
    expect(rise * 1.8).toBeGreaterThan(60);
    expect(rise * 1.8).toBeLessThan(85);
  });

  test("the oil found keeps the rise", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (kg, rise) => {
          const litres = first(OIL_LITRES, kg, 845, 60, rise) as number;
          expect(answer(OIL_RISE, kg, 845, 60, litres)[0]?.[0]).toBeCloseTo(rise, 9);
        },
      ),
    );
  });

  test.each([
    [[2, 60, 815, 20], /^#VALUE! the steel goes in at 60 °C \(140 °F\) and comes out at 815 °C/],
    [
      [2, 815, 60, 20, 120, 110],
      /^#VALUE! oil start 120 °C \(248 °F\) is not below the flash point 110 °C \(230 °F\): do not quench/,
    ],
    [[2, 815, 60, "20 kg"], /^#VALUE! /],
    [[2, 815, 60, -5], /^#VALUE! litres: -5 L given/],
  ])("%j", (given, sentence) => {
    expect(first(OIL_RISE, ...given)).toMatch(sentence);
  });
});

describe("furnace", () => {
  test.each([
    [[8, 845, null, 35], /^#VALUE! efficiency: 35 given; was 0.35 meant\?/],
    [[8, 1300], /^#N\/A temperature 1300 °C \(2372 °F\) is outside/],
    [[8, 845, null, null, 3, -1], /^#VALUE! hours: -1 h given/],
  ])("%j", (given, sentence) => {
    expect(first(FURNACE, ...given)).toMatch(sentence);
  });
});

describe("loads", () => {
  const line = fc.record({
    recipe: fc.constantFrom("52100 845", "80CrV2 830", "c60 820"),
    pieces: fc.integer({ min: 1, max: 60 }),
    mass: fc.integer({ min: 1, max: 20 }).map((tenths) => tenths / 10),
  });

  test("hold every piece once, within pieces and mass", () => {
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 12 }),
        (lines, most) => {
          const loads = furnaceLoads(lines, { pieces: most, mass: 6 });
          for (const recipe of new Set(lines.map((one) => one.recipe))) {
            const of = <T extends { recipe: string }>(list: readonly T[]) =>
              list.filter((one) => one.recipe === recipe);
            const pieces = of(lines).reduce((sum, one) => sum + one.pieces, 0);
            const mass = of(lines).reduce((sum, one) => sum + one.pieces * one.mass, 0);
            expect(of(loads).reduce((sum, one) => sum + one.pieces, 0)).toBe(pieces);
            expect(of(loads).reduce((sum, one) => sum + one.mass, 0)).toBeCloseTo(mass, 9);
            expect(of(loads).length).toBeGreaterThanOrEqual(Math.ceil(pieces / most));
          }
          for (const load of loads) {
            expect(load.pieces).toBeLessThanOrEqual(most);
            expect(load.mass).toBeLessThanOrEqual(6 + 1e-9);
          }
        },
      ),
    );
  });

  test("28 pieces at 7 a load are 4 loads; recipes are told apart without case", () => {
    // By hand.
    expect(answer(LOADS, [["52100"], [" 52100"]], [[20], [8]], 0.2, 7).map(([, , pieces]) => pieces)).toEqual(
      [7, 7, 7, 7],
    );
    expect(answer(LOADS, "52100", 28, 0.2)).toEqual([[1, "52100", 28, expect.closeTo(5.6, 9)]]);
  });

  test.each([
    [
      ["52100", 3, 8, null, 6],
      /^#VALUE! kg a load: one piece of "52100", 8 kg, is heavier than a load, 6 kg/,
    ],
    [[[["52100"], [""]], [[3], [4]], 0.2], /^#VALUE! row 2: recipe is empty/],
    [["52100", 2.5, 0.2], /^#VALUE! count: 2.5 given/],
  ])("%j", (given, sentence) => {
    expect(first(LOADS, ...given)).toMatch(sentence);
  });
});

describe("furnace loads at their limits", () => {
  const line = (recipe: string, pieces: number, mass: number) => ({ recipe, pieces, mass });

  test("masses that meet the limit but for binary arithmetic fit, and a gram more does not", () => {
    // 0.1 + 0.2 is a hair over 0.3 in binary.
    expect(furnaceLoads([line("a", 3, 0.1)], { pieces: 9, mass: 0.3 })).toHaveLength(1);
    expect(furnaceLoads([line("a", 1, 0.1 + 0.2)], { pieces: 9, mass: 0.3 })).toHaveLength(1);
    expect(() => furnaceLoads([line("a", 1, 0.301)], { pieces: 9, mass: 0.3 })).toThrow(
      /heavier than a load/,
    );
    expect(furnaceLoads([line("a", 3, 0.101)], { pieces: 9, mass: 0.3 })).toHaveLength(2);
  });

  test("pieces without mass are limited by their number alone", () => {
    expect(furnaceLoads([line("a", 5, 0)], { pieces: 2, mass: 1 }).map(({ pieces }) => pieces)).toEqual([
      2, 2, 1,
    ]);
  });

  test("heaviest first, so that light pieces fill what is left; recipes in any writing are one", () => {
    const lines = [line(" Window A ", 4, 1), line("window a", 1, 6), line("WINDOW A", 1, 4)];
    const loads = furnaceLoads(lines, { pieces: 9, mass: 7 });
    // 6 + 1 and 4 + 1 + 1 + 1; in the order given it would take three loads.
    expect(loads.map(({ recipe, pieces, mass }) => [recipe, pieces, mass])).toEqual([
      ["Window A", 2, 7],
      ["Window A", 4, 7],
    ]);
  });
});

describe("an oil bath at its limits", () => {
  const bath = (start: number, flashPoint: number | undefined) => ({
    ...USUAL_OIL,
    litres: 60,
    start,
    flashPoint,
  });
  const quench = { mass: 2, from: 815, to: 50 };
  const { final } = oilRise(quench, bath(20, undefined));

  test("oil at its flash point is no bath", () => {
    expect(() => oilRise(quench, bath(180, 180))).toThrow(/not below the flash point .*do not quench/);
    expect(() => oilRise(quench, bath(179.9, 180))).not.toThrow();
    expect(oilRise(quench, bath(400, undefined)).caution).toMatch(/^flash point not given/);
  });

  test("steel that does not cool gives no heat", () => {
    expect(() => oilRise({ mass: 2, from: 50, to: 50 }, bath(20, 200))).toThrow(
      /give the hotter temperature first/,
    );
  });

  test("danger from the flash point on, a warning within 50 °F of it (29 CFR 1910.126), silence below", () => {
    expect(oilRise(quench, bath(20, final)).caution).toMatch(/^DANGER/);
    expect(oilRise(quench, bath(20, final + 0.1)).caution).toMatch(/within 28 K/);
    expect(oilRise(quench, bath(20, final + 27.7)).caution).toMatch(/within 28 K/);
    expect(oilRise(quench, bath(20, final + 27.8)).caution).not.toMatch(/28 K|DANGER/);
  });
});
