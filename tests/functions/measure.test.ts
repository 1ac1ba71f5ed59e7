import { describe, expect, test } from "vitest";
import { InvalidValue } from "../../src/core/refusal";
import { parseMeasure } from "../../src/functions/measure";
import type { Quantity } from "../../src/functions/quantities";

// Conversion factors by definition: 1 in = 25.4 mm, 1 lb = 453.59237 g (international yard and pound agreement, 1959); °F = 1.8 °C + 32.
const ACCEPTED: readonly [text: string, quantity: Quantity, unit: string, value: number][] = [
  ["400F", "temperature", "°C", 1840 / 9],
  ["400 °F", "temperature", "°C", 1840 / 9],
  ["400 ºF", "temperature", "°C", 1840 / 9],
  ["473.15 K", "temperature", "°C", 200],
  ["200", "temperature", "°C", 200],
  ["1/4 in", "length", "mm", 6.35],
  ["1-1/4 in", "length", "mm", 31.75],
  ['1 1/4"', "length", "mm", 31.75],
  ["3⁄16 inch", "length", "mm", 4.7625],
  ["0.25in", "length", "mm", 6.35],
  ["2 ft", "length", "mm", 609.6],
  ["12 cm", "length", "mm", 120],
  ["2 lb", "mass", "g", 907.18474],
  ["2 lb", "mass", "kg", 0.90718474],
  ["450 g", "mass", "kg", 0.45],
  ["90 min", "time", "h", 1.5],
  ["1.5 h", "time", "min", 90],
  ["0,8", "mass %", "%", 0.8],
  ["0.8 %", "mass %", "%", 0.8],
  ["0,125", "length", "mm", 0.125],
  ["12,5 mm", "length", "mm", 12.5],
  ["1.5E+3", "length", "mm", 1500],
  ["58 HRC", "hardness", "HRC", 58],
  ["92 %", "fraction", "", 0.92],
  ["15°", "angle", "°", 15],
  ["7850 kg/m3", "density", "g/cm³", 7.85],
  [" 1 200 mm".replace(" 1 200", "1200"), "length", "mm", 1200],
];

const REFUSED: readonly [text: string, quantity: Quantity, unit: string, says: RegExp][] = [
  ["3/16", "length", "mm", /fraction without a unit.*"3\/16 in"/],
  ["1/2", "fraction", "", /fraction without a unit/],
  ["400F", "length", "mm", /"f" is not a unit of length/],
  ["6 mm", "temperature", "°C", /"mm" is not a unit of temperature/],
  ["about 6", "length", "mm", /is not a length/],
  ["1/0 in", "length", "mm", /is not a length/],
  ["1,200", "length", "mm", /reads as 1200 or as 1\.2: write 1200 or 1\.2/],
  ["1,200 mm", "length", "mm", /reads as 1200 or as 1\.2/],
  ["£12", "money", "", /is not an amount/],
  ["12 EUR", "money", "", /"eur" is not a unit/],
  ["600 HV", "hardness", "HRC", /"hv" is not a unit of Rockwell C hardness/],
];

test("a decimal figure carries no dust of binary arithmetic", () => {
  expect(parseMeasure("3/16 in", "length", "mm")).toBe(4.7625);
  expect(parseMeasure("1/10 in", "length", "mm")).toBe(2.54);
});

describe("typed quantities", () => {
  test.each(ACCEPTED)("%s as %s in %s", (text, quantity, unit, value) => {
    expect(parseMeasure(text, quantity, unit)).toBeCloseTo(value, 9);
  });

  test.each(REFUSED)("%s as %s is refused", (text, quantity, unit, says) => {
    expect(() => parseMeasure(text, quantity, unit)).toThrow(InvalidValue);
    expect(() => parseMeasure(text, quantity, unit)).toThrow(says);
  });
});
