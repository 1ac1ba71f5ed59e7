import { BaseFunction, IFunctionService } from "@univerjs/engine-formula";
import { expect, it } from "vitest";
import { Calculator } from "../../src/engine/calculation/calculator";
import { typedSheet } from "./typed-cell";

class Throwing extends BaseFunction {
  override calculate(): never {
    throw new Error("a built-in function with a fault");
  }
}

it("turns an exception in a function of the engine itself into an error of its own cell", () => {
  const plan = typedSheet("Plan", [["=THROWING(1)", "=1+1", "=IFERROR(A1,3)"]]);
  const calculator = new Calculator({ sheets: [plan] }, []);
  calculator.engine.injector.get(IFunctionService).registerExecutors(new Throwing("THROWING"));
  calculator.calculateAll();
  const at = (column: number) => calculator.at(0, 0, column);
  expect(at(0)).toMatchObject({ error: "#VALUE!" });
  expect(at(1)).toEqual({ value: 2 });
  expect(at(2)).toEqual({ value: 3 });
  calculator.dispose();
});
