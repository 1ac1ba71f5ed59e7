import { expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { type Treatment, temperedHardness } from "../../src/core/tempering/tempered";
import { temperedRange } from "../../src/core/tempering/tempered-range";
import { GRADES_WITH_CURVE } from "./curve-grades";

const once = (hours: number): Treatment => ({ hours, cycles: 1 });
const hardness = (steel: string, celsius: number) => temperedHardness(findSteel(steel), celsius, once(2));

/** Reference minimum on a test piece (ISO 4957, from memory): steel, temper °C, least HRC. */
test.each([
  ["C70U", 180, 57],
  ["C80U", 180, 58],
  ["C90U", 180, 60],
  ["C105U", 180, 61],
  ["102Cr6", 180, 60],
  ["O1", 180, 60],
  ["O2", 180, 60],
  ["A2", 180, 60],
  ["D2", 180, 61],
] as const)(
  "%s after %d °C reaches the reference minimum of %d HRC (ISO 4957, from memory)",
  (steel, celsius, least) => {
    expect(hardness(steel, celsius)).toBeGreaterThanOrEqual(least);
  },
);

/** Usual figures after 200 °C (steelmakers, from memory, low confidence): steel, low, high HRC. */
test.each([
  ["80CrV2", 59, 61],
  ["75Ni8", 58, 60],
  ["8670", 58, 60],
  ["SK85", 59, 62],
  ["SUP9", 56, 59],
  ["C100S", 61, 63],
] as const)(
  "the band of %s after 200 °C overlaps %d to %d HRC (steelmakers, from memory)",
  (steel, low, high) => {
    const band = temperedRange(findSteel(steel), 200, once(2));
    expect(band.high).toBeGreaterThan(low);
    expect(band.low).toBeLessThan(high);
  },
);

test("every curve belongs to a grade of the table", () => {
  for (const grade of GRADES_WITH_CURVE) {
    if (grade === "45") continue; // two standards share this name; both take the curve
    expect(findSteel(grade).grade?.designation).toBe(grade);
  }
});
