import { NAMESPACE } from "../functions/namespace";
import type { Token } from "./pieces";
import { tokensOf } from "./tokens";

/** Our functions in any form that files hold: as stored or as typed, in any case. */
const OURS = new RegExp(`^(?:_xlfn\\.)?(?:_xldudf_${NAMESPACE}_|${NAMESPACE}\\.)([A-Z][A-Z0-9_]*)$`, "i");

const MENTIONS_OURS = new RegExp(NAMESPACE, "i");

/** The name without namespace, in capitals, of a function of ours; `undefined` for any other. */
export function ownName(called: string): string | undefined {
  return OURS.exec(called)?.[1]?.toUpperCase();
}

const isCallOfOurs = ({ kind, text }: Token) => kind === "call" && ownName(text) !== undefined;

/** Names of the functions called in a formula, in capitals. */
export function calledNames(formula: string): string[] {
  return tokensOf(formula).flatMap(({ kind, text }) => (kind === "call" ? [text.toUpperCase()] : []));
}

/** Whether a function that is such is called in a formula, asked by its name in capitals. */
export const callsSome = (formula: string, isSuch: (name: string) => boolean): boolean =>
  tokensOf(formula).some(({ kind, text }) => kind === "call" && isSuch(text.toUpperCase()));

/** A look at the letters alone, before a formula is taken apart: most formulas of a workbook are not ours. */
export const mayCallOurs = (formula: string) => MENTIONS_OURS.test(formula);

/** True where one of our functions is called in the formula, in whatever form. */
export function callsOurs(formula: string): boolean {
  return mayCallOurs(formula) && tokensOf(formula).some(isCallOfOurs);
}

/** The function of ours, without namespace, of which the whole formula is one call; `undefined` where it is not. */
export function wholeCallOfOurs(formula: string): string | undefined {
  if (!mayCallOurs(formula)) return undefined;
  const tokens = tokensOf(formula.trim().replace(/^=/, "")).filter(({ kind }) => kind !== "space");
  const [first, ...rest] = tokens[0]?.kind === "sheet" ? tokens.slice(1) : tokens;
  let depth = 0;
  const closes = rest.findIndex(({ kind }) => {
    depth += kind === "open" ? 1 : kind === "close" ? -1 : 0;
    return depth === 0;
  });
  return closes === rest.length - 1 && first?.kind === "call" ? ownName(first.text) : undefined;
}
