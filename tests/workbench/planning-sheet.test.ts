import { describe, expect, test } from "vitest";
import { cellName, columnLetters, readCellName } from "../../src/formula/addresses";
import { planningCell, planningSheet } from "../../src/workbook/sheets/demo/planning-sheet";
import { columnKeys, planningColumns } from "../../src/workbook/sheets/planning-columns";
import { demoRun } from "../../src/workbook/sheets/run-r07/run";

const sheet = planningSheet(demoRun);
const [firstLine, lastLine] = sheet.lines;
const lineRows = sheet.rows.slice(firstLine, lastLine + 1);

/** Row numbers of the cells that a formula reads. */
function rowsRead(content: string): string[] {
  if (!content.startsWith("=")) return [];
  return [...content.matchAll(/\b[A-Z]{1,2}(\d+)\b/g)].map(([, row]) => String(row));
}

describe("addresses", () => {
  // Column letters of any spreadsheet: Z is the 26th, AA the 27th, XFD the 16 384th.
  test.each([
    [0, "A"],
    [25, "Z"],
    [26, "AA"],
    [16383, "XFD"],
  ])("column %i is %s", (column, letters) => {
    expect(columnLetters(column)).toBe(letters);
    expect(readCellName(`${letters}7`)).toEqual({ row: 6, column });
  });

  test.each(["", "7", "A0", "A-1", "1A", "A1:B2", "ABCD1"])("%j is no address", (text) => {
    expect(readCellName(text)).toBeUndefined();
  });
});

describe("planning sheet", () => {
  test("has one row a line of the run, six of them", () => {
    expect(lineRows).toHaveLength(6);
    expect(lineRows.map(([line]) => line?.content)).toEqual(["L1", "L2", "L3", "L4", "L5", "L6"]);
  });

  test.each(lineRows.map((row, index) => [index + 1, row] as const))(
    "formulas of line %i read only cells of that line, so that one bad cell spoils one row",
    (line, row) => {
      const read = row.flatMap((cell) => rowsRead(String(cell?.content)));
      expect(new Set(read)).toEqual(new Set([String(firstLine + line)]));
    },
  );

  test("every column that shows a figure has a number format", () => {
    const figures = columnKeys.filter(
      (key) =>
        ![
          "line",
          "item",
          "steel",
          "band",
          "status",
          "caution",
          "estimate",
          "use",
          "quench",
          "grind",
        ].includes(key),
    );
    for (const key of figures) expect(planningColumns[key].format, key).toBeDefined();
  });

  test("hardness is shown in whole HRC", () => {
    expect(planningColumns.low.format).toBe("0");
    expect(planningColumns.high.format).toBe("0");
  });

  test("every column says in words who fills it, and shaded cells are just those", () => {
    const marks = sheet.rows[firstLine - 1]?.map((cell) => cell?.content);
    expect(marks).toEqual(columnKeys.map((key) => planningColumns[key].filled));
    for (const [column, key] of columnKeys.entries()) {
      const yours = ["typed", "label"].includes(lineRows[0]?.[column]?.role ?? "");
      expect(yours, key).toBe(planningColumns[key].filled !== "calc");
    }
  });

  test("an address of a figure is the address it stands at", () => {
    expect(planningCell(0, "steel")).toBe(cellName(firstLine, columnKeys.indexOf("steel")));
  });
});
