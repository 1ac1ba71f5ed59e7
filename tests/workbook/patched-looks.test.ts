import { expect, test } from "vitest";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import { writeWorkbook } from "../../src/workbook/file/write/write-workbook";
import { changesBetween } from "../../src/workbook/model/changes";
import type { CellStyle, WorkbookData } from "../../src/workbook/model/workbook-data";
import { partsOf } from "./hand-made";

// What stands in the XML follows SpreadsheetML (ECMA-376 Part 1, 18.3 and 18.8).

const style = (more: CellStyle = {}): CellStyle => ({ font: "Arial", size: 10, fill: "#fdf1d8", ...more });

const plan = (first: CellStyle, second: CellStyle, isHidden = false): WorkbookData => ({
  names: {},
  tables: [],
  sheets: [
    {
      name: "Plan",
      isHidden: false,
      cells: [
        { row: 0, column: 0, content: { value: 12.5 }, style: first },
        { row: 1, column: 0, content: { formula: "=A1*2" }, style: second },
        { row: 2, column: 0, content: { value: "as it was" }, style: style({ italic: true }) },
      ],
      columns: new Map(),
      rows: isHidden ? new Map([[2, { isHidden: true }]]) : new Map(),
      frozenRows: 0,
      frozenColumns: 0,
      merged: [],
      offers: [],
      colors: [],
    },
  ],
});

async function saved(before: WorkbookData, after: WorkbookData) {
  const file = await writeWorkbook(before);
  const { contents, looks } = changesBetween(before, after);
  const { bytes } = await patchWorkbook(file, contents, looks);
  return { file, bytes, sheet: (await readWorkbook(bytes)).workbook.sheets[0] };
}

test("bold letters and a number format are written into the file, the rest of the style stays", async () => {
  const { sheet } = await saved(
    plan(style(), style({ bold: true, format: "0.0" })),
    plan(style({ bold: true, format: "0.00" }), style({ format: "#,##0.00" })),
  );
  const [first, second, third] = sheet?.cells ?? [];
  expect(first?.style).toMatchObject({ fill: "#fdf1d8", font: "Arial", bold: true, format: "0.00" });
  expect(second?.style).toMatchObject({ fill: "#fdf1d8", format: "#,##0.00" });
  expect(second?.style?.bold).toBeUndefined();
  expect(third?.style).toMatchObject({ italic: true });
  expect(second?.content).toMatchObject({ formula: "=A1*2", result: { value: 25 } });
});

test("figures as they come again lose their format", async () => {
  const { sheet } = await saved(plan(style({ format: "0.00" }), style()), plan(style(), style()));
  expect(sheet?.cells[0]?.style?.format).toBeUndefined();
});

test("a hidden row is written, and shown again", async () => {
  const { sheet } = await saved(plan(style(), style()), plan(style(), style(), true));
  expect(sheet?.rows.get(2)?.isHidden).toBe(true);
  const back = await saved(plan(style(), style(), true), plan(style(), style()));
  expect(back.sheet?.rows.get(2)?.isHidden).toBeUndefined();
});

test("formats that the file has stay where they are; the new ones stand behind them", async () => {
  const { file, bytes } = await saved(
    plan(style(), style({ format: "0.0" })),
    plan(style({ bold: true }), style({ format: "0.0" })),
  );
  const [before, after] = [file, bytes].map((each) => partsOf(each)["xl/styles.xml"] ?? "");
  const formats = (xml: string) => /<cellXfs[^>]*>(.*)<\/cellXfs>/s.exec(xml)?.[1] ?? "";
  expect(formats(after ?? "").startsWith(formats(before ?? ""))).toBe(true);
  expect(formats(after ?? "").length).toBeGreaterThan(formats(before ?? "").length);
  const count = Number(/<cellXfs count="(\d+)"/.exec(after ?? "")?.[1]);
  expect(count).toBe(formats(after ?? "").match(/<xf /g)?.length);
});

test("nothing changed leaves every part as it was", async () => {
  const same = plan(style(), style({ format: "0.0" }));
  const { file } = await saved(same, same);
  const { looks } = changesBetween(same, same);
  const { bytes } = await patchWorkbook(file, new Map(), looks);
  expect(partsOf(bytes)["xl/styles.xml"]).toBe(partsOf(file)["xl/styles.xml"]);
});
