import { textLiteral } from "../../formula/tokens";
import { NAMESPACE } from "../../functions/catalogue";
import type { ExampleArgument, WorksheetFunction } from "../../functions/declare";

function cellFormula(cell: string | number | null): string {
  if (cell === null) return "";
  return typeof cell === "string" ? textLiteral(cell) : String(cell);
}

/** A range as an array constant: a list is a column, a list of lists is a row each. */
function arrayConstant(rows: readonly (readonly (string | number | null)[])[]): string {
  const empty = (cell: string | number | null) => (cell === null ? '""' : cellFormula(cell));
  return `{${rows.map((row) => row.map(empty).join(",")).join(";")}}`;
}

function isRows(
  given: readonly (string | number | null)[] | readonly (readonly (string | number | null)[])[],
): given is readonly (readonly (string | number | null)[])[] {
  return Array.isArray(given[0]);
}

function argumentFormula(given: ExampleArgument): string {
  if (given === null || typeof given !== "object") return cellFormula(given);
  return arrayConstant(isRows(given) ? given : given.map((cell) => [cell]));
}

/** A call as a cell holds it, in English function names with `,` between arguments. */
export function formulaOf(fn: WorksheetFunction, given: readonly ExampleArgument[]): string {
  return `=${NAMESPACE}.${fn.name}(${given.map(argumentFormula).join(",")})`;
}

/** Arguments left out at the end are not written. */
export function withoutEmptyEnd<T>(given: readonly T[], isEmpty: (argument: T) => boolean): readonly T[] {
  let length = given.length;
  while (length > 0 && isEmpty(given[length - 1] as T)) length -= 1;
  return given.slice(0, length);
}
