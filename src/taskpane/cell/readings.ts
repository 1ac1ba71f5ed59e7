import { quantityText } from "../../core/quantity-text";
import { Refusal } from "../../core/refusal";
import type { Steel } from "../../core/steel/steel";
import type { Expression } from "../../formula/parse";
import { type Argument, BLANK, emptySentence, type Read, readArguments } from "../../functions/arguments";
import type { Cell, Cells } from "../../functions/cells";
import { cellsOf, type Known, type OwnCall } from "./values";

/** One input of a call: what stands in the formula, and what the function makes of it. */
export interface Reading {
  readonly name: string;
  /** As the formula has it; empty where it is left out. */
  readonly given: string;
  /** What was read there, where the formula points at cells. */
  readonly holds: string;
  readonly readAs: string;
  /** Why it cannot be read; empty where it can. */
  readonly fault: string;
  /** What is accepted. */
  readonly accepts: string;
  /** The steel, for the input that is one. */
  readonly steel: Steel | null;
}

const MAX_SHOWN = 4;

const isSteel = (read: Read): read is Steel =>
  typeof read === "object" && read !== null && "composition" in read && "family" in read;

function shown(cell: Cell | undefined): string {
  if (cell === null || cell === undefined || cell === "") return "empty";
  return cell instanceof Refusal ? cell.code : String(cell);
}

/** A few of many, and how many there are. */
function listed(texts: readonly string[]): string {
  if (texts.length <= MAX_SHOWN) return texts.join(", ");
  const [first = "", second = ""] = texts;
  return `${texts.length} cells: ${first}, ${second} … ${texts.at(-1) ?? ""}`;
}

function readText(read: Read, raw: Cell | undefined, { parameter }: Argument): string {
  if (read === BLANK) return parameter.optional ? defaultText(parameter.fallbackText) : "empty";
  if (read instanceof Refusal) return "not readable";
  if (typeof read === "number") return quantityText(read, parameter.unit);
  return isSteel(read) ? read.name : shown(raw);
}

const defaultText = (fallback: string) => (fallback === "" ? "left out" : `left out: ${fallback}`);

/** The first thing wrong with an argument, with its place where there are several cells. */
function faultOf({ parameter, values }: Argument): string {
  const at = values.findIndex((read) => read instanceof Refusal);
  const read = values[at];
  const isMissing = !parameter.optional && values.every((value) => value === BLANK);
  if (isMissing) return emptySentence(parameter);
  if (!(read instanceof Refusal)) return "";
  return values.length > 1 ? `cell ${at + 1} of the range: ${read.message}` : read.message;
}

/** A range of which each row of the answer takes one cell. */
const isByRow = ({ parameter, values, columns }: Argument) =>
  parameter.takes === "cell" && values.length > 1 && columns === 1;

/** What an argument is read as: of one cell a row the row's own, else a few of them. */
function readAsText(argument: Argument, flat: readonly Cell[], row: number): string {
  const { values } = argument;
  const own = isByRow(argument) ? values[row] : undefined;
  if (own !== undefined) return `${readText(own, flat[row], argument)} (row ${row + 1} of ${values.length})`;
  return listed(values.map((read, at) => readText(read, flat[at], argument)));
}

function reading(
  argument: Argument,
  part: Expression | undefined,
  cells: Cells | null,
  row: number,
): Reading {
  const { parameter, values } = argument;
  const given = part?.text ?? "";
  const flat = cells?.flat() ?? [];
  const isKnown = part === undefined || cells !== null;
  const points = part !== undefined && part.kind !== "constant" && part.kind !== "array" && given !== "";
  return {
    name: parameter.label,
    given,
    holds: points && isKnown ? listed(flat.map(shown)) : "",
    readAs: isKnown ? readAsText(argument, flat, row) : "worked out in the sheet, not read here",
    fault: isKnown ? faultOf(argument) : "",
    accepts: parameter.accepts,
    steel: [values[isByRow(argument) ? row : 0], ...values].find(isSteel) ?? null,
  };
}

/**
 * Every input of a call in order, those left out too.
 *
 * @param row - The row of the answer that is asked about, from 0.
 */
export function readingsOf({ fn, given }: OwnCall, known: Known, row: number): Reading[] {
  const cells = given.map((part) => cellsOf(part, known));
  const args = readArguments(fn.parameters, cells);
  return args.map((argument, at) => reading(argument, given[at], cells[at] ?? null, row));
}
