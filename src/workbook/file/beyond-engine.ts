import { calledNames, callsOurs } from "../../formula/functions-called";
import { namesIn, namesManySheets, namesOtherFile, SPILL_OF } from "../../formula/references";
import { localNames } from "../../formula/stored-form";
import { NAMESPACE } from "../../functions/catalogue";

/** What the engine can and cannot calculate: names it knows as functions, and names of the workbook it was not given. */
export interface EngineReach {
  readonly functions: ReadonlySet<string>;
  /** Names that the workbook itself defines, in capitals; one may stand for a function. */
  readonly defined: ReadonlySet<string>;
  /** Defined names that could not be handed on, in capitals. */
  readonly unusable: ReadonlySet<string>;
}

function unknownFunction(typed: string, stored: string, reach: EngineReach): string | undefined {
  const locals = localNames(stored);
  const isKnown = (name: string) =>
    reach.functions.has(name) || reach.defined.has(name) || locals.has(name) || name === SPILL_OF;
  return calledNames(typed).find((name) => !isKnown(name));
}

function unusableName(typed: string, reach: EngineReach): string | undefined {
  if (reach.unusable.size === 0) return undefined;
  return namesIn(typed).find((name) => reach.unusable.has(name.toUpperCase()));
}

/**
 * Why a formula cannot be calculated here; `undefined` where it can. Such a cell keeps the value that the file
 * holds: a stale figure that is named beats an error in its place.
 */
export function whyNotCalculated(typed: string, stored: string, reach: EngineReach): string | undefined {
  if (namesOtherFile(typed)) return "it reads another workbook";
  if (namesManySheets(typed)) return "it reads through several sheets at once";
  const unknown = unknownFunction(typed, stored, reach);
  if (unknown?.startsWith(`${NAMESPACE}.`)) return `this version has no function ${unknown}`;
  if (unknown !== undefined) return `the function ${unknown} is not calculated here`;
  const name = unusableName(typed, reach);
  return name === undefined ? undefined : `the name ${name} is not calculated here`;
}

/** True where a formula is ours to answer for. */
export const isOurs = (formula: { readonly stored: string }): boolean => callsOurs(formula.stored);
