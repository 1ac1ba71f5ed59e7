import type { InParts } from "../core/parts";
import { InvalidValue, Refusal, sentenceOf } from "../core/refusal";
import { type Cell, type Cells, toCells } from "./cells";
import type { AnyParameter } from "./declare";
import { isBlank } from "./parameters";

/** Nothing was filled in. */
export const BLANK = Symbol("blank");

/** What reading one cell came to. */
export type Read = unknown | Refusal | typeof BLANK;

/** One argument of one call, read cell by cell: `values` in reading order. */
export interface Argument {
  readonly key: string;
  readonly parameter: AnyParameter;
  readonly rows: number;
  readonly columns: number;
  readonly values: readonly Read[];
}

/** Turns anything thrown into a refusal: a fault of ours must never spoil more than its own cell. */
export function asRefusal(thrown: unknown): Refusal {
  if (thrown instanceof Refusal) return thrown;
  const what = sentenceOf(thrown);
  return new InvalidValue(`fault in the add-in, please report it: ${what}`);
}

/** A value, or the refusal in its place, whatever was thrown. */
export function guarded<T>(question: () => T): T | Refusal {
  try {
    return question();
  } catch (thrown) {
    return asRefusal(thrown);
  }
}

/** The same of a calculation in parts. */
export function* guardedInParts<T>(parts: InParts<T>): InParts<T | Refusal> {
  try {
    return yield* parts;
  } catch (thrown) {
    return asRefusal(thrown);
  }
}

function readCell(cell: Cell, parameter: AnyParameter): Read {
  if (cell instanceof Refusal) return cell;
  if (isBlank(cell, parameter)) return BLANK;
  try {
    return parameter.read(cell);
  } catch (thrown) {
    return asRefusal(thrown);
  }
}

/** Different texts of a range that are kept: where there are more they hardly repeat, and keeping a million takes longer. */
const MAX_KNOWN = 10_000;

/** Reads cells of one argument. Texts repeat down a column (a grade, a grind), so each is read once. */
function cellReader(parameter: AnyParameter): (cell: Cell) => Read {
  const known = new Map<string, Read>();
  return (cell) => {
    if (typeof cell !== "string") return readCell(cell, parameter);
    const before = known.get(cell);
    if (before !== undefined) return before;
    const read = readCell(cell, parameter);
    if (known.size < MAX_KNOWN) known.set(cell, read);
    return read;
  };
}

function readCells(cells: Cells, parameter: AnyParameter): Read[] {
  const read = cellReader(parameter);
  const values = new Array<Read>(cells.length * (cells[0]?.length ?? 0));
  let at = 0;
  for (const row of cells) {
    for (const cell of row) {
      values[at] = read(cell);
      at += 1;
    }
  }
  return values;
}

/** Reads every argument of a call; an argument left out is one blank. */
export function readArguments(
  parameters: Readonly<Record<string, AnyParameter>>,
  raw: readonly unknown[],
): Argument[] {
  return Object.entries(parameters).map(([key, parameter], position) => {
    const cells = toCells(raw[position]);
    const columns = cells[0]?.length ?? 1;
    return { key, parameter, rows: cells.length, columns, values: readCells(cells, parameter) };
  });
}

/** The sentence for a required argument that is empty. */
export function emptySentence({ kind, label, accepts }: AnyParameter): string {
  const hint =
    kind === "steel"
      ? ": put the grade in quotes or point at its cell (A2, O1, D2 and C60 are also cell addresses)"
      : `: give ${accepts}`;
  return `${label} is empty${hint}`;
}

/** The value to compute with, or the refusal that stands in its place. */
export function readArgument(read: Read, parameter: AnyParameter): unknown | Refusal {
  if (read !== BLANK) return read;
  return parameter.optional ? parameter.fallback() : new InvalidValue(emptySentence(parameter));
}
