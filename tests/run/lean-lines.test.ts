import { describe, expect, test } from "vitest";
import { type PlanLine, planRun, Refusal } from "../../src/core";
import { toTheEnd } from "../../src/core/parts";
import { USUAL_LINE } from "../../src/core/run/line";
import { findGrind } from "../../src/core/shape/grinds";
import { PLAN_HEADINGS } from "../../src/functions/run/plan-headings";
import { plannedTable } from "../../src/functions/run/plan-lines";
import { plan } from "./run";

// A program gives a line as the worksheet gives a row: what is left out of both is read alike. House rule.

/** The same line for the program, by the keys of a line, and for the worksheet, by its headings. */
function alike(line: PlanLine) {
  const cells = Object.entries(line).map(
    ([key, value]) => [PLAN_HEADINGS[key as keyof typeof PLAN_HEADINGS].label, value] as const,
  );
  const table = [cells.map(([label]) => label), cells.map(([, value]) => value as string | number)];
  const [ofTable] = toTheEnd(plannedTable(table, undefined)).plans;
  const [ofProgram] = planRun([line]);
  const [row = {}] = plan([Object.fromEntries(cells)]);
  return { ofTable, ofProgram, row };
}

describe("a line of planRun", () => {
  const needed = { steel: "1095", good: 24, yieldShare: 0.92 };

  test("with no more than it needs is planned as RUN_PLAN plans a row of the same cells", () => {
    const { ofTable, ofProgram, row } = alike(needed);
    expect(ofProgram).toEqual(ofTable);
    // 28 of 24 at a yield of 0.92: the binomial sum of line-by-hand.test.ts.
    expect(ofProgram).toMatchObject({ starts: 28, line: { name: "", grind: findGrind("flat") } });
    expect([row.starts, row.kg]).toEqual([28, ""]);
  });

  test("with names in words and some of its sizes is so too", () => {
    const { ofTable, ofProgram, row } = alike({
      ...{ ...needed, name: "L1", use: "Machete light", quench: "fast oil", grind: "rectangle" },
      ...{ length: 346, width: 50, thickness: 3, tipWidth: 12, barLength: 3000, priceKg: 9, margin: 0.35 },
    });
    expect(ofProgram).toEqual(ofTable);
    // Eight blanks of 346 mm to a bar of 3000 mm: 28 need four, 4 × 3000 × 50 × 3 mm³ at 7.872 g/cm³.
    expect(row.bars).toBe(4);
    expect(row.kg).toBeCloseTo(1.8 * 7.872, 6);
    expect(ofProgram).toMatchObject({
      stock: { bars: { bars: 4 }, kilograms: row.kg },
      massG: row["mass g"],
    });
  });

  test("a field given as undefined is one left out", () => {
    const blank = {
      name: undefined,
      grind: undefined,
      kerf: undefined,
      temperHours: undefined,
      use: undefined,
    };
    expect(planRun([{ ...needed, ...blank }])).toEqual(planRun([needed]));
  });

  const lacking: readonly [string, unknown, RegExp][] = [
    [
      "yield",
      { name: "L1", good: 24, steel: "1095" },
      /^yield: nothing given; give the share .* 0\.01 to 1$/,
    ],
    [
      "good",
      { steel: "1095", yieldShare: 0.9 },
      /^good: nothing given; give a whole number of blades from 1/,
    ],
    ["steel", { good: 24, yieldShare: 0.9 }, /^no steel given: give a designation such as "1095"/],
    ["everything", "L1", /^line: L1 given; give an object with steel, good and yieldShare$/],
  ];

  test.each(lacking)("without %s is refused in a sentence, and the others are planned", (_, line, said) => {
    const [refused, planned] = planRun([line as PlanLine, needed]);
    expect(refused).toBeInstanceOf(Refusal);
    expect((refused as Refusal).message).toMatch(said);
    expect(planned).toMatchObject({ starts: 28 });
  });
});

test("the usual values of a line are those of the worksheet's headings, every one", () => {
  const ofHeadings = Object.entries(PLAN_HEADINGS)
    .filter(([, { optional }]) => optional)
    .map(([key, heading]) => [key, heading.fallback()] as const)
    .filter(([, value]) => value !== undefined);
  expect(Object.fromEntries(ofHeadings)).toEqual({ ...USUAL_LINE, grind: findGrind(USUAL_LINE.grind) });
});
