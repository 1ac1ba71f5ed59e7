import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { cellName } from "../../src/formula/addresses";
import { workbookOfSnapshot } from "../../src/workbench/files/read-snapshot";
import { snapshotOf } from "../../src/workbench/files/write-snapshot";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import { writeWorkbook } from "../../src/workbook/file/write/write-workbook";
import { rowOfLines, withFittedRows } from "../../src/workbook/model/row-heights";
import type { CellContent, WorkbookData } from "../../src/workbook/model/workbook-data";
import { demoWorkbook } from "../../src/workbook/sheets/demo/demo-workbook";
import { lineCell } from "../../src/workbook/sheets/lines-sheet";
import { shownWorkbook } from "../../src/workbook/sheets/parts/workbook-of-model";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { handMade, partsOf } from "./hand-made";

const file = (name: string) => new Uint8Array(readFileSync(`${import.meta.dirname}/files/${name}.xlsx`));

/** Contents by sheet and address; where a formula fills is left to calculation. */
function contents({ sheets }: WorkbookData): Record<string, CellContent | undefined> {
  const plain = (content: CellContent) => ("formula" in content ? { formula: content.formula } : content);
  return Object.fromEntries(
    sheets.flatMap(({ name, cells }) =>
      cells.flatMap(({ row, column, content }) =>
        content === undefined ? [] : [[`${name}!${cellName(row, column)}`, plain(content)]],
      ),
    ),
  );
}

/** Through the form of the grid and back, as opening and saving do. */
const throughGrid = (workbook: WorkbookData): WorkbookData =>
  workbookOfSnapshot(JSON.parse(JSON.stringify(snapshotOf(workbook))), () => undefined);

describe("a workbook through the grid and into a file", () => {
  test.each(["written-by-openpyxl", "written-by-xlsxwriter", "saved-by-libreoffice"])(
    "%s keeps contents, sizes, lists and frozen heads",
    async (name) => {
      const { workbook } = await readWorkbook(file(name));
      const again = throughGrid(workbook);
      expect(contents(again)).toEqual(contents(workbook));
      for (const [index, sheet] of workbook.sheets.entries()) {
        const other = again.sheets[index];
        expect(other?.name).toBe(sheet.name);
        expect([...(other?.columns ?? [])]).toEqual([...sheet.columns]);
        expect(other?.frozenRows).toBe(sheet.frozenRows);
        expect(other?.offers).toEqual(sheet.offers);
        expect(other?.merged).toEqual(sheet.merged);
      }
      const reread = await readWorkbook(await writeWorkbook(again));
      expect(contents(reread.workbook)).toEqual(contents(workbook));
    },
  );

  test("the demo run comes back cell by cell, its style, lists and status colors with it", async () => {
    const workbook = shownWorkbook(demoWorkbook());
    const bytes = await writeWorkbook(throughGrid(workbook));
    const { workbook: reread, left } = await readWorkbook(bytes);
    expect(left).toEqual([]);
    // Lists too long for a cell's own rule moved to a sheet of their own.
    const lists = reread.sheets.at(-1);
    expect(lists).toMatchObject({ name: "Lists", isHidden: false });
    expect(contents({ ...reread, sheets: reread.sheets.slice(0, -1) })).toEqual(contents(workbook));
    const [plan, written] = [workbook.sheets[0], reread.sheets[0]];
    expect(written?.cells.map(({ style }) => style?.fill)).toEqual(
      plan?.cells.map(({ style }) => style?.fill),
    );
    expect(written?.cells.map(({ style }) => style?.format)).toEqual(
      plan?.cells.map(({ style }) => style?.format),
    );
    // A list keeps its room for its arrow: no indent there.
    const indented = (sheet: typeof plan) =>
      sheet?.cells.filter(({ style }) => style?.indent === 1).map(({ row, column }) => cellName(row, column));
    expect(indented(written)).toContain(lineCell(0, "item"));
    expect(indented(written)).not.toContain(lineCell(0, "steel"));
    expect(indented(plan)).toEqual(expect.arrayContaining(indented(written) ?? []));
    expect(written?.colors).toEqual(plan?.colors);
    expect(written?.frozenRows).toBe(plan?.frozenRows);
    expect([...(written?.columns ?? [])]).toEqual([...(plan?.columns ?? [])]);
    // Already calculated when written: doing it again finds nothing to change.
    expect((await recalculate(bytes)).changed).toBe(0);
  }, 120_000);
});

