import { Refusal } from "../../src/core/refusal";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";

/** Cells with refusals written as "code sentence". */
export function answer(fn: WorksheetFunction, ...given: unknown[]) {
  return evaluate(fn, given).map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}
