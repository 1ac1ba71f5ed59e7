import { beforeAll, describe, expect, it } from "vitest";
import { planRun } from "../../src/core/run/plan";
import { bladeProperties } from "../../src/core/shape/stations";
import { taperedBlade } from "../../src/core/shape/taper";
import { densityOf } from "../../src/core/steel/density";
import { forgeLength } from "../../src/core/stock/forge-length";
import type { Cell } from "../../src/functions/cells";
import { evaluate } from "../../src/functions/evaluate";
import { RUN_PLAN } from "../../src/functions/run";
import { STARTS } from "../../src/functions/run/starts";
import { LENGTH } from "../../src/functions/stock/length";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import type { WorkbookModel } from "../../src/workbook/model/sheet-model";
import { HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planTable } from "../../src/workbook/sheets/plan-table";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { EMPTY_DATA, type TemplateData } from "../../src/workbook/sheets/template-data";
import { planOfEight } from "./answers/plans";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 300_000;

const KNIFE = {
  item: "Kitchen knife",
  use: "Chef knife thin hard",
  steel: "1095",
  good: 4,
  yield: 0.9,
  confidence: 0.9,
  aim: 61,
  quench: "fast oil",
  grind: "flat",
  tipWidth: 6,
  tipThickness: 1.2,
  edge: 0.25,
};

/** One knife in bare figures, the same with its units, and one with length and width in each other's place. */
const data = {
  ...EMPTY_DATA,
  lines: [
    { ...KNIFE, line: "L1", length: 210, width: 45.72, thickness: 2.4 },
    { ...KNIFE, line: "L2", length: "210 mm", width: "1.8 in", thickness: "2,4mm" },
    { ...KNIFE, line: "L3", length: 46, width: 210, thickness: 2.4 },
    { ...KNIFE, line: "L4", length: 210, width: 45.72, thickness: 2.4 },
  ],
} as unknown as TemplateData;

/** The plan as the smith goes on typing: a count with a comma in the fourth line. */
function withComma(model: WorkbookModel): WorkbookModel {
  const sheets = model.sheets.map((sheet) => {
    if (sheet.name !== "Lines") return sheet;
    const column = sheet.rows[HEADINGS]?.findIndex((cell) => cell?.content === "Good wanted");
    const rows = sheet.rows.map((cells) =>
      cells[0]?.content === "L4"
        ? cells.map((cell, at) => (cell && at === column ? { ...cell, content: "1,000" } : cell))
        : cells,
    );
    return { ...sheet, rows };
  });
  return { ...model, sheets };
}

let bytes: Uint8Array;
let values: StoredValues;
beforeAll(async () => {
  bytes = await planningFile(withComma(planningTemplate(data, 4)));
  values = await storedValues(bytes);
}, LONG);

describe("a length typed with its unit", () => {
  // 1.8 in is 45.72 mm.
  it.each([
    ["Recipe", "Hardened mm"],
    ["Recipe", "In the furnace min"],
    ["Lines", "Mass g"],
    ["Lines", "Starts"],
    ["Cut list", "Blank length mm"],
    ["Cut list", "Width mm"],
    ["Cut list", "Thickness mm"],
    ["Costs", "Route: h of all starts"],
  ])("counts on %s, %s, as the bare figure in mm does", (sheet, heading) => {
    const [bare, typed] = ["L1", "L2"].map((line) => values.figure(sheet, line, heading));
    expect(typeof bare).toBe("number");
    expect(Number(typed)).toBeCloseTo(Number(bare), 9);
  });

  it("is hardened thicker by what is ground off later, within its bar: 2.4 + 2 × 0.2 mm", () => {
    expect(values.figure("Recipe", "L2", "Hardened mm")).toBeCloseTo(2.8, 9);
  });

  it("stands on paper in mm, behind the unit it was typed in", () => {
    const blades = values
      .rows("Traveller")
      .filter((row) => row.includes("Blade"))
      .map((row) => row[row.indexOf("Blade") + 1]);
    expect(blades[0]).toBe("210 mm × 45.72 mm × 2.4 mm");
    expect(blades[1]).toBe("210 mm × 1.8 in (45.72 mm) × 2.4 mm");
  });
});

