import { expect, test } from "vitest";
import { bladeProperties, densityOf, findGrind, findSteel, taperedBlade } from "../../src/core";

// A density that is none once made a blade of NaN, of -20 g or of 157 kg.

const blade = { grind: findGrind("flat"), length: 200, width: 30, thickness: 3 };

test.each([
  Number.NaN,
  -1,
  0,
  0.99,
  25.1,
  7850,
  undefined as unknown as number,
  densityOf(findSteel("1084")) as never,
])("a density of %s is refused with what is accepted", (density) => {
  const accepted = /^density: .+ given; give a number in g\/cm³, from 1 g\/cm³ up to 25 g\/cm³$/;
  expect(() => taperedBlade(blade, density)).toThrow(accepted);
  const stations = [0, 200].map((x) => ({ x, ...blade }));
  expect(() => bladeProperties(stations, density)).toThrow(accepted);
});

test("the density of a steel is the value of its record", () => {
  // Half of 200 × 30 × 3 mm, a wedge: 9 cm³ of the 7.85 g/cm³ that 1084 is published with.
  expect(taperedBlade(blade, densityOf(findSteel("1084")).value).mass).toBeCloseTo(9 * 7.85, 9);
});
