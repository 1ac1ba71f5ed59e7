import { describe, expect, test } from "vitest";
import { ASSESS, BAND_TEMPER } from "../../src/functions/blade";
import { MAX_SECTION, SECTION_QUENCH } from "../../src/functions/hardening";
import { RECIPE, TREATMENT } from "../../src/functions/run";
import { TEMPER_PLAN, TEMPERED_RANGE } from "../../src/functions/tempering";
import { demoRun } from "../../src/workbook/sheets/run-r07/run";
import { plan } from "../run/run";
import { answer } from "../steel/answer";

/* Each of these was answered in two ways, or against what any handbook of heat treatment says, in the first release. */

const SWORD = "European sword sharp";
const CAMP = "Field camp bushcraft";

/** Columns of TREATMENT by their heading. */
function treatment(...given: unknown[]): Record<string, unknown> {
  const [row = []] = answer(TREATMENT, ...given);
  return Object.fromEntries(TREATMENT.result.map(({ label }, at) => [label, row[at]]));
}

/** What RUN_PLAN says of one line. */
const planned = (line: Record<string, unknown>) =>
  plan([{ line: "1", good: 1, yield: 0.9, ...line }])[0] ?? {};

describe("a steel that makes no martensite is never inside a band", () => {
  // 1018 has 0.18 % C, 304 is austenite: no quench hardens either (any textbook of heat treatment).
  test.each(["1018", "304"])("%s at 58 HRC", (steel) => {
    const [status, chance] = answer(ASSESS, CAMP, steel, 58)[0] ?? [];
    expect([status, chance]).toEqual(["does not harden", 0]);
    expect(treatment(steel, CAMP, 58)["band status"]).toBe("does not harden");
    expect(planned({ steel, use: CAMP, "target HRC": 58 })["band status"]).toBe("does not harden");
    expect(String(answer(BAND_TEMPER, CAMP, steel)[0]?.[0])).toMatch(/does not harden|is austenitic/);
    expect(String(answer(RECIPE, steel, 58)[0]?.[0])).toMatch(/does not harden|is austenitic/);
  });
});

test("1095 does not harden in still air, in every function", () => {
  const thickness = 3;
  const quench = "still air";
  // Steel, temper, hours, cycles, known, hardening temperature, then the section.
  expect(
    String(answer(TEMPERED_RANGE, "1095", 200, 2, 1, null, null, null, thickness, quench)[0]?.[0]),
  ).toMatch(/^#N\/A 1095 does not harden in still air/);
  expect(answer(MAX_SECTION, "1095", quench)[0]?.[0]).toBe(0);
  expect(answer(SECTION_QUENCH, "1095", 30, thickness, 0.5, quench)[0]?.[4]).toMatch(/^does not harden: /);
  expect(answer(ASSESS, CAMP, "1095", 62, null, null, quench)[0]?.[0]).toBe("does not harden");
  expect(treatment("1095", CAMP, null, quench, thickness)).toMatchObject({
    "band status": "does not harden",
    "through-hardens": "does not harden",
  });
  expect(planned({ steel: "1095", use: CAMP, quench, thickness })["through-hardens"]).toBe("does not harden");
});

test("a D2 sword at 52 HRC is not inside: D2 is published to 56 HRC at its hottest temper", () => {
  const [status, chance] = answer(ASSESS, SWORD, "D2", 52)[0] ?? [];
  expect(status).toBe("uncertain");
  expect(chance).toBeLessThan(0.4);
  for (const line of [treatment("D2", SWORD, 52), planned({ steel: "D2", use: SWORD, "target HRC": 52 })]) {
    expect(line["band status"]).not.toMatch(/inside/);
    expect(line["next step"]).toMatch(/^Take one of the trade's steels for it/);
  }
});

test("1045 at 62 HRC is out of reach, and nobody is told to temper it further", () => {
  const [status, , next] = answer(ASSESS, "Straight razor", "1045", 62)[0] ?? [];
  expect(status).toBe("out of reach");
  for (const said of [next, treatment("1045", "Straight razor", 62)["next step"]]) {
    expect(said).not.toMatch(/Temper further/);
    expect(said).toMatch(/^Aim no higher than|^Take a steel with more carbon/);
  }
});

test("four of six demo lines were doubtful: now one is uncertain, and is told what a coupon is worth", () => {
  const lines = demoRun.lines.map(({ steel, use, aim, quench, thickness, length }) =>
    treatment(steel, use, aim, quench, thickness, length),
  );
  const uncertain = lines.filter((line) => !/inside/.test(String(line["band status"])));
  expect(lines).toHaveLength(6);
  expect(uncertain).toHaveLength(1);
  for (const line of uncertain) {
    expect(line["band status"]).toBe("uncertain");
    expect(line["next step"]).toMatch(/one coupon would raise the chance from 55 % to 7\d %/);
  }
});

test("a 5160 sword without a target is planned out of the brittle range, by all alike", () => {
  // 230 to 370 °C costs plain and low-alloy steel toughness (pmpa.org and the ASM note of the compilation).
  const temper = answer(BAND_TEMPER, SWORD, "5160", 800, 6, "fast oil")[0]?.[0];
  expect(temper).toBeGreaterThan(370);
  expect(treatment("5160", SWORD, null, "fast oil", 6, 800)["temper C"]).toBe(temper);
  const line = planned({
    steel: "5160",
    use: SWORD,
    quench: "fast oil",
    thickness: 6,
    length: 800,
    width: 50,
  });
  expect(line["temper C"]).toBe(temper);
  expect(line.cautions).not.toMatch(/lies in the embrittlement range/);
  // Above 375 °C only slow cooling embrittles (same compilation): a plan for its hardness says that as well.
  expect(line["next step"]).toMatch(/cool fast from it/);
  const [, , , , , , caution] = answer(TEMPER_PLAN, "5160", 51)[0] ?? [];
  expect(caution).toMatch(/375 °C \(707 °F\) to 575 °C \(1067 °F\) by slow cooling only: cool fast/);
});
