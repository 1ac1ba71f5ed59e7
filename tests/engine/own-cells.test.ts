import { expect, test } from "vitest";
import { calculateWorkbook } from "../../src/engine/calculate-workbook";
import type { CellInput } from "../../src/engine/cell-value";
import { ownCells } from "../../src/engine/own-cells";
import { catalogue } from "../../src/functions/catalogue";

const f = (formula: string): CellInput => ({ formula });
const v = (value: string | number): CellInput => ({ value });

const rows: CellInput[][] = [
  [v("1095"), f("=BLADE.CARBON(A1)"), f("=B1*2")],
  [v("5160"), f("=BLADE.CARBON($A2)"), f("=BLADE.CARBON(B2)")],
  [f('="10"&"84"'), f("=BLADE.CARBON(A3)"), f("=B3")],
  [v("nonsuch"), f("=BLADE.CARBON(A4)"), f("=B4")],
  [v("O1"), f("=BLADE.CARBON(A1:A2)"), f('=BLADE.CARBON("1095")+1')],
];
const [own] = ownCells([{ name: "S", rows }], catalogue);

// SAE J402: the last digits of a number are hundredths of a per cent of carbon.
test("cells that only call our functions on constants are answered at once, all others by the engine", async () => {
  expect([...(own?.values ?? [])]).toEqual([
    [1, { value: 0.95 }],
    [16_384 + 1, { value: 0.6 }],
  ]);
  const done = await calculateWorkbook({ sheets: [{ name: "S", rows }] });
  const at = (row: number, column: number) => done.at("S", row, column);
  expect([at(0, 1), at(0, 2), at(1, 1)]).toEqual([{ value: 0.95 }, { value: 1.9 }, { value: 0.6 }]);
  expect([at(2, 1), at(2, 2)]).toEqual([{ value: 0.84 }, { value: 0.84 }]);
});

test("an error stays an error with its sentence, and one for the cells that read it", async () => {
  const done = await calculateWorkbook({ sheets: [{ name: "S", rows }] });
  expect(done.at("S", 3, 1)).toMatchObject({ error: "#N/A", message: expect.stringContaining("nonsuch") });
  expect(done.at("S", 3, 2)).toMatchObject({ error: "#N/A" });
});
