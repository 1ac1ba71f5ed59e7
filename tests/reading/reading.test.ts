import { describe, expect, test } from "vitest";
import { type Preferences, readPreferences } from "../../src/taskpane/parts/preferences";
import { figureReading, lengthFigure, reading, temperatureReading } from "../../src/taskpane/parts/reading";

const SHOP: Preferences = { temperature: "°C", length: "mm" };
const AMERICAN: Preferences = { temperature: "°F", length: "in" };

describe("reading", () => {
  // By hand, °F = °C × 9 / 5 + 32 (definition of the scales, NIST SP 811): 208 °C is 406.4 °F, 0 °C is 32 °F.
  test("both scales stay; the reader's stands first", () => {
    expect(temperatureReading(208, SHOP)).toBe("208 °C (406 °F)");
    expect(temperatureReading(208, AMERICAN)).toBe("406 °F (208 °C)");
    expect(reading("hold from -196 °C (-321 °F) to 0 °C (32 °F)", AMERICAN)).toBe(
      "hold from -321 °F (-196 °C) to 32 °F (0 °C)",
    );
  });

  // The inch is 25.4 mm exactly (NIST SP 811): 3/16 in is 4.7625 mm.
  test("lengths in inches to the thousandth", () => {
    expect(lengthFigure("4.7625", AMERICAN)).toBe("0.188");
    expect(lengthFigure(25.4, AMERICAN)).toBe("1.000");
    expect(figureReading("0.254", "mm", AMERICAN)).toBe("0.010 in");
    expect(figureReading("0.254", "mm", SHOP)).toBe("0.254 mm");
  });

  test("anything that is no temperature and no length is left alone", () => {
    for (const [value, unit] of [
      ["58", "HRC"],
      ["0.95", "mass %"],
      ["oil", "text"],
      ["", "mm"],
    ] as const) {
      expect(figureReading(value, unit, AMERICAN)).toBe(figureReading(value, unit, SHOP));
    }
    expect(lengthFigure("thin", AMERICAN)).toBe("thin");
    expect(reading('=BLADE.TEMPERED_HRC("1095",200)', AMERICAN)).toBe('=BLADE.TEMPERED_HRC("1095",200)');
  });

  test("whatever stands in storage, the choices are known ones", () => {
    for (const found of [null, undefined, 3, "°F", [], { temperature: "K", length: "ell" }]) {
      expect(readPreferences(found)).toEqual(SHOP);
    }
    expect(readPreferences({ temperature: "°F", length: "in" })).toEqual(AMERICAN);
  });
});
