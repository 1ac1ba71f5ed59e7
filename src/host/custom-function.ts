import { Refusal } from "../core/refusal";
import type { Cell, Cells } from "../functions/cells";
import type { WorksheetFunction } from "../functions/declare";
import { evaluate } from "../functions/evaluate";

/** What Excel takes back for one cell: an error object keeps its sentence. */
type HostCell = number | string | boolean | Error;

/**
 * Excel's own error object for a refusal. Its classes exist only once a host has loaded them, so
 * they are looked up here, when a function is called, and never while the page loads.
 */
function hostError(refusal: Refusal): Error {
  if (typeof CustomFunctions === "undefined" || CustomFunctions.Error === undefined) return refusal;
  const { ErrorCode } = CustomFunctions;
  const code = refusal.code === "#N/A" ? ErrorCode.notAvailable : ErrorCode.invalidValue;
  // The host's class does not extend the language's own, which its typings leave out.
  return new CustomFunctions.Error(code, refusal.message) as unknown as Error;
}

/** Excel shows `null` inside a range as 0, so a cell that is empty on purpose is an empty text. */
function hostCell(cell: Cell): HostCell {
  if (cell instanceof Refusal) return hostError(cell);
  return cell ?? "";
}

/** A single refusal is thrown, which every version of Excel shows with its sentence; in a range each stands in its place. */
function hostResult(cells: Cells): HostCell[][] {
  const only = cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : undefined;
  if (only instanceof Refusal) throw hostError(only);
  return cells.map((row) => row.map(hostCell));
}

/**
 * A worksheet function in the form Excel calls.
 *
 * @param fn - The declaration.
 * @returns A function of the arguments followed by Excel's own invocation object.
 */
export function customFunction(fn: WorksheetFunction): (...args: unknown[]) => HostCell[][] {
  const accepted = Object.keys(fn.parameters).length;
  return (...args) => hostResult(evaluate(fn, args.slice(0, accepted)));
}
