import type { Injector } from "@univerjs/core";
import { ICalculateFormulaService } from "@univerjs/engine-formula";
import { Results } from "./results";

/** Keeps the results of every calculation of an engine that is already running, a page's or our own. */
export function watchResults(injector: Injector): Results {
  const results = new Results();
  injector.get(ICalculateFormulaService).executionCompleteListener$.subscribe((run) => results.record(run));
  return results;
}
