import type { Injector } from "@univerjs/core";
import { ErrorType, ErrorValueObject, Interpreter } from "@univerjs/engine-formula";
import { repairArrayConstants } from "./array-constants";
import { guardDependencies } from "./dependency-guard";
import { repairFormulaCache } from "./formula-cache";
import { rememberDependencies } from "./known-dependencies";

type Execute = Interpreter["execute"];

/**
 * Makes an engine safe to show: an exception in any of its functions becomes the error value of its own cell.
 * Without this, one exception ends the whole calculation and every formula of the workbook stays blank. A long
 * session does not slow it down or fill memory either.
 */
export function guardCalculations(injector: Injector): void {
  repairArrayConstants();
  repairFormulaCache();
  guardDependencies(injector);
  rememberDependencies(injector);
  const interpreter = injector.get(Interpreter);
  const execute: Execute = interpreter.execute.bind(interpreter);
  interpreter.execute = (node) => {
    try {
      return execute(node);
    } catch {
      return ErrorValueObject.create(ErrorType.VALUE);
    }
  };
}
