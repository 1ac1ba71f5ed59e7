import { describe, expect, it } from "vitest";
import { answerSheet } from "../../../src/workbook/answers/answer-sheet";
import { ANSWER_FORMS } from "../../../src/workbook/answers/forms";
import { printNamesXml, printXml } from "../../../src/workbook/file/write/print-xml";
import { columnsByPage, isLandscape, PAGE_SIZES, pageMargins } from "../../../src/workbook/model/page-size";
import type { SheetData } from "../../../src/workbook/model/workbook-data";

// What an answer table looks like on paper. Letters below 8 points are hard to read in print (common practice, no
// source); an inch has 25.4 mm and, at full size, 96 pixels.

const ELEMENTS = ["C", "Si", "Mn", "P", "S", "Cr", "Mo", "Ni", "V", "W", "Co", "Cu", "Al", "N"].map(
  (element) => `${element} %`,
);
const plan = {
  name: { run: "R-07", forge: "Tern Hollow Forge" },
  currency: "EUR",
  sheets: new Map(),
  elements: ELEMENTS,
};
const lines = [{ line: "L1/S1", whom: "Grey Heron Steel", told: { Line: "L1" } }];
const tables = ANSWER_FORMS.map((form): readonly [string, SheetData] => [
  form.name,
  answerSheet(form, lines, { plan, number: "ABCD1234", by: "", whom: "Grey Heron Steel" }),
]);

/** Points of letters of 10 points, when the widest of the pages takes the width of the paper. */
function printedPoints(sheet: SheetData, paper: "A4" | "letter"): number {
  const own = { ...sheet, print: { landscape: true, ...sheet.print, paper } };
  const { width, height } = PAGE_SIZES[paper];
  const room = ((isLandscape(own) ? height : width) / 25.4 - 2 * pageMargins(own).side) * 96;
  const size = (column: number) => sheet.columns.get(column)?.size ?? 0;
  const widest = Math.max(
    ...columnsByPage(own).map((columns) => columns.reduce((sum, column) => sum + size(column), 0)),
  );
  return Math.min(10, (10 * room) / widest);
}

describe("the tables of answers on paper", () => {
  it.each(tables)("%s prints in letters of 8 points or more, on A4 and on Letter", (_, sheet) => {
    for (const paper of ["A4", "letter"] as const)
      expect(printedPoints(sheet, paper)).toBeGreaterThanOrEqual(8);
  });

  it("takes a second page for 14 elements, with the key and the line on both", () => {
    const order = tables.find(([name]) => name === "Answer to order")?.[1] as SheetData;
    const pages = columnsByPage(order);
    expect(pages).toHaveLength(2);
    expect(pages.map((columns) => columns.slice(0, 2))).toEqual([
      [0, 1],
      [0, 1],
    ]);
    expect(new Set(pages.flat())).toEqual(new Set(order.columns.keys()));
    expect(printXml(order, undefined)).toContain('fitToWidth="2"');
    expect(printNamesXml(order, 0)).toContain("'Answer to order'!$A:$B,'Answer to order'!$4:$4");
  });

  it("has its title where only the first page shows it: a second one would cut it off", () => {
    for (const [name, sheet] of tables) {
      const above = sheet.cells.filter(({ row, content }) => row < 2 && content !== undefined);
      const [, second] = columnsByPage(sheet);
      expect(above.length, name).toBeGreaterThan(0);
      expect(
        above.filter(({ column }) => column < 2 || second?.includes(column)),
        name,
      ).toEqual([]);
    }
  });

  it("keeps an enquiry and a heat treatment on one page of A4", () => {
    for (const [name, sheet] of tables)
      if (name !== "Answer to order") expect(columnsByPage(sheet), name).toHaveLength(1);
  });

  it("has room for the name of whom it asks within its box", () => {
    for (const [name, sheet] of tables) {
      const cell = sheet.cells.find(
        ({ content }) => content && "value" in content && content.value === "Grey Heron Steel",
      );
      const area = sheet.merged.find(({ row, column }) => row === cell?.row && column === cell.column);
      const [first, last] = [cell?.column ?? 0, area?.lastColumn ?? cell?.column ?? 0];
      const width = [...sheet.columns].reduce(
        (sum, [at, { size = 0 }]) => (at >= first && at <= last ? sum + size : sum),
        0,
      );
      // Sixteen letters of 10 points at 6.4 pixels each, and 15 that a cell keeps free.
      expect(width, name).toBeGreaterThanOrEqual(16 * 6.4 + 15);
    }
  });
});
