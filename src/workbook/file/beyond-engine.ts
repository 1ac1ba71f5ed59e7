import { maskOf } from "../../formula/mask";
import { calledNames, callsOurs } from "../../formula/stored-names";
import { NAMESPACE } from "../../functions/catalogue";

/** What the engine can and cannot calculate: names it knows as functions, and names of the workbook it was not given. */
export interface EngineReach {
  readonly functions: ReadonlySet<string>;
  /** Names that the workbook itself defines, in capitals; one may stand for a function. */
  readonly defined: ReadonlySet<string>;
  /** Defined names that could not be handed on, in capitals. */
  readonly unusable: ReadonlySet<string>;
}

/** Replaced by the cells it stands for before the engine sees it. */
const SPILL_OF = "ANCHORARRAY";
const LOCAL_NAME = /_xlpm\.([\p{L}\p{N}_.]+)/giu;

/** Another workbook: its number or name in brackets, in front of a sheet. */
function namesOtherFile(formula: string): boolean {
  const outside = [...maskOf(formula).matchAll(/(?<![\p{L}\p{N}_.)\0])\0+([\p{L}\p{N}_.]*)!/gu)];
  return outside.some(({ index }) => /^(?:\[|'[^']*\[)/.test(formula.slice(index)));
}

function namesManySheets(formula: string): boolean {
  const mask = maskOf(formula);
  if (/[\p{L}\p{N}_.]+:[\p{L}_][\p{L}\p{N}_.]*!/u.test(mask)) return true;
  return [...mask.matchAll(/\0+!/g)].some(({ index, 0: hidden }) =>
    /^'[^'[\]\\/]+:[^'[\]\\/]+'!$/.test(formula.slice(index, index + hidden.length)),
  );
}

function unknownFunction(typed: string, stored: string, reach: EngineReach): string | undefined {
  const locals = new Set(
    [...maskOf(stored).matchAll(LOCAL_NAME)].map(([, name]) => String(name).toUpperCase()),
  );
  const isKnown = (name: string) =>
    reach.functions.has(name) || reach.defined.has(name) || locals.has(name) || name === SPILL_OF;
  return calledNames(typed).find((name) => !isKnown(name));
}

function unusableName(typed: string, reach: EngineReach): string | undefined {
  if (reach.unusable.size === 0) return undefined;
  const words = maskOf(typed).match(/[\p{L}_\\][\p{L}\p{N}_.\\]*/gu) ?? [];
  return words.find((word) => reach.unusable.has(word.toUpperCase()));
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
export { namesOtherFile };
