import { beforeAll, describe, expect, it } from "vitest";
import { functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import { PlanSheet } from "../../src/workbook/sheets/plan-sheet";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 300_000;

/** One function for one set of arguments. */
function asked(name: string, ...given: unknown[]) {
  const fn = functionNamed(name);
  if (fn === undefined) throw new RangeError(`no function ${name}`);
  return evaluate(fn, given);
}

describe("one blade, one mass", () => {
  let demo: StoredValues;

  beforeAll(async () => {
    demo = await storedValues(await planningFile(demoWorkbook()));
  }, LONG);

  /** The figure below a heading on a sheet of swords, in the block that names the line. */
  function bladeGrams(sheet: string, sword: number): number {
    const found: number[] = [];
    demo.rows(sheet).forEach((row, at) => {
      const column = row.indexOf("Blade g");
      const below = demo.rows(sheet)[at + 1]?.[column];
      const beside = row[column + 1];
      if (column < 0) return;
      found.push(Number(sheet === "Balance" ? below : beside));
    });
    return found[sword] ?? Number.NaN;
  }

  // The sections of the swords are invented; mass of a prism between two stations by Simpson's rule, as STATIONS has it.
  it.each([
    ["L5", 0],
    ["L6", 1],
  ])(
    "%s weighs the same on Lines and on Balance, and Lines says that a straight taper would not",
    (line, sword) => {
      const mass = Number(demo.figure("Lines", line, "Mass g"));
      expect(bladeGrams("Balance", sword)).toBeCloseTo(mass, 6);
      expect(demo.figure("Lines", line, "Cross-check")).toMatch(
        /; mass as measured at stations, a straight taper would have \d+ g$/,
      );
    },
  );

  it("a line that was not measured says nothing of it", () => {
    expect(String(demo.figure("Lines", "L1", "Cross-check"))).not.toContain("stations");
  });
});

describe("°F typed in columns of °C", () => {
  let stored: StoredValues;

  beforeAll(async () => {
    const plan = await planningFile(planningTemplate(exampleData(), 6));
    const live = readLiveWorkbook(plan);
    /** A text typed under a heading in the row of a line. */
    const typed = (name: string, line: string, heading: string, value: string, key = "Line") => {
      const sheet = live.sheets.find(({ listed }) => listed.name === name);
      if (sheet === undefined) throw new RangeError(`no sheet ${name}`);
      const read = new PlanSheet(live, sheet);
      const row = read.rowsWith(key).find((at) => read.under(key, at).value === line);
      const column = read.columnOf(heading);
      if (row === undefined || column === undefined) throw new RangeError(`${name}: no ${line}, ${heading}`);
      return [name, { row, column, content: { value } }] as const;
    };
    const cells = [
      typed("Lines", "L5", "Temper °C", "700F"),
      typed("Recipe", "L5", "Harden at, chosen °C", "1560F"),
      typed("Recipe", "L5", "Sub-zero °C", "-110F"),
      typed("Recipe", "L2", "Known °C", "400F"),
      typed("Recipe", "L2", "Known HRC", "60"),
      typed("Heat batches", "L5", "Preheat °C", "1200F"),
    ];
    const changes = new Map<string, (typeof cells)[number][1][]>();
    for (const [sheet, cell] of cells) changes.set(sheet, [...(changes.get(sheet) ?? []), cell]);
    stored = await storedValues((await patchWorkbook(plan, changes)).bytes);
  }, LONG);

  // 700 °F is 371.1 °C, 1560 °F 848.9 °C, -110 °F -78.9 °C: (°F - 32) × 5/9.
  it("reach the line, the recipe, the batch and the order", () => {
    expect(stored.figure("Lines", "L5", "Temper °F")).toBe(700);
    expect(typeof stored.figure("Lines", "L5", "HRC low")).toBe("number");
    expect(stored.figure("Recipe", "L5", "Harden °C")).toBe(849);
    expect(stored.figure("Recipe", "L5", "Sub-zero")).toMatch(/^-79 °C \(-110 °F\)/);
    expect(stored.figure("Recipe", "L5", "Tempers as ordered")).toMatch(/at 371 °C \(700 °F\)$/);
    const batch = stored.rows("Heat batches").find((row) => row[3] === "L5") ?? [];
    expect(batch).toContain(371);
    const order = stored.rows("Heat-treat order").flat().map(String);
    expect(order.filter((text) => /at 371 °C \(700 °F\)$/.test(text))).toHaveLength(1);
    expect(order).toContain("1200F");
    expect(stored.figure("Recipe", "L2", "Cautions in full")).not.toMatch(/known/i);
  });
});

describe("the certificate of any grade can be passed", () => {
  it("has a place for every element that a grade limits", () => {
    const steels = asked("STEELS").map(([grade]) => grade);
    const limited = new Set(
      steels.flatMap((grade) => asked("CERTIFICATE", grade, [["C"]], [[0.5]]).map(([element]) => element)),
    );
    limited.delete("verdict");
    // A steel that is sold in two classes of carbon names them instead.
    for (const element of limited) if (typeof element !== "string") limited.delete(element);
    expect(limited.size).toBeGreaterThan(10);
    expect(exampleData().elements).toEqual(expect.arrayContaining([...limited]));
  });

  it("passes O1 with its tungsten", () => {
    // Within ASTM A681 as held: C 0.85 to 1.00, Mn 1.00 to 1.40, Cr and W 0.40 to 0.60.
    const found: Readonly<Record<string, number>> = {
      ...{ C: 0.95, Si: 0.3, Mn: 1.2, P: 0.01, S: 0.005, Cr: 0.5 },
      ...{ W: 0.5, V: 0.1, Ni: 0.1, Cu: 0.1 },
    };
    const { elements } = exampleData();
    const rows = asked("CERTIFICATE", "O1", [elements], [elements.map((element) => found[element] ?? null)]);
    expect(rows.at(-1)?.[4]).toMatch(/^pass/);
  });
});
