import { expect, it } from "vitest";
import { calculateWorkbook } from "../../src/engine/calculate-workbook";
import type { CellValue } from "../../src/engine/cell-value";

import { scalarFunction } from "../../src/functions/declare";
import { SAMPLES } from "./sample-functions";
import { typedSheet as sheet, type Typed } from "./typed-cell";

// Expected figures are plain arithmetic; spilling, defined names and table references follow the published rules of
// SpreadsheetML (ECMA-376 Part 1, 18.17) and of Excel's dynamic arrays.

async function calculated(rows: Typed[][]) {
  return calculateWorkbook({ sheets: [sheet("Plan", rows)] }, SAMPLES);
}

const value = (cell: CellValue | undefined) => (cell && "value" in cell ? cell.value : cell);

it("calculates formulas in the order of their dependence", async () => {
  const plan = await calculated([["=B1+1", "=C1*2", "=BLADE.PRODUCT_THIRD(D1,1,1)", 6]]);
  expect([0, 1, 2].map((column) => value(plan.at("Plan", 0, column)))).toEqual([5, 4, 2]);
  expect(plan.at("Plan", 0, 3)).toBeUndefined();
});

it("keeps the full precision of what spills, and says how far it goes", async () => {
  const plan = await calculated([["=BLADE.SQUARES(3)*2"]]);
  expect(plan.spillAt("Plan", 0, 0)).toEqual({ rows: 3, columns: 2 });
  expect(value(plan.at("Plan", 2, 0))).toBe(4 / 3);
  expect(value(plan.at("Plan", 1, 1))).toBe((1 / 3) ** 2 * 2);
});

it("gives one result a row for a column of cells, each error with its own sentence", async () => {
  const plan = await calculated([[3, "=BLADE.PRODUCT_THIRD(A1:A4,1,1)"], [-1], ["ten"], [6]]);
  expect(value(plan.at("Plan", 0, 1))).toBe(1);
  expect(plan.at("Plan", 1, 1)).toMatchObject({
    error: "#VALUE!",
    message: expect.stringContaining("-1 mm"),
  });
  expect(plan.at("Plan", 2, 1)).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("ten") });
  expect(value(plan.at("Plan", 3, 1))).toBe(2);
});

it("marks a blocked spill and leaves what stands in the way", async () => {
  const plan = await calculated([["=BLADE.SQUARES(3)"], ["in the way"]]);
  expect(plan.at("Plan", 0, 0)).toMatchObject({ error: "#SPILL!" });
  expect(plan.spillAt("Plan", 0, 0)).toBeUndefined();
});

it("reads an error in a cell as an error of that row only", async () => {
  const plan = await calculated([["=1/0", "=BLADE.PRODUCT_THIRD(A1:A2,1,1)"], [3]]);
  expect(plan.at("Plan", 0, 1)).toMatchObject({
    error: "#VALUE!",
    message: expect.stringContaining("#DIV/0!"),
  });
  expect(value(plan.at("Plan", 1, 1))).toBe(1);
});

it("answers every other formula when one function fails", async () => {
  const plan = await calculated([
    ["=BLADE.FAULTY(1)", "=BLADE.PRODUCT_THIRD(3,1,1)", "=1+1", "=IFERROR(A1,7)"],
  ]);
  expect(plan.at("Plan", 0, 0)).toMatchObject({
    error: "#VALUE!",
    message: expect.stringContaining("no such table"),
  });
  expect([1, 2, 3].map((column) => value(plan.at("Plan", 0, column)))).toEqual([1, 2, 7]);
});

it("keeps a half-filled sheet clean: nothing given, nothing shown", async () => {
  const plan = await calculated([
    [undefined, "=BLADE.PRODUCT_THIRD(A1)", "=BLADE.PRODUCT_THIRD(A1:A2,2)"],
    [3],
  ]);
  expect(value(plan.at("Plan", 0, 1))).toBe("");
  expect(value(plan.at("Plan", 0, 2))).toBe("");
  expect(value(plan.at("Plan", 1, 2))).toBe(4);
});

it("knows other sheets, defined names and tables", async () => {
  const lines = [
    ["Item", "Good"],
    ["A", 4, "=Lines[[#This Row],[Good]]*Each"],
    ["B", 5, "=Lines[[#This Row],[Good]]*Each"],
    ["=SUM(Lines[Good])"],
  ];
  const plan = await calculateWorkbook(
    {
      sheets: [sheet("Run lines", lines), sheet("Figures", [[2.5], ["='Run lines'!A4"]])],
      names: { Each: "Figures!$A$1" },
      tables: [{ name: "Lines", sheet: "Run lines", row: 0, column: 0, rows: 3, headings: ["Item", "Good"] }],
    },
    SAMPLES,
  );
  expect(value(plan.at("Run lines", 1, 2))).toBe(10);
  expect(value(plan.at("Run lines", 2, 2))).toBe(12.5);
  expect(value(plan.at("Figures", 1, 0))).toBe(9);
});

it("calculates each formula once", async () => {
  let calls = 0;
  const counted = scalarFunction({
    name: "COUNTED",
    summary: "Counts its calls.",
    parameters: {},
    result: { label: "calls", unit: "" },
    relations: [],
    compute: () => {
      calls += 1;
      return calls;
    },
  });
  await calculateWorkbook({ sheets: [sheet("Plan", [["=BLADE.COUNTED()", "=A1+1"]])] }, [counted]);
  expect(calls).toBe(1);
});

it("takes text after an apostrophe as text", async () => {
  const plan = await calculated([["'=1+1", "=A1"]]);
  expect(value(plan.at("Plan", 0, 1))).toBe("=1+1");
});

it("refuses a table or a question about a sheet that is not there", async () => {
  const plan = await calculated([[1]]);
  expect(() => plan.at("Other", 0, 0)).toThrow(RangeError);
  const tables = [{ name: "T", sheet: "Other", row: 0, column: 0, rows: 2, headings: ["a"] }];
  await expect(calculateWorkbook({ sheets: [sheet("Plan", [[1]])], tables }, SAMPLES)).rejects.toThrow(
    RangeError,
  );
});
