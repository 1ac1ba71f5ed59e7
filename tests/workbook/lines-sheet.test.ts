import { describe, expect, test } from "vitest";
import { columnLetters, readCellName } from "../../src/formula/addresses";
import { columnKeys, lineCell } from "../../src/workbook/sheets/lines-sheet";
import { planningLines } from "../../src/workbook/sheets/planning-template";
import { demoRun } from "../../src/workbook/sheets/run-r07/run";
import { exampleData } from "../../src/workbook/sheets/template-data";

const sheet = planningLines(exampleData(), demoRun.lines.length).model();
const [firstLine] = sheet.lines;
const lineRows = sheet.rows.slice(firstLine, firstLine + demoRun.lines.length);
const headings = (sheet.rows[firstLine - 1] ?? []).map((cell) => String(cell?.content));

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

describe("lines of a run", () => {
  test("have one row each, six of them", () => {
    expect(lineRows).toHaveLength(6);
    expect(lineRows.map(([line]) => line?.content)).toEqual(["L1", "L2", "L3", "L4", "L5", "L6"]);
  });

  test("the column of names is as wide as the longest name of the run asks for", () => {
    const [example] = demoRun.lines;
    const widthFor = (names: readonly string[]) => {
      const lines = names.map((line) => ({ ...(example as (typeof demoRun.lines)[number]), line }));
      return planningLines({ ...exampleData(), lines }, lines.length).model().columnWidths?.[0] ?? 0;
    };
    expect(widthFor(["L1", "L96"])).toBe(sheet.columnWidths?.[0]);
    // A letter of the sheet's font takes 6.4 pixels, a bold one 7.3 (row-heights.ts).
    for (const name of ["L496", "R-07 L12"])
      expect(widthFor(["L1", name])).toBeGreaterThan(7.3 * name.length);
  });

  test.each(lineRows.map((row, index) => [index + 1, row] as const))(
    "formulas of line %i read only cells of that line, so that one bad cell spoils one row",
    (line, row) => {
      const read = row.flatMap((cell) => rowsRead(String(cell?.content)));
      expect(new Set(read)).toEqual(new Set([String(firstLine + line)]));
    },
  );

  // A Rockwell reading repeats within about one unit (ASTM E18): places behind the point would promise more.
  test("every hardness is a whole figure, lengths have at most one place, edges two, the band is words", () => {
    const formatUnder = (unit: RegExp) =>
      headings.flatMap((heading, column) => (unit.test(heading) ? [lineRows[0]?.[column]?.format] : []));
    expect(formatUnder(/HRC/)).toEqual(["0", "0", "0", undefined]);
    expect(new Set(formatUnder(/ mm$/))).toEqual(new Set(["0", "0.0", "0.0#"]));
  });

  test("every column says in words who fills it, and shaded cells are those to fill in", () => {
    const marks = (sheet.rows[firstLine - 2] ?? []).map((cell) => String(cell?.content));
    expect(new Set(marks)).toEqual(new Set(["type", "calc", "either"]));
    for (const [column, mark] of marks.entries()) {
      const yours = ["typed", "label"].includes(lineRows[0]?.[column]?.role ?? "");
      expect(yours, headings[column]).toBe(mark === "type");
    }
  });

  test("what a smith decides by stands before the caution", () => {
    const caution = columnKeys.indexOf("caution");
    const decidedBy = [
      "item",
      "steel",
      "starts",
      "mass",
      "temperC",
      "low",
      "high",
      "band",
      "status",
    ] as const;
    for (const key of decidedBy) expect(columnKeys.indexOf(key), key).toBeLessThan(caution);
  });

  // The steels as ordered: see the run's own list.
  test("what becomes of a line stands beside what is typed, on the first screen at 1280 pixels", () => {
    // The row heads of the grid take 30 pixels, the pane 320.
    const room = 1280 - 320 - 30;
    const widths = sheet.columnWidths.slice(0, columnKeys.indexOf("status") + 1);
    expect(widths.reduce((sum, width) => sum + width, 0)).toBeLessThanOrEqual(room);
  });

  test("the address of a figure is where that figure stands", () => {
    const steels = demoRun.lines.map((_, line) => {
      const place = readCellName(lineCell(line, "steel"));
      return sheet.rows[place?.row ?? -1]?.[place?.column ?? -1]?.content;
    });
    expect(steels).toEqual(["52100", "80CrV2", "1075", "C60", "51CrV4", "5160"]);
  });
});
