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

/** All that is wrong with a line, in one refusal. */
function joined(faults: readonly (readonly [label: string, refusal: Refusal])[]): Refusal {
  const text = faults.map(([label, refusal]) => named(refusal, label)).join("; ");
  const isMalformed = faults.some(([, refusal]) => refusal instanceof InvalidValue);
  return isMalformed ? new InvalidValue(text) : new NotAvailable(text);
}

/** The cell under a heading; empty where the table has no such column or the row ends before it. */
function cellUnder(key: string, known: TableColumns["known"], row: readonly Cell[]): Cell {
  const position = known.get(key);
  return position === undefined ? null : (row[position] ?? null);
}

/**
 * Reads one row of a table.
 *
 * @returns Values by key, a refusal that names every faulty cell, or `undefined` for a blank row.
 */
export function readRow<H extends Headings>(
  row: readonly Cell[],
  { known }: TableColumns,
  headings: H,
): RowValues<H> | Refusal | undefined {
  const values: Record<string, unknown> = {};
  const faults: [string, Refusal][] = [];
  let isUnfilled = true;
  for (const [key, parameter] of Object.entries(headings)) {
    const cell = cellUnder(key, known, row);
    // An empty cell may arrive as 0: a row of nothing but that is blank.
    isUnfilled = isUnfilled && (isEmpty(cell) || cell === 0);
    const value = guarded(() => readCell(cell, parameter));
    if (value instanceof Refusal) faults.push([parameter.label, value]);
    else values[key] = value;
  }
  if (isUnfilled) return undefined;
  return faults.length === 0 ? (values as RowValues<H>) : joined(faults);
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
