import { calledNames, callsOurs, callsSome } from "../../formula/functions-called";
import type { Token, TokenKind } from "../../formula/pieces";
import { namesIn, namesManySheets, namesOtherFile, SPILL_OF } from "../../formula/references";
import { localNames } from "../../formula/stored-form";
import { tokensOf } from "../../formula/tokens";
import { NAMESPACE } from "../../functions/catalogue";

/** What the engine can and cannot calculate: names it knows as functions, and names of the workbook it was not given. */
export interface EngineReach {
  readonly functions: ReadonlySet<string>;
  /** Names that the workbook itself defines, in capitals; one may stand for a function. */
  readonly defined: ReadonlySet<string>;
  /** Defined names that could not be handed on, in capitals. */
  readonly unusable: ReadonlySet<string>;
}

/** A formula as a file spells it, as it is typed, and what it shares with others. */
interface StoredText {
  readonly typed: string;
  readonly stored: string;
  readonly form: string | undefined;
}

function unknownFunction(typed: string, stored: string, reach: EngineReach): string | undefined {
  const isKnown = (name: string) => reach.functions.has(name) || reach.defined.has(name) || name === SPILL_OF;
  // Hardly a formula calls what is not known: no list of names is made for each of the others.
  if (!callsSome(typed, (name) => !isKnown(name))) return undefined;
  const locals = localNames(stored);
  return calledNames(typed).find((name) => !isKnown(name) && !locals.has(name));
}

function unusableName(typed: string, reach: EngineReach): string | undefined {
  if (reach.unusable.size === 0) return undefined;
  return namesIn(typed).find((name) => reach.unusable.has(name.toUpperCase()));
}

/** What an operand may end with, and begin with: a space between the two takes what both ranges share. */
const ENDS: ReadonlySet<TokenKind> = new Set(["cell", "columns", "rows", "name", "brackets", "close"]);
const BEGINS: ReadonlySet<TokenKind> = new Set(["cell", "columns", "rows", "name", "sheet", "call", "open"]);

function intersects(tokens: readonly Token[]): boolean {
  return tokens.some(({ kind }, at) => {
    const [before, after] = [tokens[at - 1], tokens[at + 1]];
    if (kind !== "space" || before === undefined || after === undefined) return false;
    return ENDS.has(before.kind) && BEGINS.has(after.kind);
  });
}

/** `DCOUNT(records,0,criteria)`: programs differ in what field 0 counts. */
const FIELD_0 = /^DCOUNTA?\([^,]*,0,/i;

function countsFieldZero(typed: string): boolean {
  if (!/DCOUNT/i.test(typed)) return false;
  const tokens = tokensOf(typed).filter(({ kind }) => kind !== "space");
  return tokens.some(
    ({ kind }, at) =>
      kind === "call" &&
      FIELD_0.test(
        tokens
          .slice(at)
          .map(({ text }) => text)
          .join(""),
      ),
  );
}

/**
 * Why a formula cannot be calculated here; `undefined` where it can. Such a cell keeps the value that the file
 * holds: a stale figure that is named beats an error in its place.
 */
export function whyNotCalculated(typed: string, stored: string, reach: EngineReach): string | undefined {
  if (namesOtherFile(typed)) return "it reads another workbook";
  if (namesManySheets(typed)) return "it reads through several sheets at once";
  if (typed.includes(" ") && intersects(tokensOf(typed))) return "it takes the cells that two ranges share";
  if (countsFieldZero(typed)) return "it counts records by field 0";
  const unknown = unknownFunction(typed, stored, reach);
  if (unknown?.startsWith(`${NAMESPACE}.`)) return `this version has no function ${unknown}`;
  if (unknown !== undefined) return `the function ${unknown} is not calculated here`;
  const name = unusableName(typed, reach);
  return name === undefined ? undefined : `the name ${name} is not calculated here`;
}

/**
 * Answers why formulas cannot be calculated, for those that differ in addresses and numbers alone once: no answer
 * depends on them but that of a count of records, which names a field by number.
 */
export function whyFormsNotCalculated(reach: EngineReach) {
  const reasons = new Map<string, string | undefined>();
  return ({ typed, stored, form }: StoredText): string | undefined => {
    if (form !== undefined && reasons.has(form)) return reasons.get(form);
    const reason = whyNotCalculated(typed, stored, reach);
    if (form !== undefined && !/DCOUNT/i.test(form)) reasons.set(form, reason);
    return reason;
  };
}

/** True where a formula is ours to answer for. */
export const isOurs = (formula: { readonly stored: string }): boolean => callsOurs(formula.stored);