// A line of text at 10 points is 17 pixels here; the grid's usual row holds one.
test("a row of a new run takes the height of its headings: two words one below the other need two lines", () => {
  const lines = shownWorkbook(planningTemplate()).sheets.find(({ name }) => name === "Lines");
  const heading = lines?.cells.find(
    ({ content }) => content !== undefined && "value" in content && content.value === "Line",
  );
  expect(lines?.rows.get(heading?.row ?? 0)?.size).toBeGreaterThanOrEqual(2 * 17);
});

const LONG_ANSWER = "words that the formula comes to, so many that they take several lines of their column";

/** A row of two lines of text, whose formula comes to more lines later, and one whose height somebody set. */
function halfKnown(): WorkbookData {
  const style = { wraps: true };
  const cells = [0, 1].flatMap((row) => [
    { row, column: 0, style, content: { value: "two lines of typed words" } },
    { row, column: 1, style, content: { formula: `="${LONG_ANSWER}"` } },
  ]);
  const columns = new Map([0, 1].map((column) => [column, { size: 120 }] as const));
  const sheet = { name: "Plan", isHidden: false, cells, columns, rows: new Map([[1, { size: 30 }]]) };
  const rest = { frozenRows: 0, frozenColumns: 0, merged: [], offers: [], colors: [] };
  return withFittedRows({ sheets: [{ ...sheet, ...rest }], names: {}, tables: [] });
}

test("a row that was fitted before its results were known may grow in the grid, and is fitted in the file", async () => {
  const given = halfKnown();
  const [first, second] = [0, 1].map((row) => given.sheets[0]?.rows.get(row)?.size);
  expect([first, second]).toEqual([rowOfLines(2), 30]);
  const rowData = snapshotOf(given).sheets["sheet-1"]?.rowData;
  expect(rowData?.[0]).toMatchObject({ h: first, ia: 1 });
  expect(rowData?.[1]).toMatchObject({ h: 30, ia: 0 });
  const { workbook } = await readWorkbook(await writeWorkbook(throughGrid(given), { fitsRows: true }));
  const sizes = [0, 1].map((row) => workbook.sheets[0]?.rows.get(row)?.size ?? 0);
  expect(sizes[0]).toBeGreaterThanOrEqual(rowOfLines(Math.ceil((LONG_ANSWER.length * 6.4) / 120)));
  expect(sizes[1]).toBe(30);
  // Opened again it may still grow: nobody gave it that height.
  const again = snapshotOf(workbook).sheets["sheet-1"]?.rowData;
  expect([again?.[0]?.ia, again?.[1]?.ia]).toEqual([1, 0]);
});

const frozenSheets = shownWorkbook(planningTemplate()).sheets.filter(
  ({ frozenColumns }) => frozenColumns > 0,
);

// A letter of Arial takes 6.1 pixels on average at 10 points and 9 at 13 points in bold: estimated, no source.
test.each(frozenSheets)(
  "the title and the note of $name stand over the columns that scroll, and end within the table",
  ({ cells, columns, frozenColumns }) => {
    const table = [...columns].slice(frozenColumns).reduce((all, [, { size = 0 }]) => all + size, 0);
    for (const [row, letter] of [9, 6.1].entries()) {
      const [head, ...others] = cells.filter((cell) => cell.row === row);
      expect(others).toEqual([]);
      expect(head?.column).toBe(frozenColumns);
      const text = head?.content !== undefined && "value" in head.content ? String(head.content.value) : "";
      expect(text).not.toBe("");
      expect(text.length * letter, text).toBeLessThanOrEqual(table);
    }
  },
);

