import { expect, test } from "vitest";
import { workbookOfSnapshot } from "../../src/workbench/files/read-snapshot";
import { snapshotOf } from "../../src/workbench/files/write-snapshot";
import { printedSheet } from "../../src/workbench/print/printed-pages";
import type { SheetData, WorkbookData } from "../../src/workbook/model/workbook-data";
import { shownWorkbook } from "../../src/workbook/sheets/parts/workbook-of-model";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";

const plan = shownWorkbook(planningTemplate());
const sheetOf = ({ sheets }: WorkbookData, wanted: string): SheetData => {
  const found = sheets.find(({ name }) => name === wanted);
  if (found === undefined) throw new Error(`no sheet ${wanted}`);
  return found;
};

test("how sheets are printed goes through the grid and comes out as it went in", () => {
  const out = workbookOfSnapshot(snapshotOf(plan), () => undefined);
  expect(out.title).toBe(plan.title);
  for (const { name, print, hidesGridLines } of plan.sheets) {
    expect(sheetOf(out, name).print, name).toEqual(print);
    expect(sheetOf(out, name).hidesGridLines, name).toBe(hidesGridLines);
  }
});

test("of a paper the pages with a subject are printed, one at least", () => {
  const traveller = sheetOf(plan, "Traveller");
  const [first = 0, second = 0] = traveller.print?.breaksAfter ?? [];
  const words = (row: number, column: number) => `${row} ${column}`;
  // The third page has no subject: its cell stands in the third row, beside its label.
  const shown = (row: number, column: number) =>
    row > second && column === 1 && row === second + 3 ? "" : words(row, column);
  const { pages, widths } = printedSheet(traveller, shown);
  expect(widths).toHaveLength(4);
  expect(pages).toHaveLength((traveller.print?.breaksAfter?.length ?? 0) + 1 - 1);
  expect(pages[0]?.rows.at(-1)?.row).toBe(first);
  expect(pages[1]?.rows[0]?.row).toBe(first + 1);
  expect(printedSheet(traveller, (_, column) => (column === 1 ? "" : "x")).pages).toHaveLength(1);
});

test("headings stand once in the head, hidden rows and columns are left out, the end is trimmed", () => {
  const lines = sheetOf(plan, "Lines");
  const hidden: SheetData = {
    ...lines,
    rows: new Map([...lines.rows, [5, { isHidden: true }]]),
    columns: new Map([...lines.columns, [1, { isHidden: true }]]),
  };
  const { head, pages, widths } = printedSheet(hidden, (row, column) => (row < 8 ? `${row} ${column}` : ""));
  expect(head.map(({ row }) => row)).toEqual([2, 3]);
  expect(pages).toHaveLength(1);
  expect(pages[0]?.rows.map(({ row }) => row)).toEqual([4, 6, 7]);
  expect(head[0]?.cells[1]?.text).toBe("2 2");
  expect(widths).toHaveLength(head[0]?.cells.length ?? 0);
});

test("a word that takes a colour takes it on paper", () => {
  const lines = sheetOf(plan, "Lines");
  const [color] = lines.colors;
  const [area] = color?.areas ?? [];
  if (color === undefined || area === undefined) throw new Error("the lines have no colours");
  const { pages } = printedSheet(lines, (row, column) =>
    row === area.row && column === area.column ? color.word : "x",
  );
  const row = pages[0]?.rows.find((each) => each.row === area.row);
  expect(row?.cells[area.column]?.style.fill).toBe(color.fill);
  expect(row?.cells[0]?.style.fill).not.toBe(color.fill);
});
