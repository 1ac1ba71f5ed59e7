import { expect, test } from "vitest";
import { calculateWorkbook } from "../../src/engine/calculate-workbook";
import { Patterns } from "../../src/engine/calculation/patterns";
import type { CellInput } from "../../src/engine/cell-value";
import { downColumnForm } from "../../src/formula/references";

const ROWS = 40;
const formula = (text: string): CellInput => ({ formula: text });

/** Columns of formulas alike: relative, fixed, half fixed, another sheet, whole column, the row above, a text. */
const alike = (n: number): CellInput[] => [
  { value: n },
  formula(`=A${n}*2`),
  formula(`=$A$1+A${n}`),
  formula(`=SUM(A$1:A${n})`),
  formula(`='Other one'!B${n}+1`),
  formula("=SUM(A:A)"),
  n === 1 ? { value: 0 } : formula(`=G${n - 1}+A${n}`),
  formula(`="A${n} "&A${n}`),
];

test("formulas alike down a column are read once and come to what each says", async () => {
  const rows = Array.from({ length: ROWS }, (_, row) => alike(row + 1));
  const other = Array.from({ length: ROWS }, (_, row): CellInput[] => [{ value: "" }, { value: 100 * row }]);
  const workbook = {
    sheets: [
      { name: "One", rows },
      { name: "Other one", rows: other },
    ],
  };
  const patterns = new Patterns({ sheets: ["One", "Other one"], names: {}, tables: [] }, []);
  const first = patterns.of("=A1*2", 0, 0, 1);
  expect(patterns.of("=A9*2", 0, 8, 1)).toBe(first);
  expect(first.areasAt(8)).toEqual([{ sheet: 0, row: 8, column: 0, lastRow: 8, lastColumn: 0 }]);
  const done = await calculateWorkbook(workbook);
  for (let row = 0; row < ROWS; row += 1) {
    const n = row + 1;
    const sum = (n * (n + 1)) / 2;
    const expected = [2 * n, 1 + n, sum, 100 * row + 1, (ROWS * (ROWS + 1)) / 2, sum - 1, `A${n} ${n}`];
    const found = expected.map((_, column) =>
      column === 5 && n === 1 ? { value: 0 } : done.at("One", row, column + 1),
    );
    expect(found).toEqual(expected.map((value) => ({ value })));
  }
});

test("what differs from row to row is told apart", () => {
  expect(downColumnForm("=A2+$B$1", 1)).toBe(downColumnForm("=A3+$B$1", 2));
  expect(downColumnForm("=A2+1", 1)).not.toBe(downColumnForm("=A2+1", 2));
  expect(downColumnForm('=A2&"A2"', 1)).not.toBe(downColumnForm('=A3&"A3"', 2));
});
