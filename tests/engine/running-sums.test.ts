import fc from "fast-check";
import { expect, test } from "vitest";
import { meter } from "../../src/engine/budget";
import { calculateWorkbook } from "../../src/engine/calculate-workbook";
import { Calculator } from "../../src/engine/calculation/calculator";
import type { CellInput } from "../../src/engine/cell-value";

const ROWS = 30;

/** What may stand in a cell: figures of every size, texts, yes and no, errors, nothing, and formulas that give them. */
const cell = fc.oneof(
  { weight: 6, arbitrary: fc.double({ noNaN: true, min: -1e9, max: 1e9 }).map((value) => ({ value })) },
  { weight: 6, arbitrary: fc.integer({ min: -999, max: 9999 }).map((n) => ({ value: n / 100 })) },
  fc.constantFrom<CellInput | undefined>(
    { value: "oak" },
    { value: "5" },
    { value: "" },
    { value: true },
    { value: 1.7e308 },
    { formula: "=0.1+0.2" },
    { formula: '="7"' },
    { formula: "=TODAY()" },
    undefined,
  ),
);
const column = fc.array(
  fc.oneof({ weight: 60, arbitrary: cell }, fc.constant<CellInput>({ error: "#N/A" })),
  {
    minLength: ROWS,
    maxLength: ROWS,
  },
);

// Outside check: the published engine adds the cells of a list one by one; INDEX of all rows makes a list of a column.
test("a column is added up to the very figure that the engine comes to cell by cell", async () => {
  await fc.assert(
    fc.asyncProperty(column, async (contents) => {
      const rows = contents.map((content, row): (CellInput | undefined)[] => [
        content,
        { formula: `=SUM(A$1:A${row + 1})` },
        { formula: `=SUM(IF(TRUE,A$1:A${row + 1}))` },
        { formula: `=SUM(2.5,A$3:A${row + 1},A${row + 1})` },
        { formula: `=SUM(2.5,IF(TRUE,A$3:A${row + 1}),A${row + 1})` },
      ]);
      const done = await calculateWorkbook({ sheets: [{ name: "S", rows }] });
      for (let row = 0; row < ROWS; row += 1) {
        expect(done.at("S", row, 1), `to row ${row + 1}`).toEqual(done.at("S", row, 2));
        expect(done.at("S", row, 3), `to row ${row + 1}`).toEqual(done.at("S", row, 4));
      }
    }),
    { numRuns: 50 },
  );
}, 120_000);

/** Ones down a column, and beside each the sum down to it. */
const balance = (rows: number) =>
  Array.from({ length: rows }, (_, row): (CellInput | undefined)[] => [
    { value: 1 },
    { formula: `=SUM(A$1:A${row + 1})` },
  ]);

test("an edit reaches every sum below it and none above", () => {
  const calculator = new Calculator({ sheets: [{ name: "S", rows: balance(40) }] });
  calculator.calculateAll();
  const changed = calculator.change([{ sheet: 0, row: 19, column: 0, content: { value: 5 } }]);
  const rows = changed.filter(({ column: at }) => at === 1).map(({ row }) => row);
  expect(rows).toEqual(Array.from({ length: 21 }, (_, at) => 19 + at));
  expect([18, 19, 39].map((row) => calculator.at(0, row, 1))).toEqual([
    { value: 19 },
    { value: 24 },
    { value: 44 },
  ]);
  calculator.dispose();
});

test("sums that stand in each other's columns are worked out in their order, and a ring is told", async () => {
  // Each row adds up all rows above it, in the column itself: 1, 1, 2, 4, 8 …
  const rows = Array.from({ length: 40 }, (_, row): CellInput[] => [
    row === 0 ? { value: 1 } : { formula: `=SUM(A$1:A${row})` },
  ]).reverse();
  const doubling = await calculateWorkbook({ sheets: [{ name: "S", rows: rows.reverse() }] });
  expect(doubling.at("S", 39, 0)).toEqual({ value: 2 ** 38 });
  const ring = await calculateWorkbook({
    sheets: [
      {
        name: "S",
        rows: balance(30).map(([one, sum], row) => [row === 20 ? { formula: "=B30" } : one, sum]),
      },
    ],
  });
  expect(ring.at("S", 15, 1)).toEqual({ value: 16 });
  expect(ring.at("S", 29, 1)).toMatchObject({ error: expect.stringMatching(/^#/) });
});

test("each cell is read once however many sums reach over it", () => {
  const calculator = new Calculator({ sheets: [{ name: "S", rows: balance(2000) }] });
  const before = meter.cellsRead;
  calculator.calculateAll();
  expect(calculator.at(0, 1999, 1)).toEqual({ value: 2000 });
  // Two million cells stand in these ranges; the first few, and each a second time before it was settled, are read too.
  expect(meter.cellsRead - before).toBeLessThan(5000);
  calculator.dispose();
});

test("a sum over a sheet that is not there is an error", async () => {
  const rows = balance(20);
  rows.push([{ formula: "=SUM(Nowhere!A1:A20)" }]);
  const done = await calculateWorkbook({ sheets: [{ name: "S", rows }] });
  expect(done.at("S", 20, 0)).toMatchObject({ error: expect.stringMatching(/^#/) });
});
