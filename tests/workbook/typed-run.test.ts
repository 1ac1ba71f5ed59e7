import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { type StoredValues, storedValues } from "./template-cells";
import { EIGHT_LINES, TypedPlan } from "./typed-run";

const LONG = 300_000;

let plan: TypedPlan;
let values: StoredValues;

beforeAll(async () => {
  plan = new TypedPlan(planningTemplate());
  for (const entry of EIGHT_LINES) plan.type(entry);
  values = await storedValues(await planningFile(plan.workbook));
}, LONG);

afterAll(() => plan.dispose());

describe("eight lines typed into a blank plan", () => {
  it("takes 150 cells at most, and no cell shows an error on the way", () => {
    expect(plan.typed).toBeLessThanOrEqual(150);
    expect(plan.errors).toEqual([]);
  });

  it("leaves rows blank in which nothing is typed", () => {
    for (const sheet of ["Lines", "Recipe", "Cut list", "Costs", "Heat batches"]) {
      const blank = values.rows(sheet).filter((row, at) => at > 12 && row.some((cell) => cell === 0));
      expect(blank, sheet).toEqual([]);
    }
  });

  it("comes to a price of every line, and to a page of every paper", () => {
    const quoted = values.rows("Quote").filter(([line]) => /^K\d$/.test(String(line)));
    expect(quoted.map((row) => typeof row[3])).toEqual(Array(8).fill("number"));
    const pages = (sheet: string, label: string) =>
      values
        .rows(sheet)
        .filter(([first, subject]) => first === label && subject !== undefined && subject !== "");
    expect(pages("Steel order", "Supplier")).toHaveLength(3);
    expect(pages("Heat-treat order", "Batch")).toHaveLength(3);
    expect(pages("Traveller", "Line")).toHaveLength(8);
  });

  // By hand: set-ups 20 + 15 + 45 + 20 + 30 + 30 min; a fillet knife of 180 × 28 mm has 0.504 dm².
  it("works out the hours by the standard route, and they reach the costs", () => {
    expect(values.figure("Costs", "K8", "Route: set-up h")).toBeCloseTo(160 / 60, 9);
    const shares = [1, 1, 1, 0.97, 0.97 * 0.99, 0.97 * 0.99 * 0.98];
    const each = [10, 5, 10, 6, 20, 30].map(
      (minutes, at) => minutes + 0.504 * ([2, 0, 0, 1, 10, 2][at] ?? 0),
    );
    const starts = Number(values.figure("Costs", "K8", "Starts"));
    const hours = each.reduce((sum, minutes, at) => sum + minutes * (shares[at] ?? 0), 0) * (starts / 60);
    expect(values.figure("Costs", "K8", "Route: h of all starts")).toBeCloseTo(hours, 6);
    expect(values.figure("Costs", "K8", "Bench hours")).toBeCloseTo(hours, 6);
  });
});

/** Headings of cells that are typed on more than one sheet, each with the reason why that is another fact. */
const TWICE: Readonly<Record<string, string>> = {
  Line: "names the line to which a row of a list belongs",
  Batch: "names the batch in which a tested blade was hardened",
  Operation: "steps of a line of its own, beside the standard ones",
  Where: "place of a step, and whether a batch goes out of the house",
  "Set-up min": "of a step of its own, beside the standard one",
  "Minutes a piece": "of a step of its own, beside the standard one",
  Steel: "of what a supplier offers, beside that of a line",
  "Width mm": "of the bar that a supplier offers",
  "Thickness mm": "of the bar that a supplier offers",
  Yield: "of a step, beside that of the whole line",
};

describe("every fact is typed once", () => {
  it("no heading of typed cells stands on two sheets, but for those that say something else there", () => {
    const seen = new Map<string, string[]>();
    for (const { name, rows } of planningTemplate().sheets) {
      const [marks = [], headings = []] = [rows[2], rows[3]];
      headings.forEach((cell, at) => {
        if (marks[at]?.content !== "type" || marks[at]?.role !== "mark") return;
        const heading = String(cell?.content);
        seen.set(heading, [...(seen.get(heading) ?? []), name]);
      });
    }
    const twice = [...seen].filter(([, sheets]) => sheets.length > 1).map(([heading]) => heading);
    expect(twice.filter((heading) => !(heading in TWICE))).toEqual([]);
    expect(seen.size).toBeGreaterThan(60);
  });
});
