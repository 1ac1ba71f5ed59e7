import { splitAddress } from "../../formula/references";
import { textLiteral } from "../../formula/tokens";
import { NAMESPACE } from "../../functions/catalogue";
import type { AnyParameter, WorksheetFunction } from "../../functions/declare";
import { QUANTITIES } from "../../functions/quantities";
import { withoutEmptyEnd } from "../parts/formula";
import { typedIn } from "../parts/words";

/** True for an argument that is a number; a word may look like one: "1.2842" is a steel. */
export function isNumeric({ kind }: AnyParameter): boolean {
  return Object.hasOwn(QUANTITIES, kind);
}

const takesMany = ({ takes }: AnyParameter) => takes !== "cell";

function oneText(text: string, parameter: AnyParameter, decimal: string): string {
  return isNumeric(parameter) || parameter.takes === "table" ? typedIn(text, decimal) : textLiteral(text);
}

/** Rows are lines or parted by semicolons, columns by tabs, as they are copied out of a sheet. */
function arrayText(text: string, parameter: AnyParameter, decimal: string): string {
  const rows = text.split(/[\n;]/).filter((row) => row.trim() !== "");
  const cells = rows.map((row) => row.split("\t").map((cell) => oneText(cell.trim(), parameter, decimal)));
  return `{${cells.map((row) => row.join(",")).join(";")}}`;
}

/** Cells on the sheet that the formula goes to need not name it. */
function withoutOwnSheet(reference: string, sheet: string | null): string {
  const split = splitAddress(reference);
  return split.sheet !== null && split.sheet === sheet ? split.place : reference;
}

/**
 * What was entered for one argument as the formula takes it.
 *
 * @param entered - Empty for one left out; with `=` in front it is cells or a formula of its own.
 * @param sheet - The sheet the formula goes to.
 */
export function argumentText(
  entered: string,
  parameter: AnyParameter,
  { decimal = ".", sheet = null }: { readonly decimal?: string; readonly sheet?: string | null } = {},
): string {
  const text = entered.trim();
  if (text === "") return "";
  if (text.startsWith("=")) return withoutOwnSheet(text.slice(1).trim(), sheet);
  if ((takesMany(parameter) || isNumeric(parameter)) && /[\n;\t]/.test(text))
    return arrayText(text, parameter, decimal);
  return oneText(text, parameter, decimal);
}

/** The call with arguments as a formula takes them, those left out at the end not written. */
export function callText(fn: WorksheetFunction, given: readonly string[]): string {
  const written = withoutEmptyEnd(given, (argument) => argument === "");
  return `=${NAMESPACE}.${fn.name}(${written.join(",")})`;
}
