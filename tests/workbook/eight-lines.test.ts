import { beforeAll, describe, expect, it } from "vitest";
import type { Cell } from "../../src/functions/cells";
import { evaluate } from "../../src/functions/evaluate";
import { RUN_PLAN } from "../../src/functions/run";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { planTable } from "../../src/workbook/sheets/plan-table";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import type { TemplateData } from "../../src/workbook/sheets/template-data";
import { planOfEight } from "./answers/plans";
import { eightLines } from "./eight-lines";
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

const cellAt = (rows: TemplateData["blanks"], row: number, column: number, value: number | string | null) =>
  rows.map((cells, place) => (place === row ? cells.map((cell, c) => (c === column ? value : cell)) : cells));

/** The eight lines with a fault planted in each of them, in batches, stock, hours and dates. */
function spoilt(): TemplateData {
  const { lines, batches, heats, blanks, costs, cover, steels, ...rest } = eightLines();
  const changes: Readonly<Record<string, Partial<(typeof lines)[number]>>> = {
    K3: { aim: 66 },
    K5: { steel: "no such steel" },
    K6: { length: -900 },
  };
  const thinner = cellAt(blanks, 6, 2, 5);
  const narrower = cellAt(thinner, 7, 1, 20);
  return {
    ...rest,
    lines: lines.map((line) => ({ ...line, ...changes[line.line] })),
    batches: [
      ...batches.filter(([, , line]) => line !== "K2"),
      ["B9", "in-house", "K3", 250, 12, 40, 6, 3, null, null, null, null, null, 28],
    ],
    steels: cellAt(steels, 1, 0, "S1"),
    heats: cellAt(heats, 0, 1, "52100"),
    blanks: cellAt(narrower, 3, 0, 100),
    costs: costs.map((row, at) => (at === 1 ? [12, 1, "unit", 2, 5, 9, 2, 0.35] : row)),
    cover: { ...cover, furnaceKg: 2, due: "2026-09-01" },
  };
}

/** What is planted, the check that must find it, and what stands beside the cell. */
const PLANTED: readonly (readonly [
  what: string,
  check: string,
  beside: readonly [sheet: string, line: string, heading: string, said: RegExp],
])[] = [
  [
    "a line in two batches",
    "Cross-checks that fail on Lines",
    ["Lines", "K3", "Cross-check", /56 of 28 starts in heat batches/],
  ],
  [
    "a line in no batch",
    "Cross-checks that fail on Lines",
    ["Lines", "K2", "Cross-check", /in no heat batch/],
  ],
  [
    "an O1 line pointed at 52100 stock",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K1", "Cross-check", /stock S1 is 52100, the line O1/],
  ],
  [
    "a bar thinner than the blade",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K7", "Cross-check", /bar thickness of 5 mm, the blade 7/],
  ],
  [
    "a bar narrower than the blade",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K8", "Cross-check", /bar width of 20 mm, the blade 28/],
  ],
  [
    "a blank shorter than the blade",
    "Cross-checks that fail on Cut list",
    ["Cut list", "K4", "Cross-check", /blank length of 100 mm, the blade 130/],
  ],
  [
    "hours that do not go with the route",
    "Hours that do not go with the route",
    ["Costs", "K2", "Hours against the route", /h here, .* h by the route/],
  ],
  [
    "a negative length",
    "Cross-checks that fail on Lines",
    ["Lines", "K6", "Cross-check", /a length below 0/],
  ],
  [
    "a batch over the furnace",
    "Cross-checks that fail on Heat batches",
    [
      "Heat batches",
      "B3",
      "Cross-check",
      /a load of 3\.\d kg, the furnace takes 2|a load of \d\.\d kg, the furnace takes 2/,
    ],
  ],
  [
    "a due date before the day of the figures",
    "Days on the cover that are past",
    ["Cover", "Due", "2026-09-16", /./],
  ],
  [
    "a hardness out of reach",
    "Lines whose hardness is out of reach: the quote stops",
    ["Lines", "K3", "Against the band", /out of reach/],
  ],
  [
    "a name of steel that stands twice",
    "Names of steel that stand twice: the second is never read",
    ["Cut list", "K2", "Steel in stock", /^S1$/],
  ],
  ["a steel that nobody knows", "Lines that were not assessed", ["Lines", "K5", "Caution", /no such steel/]],
];

describe("planted faults", () => {
  let values: StoredValues;
  beforeAll(async () => {
    values = await storedValues(await planningFile(planningTemplate(spoilt())));
  }, LONG);

  const countOf = (book: StoredValues, what: string) =>
    Number(book.rows("Checks").find(([label]) => label === what)?.[2]);

  it.each(PLANTED)("%s is found in Checks and beside the cell", (_, check, [sheet, line, heading, said]) => {
    expect(countOf(values, check)).toBeGreaterThan(countOf(stored, check));
    if (sheet === "Cover") {
      const row = values.rows(sheet).find(([label]) => label === line);
      expect(row?.map(String)).toContain("CHECK: before the day of the figures");
      return;
    }
    expect(String(values.figure(sheet, line, heading))).toMatch(said);
  });

  it("stops the quote where the hardness is out of reach", () => {
    const row = values.rows("Quote").find(([line]) => line === "K3");
    expect(row?.slice(3, 5)).toEqual(["hardness to be agreed first", "hardness to be agreed first"]);
  });
});

describe("a ninth line typed under the table", () => {
  it(
    "counts nowhere, and is told in Checks and beside the cell",
    async () => {
      const data = eightLines();
      const model = planningTemplate(data, 8);
      const under = model.sheets.map((sheet) => {
        if (sheet.name !== "Lines") return sheet;
        const row = sheet.lines[1] + 1;
        const guard = sheet.rows[row] ?? [];
        const typed = [{ role: "typed", content: "K9" } as const, ...guard.slice(1)];
        return { ...sheet, rows: sheet.rows.map((cells, place) => (place === row ? typed : cells)) };
      });
      const values = await storedValues(await planningFile({ ...model, sheets: under }));
      const row = values.rows("Lines").find(([line]) => line === "K9");
      expect(row?.map(String).join(" ")).toMatch(/CHECK: under the table, counts nowhere/);
      const count = values.rows("Checks").find(([label]) => /typed under a table/.test(String(label)));
      expect(count?.slice(2, 4)).toEqual([1, "CHECK"]);
    },
    LONG,
  );
});
