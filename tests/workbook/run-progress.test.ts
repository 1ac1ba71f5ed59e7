import { describe, expect, it } from "vitest";
import type { WorkbookModel } from "../../src/workbook/model/sheet-model";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import { HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { nextMissing, runProgress, type ShownWorkbook, stepOf } from "../../src/workbook/sheets/run-progress";
import { SHEETS_OF_THE_DEMO, SHEETS_OF_THE_PLAN, STEPS } from "../../src/workbook/sheets/sheets-of-the-plan";
import { exampleData } from "../../src/workbook/sheets/template-data";

/** A planned workbook as a reader sees it before anything is worked out: formulas read as filled. */
function shownOf({ sheets }: WorkbookModel): ShownWorkbook {
  const found = (name: string) => sheets.find((sheet) => sheet.name === name);
  return {
    sheets: sheets.map(({ name }) => name),
    size: (name) => {
      const rows = found(name)?.rows ?? [];
      return { rows: rows.length, columns: Math.max(0, ...rows.map((row) => row.length)) };
    },
    shown: (name, row, column) => {
      const content = found(name)?.rows[row]?.[column]?.content ?? "";
      // A blank plan works every name of a line out of the lines that are not there.
      return typeof content === "string" && content.startsWith("=") && row > HEADINGS ? "" : String(content);
    },
  };
}

const example = planningTemplate(exampleData());

describe("the sheets of the plan", () => {
  it("every sheet of the template and of the demo run belongs to a step", () => {
    const names = [...example.sheets, ...demoWorkbook().sheets].map(({ name }) => name);
    expect(names.filter((name) => stepOf(name) === undefined)).toEqual([]);
    expect(stepOf("Somebody's own sheet")).toBeUndefined();
  });

  it("every heading that a sheet needs stands on it, over cells that are typed", () => {
    for (const { name, needs = [] } of [...SHEETS_OF_THE_PLAN, ...SHEETS_OF_THE_DEMO]) {
      const sheet = example.sheets.find((one) => one.name === name);
      const headings = sheet?.rows[HEADINGS]?.map((cell) => cell?.content) ?? [];
      for (const heading of needs) {
        const column = headings.indexOf(heading);
        expect(column, `${name}: ${heading}`).toBeGreaterThanOrEqual(0);
        expect(sheet?.rows[HEADINGS - 1]?.[column]?.content, `${name}: ${heading}`).not.toBe("calc");
      }
    }
  });
});

describe("progress of a run", () => {
  it("a blank plan begins with its first line", () => {
    const blank = shownOf(planningTemplate());
    const progress = runProgress(blank);
    expect(progress.map(({ step }) => step)).toEqual([...STEPS]);
    expect(progress.every(({ isBegun, missing }) => !isBegun && missing.length === 0)).toBe(true);
    expect(nextMissing(blank, progress)).toMatchObject({ sheet: "Lines", address: "A5" });
  });

  it("names what is blank in a row that is begun, in the order of the run", () => {
    const full = shownOf(example);
    const { sheets, size } = full;
    const heading = (row: number, column: number) => full.shown("Lines", row, column);
    const steel = Array.from({ length: size("Lines").columns }, (_, column) =>
      heading(HEADINGS, column),
    ).indexOf("Steel");
    const without: ShownWorkbook = {
      sheets,
      size,
      shown: (sheet, row, column) =>
        sheet === "Lines" && row === HEADINGS + 3 && column === steel ? "" : full.shown(sheet, row, column),
    };
    const planning = runProgress(without).find(({ step }) => step === "Planning");
    expect(planning?.missing[0]).toMatchObject({ sheet: "Lines", what: "Steel of L3" });
  });

  it("a row whose name is an error names no line", () => {
    const broken: ShownWorkbook = {
      ...shownOf(example),
      shown: (sheet, row, column) => {
        if (sheet !== "Lines" || row <= HEADINGS) return shownOf(example).shown(sheet, row, column);
        return row === HEADINGS + 1 && column === 0 ? "#SPILL!" : "";
      },
    };
    const planning = runProgress(broken).find(({ step }) => step === "Planning");
    expect(planning?.missing.filter(({ sheet }) => sheet === "Lines")).toEqual([]);
  });

  it("a workbook that is no plan has no steps and nothing missing", () => {
    const other: ShownWorkbook = {
      sheets: ["Sheet1"],
      size: () => ({ rows: 9, columns: 9 }),
      shown: () => "",
    };
    expect(runProgress(other)).toEqual([]);
    expect(nextMissing(other, [])).toBeUndefined();
  });
});
