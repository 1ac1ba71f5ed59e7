import { describe, expect, it } from "vitest";
import { type ConversionTable, findConversionTable } from "../../src/core/hardness/conversion-tables";
import { convertHardness, correspondence, readOff } from "../../src/core/hardness/convert";
import { findScale, type ScaleKey } from "../../src/core/hardness/scales";
import { NotAvailable } from "../../src/core/refusal";

describe("every scale from its first printed row to its last", () => {
  // ISO 18265 table A.1 and annexes B to D; ASTM E140 table 1 (recalled where it was not read): the scale, its first
  // value with the Vickers hardness beside it, its last one with that. Values in brackets do not count.
  it.each([
    ["low alloy", "HRC", [20.3, 240], [68, 940]],
    ["low alloy", "HB", [76, 80], [447, 470]],
    ["low alloy", "HRB", [41, 85], [99.5, 250]],
    ["low alloy", "HRA", [60.7, 240], [85.6, 940]],
    ["low alloy", "HRD", [40.3, 240], [76.9, 940]],
    ["low alloy", "HR15N", [69.6, 240], [93.2, 940]],
    ["low alloy", "HR30N", [41.7, 240], [84.4, 940]],
    ["low alloy", "HR45N", [19.9, 240], [75.4, 940]],
    ["low alloy", "MPa", [255, 80], [2180, 650]],
    ["quenched and tempered", "HRC", [15.3, 210], [57.5, 650]],
    ["quenched and tempered", "HB", [205, 210], [632, 650]],
    ["hardened", "HRC", [54, 580], [60.1, 720]],
    ["hardened", "HB", [572, 580], [677, 720]],
    ["cold work", "HRC", [20.6, 230], [65.8, 840]],
    ["cold work", "HR45N", [20.9, 240], [72.4, 840]],
    ["cold work", "HR15N", [70.3, 250], [92.3, 840]],
    ["high speed", "HRC", [54.2, 580], [67.6, 920]],
    ["high speed", "HRA", [77.9, 580], [85.5, 920]],
    ["ASTM E140", "HRC", [20, 238], [68, 940]],
    ["ASTM E140", "HB", [226, 238], [634, 674]],
    ["ASTM E140", "HR45N", [19.6, 238], [75.4, 940]],
  ] as readonly [string, ScaleKey, [number, number], [number, number]][])(
    "%s: %s",
    (word, scale, first, last) => {
      const table = findConversionTable(word);
      for (const [value, hv] of [first, last]) {
        expect(convertHardness(value, scale, "HV", table)).toBe(hv);
        expect(convertHardness(hv, "HV", scale, table)).toBe(value);
      }
      const range = `outside ${first[0]} to ${last[0]}, where the table for ${table.word} gives ${scale} and HV`;
      for (const beyond of [first[0] - 0.1, last[0] + 0.1]) {
        expect(() => convertHardness(beyond, scale, "HV", table)).toThrow(NotAvailable);
        expect(() => convertHardness(beyond, scale, "HV", table)).toThrow(range);
      }
    },
  );
});

describe("between the printed rows", () => {
  const lowAlloy = findConversionTable("low alloy");

  it("a value in brackets is bridged along the Vickers scale", () => {
    // ISO 18265 table A.1: 56.2 HRB at 100 HV and 62.3 at 110; the (58.6) at 105 is not used.
    expect(convertHardness(105, "HV", "HRB", lowAlloy)).toBeCloseTo(59.25, 9);
    // 96.7 HRB at 230 HV and 98.1 at 240.
    expect(convertHardness(235, "HV", "HRB", lowAlloy)).toBeCloseTo(97.4, 9);
  });

  it("a straight line from row to row", () => {
    // 780 MPa lies two thirds of the way from 770 (240 HV) to 785 (245 HV).
    expect(convertHardness(780, "MPa", "HV", lowAlloy)).toBeCloseTo(240 + 10 / 3, 9);
    // 57.8 HRC at 650 HV, 58.3 at 660.
    expect(convertHardness(58, "HRC", "HV", lowAlloy)).toBeCloseTo(654, 9);
  });

  it("a figure that is none is outside", () => {
    expect(readOff(correspondence(lowAlloy, "HRC", "HV"), Number.NaN)).toBeUndefined();
    expect(() => convertHardness(Number.NaN, "HRC", "HV", lowAlloy)).toThrow(NotAvailable);
  });
});

