import type { Injector } from "@univerjs/core";
import { IFunctionService } from "@univerjs/engine-formula";
import { errorSentence } from "../../engine/error-sentences";
import type { CellAddress } from "../../engine/results";
import { isErrorCode } from "../../formula/tokens";
import type { CellResults } from "./cell-results";

/** Says why a cell shows an error; empty where it shows none. */
export type CellSentence = (cell: CellAddress, shown: string, formula: string) => string;

/** Gives the sentences that travel with our errors, and words the engine's own errors. */
export function cellSentences(injector: Injector, results: CellResults): CellSentence {
  // Asked for anew each time: the functions are registered after this is set up.
  const names = () => new Set([...injector.get(IFunctionService).getExecutors().keys()].map(String));
  return (cell, shown, formula) => {
    if (!isErrorCode(shown)) return "";
    return results.sentenceAt(cell, shown) ?? errorSentence(shown, formula, names());
  };
}