describe("a slip of the typist", () => {
  it("in length and width is asked about beside the line, and counted", () => {
    expect(values.figure("Lines", "L3", "Cross-check")).toMatch(
      /^CHECK: length of 46 mm, the width 210: are they/,
    );
    expect(values.figure("Lines", "L1", "Cross-check")).toBe("OK");
    const count = values.rows("Checks").find(([label]) => label === "Cross-checks that fail on Lines");
    // L3, and L4 for its good blades.
    expect(count?.[2]).toBe(2);
  });

  // 1,000 is 1000 in one country and 1 in another: no count is taken from it, and nothing else of the plan is lost.
  it('in "1,000" good blades is told beside the line with both readings, and counts nowhere', () => {
    expect(values.figure("Lines", "L4", "Cross-check")).toContain(
      'good wanted: "1,000" reads as 1000 or as 1.000: write one of them',
    );
    expect(values.figure("Lines", "L4", "Starts")).toBe("#VALUE!");
    expect(values.figure("Lines", "L1", "Starts")).toBeGreaterThanOrEqual(4);
    const table = planTable(readLiveWorkbook(bytes)).map((row) => row.map((cell): Cell => cell ?? null));
    const planned = evaluate(RUN_PLAN, [table]).map((row) => row.map((cell) => String(cell)));
    const comma = planned.find(([first]) => first === "L4");
    expect(comma?.join(" ")).toContain('"1,000" reads as 1000 or as 1: write 1000 or 1');
  });

  it.each([
    ["STARTS", STARTS, ["1,000", 0.9, 0.9]],
    ["LENGTH", LENGTH, ["1,000"]],
  ])('in "1,000" is refused by %s with both readings', (_, fn, given) => {
    const [[answer] = []] = evaluate(fn, given);
    expect(answer).toBeInstanceOf(Error);
    expect((answer as Error).message).toContain('"1,000" reads as 1000 or as 1: write 1000 or 1');
  });

  it("without a name of the run leaves the blade numbers without its hyphen", () => {
    const texts = values.rows("Traveller").flat().map(String);
    const told = texts.filter((text) => text.endsWith(": tick when good"));
    expect(told[0]).toMatch(/^L1-01 to -\d\d: tick when good$/);
  });
});

describe("the mass of a straight taper", () => {
  // A chef's knife of 210 mm measured at four places, worked by hand: 8925.45 mm³, prismatoids of its areas 68.4,
  // 58.65, 32.64 and 1.1 mm². Between its heel and its tip alone a straight line leaves the belly out.
  it("is a third below that of a kitchen knife which keeps its width, as the note of Lines says", () => {
    const station = (x: number, width: number, thickness: number, edge: number) => ({
      grind: "flat",
      x,
      width,
      thickness,
      edge,
    });
    const measured = [
      station(0, 48, 2.6, 0.25),
      station(70, 46, 2.3, 0.25),
      station(150, 34, 1.7, 0.22),
      station(210, 2, 0.9, 0.2),
    ];
    const { volume } = bladeProperties(measured, 7.85);
    expect(volume).toBeCloseTo(8925.45, 2);
    const heel = { grind: "flat", length: 210, width: 48, thickness: 2.6, edge: 0.25 };
    const straight = taperedBlade({ ...heel, tipWidth: 2, tipThickness: 0.9 }, 7.85).volume;
    expect(volume / straight).toBeGreaterThan(1.4);
    expect(volume / straight).toBeLessThan(1.55);
    expect(values.rows("Lines")[1]?.join(" ")).toMatch(/weighs up to half more: measure it on Stations/);
  });
});

describe("what is usual where nothing is said", () => {
  const onCover = (label: string) => Number(values.rows("Cover").find(([first]) => first === label)?.[1]);

  it("is the same on the cover and in RUN_PLAN: kerf, trim, confidence, losses of a forged blade", () => {
    const [volume, width, thickness] = [94_020.83, 30, 8];
    const forging = {
      volume,
      barWidth: width,
      barThickness: thickness,
      grind: onCover("Forged: ground off, share"),
      scale: onCover("Forged: scale, share"),
      crop: onCover("Forged: cut off, share"),
      tong: onCover("Forged: tong hold mm"),
      rule: "multiply",
    } as const;
    const [planned] = planRun([
      {
        steel: "5160",
        good: 4,
        yieldShare: 0.85,
        forgedVolume: volume,
        blankWidth: width,
        blankThickness: thickness,
      },
    ]);
    if (planned === undefined || !("line" in planned)) throw new Error("a line that is planned");
    const { kerf, trim, confidence } = planned.line;
    expect([kerf, trim, confidence]).toEqual(
      ["Kerf of the saw mm", "Trim a bar mm", "Usual confidence"].map(onCover),
    );
    const blankKg = (forgeLength(forging) * width * thickness * densityOf("5160").value) / 1e6;
    expect(planned.stock.hardenKg).toBeCloseTo(blankKg, 9);
  });

  it(
    "the volume of a forged blade goes to RUN_PLAN with its tang",
    async () => {
      const bytes = await planOfEight();
      const stored = await storedValues(bytes);
      const [headings = [], ...rows] = planTable(readLiveWorkbook(bytes));
      const volumes = rows.map((row) => row[headings.indexOf("forged mm³")]);
      for (const [at, line] of ["K5", "K6"].entries()) {
        const blade = Number(stored.figure("Cut list", line, "Forged: blade mm³"));
        const tang = (120 * 1000) / densityOf(["5160", "6150"][at] ?? "").value;
        expect(volumes[4 + at]).toBeCloseTo(blade + tang, 6);
      }
      expect(volumes.filter((volume) => volume === undefined)).toHaveLength(6);
    },
    LONG,
  );
});
