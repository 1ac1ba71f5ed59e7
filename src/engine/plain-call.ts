import { Refusal } from "../core/refusal";
import { type Expression, parseFormula } from "../formula/parse";
import { functionNamed } from "../functions/catalogue";
import type { Cell } from "../functions/cells";
import { evaluate } from "../functions/evaluate";
import { NAMESPACE } from "../functions/namespace";
import type { CellValue } from "./cell-value";

/** A constant, a constant with a sign or nothing; `undefined` for what has to be worked out. */
export function constant(part: Expression): number | string | boolean | null | undefined {
  if (part.kind === "nothing") return null;
  if (part.kind === "constant") return part.value;
  if (part.kind !== "operation" || part.operator !== "sign") return undefined;
  const [of] = part.given;
  return of?.kind === "constant" && typeof of.value === "number" ? -of.value : undefined;
}

/** An argument as the functions take it; `undefined` where it is no constant. */
function argument(part: Expression): unknown {
  if (part.kind !== "array") return constant(part);
  const rows = part.rows.map((row) => row.map(constant));
  return rows.flat().includes(undefined) ? undefined : rows;
}

function shown(cell: Cell): CellValue {
  return cell instanceof Refusal ? { error: cell.code, message: cell.message } : { value: cell ?? "" };
}

/**
 * Answers a formula that is nothing but a call of one of our functions with constants, as the formula engine
 * answers it, but without the engine, whose packages take longer to load than the answer.
 *
 * @param formula - As typed; the leading `=` may be left out.
 * @returns Rows of cells; `undefined` where the formula is more than that, and the engine has to be asked.
 */
export function plainCall(formula: string): CellValue[][] | undefined {
  const text = formula.trim();
  const call = parseFormula(text.startsWith("=") ? text : `=${text}`);
  if (call?.kind !== "call" || !call.name.startsWith(`${NAMESPACE}.`)) return undefined;
  const fn = functionNamed(call.name.slice(NAMESPACE.length + 1));
  const given = call.given.map(argument);
  if (fn === undefined || given.includes(undefined)) return undefined;
  return evaluate(fn, given).map((row) => row.map(shown));
}
