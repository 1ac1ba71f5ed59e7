import { describe, expect, it } from "vitest";
import { CONVERSION_TABLES, findConversionTable } from "../../src/core/hardness/conversion-tables";
import { convertHardness, correspondence } from "../../src/core/hardness/convert";
import { SCALES, type ScaleKey } from "../../src/core/hardness/scales";
import { NotAvailable } from "../../src/core/refusal";

const tableOf = (word: string) => findConversionTable(word);
const lowAlloy = tableOf("low alloy");
const e140 = tableOf("ASTM E140");

describe("printed check values", () => {
  // ISO 18265: class, HV, scale, value as printed.
  it.each([
    ["low alloy", 700, "HRC", 60.1],
    ["low alloy", 700, "HRA", 81.3],
    ["low alloy", 700, "HR15N", 90.3],
    ["low alloy", 700, "HR30N", 77.6],
    ["low alloy", 700, "HR45N", 66.7],
    ["low alloy", 400, "HRC", 40.8],
    ["low alloy", 400, "HB", 380],
    ["low alloy", 400, "MPa", 1290],
    ["low alloy", 650, "MPa", 2180],
    ["quenched and tempered", 400, "HRC", 41.5],
    ["quenched and tempered", 400, "HB", 395],
    ["quenched and tempered", 400, "MPa", 1250],
    ["quenched and tempered", 470, "MPa", 1460],
    ["cold work", 700, "HRC", 60.4],
    ["high speed", 700, "HRC", 59.7],
    ["hardened", 700, "HRC", 59.2],
  ] as const)("%s: %d HV is %s %d", (word, hv, scale, value) => {
    expect(convertHardness(hv, "HV", scale, tableOf(word))).toBe(value);
  });
});

describe("two standards against each other", () => {
  // ASTM E140 table 1 (HV read for 35 to 68 HRC) against ISO 18265 table A.1: another standard, printed apart.
  const columns: readonly [ScaleKey, number][] = [
    ["HV", 2],
    ["HRA", 0.1],
    ["HRD", 0.1],
    ["HR15N", 0.1],
    ["HR30N", 0.12],
    ["HR45N", 0.12],
  ];
  it.each(columns)("%s agrees at every whole HRC", (scale, tolerance) => {
    let largest = 0;
    for (let hrc = 21; hrc <= 68; hrc += 1) {
      const difference =
        convertHardness(hrc, "HRC", scale, lowAlloy) - convertHardness(hrc, "HRC", scale, e140);
      largest = Math.max(largest, Math.abs(difference));
    }
    console.log(`E140 against ISO 18265 A.1, ${scale}: largest difference ${largest.toFixed(3)}`);
    expect(largest).toBeLessThanOrEqual(tolerance);
  });

  it("agrees with the closed form in public use", () => {
    // HV = (223 HRC + 14500) / (100 - HRC), stated within 4 HV from 20 to 65 HRC.
    for (let hrc = 20.5; hrc <= 65; hrc += 0.5) {
      const closed = (223 * hrc + 14500) / (100 - hrc);
      expect(Math.abs(convertHardness(hrc, "HRC", "HV", lowAlloy) - closed)).toBeLessThan(4);
    }
  });
});

describe("there and back", () => {
  const scales = SCALES.map(({ word }) => word);
  const pairs = CONVERSION_TABLES.flatMap((table) =>
    scales
      .filter((from) => table.columns[from] !== undefined)
      .flatMap((from) =>
        scales
          .filter((to) => to !== from && table.columns[to] !== undefined)
          .map((to) => ({ table, from, to, name: `${table.word}: ${from} to ${to}` })),
      ),
  );

  it("columns rise without a tie", () => {
    for (const { table, from, to } of pairs) {
      const { from: values } = correspondence(table, from, to);
      values.forEach((value, index) => {
        if (index > 0) expect(value).toBeGreaterThan(values[index - 1] as number);
      });
    }
  });

  it("every row and odd values between rows come back within 0.1", () => {
    let checked = 0;
    for (const { table, from, to } of pairs) {
      const { from: values } = correspondence(table, from, to);
      values.forEach((value, index) => {
        const next = values[index + 1] ?? value;
        for (const share of [0, 0.137, 0.5, 0.913]) {
          const given = value + share * (next - value);
          const there = convertHardness(given, from, to, table);
          expect(Math.abs(convertHardness(there, to, from, table) - given)).toBeLessThan(0.1);
          checked += 1;
        }
      });
    }
    expect(checked).toBeGreaterThan(10_000);
  });

  it("classes differ as the standard prints them, and each comes back in its own", () => {
    // ISO 18265 at 60 HRC: 698 HV low alloy, 718 hardened, 692 cold work, 706 high speed (interpolated from the print).
    const expected = { "low alloy": 698, hardened: 718, "cold work": 692, "high speed": 706 };
    for (const [word, hv] of Object.entries(expected)) {
      const there = convertHardness(60, "HRC", "HV", tableOf(word));
      expect(Math.abs(there - hv)).toBeLessThan(1);
      expect(convertHardness(there, "HV", "HRC", tableOf(word))).toBeCloseTo(60, 9);
    }
  });
});

describe("what is not computed", () => {
  it("leaves values in brackets out", () => {
    // ISO 18265 table A.1 prints (456) HB at 480 HV and (100.3) HRB at 255 HV.
    expect(() => convertHardness(480, "HV", "HB", lowAlloy)).toThrow(NotAvailable);
    expect(() => convertHardness(255, "HV", "HRB", lowAlloy)).toThrow(NotAvailable);
    expect(convertHardness(470, "HV", "HB", lowAlloy)).toBe(447);
  });

  it.each([
    [19, "HRC", "HV", "HRC 19 is outside 20.3 to 68"],
    [68.5, "HRC", "HV", "HRC 68.5 is outside 20.3 to 68"],
    [651, "HV", "MPa", "HV 651 is outside 80 to 650"],
    [2181, "MPa", "HRC", "MPa 2181 is outside 770 to 2180"],
    [450, "HB", "HRC", "HB 450 is outside 228 to 447"],
  ] as const)("refuses %d %s to %s", (value, from, to, sentence) => {
    expect(() => convertHardness(value, from, to, lowAlloy)).toThrow(sentence);
  });

  it("names the classes that hold a scale", () => {
    expect(() => convertHardness(700, "HV", "MPa", tableOf("cold work"))).toThrow(
      /MPa is not in the table for cold work .*it is in: low alloy, quenched and tempered/,
    );
  });
});
