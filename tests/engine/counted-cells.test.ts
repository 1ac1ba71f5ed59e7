import fc from "fast-check";
import { expect, test } from "vitest";
import { calculateWorkbook } from "../../src/engine/calculate-workbook";
import { Calculator } from "../../src/engine/calculation/calculator";
import type { CellInput } from "../../src/engine/cell-value";

const ROWS = 8;

/** What may stand in a cell: figures, texts, yes and no, errors of every kind, nothing, and formulas that give them. */
const cell = fc.constantFrom<CellInput | undefined>(
  { value: 5 },
  { value: "oak" },
  { value: "#N/A is a text" },
  { value: "" },
  { value: false },
  { error: "#N/A" },
  { error: "#DIV/0!" },
  { formula: "=1/0" },
  { formula: "=2+3" },
  { formula: '=""' },
  { formula: '=BLADE.HARDNESS(60,"HRC","no scale")' },
  { formula: "=SEQUENCE(2,1)" },
  undefined,
);

/** In pairs: as a plan asks it, and so that the engine makes its lists. */
const ASKED = [
  ["=SUMPRODUCT(--ISERROR($A$1:$B$8))", "=SUMPRODUCT(0+ISERROR($A$1:$B$8))"],
  ["=SUMPRODUCT(--ISERROR(A2:A2))", "=SUMPRODUCT(0+ISERROR(A2:A2))"],
  ["=SUMPRODUCT(--NOT(ISFORMULA('S'!A1:B12)))", "=SUMPRODUCT(0+NOT(ISFORMULA('S'!A1:B12)))"],
  ["=2*SUMPRODUCT(--ISERROR(B$3:B9))+1", "=2*SUMPRODUCT(0+ISERROR(B$3:B9))+1"],
] as const;

// Outside check: the published engine's own way, which the same question in another form takes.
test("errors and typed cells are counted one by one as the engine counts them in lists", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(fc.tuple(cell, cell), { minLength: ROWS, maxLength: ROWS }), async (cells) => {
      const rows = cells.map(([a, b], row): (CellInput | undefined)[] => {
        const [counted = "=1", listed = "=1"] = ASKED[row] ?? [];
        return [a, b, undefined, { formula: counted }, { formula: listed }];
      });
      const done = await calculateWorkbook({ sheets: [{ name: "S", rows }] });
      for (const [row, [asked]] of ASKED.entries())
        expect(done.at("S", row, 3), asked).toEqual(done.at("S", row, 4));
    }),
    { numRuns: 60 },
  );
}, 120_000);

test("a count follows what becomes an error, and what is typed over a formula", () => {
  const count = (test: string) => ({ formula: `=SUMPRODUCT(--${test})` });
  const rows: CellInput[][] = [
    [{ value: 1 }, { formula: "=1/A1" }, count("ISERROR(A1:B2)"), count("NOT(ISFORMULA(A1:B2))")],
    [{ value: 1 }, { formula: "=1/A2" }],
  ];
  const calculator = new Calculator({ sheets: [{ name: "S", rows }] });
  calculator.calculateAll();
  const counts = () => [calculator.at(0, 0, 2), calculator.at(0, 0, 3)];
  expect(counts()).toEqual([{ value: 0 }, { value: 2 }]);
  calculator.change([{ sheet: 0, row: 1, column: 0, content: { value: 0 } }]);
  expect(counts()).toEqual([{ value: 1 }, { value: 2 }]);
  calculator.change([{ sheet: 0, row: 1, column: 1, content: { value: 7 } }]);
  expect(counts()).toEqual([{ value: 0 }, { value: 3 }]);
  calculator.dispose();
});
