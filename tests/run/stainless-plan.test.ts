import { expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { plan } from "./run";

/** Every martensitic stainless grade of the table: those of kitchens, and those too soft for them. */
const STAINLESS = allGrades()
  .filter(({ family }) => family === "martensitic stainless")
  .map(({ designation }) => designation);

/** A usual hardness of the grade by its carbon: common practice, no source. */
function targetOf(designation: string): number {
  const { composition } = findSteel(designation);
  const carbon = composition.C + composition.N;
  if (carbon < 0.18) return 41;
  if (carbon < 0.25) return 45;
  if (carbon < 0.42) return 49;
  if (carbon < 0.8) return 53;
  return carbon < 0.98 ? 55 : 57;
}

test.each(STAINLESS)("%s plans through a run: temper, hardness, hardens through in still air", (steel) => {
  const shape = { good: 10, yield: 0.9, length: 200, width: 45, thickness: 2, quench: "still air" };
  const use = "Chef knife European style";
  const [line = {}] = plan([{ line: "1", use, steel, ...shape, "target HRC": targetOf(steel) }]);
  for (const heading of ["mass g", "HRC low", "HRC high", "temper C", "temper F", "starts", "kg"]) {
    expect(line[heading], `${heading}: ${line[heading]}`).toEqual(expect.any(Number));
  }
  expect(line["through-hardens"]).toBe("hardens through");
});
