import { describe, expect, it } from "vitest";
import type { ScaleKey } from "../../src/core/hardness/scales";
import { strengthOf, yieldStrength } from "../../src/core/hardness/strength";
import { NotAvailable } from "../../src/core/refusal";

// Yield: Pavlina and Van Tyne 2008, 2.876 HV - 90.7, worked by hand. Tensile: ISO 18265, table A.1, as printed.
describe("yield strength by hardness alone", () => {
  it.each([
    [136, 300.436],
    [300, 772.1],
    [400, 1059.7],
    [500, 1347.3],
    [650, 1778.7],
  ])("%d HV yields at %d MPa", (hv, mpa) => {
    expect(yieldStrength(hv)).toBeCloseTo(mpa, 9);
    expect(strengthOf(hv, "HV").yieldMPa).toBeCloseTo(mpa, 9);
    expect(strengthOf(hv, "HV").bounded).toBe(false);
  });

  // ISO 18265, table A.1: 400 HV stands beside these.
  it.each([
    ["HRC", 40.8],
    ["HB", 380],
    ["HRA", 70.8],
    ["HRD", 56],
    ["HR15N", 80.8],
    ["HR30N", 60.2],
    ["HR45N", 44.1],
  ] as const)("%s %d is 400 HV", (scale, value) => {
    expect(strengthOf(value, scale).yieldMPa).toBeCloseTo(1059.7, 9);
    expect(strengthOf(value, scale).tensileMPa).toBeCloseTo(1290, 9);
  });
});

describe("tensile strength", () => {
  it.each([
    [140, 450],
    [240, 770],
    [300, 965],
    [350, 1125],
    [400, 1290],
  ])("up to 400 HV as the standard prints it: %d HV, %d MPa", (hv, mpa) => {
    expect(strengthOf(hv, "HV").tensileMPa).toBeCloseTo(mpa, 9);
  });

  // Halfway between the printed 430 and 450 MPa of 135 and 140 HV.
  it("between two rows by a straight line", () => {
    expect(strengthOf(137.5, "HV").tensileMPa).toBeCloseTo(440, 9);
  });

  // The line through measured rows as the relation states it, 3.494 HV - 94; the table prints 1420 and 2180 there.
  it.each([
    [440, 1443.36],
    [450, 1478.3],
    [500, 1653],
    [650, 2177.1],
  ])("from 440 HV on by the line: %d HV, %d MPa", (hv, mpa) => {
    expect(strengthOf(hv, "HV").tensileMPa).toBeCloseTo(mpa, 9);
  });

  // 410 HV: three parts of the printed 1320 and one of the line's 1338.54; 420 HV: half of 1350, half of 1373.48.
  it.each([
    [410, 1324.635],
    [420, 1361.74],
    [430, 0.25 * 1385 + 0.75 * 1408.42],
  ])("between the two by parts of both: %d HV, %d MPa", (hv, mpa) => {
    expect(strengthOf(hv, "HV").tensileMPa).toBeCloseTo(mpa, 9);
  });

  it("is none where the table of the standard stops, at 650 HV", () => {
    expect(strengthOf(650, "HV").tensileMPa).toBeDefined();
    expect(strengthOf(650.1, "HV").tensileMPa).toBeUndefined();
  });
});

describe("yield strength by hardness and temper", () => {
  // Shares of the tensile strength as the relation states them, of the 965 MPa printed beside 300 HV; between two of
  // them halfway.
  it.each([
    [90, 0.53],
    [120, 0.615],
    [150, 0.7],
    [177.5, 0.785],
    [205, 0.87],
    [252.5, 0.8725],
    [300, 0.875],
    [357.5, 0.8875],
    [415, 0.9],
    [416, 0.9],
    [700, 0.9],
  ])("%d °C: a share of %d", (temperC, share) => {
    expect(strengthOf(300, "HV", temperC).yieldMPa).toBeCloseTo(965 * share, 9);
  });

  it.each([89.9, 700.1])("%d °C is outside the tempers that were measured", (temperC) => {
    expect(() => strengthOf(300, "HV", temperC)).toThrow(NotAvailable);
    expect(() => strengthOf(300, "HV", temperC)).toThrow("is outside 90 °C (194 °F) to 700 °C (1292 °F)");
  });

  it("leaves the tensile strength as it is", () => {
    expect(strengthOf(300, "HV", 150).tensileMPa).toBeCloseTo(965, 9);
  });
});

describe("above 58 HRC the yield is a bound", () => {
  // ISO 18265, table A.1: 57.8 HRC at 650 HV and 58.3 at 660, so that 58 HRC is 654 HV.
  const BOUND = 2.876 * 654 - 90.7;

  it.each([
    ["HRC", 58, false],
    ["HV", 653.9, false],
    ["HRC", 58.1, true],
    ["HV", 654.1, true],
    ["HV", 940, true],
    ["HRC", 68, true],
  ] as const)("%s %d: %s", (scale, value, bounded) => {
    expect(strengthOf(value, scale).bounded).toBe(bounded);
  });

  it("and stays where it is at 58 HRC", () => {
    for (const [scale, value] of [
      ["HRC", 58],
      ["HRC", 60],
      ["HV", 940],
    ] as const) {
      expect(strengthOf(value, scale).yieldMPa).toBeCloseTo(BOUND, 9);
    }
    expect(strengthOf(653, "HV").yieldMPa).toBeLessThan(BOUND);
  });

  // No tensile strength is printed there: the line goes on, 3.494 HV - 94.
  it("with the temper too", () => {
    const line = 3.494 * 654 - 94;
    expect(strengthOf(60, "HRC", 205).yieldMPa).toBeCloseTo(0.87 * line, 9);
    expect(strengthOf(654, "HV", 150).yieldMPa).toBeCloseTo(0.7 * line, 9);
  });
});

describe("what is refused", () => {
  it.each([
    [135.9, "HV", "Vickers hardness 135.9 HV is outside 136 HV to 940 HV"],
    [940.1, "HV", "Vickers hardness 940.1 HV is outside 136 HV to 940 HV"],
    [10, "HRC", "HRC 10 is outside 20.3 to 68"],
    [69, "HRC", "HRC 69 is outside 20.3 to 68"],
    [448, "HB", "HB 448 is outside 76 to 447"],
    [1290, "MPa", "a tensile strength was given: give a hardness and its scale"],
  ] as readonly [number, ScaleKey, string][])("%d %s", (value, scale, sentence) => {
    expect(() => strengthOf(value, scale)).toThrow(NotAvailable);
    expect(() => strengthOf(value, scale)).toThrow(sentence);
  });

  it("takes both ends of its range", () => {
    expect(strengthOf(136, "HV").tensileMPa).toBeCloseTo(434, 9);
    expect(strengthOf(940, "HV").tensileMPa).toBeUndefined();
  });
});
