import { beforeAll, describe, expect, it } from "vitest";
import { type LiveWorkbook, readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import type { SheetModel, WorkbookModel } from "../../src/workbook/model/sheet-model";
import { carriedOver } from "../../src/workbook/sheets/carried-over";
import { subjectPlace } from "../../src/workbook/sheets/parts/doc-rows";
import { FIRST_ROW, HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { planOfEight } from "./answers/plans";
import { eightLines } from "./eight-lines";

const LONG = 300_000;
const SIZES = [60, 200, 500] as const;

const sheetOf = ({ sheets }: WorkbookModel, name: string) => {
  const found = sheets.find((sheet) => sheet.name === name);
  if (found === undefined) throw new RangeError(`no sheet ${name}`);
  return found;
};
const content = ({ rows }: SheetModel, row: number, column: number) =>
  String(rows[row]?.[column]?.content ?? "");

/** First rows of the pages of a paper, from its breaks. */
function pagesOf({ print, rows }: SheetModel): number[] {
  const starts = [0, ...(print?.breaksAfter ?? []).map((row) => row + 1)];
  const each = rows.length / starts.length;
  expect(starts).toEqual(starts.map((_, page) => page * each));
  return starts;
}

/** What somebody typed into a table: row, heading, content. */
function typedCells({ rows }: SheetModel): [row: number, heading: unknown, typed: number | string][] {
  return rows.flatMap((cells, row) =>
    cells.flatMap((cell, column): [number, unknown, number | string][] => {
      const isTyped = cell !== undefined && cell.content !== "" && !String(cell.content).startsWith("=");
      return isTyped && row >= FIRST_ROW ? [[row, rows[HEADINGS]?.[column]?.content, cell.content]] : [];
    }),
  );
}

let old: LiveWorkbook;
beforeAll(async () => {
  old = readLiveWorkbook(await planOfEight());
}, LONG);

describe.each(SIZES)("a plan of %i lines", (count) => {
  const model = planningTemplate(undefined, count);

  it("has a page of the traveller for each line, in their order", () => {
    const sheet = sheetOf(model, "Traveller");
    const pages = pagesOf(sheet);
    expect(pages).toHaveLength(count);
    const wrong = pages.filter((start, page) => {
      const { row, column } = subjectPlace(start);
      return !content(sheet, row, column).includes(`'Lines'!$A$${FIRST_ROW + 1 + page}=`);
    });
    expect(wrong).toEqual([]);
  });

  it.each(["Steel enquiry", "Steel order", "Heat-treat order"])(
    "has a page of the %s for each subject",
    (name) => {
      const sheet = sheetOf(model, name);
      const pages = pagesOf(sheet);
      expect(pages.length).toBeGreaterThanOrEqual(count);
      const each = sheet.rows.length / pages.length;
      expect(sheet.print?.printed?.rows).toMatch(new RegExp(`\\*${each}$`));
      expect(sheet.print?.isPaper).toBe(true);
    },
  );

  it("has a row of the quote, of recipes, cut list and costs for each line", () => {
    const quote = sheetOf(model, "Quote");
    expect(quote.lines[1] - quote.lines[0] + 1).toBe(count);
    for (const name of ["Lines", "Recipe", "Enquiry", "Cut list", "Costs"]) {
      const { lines, print } = sheetOf(model, name);
      expect(lines, name).toEqual([FIRST_ROW, FIRST_ROW + count - 1]);
      expect(print?.repeatedRows, name).toContain(HEADINGS);
    }
  });

  it("counts in Checks to the last line", () => {
    const { rows } = sheetOf(model, "Checks");
    const formulas = rows.flatMap((row) => row.map((cell) => String(cell?.content ?? "")));
    const last = FIRST_ROW + count;
    for (const sheet of ["Lines", "Cut list", "Costs", "Recipe"]) {
      const reading = formulas.filter((formula) => formula.includes(`'${sheet}'!$`));
      const ends = reading.flatMap((formula) =>
        [...formula.matchAll(new RegExp(`'${sheet}'!\\$[A-Z]+\\$5:\\$[A-Z]+\\$(\\d+)`, "g"))].map(([, end]) =>
          Number(end),
        ),
      );
      expect(new Set(ends), sheet).toEqual(new Set([last]));
    }
  });

  it("takes over all that was typed in a plan of eight", () => {
    const before = planningTemplate(eightLines());
    const grown = carriedOver(model, old);
    const tables = before.sheets.filter((sheet) => sheet.tables !== undefined);
    const found = tables.flatMap((sheet) => typedCells(sheet).map((cell) => [sheet.name, ...cell]));
    expect(found.length).toBeGreaterThan(400);
    const missing = found.filter(([name, row, heading, typed]) => {
      const after = sheetOf(grown, String(name));
      const column = (after.rows[HEADINGS] ?? []).findIndex((cell) => cell?.content === heading);
      return after.rows[Number(row)]?.[column]?.content !== typed;
    });
    expect(missing).toEqual([]);
  });
});
