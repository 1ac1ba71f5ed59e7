import { NotAvailable, Refusal } from "../core/refusal";
import type { Cell, Cells } from "../functions/cells";
import { answeredColumns, type WorksheetFunction } from "../functions/declare";
import { evaluateInParts } from "../functions/evaluate";
import { inSlices, type Slicing } from "../functions/parts";
import { cardsFor, type TextWithCard } from "./cards";

/** A figure that brings the way it is written along (ExcelApi 1.16, CustomFunctionsRuntime 1.4). */
interface FormattedNumber {
  readonly type: "FormattedNumber";
  readonly basicValue: number;
  readonly numberFormat: string;
}

/** What Excel takes back for one cell: an error object keeps its sentence. */
type HostCell = number | string | boolean | Error | FormattedNumber | TextWithCard;

/** How figures of a unit are written, in the codes of Excel's number formats; a cell with a format of its own keeps it. */
const FORMATS: Readonly<Partial<Record<string, string>>> = {
  money: "#,##0.00",
  mm: "0.0##",
  HRC: "0.0",
  "°C": "0",
};

/** In a large answer figures stay plain: each dressed one travels as an object. */
const MAX_DRESSED = 500;

/** True where this Excel takes figures with a format; an older one shows an error for them. */
function takesFormats(): boolean {
  try {
    return Office.context.requirements.isSetSupported("CustomFunctionsRuntime", "1.4");
  } catch {
    // Neither a runtime without Office nor one that has not told yet what it knows may cost an answer.
    return false;
  }
}

/** Whole figures of hardness and lengths stay whole: a place behind the point would claim more than is known. */
function dressed(value: number, unit: string): number | FormattedNumber {
  const format = FORMATS[unit];
  if (format === undefined || !Number.isFinite(value)) return value;
  const numberFormat = Number.isInteger(value) && unit !== "money" ? "0" : format;
  return { type: "FormattedNumber", basicValue: value, numberFormat };
}

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
function hostCell(cell: Cell, unit = ""): HostCell {
  if (cell instanceof Refusal) return hostError(cell);
  return typeof cell === "number" ? dressed(cell, unit) : (cell ?? "");
}

/** A single refusal is thrown, which every version of Excel shows with its sentence; in a range each stands in its place. */
function hostResult(fn: WorksheetFunction, args: readonly unknown[], cells: Cells): HostCell[][] {
  const only = cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : undefined;
  if (only instanceof Refusal) throw hostError(only);
  const cards = cardsFor(fn, args, cells);
  return dressedRows(fn, cells).map((row, at) => {
    const [name, ...rest] = row;
    return name === undefined ? row : [cards[at] ?? name, ...rest];
  });
}

/** Figures with their number formats, where this Excel takes them and they are not too many. */
function dressedRows(fn: WorksheetFunction, cells: Cells): HostCell[][] {
  const width = cells[0]?.length ?? 0;
  if (width * cells.length > MAX_DRESSED || !takesFormats())
    return cells.map((row) => row.map((cell) => hostCell(cell)));
  const columns = answeredColumns(fn, width);
  return cells.map((row) => row.map((cell, at) => hostCell(cell, columns[at]?.unit)));
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
    if (!(found instanceof Promise)) return hostResult(fn, args, found);
    return found.then((cells) => hostResult(fn, args, cells ?? [[CANCELED]]));
  };
}
