import fc from "fast-check";
import { describe, expect, test } from "vitest";
import sheet from "../../src/data/stock/sheet-gauges.json";
import stainless from "../../src/data/stock/stainless-gauges.json";
import * as declared from "../../src/functions/stock";
import { answer, first, testExamples } from "./call";

const { FORGE_LENGTH, FRACTION, LENGTH, STEEL_ORDER } = declared;

describe("examples of the declarations", () => {
  testExamples(declared);
});

describe("gauge tables against the weights they stand for", () => {
  // Ounces a square foot of the gauge numbers: US act of 3 March 1893, from memory.
  const ounces = new Map([
    [3, 160],
    [4, 150],
    [5, 140],
    [6, 130],
    [7, 120],
    [8, 110],
    [9, 100],
    [10, 90],
    [11, 80],
    [12, 70],
    [13, 60],
    [14, 50],
    [15, 45],
    [16, 40],
    [17, 36],
    [18, 32],
    [19, 28],
    [20, 24],
    [21, 22],
    [22, 20],
    [23, 18],
    [24, 16],
    [25, 14],
    [26, 12],
    [27, 11],
    [28, 10],
    [29, 9],
    [30, 8],
  ]);

  test.each([
    ["carbon steel, 41.82 lb a square foot and inch", sheet.rows, 41.82],
    ["stainless, 40 lb a square foot and inch", stainless.rows, 40],
  ])("%s", (_, rows, pounds) => {
    for (const [gauge = 0, inches = 0] of rows) {
      expect(Math.abs(inches - (ounces.get(gauge) ?? 0) / 16 / pounds), `gauge ${gauge}`).toBeLessThan(1e-4);
    }
  });
});

describe("LENGTH", () => {
  test.each([
    ["0,25 in", 6.35],
    ["3' 2-1/2\"", 977.9],
    ["5 ft", 1524],
    ["16 gauge", 1.51892],
    ["#16 ga", 1.51892],
    ["16 gauge stainless steel", 1.5875],
    ["12 mm", 12],
    [12.5, 12.5],
  ])("%s", (given, millimetres) => {
    expect(first(LENGTH, given)).toBeCloseTo(millimetres, 9);
  });

  test.each([
    ["3/16", /^#VALUE! "3\/16" is a fraction without a unit: write "3\/16 in" if inches are meant/],
    [46_098, /^#VALUE! length: 46098 mm given, which looks like a date: type a fraction with its unit/],
    ["16 ga brass", /^#VALUE! "16 ga brass": "brass" is no row of gauge numbers/],
    ["2 ga", /^#N\/A gauge 2 given; the table for carbon steel holds whole numbers from 3 to 30/],
    ["3/16 fat", /^#VALUE! "3\/16 fat": "fat" is not a unit of length/],
    ["14 g", /^#VALUE! "14 g": "g" is not a unit of length/],
    ["-1 in", /^#VALUE! length: -25.4 mm given; give a length from 0/],
    ["about an inch", /^#VALUE! "about an inch" is not a length/],
  ])("%s is refused", (given, sentence) => {
    expect(first(LENGTH, given)).toMatch(sentence);
  });
});

describe("FRACTION", () => {
  test("typed back with its unit it is the length again, within half of the finest part", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 3000, noNaN: true }),
        fc.constantFrom(2, 4, 8, 16, 32, 64, 128),
        (mm, parts) => {
          const text = first(FRACTION, mm, parts);
          const back = text === "0" ? 0 : first(LENGTH, `${text} in`);
          expect(Math.abs((back as number) - mm)).toBeLessThanOrEqual(25.4 / parts / 2 + 1e-9);
        },
      ),
    );
  });

  test("a denominator that no rule has is refused", () => {
    expect(first(FRACTION, 5, 10)).toBe(
      "#VALUE! denominator: 10 given; give one of 2, 4, 8, 16, 32, 64, 128",
    );
  });
});

describe("FORGE_LENGTH", () => {
  test("both rules are named and differ", () => {
    expect(first(FORGE_LENGTH, 100_000, 30, 8, null, null, null, null, "Add")).toBeCloseTo(533.333, 3);
    expect(first(FORGE_LENGTH, 100_000, 30, 8, 20)).toMatch(
      /^#VALUE! grind: 20 given; was 20 % meant\? Give 0.2/,
    );
    expect(first(FORGE_LENGTH, 100_000, 30, 8, null, null, null, null, "both")).toBe(
      '#VALUE! rule "both" given; give "multiply" or "add"',
    );
  });
});

describe("STEEL_ORDER", () => {
  const steels = [["52100"], ["80CrV2"], ["1075"], ["52100"], [""]];
  const widths = [[50], [38], [60], [50], [""]];
  const thicknesses = [[3], [4], [2.5], [3], [""]];
  const lengths = [[346], [241], [611], [200], [""]];
  const starts = [[28], [44], [14], [10], [""]];

  test("a row a steel and section in the order of the run", () => {
    const rows = answer(STEEL_ORDER, steels, widths, thicknesses, lengths, starts, 3000);
    // By hand: (2990 + 1.2) / (241 + 1.2) = 12 a bar, 44 / 12 = 4 bars; (2991.2) / 612.2 = 4 a bar, 14 / 4 = 4 bars;
    // 28 × 347.2 + 10 × 201.2 = 11 733.6 mm of 4 × 2991.2: 4 bars at least.
    expect(rows.map(([steel, section, bars]) => [steel, section, bars])).toEqual([
      ["52100", "50 × 3 mm", 4],
      ["80CrV2", "38 × 4 mm", 4],
      ["1075", "60 × 2.5 mm", 4],
    ]);
  });

  test("stock in hand is deducted in whole bars", () => {
    // By hand: a bar of 60 × 2.5 × 3000 mm at 7.85 g/cm³ weighs 3.5325 kg; 8 kg are two bars.
    expect(answer(STEEL_ORDER, "1075", 60, 2.5, 611, 14, 3000, null, null, 8)).toEqual([
      ["1075", "60 × 2.5 mm", 2, expect.closeTo(7.065, 9), expect.any(Number)],
    ]);
    expect(answer(STEEL_ORDER, "1075", 60, 2.5, 611, 14, 3000, null, null, 100)[0]?.slice(2, 4)).toEqual([
      0, 0,
    ]);
  });

  test.each([
    [
      [["1075"], 60, 2.5, 3100, 14, 3000],
      /^#VALUE! 1075 60 × 2.5 mm: a piece of 3100 mm is longer than the bar/,
    ],
    [[[["1075"], [""]], 60, 2.5, [[611], [200]], [[14], [3]], 3000], /^#VALUE! row 2: steel is empty/],
    [[["no such"], 60, 2.5, 611, 14, 3000], /^#N\/A "no such" is not in the grade table/],
    [
      [[["1075"], ["1075"]], 60, 2.5, [[611], [200]], [[14], [3]], [[3000], [2000]]],
      /^#VALUE! 1075 60 × 2.5 mm: bar lengths 3000 mm and 2000 mm given/,
    ],
    [
      [[["1075"], ["1075"]], 60, 2.5, [[611], [200]], [[14], [3]], 3000, null, null, [[5], [6]]],
      /^#VALUE! 1075 60 × 2.5 mm: kg in stock is given as 5 and 6/,
    ],
  ])("%j", (given, sentence) => {
    expect(first(STEEL_ORDER, ...given)).toMatch(sentence);
  });
});
