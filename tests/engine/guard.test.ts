import { BaseFunction, IFunctionService } from "@univerjs/engine-formula";
import { expect, it } from "vitest";
import { calculateOnce } from "../../src/engine/calculate-workbook";
import { startEngine } from "../../src/engine/headless";
import { watchResults } from "../../src/engine/watch";
import { UNIT, workbookData } from "../../src/engine/workbook-input";
import { typedSheet } from "./typed-cell";

class Throwing extends BaseFunction {
  override calculate(): never {
    throw new Error("a built-in function with a fault");
  }
}

it("turns an exception in a function of the engine itself into an error of its own cell", async () => {
  const plan = typedSheet("Plan", [["=THROWING(1)", "=1+1", "=IFERROR(A1,3)"]]);
  const { injector, dispose } = startEngine(workbookData({ sheets: [plan] }), []);
  injector.get(IFunctionService).registerExecutors(new Throwing("THROWING"));
  const results = watchResults(injector);
  await calculateOnce(injector);
  const at = (column: number) => results.at({ unitId: UNIT, sheetId: "sheet-1", row: 0, column });
  expect(at(0)).toMatchObject({ error: "#VALUE!" });
  expect(at(1)).toEqual({ value: 2 });
  expect(at(2)).toEqual({ value: 3 });
  dispose();
});
