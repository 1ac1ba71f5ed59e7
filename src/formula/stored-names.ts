import { NAMESPACE } from "../functions/namespace";
import { maskOf, replaceOutsideTexts } from "./mask";

/** In front of our names in files, where the dot after the namespace becomes an underscore. */
const STORED_PREFIX = `_xldudf_${NAMESPACE}_`;

/**
 * Our functions in any form that files hold: stored or as typed, in any case, behind the number or the path of
 * another workbook. The name is group 2.
 */
const OURS = new RegExp(
  `((?:\\0+|[\\w.]+)!)?(?:_xldudf_${NAMESPACE}_|(?<![\\w.])${NAMESPACE}\\.)([A-Z][A-Z0-9_]*)(?=\\s*\\()`,
  "gi",
);
const NEWER = /_xlfn\.(?:_xlws\.)?|_xlpm\./gi;

/** All our names are in capitals, whatever a file or a hand made of them. */
const spelled = (name: string | undefined) => (name ?? "").toUpperCase();

/** The formula with our names as they are typed, with their dot; all else as it was. */
export function ownNamesTyped(formula: string): string {
  return replaceOutsideTexts(formula, OURS, ([, , name]) => `${NAMESPACE}.${spelled(name)}`);
}

/** The formula as it is typed: our names with their dot, newer built-in names without the marks of the file. */
export function typedForm(stored: string): string {
  return replaceOutsideTexts(ownNamesTyped(stored), NEWER, () => "");
}

/** The formula with our names as a file must hold them for Excel to find them; all else as it was. */
export function storedForm(formula: string): string {
  return replaceOutsideTexts(formula, OURS, ([, , name]) => STORED_PREFIX + spelled(name));
}

/** True where one of our functions is called in the formula, in whatever form. */
export function callsOurs(formula: string): boolean {
  return maskOf(formula).search(OURS) >= 0;
}

/** True where the whole formula is one call of one of our functions. */
export function isOneCallOfOurs(formula: string): boolean {
  const mask = maskOf(formula.trim());
  const first = mask.matchAll(OURS).next().value;
  if (first === undefined || first.index !== 0 || !mask.endsWith(")")) return false;
  let depth = 0;
  for (let at = first[0].length; at < mask.length - 1; at += 1) {
    if (mask[at] === "(") depth += 1;
    if (mask[at] === ")") depth -= 1;
    if (depth === 0 && mask[at] === ")") return false;
  }
  return true;
}

/** Names of the functions called in a formula as typed, in capitals. */
export function calledNames(formula: string): string[] {
  return [...maskOf(formula).matchAll(/(?<![\w.])([\p{L}_][\p{L}\p{N}_.]*)\s*\(/gu)].map(([, name]) =>
    String(name).toUpperCase(),
  );
}
