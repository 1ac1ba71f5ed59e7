import { describe, expect, it } from "vitest";
import { readRectangle } from "../../src/formula/addresses";
import { splitAddress } from "../../src/formula/references";
import { noSheet } from "../../src/host/no-sheet";
import type { HostRows, HostValue } from "../../src/host/port";
import { ownReadings } from "../../src/taskpane/tempering/own-readings";
import type { SheetModel } from "../../src/workbook/model/sheet-model";
import { Cover } from "../../src/workbook/sheets/cover-sheet";
import { couponsSheet } from "../../src/workbook/sheets/demo/coupons-sheet";
import { HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planningLines } from "../../src/workbook/sheets/planning-template";
import { readingsSheet } from "../../src/workbook/sheets/readings-sheet";
import run from "../../src/workbook/sheets/run-r07/coupons.json";
import { EMPTY_DATA } from "../../src/workbook/sheets/template-data";

type Cells = (HostValue | undefined)[][];

/** What a sheet holds, its formulas left out. */
const constants = ({ rows }: SheetModel): Cells =>
  rows.map((row) =>
    row.map((cell) => {
      const content = cell?.content;
      return typeof content === "string" && content.startsWith("=") ? null : (content ?? null);
    }),
  );

const lines = planningLines(EMPTY_DATA, 3);

function below(sheet: SheetModel, rows: readonly Readonly<Record<string, HostValue>>[]): Cells {
  const cells = constants(sheet);
  const headings = cells[HEADINGS] ?? [];
  for (const [at, row] of rows.entries()) {
    cells[HEADINGS + 1 + at] = headings.map((heading) => row[String(heading)] ?? null);
    for (const heading of Object.keys(row)) expect(headings).toContain(heading);
  }
  return cells;
}

const coupons = constants(couponsSheet([], lines));
const steelRow = coupons.find(([name]) => name === "Steel");
if (steelRow !== undefined) steelRow[1] = "5160";

const BOOK: Readonly<Record<string, Cells>> = {
  Lines: below(lines.model(), [
    { Line: 1, Steel: "1095", "Temper °C": 210 },
    { Line: 2, Steel: "5160", "Temper °C": "680F" },
    { Line: 3, Steel: "1095", "Temper °C": "not assessed" },
  ]),
  "Hardness readings": below(readingsSheet([], { cover: new Cover("", {}, ""), lines }, 4).model(), [
    { Line: 1, "Mean HRC": 60.33 },
    { Line: 2, "Mean HRC": 52 },
    { Line: 1, "Mean HRC": 60.1 },
    { Line: 3, "Mean HRC": 58 },
    { Line: 9, "Mean HRC": 40 },
    { Line: 1, "Mean HRC": "" },
  ]),
  Coupons: coupons,
};

function read(reference: string): HostRows | null {
  const { sheet, place } = splitAddress(reference);
  const cells = BOOK[sheet ?? ""];
  const area = readRectangle(place);
  if (cells === undefined || area === undefined) return null;
  return Array.from({ length: area.lastRow - area.row + 1 }, (_, down) =>
    Array.from(
      { length: area.lastColumn - area.column + 1 },
      (__, across) => cells[area.row + down]?.[area.column + across] ?? null,
    ),
  );
}

const port = {
  ...noSheet,
  hasSheet: true,
  readValues: async (references: readonly string[]) => references.map(read),
};

describe("what the workbook knows of a steel by its own readings", () => {
  it("is every mean of a blade at the temper of its line", async () => {
    expect(await ownReadings(port, "1095")).toEqual([
      { x: 210, y: 60.33 },
      { x: 210, y: 60.1 },
    ]);
  });

  it("is every coupon too, under whatever name the steel is asked for", async () => {
    const filled = run.coupons.filter(([celsius]) => celsius !== null);
    // 680 °F is 360 °C: 32 °F at 0 °C and 212 °F at 100 °C fix the scale.
    const expected = [...filled.map(([x, y]) => ({ x, y })), { x: 360, y: 52 }];
    expect(await ownReadings(port, "5160")).toEqual(expected);
    expect(await ownReadings(port, "G51600")).toEqual(expected);
  });

  it("is nothing for another steel, a word that is none, and where there is no sheet", async () => {
    expect(await ownReadings(port, "O1")).toEqual([]);
    expect(await ownReadings(port, "no steel")).toEqual([]);
    expect(await ownReadings(noSheet, "1095")).toEqual([]);
  });
});