const NUMBERS = '<row r="1"><c r="A1" s="0"><v>2</v></c><c r="B1"><f>A1*3</f><v>6</v></c></row>';
const SHARED =
  '<row r="2"><c r="A2"><v>5</v></c><c r="B2"><f t="shared" ref="B2:B3" si="0">A2*10</f><v>50</v></c></row>' +
  '<row r="3"><c r="A3"><v>7</v></c><c r="B3"><f t="shared" si="0"/><v>70</v></c></row>';
const made = handMade({
  sheets: { Plan: `<sheetData>${NUMBERS}${SHARED}</sheetData>`, Notes: "<sheetData/>" },
  parts: { "docProps/custom.xml": "<kept/>" },
});

async function valuesAfter(changes: Parameters<typeof patchWorkbook>[1], from = made) {
  const { bytes } = await patchWorkbook(from, changes);
  const { sheets } = readLiveWorkbook(bytes);
  const cells = sheets[0]?.stored.rows.flatMap((row) => row.cells) ?? [];
  return { bytes, raw: Object.fromEntries(cells.map((cell) => [cellName(cell.row, cell.column), cell.raw])) };
}

describe("changes written into the file that was opened", () => {
  test("a constant moves what depends on it, and other parts keep every byte", async () => {
    const { bytes, raw } = await valuesAfter(
      new Map([["Plan", [{ row: 0, column: 0, content: { value: 4 } }]]]),
    );
    expect(raw).toMatchObject({ A1: "4", B1: "12", B2: "50" });
    const [before, after] = [partsOf(made), partsOf(bytes)];
    const differing = Object.keys(after).filter((part) => after[part] !== before[part]);
    expect(differing).toEqual(["xl/worksheets/sheet1.xml"]);
  });

  test("text, formulas, new rows and emptied cells stand where they were typed", async () => {
    const { raw } = await valuesAfter(
      new Map([
        [
          "Plan",
          [
            { row: 0, column: 0 },
            { row: 2, column: 0, content: { value: "a <b> & c" } },
            { row: 8, column: 3, content: { formula: '=BLADE.CARBON("1095")+A2' } },
          ],
        ],
      ]),
    );
    // 95 hundredths of a percent: the designation says it (SAE numbering system).
    expect(Number(raw.D9)).toBeCloseTo(5.95, 12);
    expect(raw).toMatchObject({ A1: undefined, B1: "0", A3: "a <b> & c", B3: "#VALUE!" });
  });

  test("formulas that shared the text of one that is typed over keep working", async () => {
    const { raw } = await valuesAfter(new Map([["Plan", [{ row: 1, column: 1, content: { value: 1 } }]]]));
    expect(raw).toMatchObject({ B2: "1", B3: "70" });
  });

  test("a formula that fills cells is marked, and its cells go when it goes", async () => {
    const fills = { row: 0, column: 4, lastRow: 1, lastColumn: 4 };
    const typed = { row: 0, column: 4, content: { formula: "=A2:A3*2", fills } };
    const first = await valuesAfter(new Map([["Plan", [typed]]]));
    expect(first.raw).toMatchObject({ E1: "10", E2: "14" });
    expect(partsOf(first.bytes)["xl/worksheets/sheet1.xml"]).toContain(
      '<c r="E1" cm="1"><f t="array" ref="E1:E2">',
    );
    const second = await valuesAfter(new Map([["Plan", [{ row: 0, column: 4 }]]]), first.bytes);
    expect(second.raw.E1).toBeUndefined();
    expect(second.raw.E2).toBeUndefined();
    const blocked = await valuesAfter(
      new Map([["Plan", [{ row: 1, column: 4, content: { value: "in the way" } }]]]),
      first.bytes,
    );
    // A file has no code for a blocked spill; Excel writes #VALUE! in its place.
    expect(blocked.raw).toMatchObject({ E1: "#VALUE!", E2: "in the way" });
  });
});
