import { describe, expect, it } from "vitest";
import { Calculator } from "../../src/engine/calculation/calculator";
import type { CellInput } from "../../src/engine/cell-value";
import { scalarFunction, type WorksheetFunction } from "../../src/functions/declare";
import { number } from "../../src/functions/parameters";

// Expected figures are plain arithmetic, or the same formula alone in a workbook of its own.

const ROWS = 6;
const COLUMNS = 4;
const figure = (sheet: number, row: number, column: number) => 100 * sheet + 10 * row + column + 1;

/** Two sheets of figures with formulas beside them, from the fifth column on. */
function results(formulas: readonly string[], functions: readonly WorksheetFunction[] = []) {
  const sheetOf = (sheet: number) => ({
    name: sheet === 0 ? "One" : "Other one",
    rows: Array.from({ length: ROWS }, (_, row) =>
      Array.from({ length: COLUMNS }, (__, column): CellInput => ({ value: figure(sheet, row, column) })),
    ),
  });
  const first = sheetOf(0);
  const rows = first.rows.map((row, at) =>
    at === 0 ? [...row, ...formulas.map((formula): CellInput => ({ formula }))] : row,
  );
  const calculator = new Calculator({ sheets: [{ ...first, rows }, sheetOf(1)] }, functions);
  calculator.calculateAll();
  const found = formulas.map((_, at) => calculator.at(0, 0, COLUMNS + at));
  calculator.dispose();
  return found;
}

/** Forms with marks for two cells and a number. */
const FORMS = [
  "=@+#",
  "=SUM(@:~)*#",
  "=SUM(~:@)",
  "=-@+-#%",
  "=@-(-#)",
  '=IF(@>#,@,"no")',
  '=IF(@>#,INDEX(@:~,1,1),-~)&"#@"',
  "=IFERROR(@/(#-#),~)",
  "=IFERROR(INDEX(@:~,#,1),0)",
  "=SUMPRODUCT((@:~>#)*1)",
  "=SUM(@:~*{1,2})",
  '=COUNTIF(@:~,">#")',
  "=INDEX('Other one'!@:~,1,1)+@",
  "=IF(TRUE,@,#)",
  "=AND(@>#,FALSE)",
  "=ROW(@)+COLUMN(~)+ROWS(@:~)",
  "=ISFORMULA(@)",
  "=OFFSET(@,1,0)+#",
  "=SUM(@:INDEX(A1:D6,6,4))",
  "=LOOKUP(#,A1:A6,~:D6)",
  "=MATCH(@,A1:A6,0)",
  '=@&" and "&#',
  "=XLOOKUP(@,A1:A6,D1:D6,#)",
] as const;

const CELLS = [
  ["A1", "B2", "2"],
  ["$B$2", "$C$5", "10"],
  ["C$3", "D6", "0.50"],
  ["A6", "$D6", "1e2"],
] as const;

describe("formulas of one form", () => {
  it("come together to what each comes to alone", () => {
    const formulas = FORMS.flatMap((form) =>
      CELLS.map(([a, b, n]) => form.replaceAll("@", a).replaceAll("~", b).replaceAll("#", n)),
    );
    const together = results(formulas);
    const alone = formulas.map((formula) => results([formula])[0]);
    expect(formulas.map((formula, at) => [formula, together[at]])).toEqual(
      formulas.map((formula, at) => [formula, alone[at]]),
    );
    expect(together.slice(0, 4)).toEqual([{ value: 3 }, { value: 22 }, { value: 23.5 }, { value: 151 }]);
  });

  it("read each its own sheet", () => {
    const cell = (formula: string): CellInput => ({ formula });
    const sheets = ["A", "B"].map((name, at) => ({
      name,
      rows: [[{ value: at + 1 }, cell("=A1*10"), cell("=SUM($A$1:A1)+5"), cell("=B!A1+7")]],
    }));
    const calculator = new Calculator({ sheets });
    calculator.calculateAll();
    const row = (sheet: number) => [1, 2, 3].map((column) => calculator.at(sheet, 0, column));
    expect(row(0)).toEqual([{ value: 10 }, { value: 6 }, { value: 9 }]);
    expect(row(1)).toEqual([{ value: 20 }, { value: 7 }, { value: 9 }]);
    calculator.dispose();
  });
});

describe("branches", () => {
  it("one that is not taken is not worked out", () => {
    let count = 0;
    const asked = scalarFunction({
      name: "ASKED",
      summary: "For this test.",
      relations: [],
      parameters: { a: number({ label: "a", quantity: "length", unit: "mm", help: "A length.", max: 100 }) },
      result: { label: "a", unit: "mm" },
      compute: ({ a }) => {
        count += 1;
        return a;
      },
    });
    const call = "BLADE.ASKED(A1+0)";
    const found = results(
      [`=IF(A1=1,5,${call})`, `=IF(A1=2,${call},6)`, `=IFERROR(7,${call})`, `=IF(1/0,${call},${call})`],
      [asked],
    );
    expect(found.slice(0, 3)).toEqual([{ value: 5 }, { value: 6 }, { value: 7 }]);
    expect(found[3]).toMatchObject({ error: "#DIV/0!" });
    expect(count).toBe(0);
    expect(results([`=IF(A1=1,${call},0)`, `=IFERROR(1/0,1+${call})`], [asked])).toEqual([
      { value: 1 },
      { value: 2 },
    ]);
    expect(count).toBe(1);
  });

  it("a list of conditions takes both; what is left out is FALSE or 0", () => {
    expect(results(["=SUM(IF(A1:A6>20,A1:A6,-1))", "=IF(A1=2,1)", "=IF(A1=1,,2)+1", "=IF(,1,2)"])).toEqual([
      { value: 21 + 31 + 41 + 51 - 2 },
      { value: false },
      { value: 1 },
      { value: 2 },
    ]);
  });
});
