import { NotAvailable, Refusal } from "../core/refusal";
import type { Cell, Cells } from "../functions/cells";
import type { WorksheetFunction } from "../functions/declare";
import { evaluateInParts } from "../functions/evaluate";
import { inSlices, type Slicing } from "../functions/parts";

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

/** Excel starts an add-in anew that does not answer for 5 s: a hundredth of that is one slice of work. */
const SLICE_MS = 50;

/** What Excel hands over behind the arguments. */
interface Invocation {
  onCanceled?: () => void;
}

/** Slices by the clock; Excel says through the invocation that nobody waits any more. */
function slicingFor(fn: WorksheetFunction, invocation: Invocation | undefined): Slicing {
  let isCanceled = false;
  if (fn.takesLong && invocation !== undefined && invocation !== null) {
    invocation.onCanceled = () => {
      isCanceled = true;
    };
  }
  return {
    milliseconds: SLICE_MS,
    now: Date.now,
    pause: () => new Promise((resolve) => setTimeout(resolve, 0)),
    isCanceled: () => isCanceled,
  };
}

const CANCELED = new NotAvailable("the calculation was called off before its end: calculate again");

/**
 * A worksheet function in the form Excel calls: what is done within a slice is answered at once, longer work as a
 * promise that lets Excel and the pane have their turn in between.
 *
 * @param fn - The declaration.
 * @returns A function of the arguments followed by Excel's own invocation object.
 */
export function customFunction(
  fn: WorksheetFunction,
): (...args: unknown[]) => HostCell[][] | Promise<HostCell[][]> {
  const accepted = Object.keys(fn.parameters).length;
  return (...args) => {
    const slicing = slicingFor(fn, args[accepted] as Invocation | undefined);
    const found = inSlices(evaluateInParts(fn, args.slice(0, accepted)), slicing);
    if (!(found instanceof Promise)) return hostResult(found);
    return found.then((cells) => hostResult(cells ?? [[CANCELED]]));
  };
}
