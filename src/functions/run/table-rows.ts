import { InvalidValue, NotAvailable, Refusal } from "../../core/refusal";
import { emptySentence, guarded } from "../arguments";
import { type Cell, type Cells, isEmpty } from "../cells";
import { isBlank, type Parameter } from "../parameters";
import type { Headings, RowValues, TableColumns } from "./heading-row";

/** The sentence of a faulty cell, with the heading in front unless it says so itself. */
function named(refusal: Refusal, label: string): string {
  return refusal.message.startsWith(label) ? refusal.message : `${label}: ${refusal.message}`;
}

// biome-ignore lint/suspicious/noExplicitAny: read and consumed with the same type, which a record cannot express
function readCell(cell: Cell, parameter: Parameter<any>): unknown {
  if (cell instanceof Refusal) throw cell;
  if (!isBlank(cell, parameter)) return parameter.read(cell);
  if (parameter.optional) return parameter.fallback();
  throw new InvalidValue(emptySentence(parameter));
}

/** A refusal of the same kind with the heading in front. */
export function underHeading(refusal: Refusal, label: string): Refusal {
  const text = named(refusal, label);
  return refusal instanceof InvalidValue ? new InvalidValue(text) : new NotAvailable(text);
}

/** All that is wrong with a line, in one refusal. */
function joined(faults: readonly (readonly [key: string, refusal: Refusal])[]): Refusal {
  const text = faults.map(([, { message }]) => message).join("; ");
  const isMalformed = faults.some(([, refusal]) => refusal instanceof InvalidValue);
  return isMalformed ? new InvalidValue(text) : new NotAvailable(text);
}

/** The cell under a heading; empty where the table has no such column or the row ends before it. */
function cellUnder(key: string, known: TableColumns["known"], row: readonly Cell[]): Cell {
  const position = known.get(key);
  return position === undefined ? null : (row[position] ?? null);
}

/** One row of a table as far as it could be read. */
interface RowRead<H extends Headings> {
  /** Where a cell could not be read, the value stands as if the cell were empty. */
  readonly values: RowValues<H>;
  /** Cells that may be left out and could not be read, by key. */
  readonly faults: { readonly [K in keyof H]?: Refusal };
}

/**
 * Reads one row of a table whose cells that may be left out cost no more than what rests on them.
 *
 * @returns Values and faults by key, a refusal that names every faulty cell where one that is needed is among them,
 * or `undefined` for a blank row.
 */
export function readRowAndFaults<H extends Headings>(
  row: readonly Cell[],
  { known }: TableColumns,
  headings: H,
): RowRead<H> | Refusal | undefined {
  const values: Record<string, unknown> = {};
  const faults: [string, Refusal][] = [];
  let isUnfilled = true;
  for (const [key, parameter] of Object.entries(headings)) {
    const cell = cellUnder(key, known, row);
    // An empty cell may arrive as 0: a row of nothing but that is blank.
    isUnfilled = isUnfilled && (isEmpty(cell) || cell === 0);
    const value = guarded(() => readCell(cell, parameter));
    if (value instanceof Refusal) faults.push([key, underHeading(value, parameter.label)]);
    else values[key] = value;
  }
  if (isUnfilled) return undefined;
  if (faults.some(([key]) => headings[key]?.optional === false)) return joined(faults);
  for (const [key] of faults) values[key] = headings[key]?.fallback();
  return { values: values as RowValues<H>, faults: Object.fromEntries(faults) as RowRead<H>["faults"] };
}

/**
 * Reads one row of a table.
 *
 * @returns Values by key, a refusal that names every faulty cell, or `undefined` for a blank row.
 */
export function readRow<H extends Headings>(
  row: readonly Cell[],
  columns: TableColumns,
  headings: H,
): RowValues<H> | Refusal | undefined {
  const read = readRowAndFaults(row, columns, headings);
  if (read === undefined || read instanceof Refusal) return read;
  const faults = Object.entries(read.faults) as [string, Refusal][];
  return faults.length === 0 ? read.values : joined(faults);
}

/** The rows down to the last one in which anything stands. */
export function filledRows(rows: Cells): Cells {
  let end = rows.length;
  while (end > 0 && (rows[end - 1] ?? []).every(isEmpty)) end -= 1;
  return rows.slice(0, end);
}

/** A cell of the smith's own, given back as it came. */
export function passedOn(row: readonly Cell[], position: number): Cell {
  const cell = row[position] ?? null;
  return isEmpty(cell) ? "" : cell;
}
