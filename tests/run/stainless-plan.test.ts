import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { RUN_PLAN } from "../../src/functions/run/run-plan";
import { plan } from "./run";

/** Every martensitic stainless grade of the table: those of kitchens, and those too soft for them. */
const STAINLESS = allGrades()
  .filter(({ family }) => family === "martensitic stainless")
  .map(({ designation }) => designation);

/** What a shop buys for stainless blades, 420 by its carbon, and two analyses at the ends of the range. */
const BOUGHT = [
  ..."410 420 X20Cr13 X30Cr13 X39Cr13 X46Cr13 X50CrMoV15 X55CrMo14 X65Cr13 X70CrMo15 X39CrMo17-1".split(" "),
  ..."X30CrMoN15-1 X105CrMo17 X90CrMoV18 440A 440B 440C 95Х18".split(" "),
  "C 0.40 Cr 10.5 Si 0.4 Mn 0.5",
  "C 0.80 Cr 18 Si 0.4 Mn 0.5",
];

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

const SHAPE = { good: 10, yield: 0.9, length: 200, width: 45, thickness: 2, quench: "still air" };
const USE = "Chef knife European style";

function lineOf(steel: string, more: Record<string, number | string> = {}) {
  const [line = {}] = plan([
    { line: "1", use: USE, steel, ...SHAPE, "target HRC": targetOf(steel), ...more },
  ]);
  return line;
}

/** Columns of the result that a line without prices, bars and heat loads leaves blank. */
const NEEDS_MORE = ["bars", "use of bar %", "loads", "kWh", "hours", "unit cost", "price", "margin"];
const FIGURES = [
  "mass g",
  "carbon %",
  "HRC low",
  "HRC high",
  "temper C",
  "temper F",
  "starts",
  "kg",
  "chance",
];

test.each([...new Set([...STAINLESS, ...BOUGHT])])("%s plans through a run, whole", (steel) => {
  const line = lineOf(steel);
  for (const heading of FIGURES) {
    expect(line[heading], `${heading}: ${line[heading]}`).toEqual(expect.any(Number));
  }
  expect(line["through-hardens"]).toBe("hardens through");
  const result = RUN_PLAN.result.map(({ label }) => label);
  for (const heading of result.filter((label) => !NEEDS_MORE.includes(label))) {
    expect(String(line[heading] ?? ""), heading).not.toMatch(/^#/);
  }
  for (const heading of ["band status", "next step", "quench words", "tempers"]) {
    expect(line[heading], heading).not.toBe("");
  }
});

describe("a freezer in the line", () => {
  test.each(["X50CrMoV15", "440C", "X30CrMoN15-1"])(
    "%s is harder, or tempered hotter for the same hardness",
    (steel) => {
      const cooled = lineOf(steel, { "quench to C": -75 });
      expect(cooled["temper C"] as number).toBeGreaterThan(lineOf(steel)["temper C"] as number);
    },
  );
});
