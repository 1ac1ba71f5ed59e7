import { IFunctionService } from "@univerjs/engine-formula";
import { catalogue } from "../functions/catalogue";
import type { WorksheetFunction } from "../functions/declare";
import { startEngine } from "./headless";

/** Names of all functions the engine can calculate, in capitals, ours with their namespace. */
export function knownFunctionNames(functions: readonly WorksheetFunction[] = catalogue): ReadonlySet<string> {
  const engine = startEngine({ id: "names", sheetOrder: [], sheets: {} }, functions);
  try {
    const executors = engine.injector.get(IFunctionService).getExecutors();
    return new Set([...executors.keys()].map((name) => String(name).toUpperCase()));
  } finally {
    engine.dispose();
  }
}