// A table made up, in which everything can be counted by hand.
function madeUp(columns: ConversionTable["columns"]): ConversionTable {
  return { word: "made up", aliases: [], title: "", source: "iso-18265", locator: "none", columns };
}

describe("gaps of a table", () => {
  const table = madeUp({
    HV: [100, 110, 150, 200, 300],
    HB: [undefined, 50, undefined, 140, undefined],
    HRC: [10, undefined, undefined, 20, 40],
    HRB: [undefined, undefined, undefined, 7, undefined],
  });
  const lists = (from: ScaleKey, to: ScaleKey) => {
    const pair = correspondence(table, from, to);
    return [[...pair.from], [...pair.to]];
  };

  it("are filled between two values by their Vickers hardness, and left empty at the ends", () => {
    // HB rises by 90 over the 90 HV from 110 to 200: 1 an HV. HRC rises by 10 over 100 HV.
    expect(lists("HV", "HB")).toEqual([
      [110, 150, 200],
      [50, 90, 140],
    ]);
    expect(lists("HV", "HRC")).toEqual([
      [100, 110, 150, 200, 300],
      [10, 11, 15, 20, 40],
    ]);
    expect(lists("HB", "HRC")).toEqual([
      [50, 90, 140],
      [11, 15, 20],
    ]);
  });

  it("one common row is no range", () => {
    const sentence = "HB and HRB have no common range in the table for made up";
    expect(() => correspondence(table, "HB", "HRB")).toThrow(NotAvailable);
    expect(() => correspondence(table, "HB", "HRB")).toThrow(sentence);
  });

  it("two common rows are one", () => {
    const two = madeUp({ HV: [100, 200, 300], HB: [90, 190, undefined], HRC: [undefined, 10, 20] });
    expect([...correspondence(two, "HV", "HB").to]).toEqual([90, 190]);
    expect(() => correspondence(two, "HB", "HRC")).toThrow("no common range");
  });

  it("a scale that is not printed is refused with the classes that have it", () => {
    expect(() => correspondence(table, "HRD", "HV")).toThrow(
      /^HRD is not in the table for made up .*it is in: low alloy, ASTM E140$/,
    );
  });

  it("a correspondence is worked out once, apart for each table and each way round", () => {
    const other = madeUp({ HV: [100, 200], HB: [1, 2] });
    expect(correspondence(table, "HV", "HB")).toBe(correspondence(table, "HV", "HB"));
    expect([...correspondence(table, "HB", "HV").from]).toEqual([50, 90, 140]);
    expect([...correspondence(other, "HB", "HV").from]).toEqual([1, 2]);
  });
});

describe("names of scales", () => {
  // Common practice, no source.
  it.each([
    ["Rc", "HRC"],
    ["rockwell c", "HRC"],
    ["Vickers", "HV"],
    ["HV10", "HV"],
    ["DPH", "HV"],
    ["HBW", "HB"],
    ["bhn", "HB"],
    ["Rockwell A", "HRA"],
    ["Rockwell D", "HRD"],
    ["15N", "HR15N"],
    ["Rockwell 30N", "HR30N"],
    ["HR45N", "HR45N"],
    ["Rb", "HRB"],
    ["N/mm2", "MPa"],
    ["tensile strength", "MPa"],
  ])("%s is %s", (given, word) => {
    expect(findScale(given).word).toBe(word);
  });

  it.each([
    ["A.1", "low alloy"],
    ["Q+T", "quenched and tempered"],
    ["as quenched", "hardened"],
    ["tool steel", "cold work"],
    ["HSS", "high speed"],
    ["E140", "ASTM E140"],
  ])("the class %s is %s", (given, word) => {
    expect(findConversionTable(given).word).toBe(word);
  });
});
