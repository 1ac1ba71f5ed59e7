import { sentenceOf } from "../core/refusal";

/** Excel's own reasons are short codes; these are the usual ones. */
const REASONS: Readonly<Partial<Record<string, string>>> = {
  AccessDenied: "the sheet is protected",
  InvalidOperationInCellEditMode: "a cell is being edited: press Enter or Esc first",
  InvalidArgument:
    "it does not fit here: select a cell with enough free rows and columns below and beside it",
  ItemAlreadyExists: "a sheet of that name exists",
};

function reason(problem: unknown): string {
  const code = problem instanceof OfficeExtension.Error ? problem.code : "";
  return REASONS[code] ?? sentenceOf(problem);
}

/**
 * Runs a task that writes.
 *
 * @param what - What Excel may not take: "the formula".
 * @throws Error with a sentence for the smith.
 */
export async function writing<T>(what: string, task: () => Promise<T>): Promise<T> {
  try {
    return await task();
  } catch (problem) {
    throw new Error(`Excel did not take ${what}: ${reason(problem)}`);
  }
}

/** True where this Excel knows a set of another name: `CustomFunctionsRuntime`. */
export function knowsSet(name: string, least: string): boolean {
  return Office.context.requirements?.isSetSupported(name, least) ?? false;
}

/** True where this Excel knows a set of the documented interface: older ones on the desktop lack the newer. */
export function knows(set: string): boolean {
  return knowsSet("ExcelApi", set);
}

/** Options that make everything written in one run one step of undo, where Excel can. */
export function oneUndoStep(): Excel.RunOptions {
  return knows("1.20") ? { mergeUndoGroup: true } : {};
}
