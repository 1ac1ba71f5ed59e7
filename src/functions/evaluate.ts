import { type InParts, toTheEnd } from "../core/parts";
import { InvalidValue } from "../core/refusal";
import { type Argument, asRefusal, BLANK, readArguments } from "./arguments";
import type { Cells } from "./cells";
import type { ScalarFunction, WorksheetFunction } from "./declare";
import { evaluateRows } from "./evaluate-rows";
import { evaluateScalar } from "./evaluate-scalar";
import { evaluateTable } from "./evaluate-table";
import { withSwapTold } from "./swapped";
import { withoutEmptyTails } from "./whole-columns";

/**
 * Answers one call of a worksheet function, the same way in every host.
 *
 * @param fn - The declaration, from `functionNamed` or the catalogue; its `result` says label and unit of each column.
 * @param raw - The arguments as the host hands them over: single values or arrays of rows.
 * @returns A rectangle of cells. Refusals stand in their own cells; nothing is thrown.
 */
export function evaluate(fn: WorksheetFunction, raw: readonly unknown[]): Cells {
  return toTheEnd(evaluateInParts(fn, raw));
}

/** The same answer in parts, for a host that must not be kept waiting. */
export function* evaluateInParts(fn: WorksheetFunction, raw: readonly unknown[]): InParts<Cells> {
  try {
    return yield* dispatch(fn, raw);
  } catch (thrown) {
    return [[asRefusal(thrown)]];
  }
}

function* dispatch(fn: WorksheetFunction, raw: readonly unknown[]): InParts<Cells> {
  if (fn?.parameters === undefined)
    throw new InvalidValue("no worksheet function is given: the catalogue lists every one by its name");
  const accepted = Object.keys(fn.parameters).length;
  if (raw.length > accepted)
    throw new InvalidValue(`${fn.name} takes ${accepted} arguments at most, ${raw.length} were given`);
  const given = withoutEmptyTails(raw);
  const args = withSwapTold(fn, readArguments(fn.parameters, given), given);
  if (fn.shape === "table") return yield* evaluateTable(fn.compute, args, fn);
  if (fn.shape === "row") return yield* evaluateRows(fn, args);
  return yield* lists(fn, args) ? evaluateTable(fn.listing.compute, args) : evaluateScalar(fn, args);
}

/** True where a function that can list is asked to: the deciding argument is empty and the others are single. */
function lists(
  fn: ScalarFunction,
  args: readonly Argument[],
): fn is ScalarFunction & Required<Pick<ScalarFunction, "listing">> {
  if (fn.listing === undefined) return false;
  const deciding = args.find(({ key }) => key === fn.listing?.whenBlank);
  return deciding?.values.every((read) => read === BLANK) ?? false;
}
