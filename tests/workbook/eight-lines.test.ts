import { beforeAll, describe, expect, it } from "vitest";
import type { Cell } from "../../src/functions/cells";
import { evaluate } from "../../src/functions/evaluate";
import { RUN_PLAN } from "../../src/functions/run";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { planTable } from "../../src/workbook/sheets/plan-table";
import { planOfEight } from "./answers/plans";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 300_000;

let stored: StoredValues;
let planned: Record<string, unknown>[];

/** RUN_PLAN over the lines of a workbook, by heading. */
function runPlan(bytes: Uint8Array): Record<string, unknown>[] {
  const table = planTable(readLiveWorkbook(bytes)).map((row) => row.map((cell): Cell => cell ?? null));
  const [headings = [], ...rows] = evaluate(RUN_PLAN, [table]);
  return rows.map((row) => Object.fromEntries(headings.map((heading, at) => [String(heading), row[at]])));
}

beforeAll(async () => {
  const bytes = await planOfEight();
  stored = await storedValues(bytes);
  planned = runPlan(bytes);
}, LONG);

const NAMES = ["K1", "K2", "K3", "K4", "K5", "K6", "K7", "K8"];

/** Where the workbook shows what a column of RUN_PLAN gives. */
const SHOWN: Readonly<Record<string, readonly [sheet: string, heading: string]>> = {
  "mass g": ["Lines", "Mass g"],
  "HRC low": ["Lines", "HRC low"],
  "HRC high": ["Lines", "HRC high"],
  "band status": ["Lines", "Against the band"],
  "temper C": ["Lines", "Temper °C"],
  "temper F": ["Lines", "Temper °F"],
  "through-hardens": ["Lines", "Hardens through"],
  starts: ["Lines", "Starts"],
  bars: ["Cut list", "Bars to buy"],
  kg: ["Cut list", "Bars used kg"],
  hours: ["Costs", "Hours in all"],
  "unit cost": ["Costs", "Cost of a good one"],
  price: ["Costs", "Price rounded"],
  chance: ["Lines", "Chance of the band"],
  "next step": ["Recipe", "Next step in full"],
  "soak min": ["Recipe", "Soak min"],
  "quench words": ["Recipe", "Quench and bath"],
  tempers: ["Recipe", "Tempers as ordered"],
};

/** Loads and energy stand on the sheet of batches, whose lines are in its fourth column. */
function ofBatch(line: string, heading: string) {
  const rows = stored.rows("Heat batches");
  const column = rows[3]?.indexOf(heading) ?? -1;
  const row = rows.find((cells) => cells[3] === line);
  return row?.[1] === "outside" ? undefined : row?.[column];
}

describe("the workbook against RUN_PLAN", () => {
  it("plans eight lines", () => {
    expect(planned.map(({ line }) => line)).toEqual(NAMES);
  });

  const same = (found: unknown, expected: unknown, what: string) =>
    typeof expected === "number"
      ? expect(Number(found), what).toBeCloseTo(expected, 6)
      : expect(found, what).toBe(expected);
  const planOf = (line: string) => planned.find((row) => row.line === line) ?? {};

  // Two ways to the same figures: cells that call one function each, and the function that plans the whole table.
  it.each(NAMES)("agrees in every column of %s that stands on a sheet", (line) => {
    for (const [column, [sheet, heading]] of Object.entries(SHOWN))
      same(stored.figure(sheet, line, heading), planOf(line)[column], `${line} ${column}`);
  });

  it.each(NAMES)("agrees in the use of bars, loads, energy and margin of %s", (line) => {
    const plan = planOf(line);
    const blanks = Number(stored.figure("Cut list", line, "Blank length mm")) * Number(plan.starts);
    same(Number(plan["use of bar %"]), (blanks / (Number(plan.bars) * 3000)) * 100, `${line} use of bar`);
    // A line that is hardened outside has no loads of its own: RUN_PLAN leaves them empty.
    same(ofBatch(line, "Loads") ?? "", plan.loads, `${line} loads`);
    same(ofBatch(line, "kWh in all") ?? "", plan.kWh, `${line} kWh`);
    same(Number(plan.margin), 1 - Number(plan["unit cost"]) / Number(plan.price), `${line} margin`);
  });

  it.each(NAMES)("has every caution of the treatment of %s among those of RUN_PLAN", (line) => {
    const cautions = String(stored.figure("Recipe", line, "Cautions in full"));
    expect(String(planOf(line).cautions)).toContain(cautions === "none" ? "" : cautions);
  });

  // Two tempers are common practice for a blade, no source; one is what every function of tempering counts by default.
  it("orders two tempers where nothing is typed and tells RUN_PLAN so, which by itself counts one", () => {
    expect(stored.figure("Recipe", "K1", "Tempers")).toBe(2);
    expect(planOf("K1").tempers).toMatch(/^2 × 2 h at /);
    const [headings = [], row = []] = evaluate(RUN_PLAN, [
      [
        ["line", "steel", "good", "yield", "target HRC"],
        ["K1", "O1", 5, 0.9, 60],
      ],
    ]);
    expect(row[headings.indexOf("tempers")]).toMatch(/^1 × 2 h at /);
  });

  it("leaves no column of RUN_PLAN out", () => {
    const elsewhere = ["line", "use of bar %", "loads", "kWh", "margin", "cautions"];
    // The carbon of a steel stands on no sheet: no paper and no cost rests on it.
    const told = [...Object.keys(SHOWN), ...elsewhere, "carbon %"];
    expect(Object.keys(planned[0] ?? {}).sort()).toEqual(told.sort());
  });

  // O1 is a cold-work steel, soaked 20 min at least, 1.4116 a martensitic stainless one, 30 min: common practice, no source.
  it("soaks each steel by its kind", () => {
    expect(stored.figure("Recipe", "K1", "Soak min")).toBe(20);
    expect(stored.figure("Recipe", "K8", "Soak min")).toBe(30);
  });

  it("orders each quench in its own words, and clay and sub-zero where they are", () => {
    const bath = (line: string) => String(stored.figure("Recipe", line, "Quench and bath"));
    expect(bath("K7")).toMatch(/^agitated water: water at 20 °C/);
    expect(bath("K8")).toMatch(/^plates: /);
    expect(stored.figure("Recipe", "K7", "Clay")).toBe("3 mm from 12 mm above the edge to the spine");
    expect(stored.figure("Recipe", "K8", "Sub-zero")).toBe(
      "-80 °C (-112 °F), 1 h, straight after the quench",
    );
    // A hatchet has to be hard at its bit alone.
    expect(stored.figure("Lines", "K4", "Hardens through")).toBe("edge only");
    const texts = stored.rows("Heat-treat order").flat().map(String);
    expect(texts.filter((text) => text === bath("K5"))).toHaveLength(2);
    expect(texts.filter((text) => text === bath("K8"))).toHaveLength(1);
  });
});
