import type { InParts } from "../core/parts";
import { NotAvailable, Refusal } from "../core/refusal";
import { checkedAnswer } from "./answer";
import { type Argument, BLANK, guarded, readArgument } from "./arguments";
import type { Cell, Cells } from "./cells";
import type { ScalarFunction } from "./declare";

/** A single result is quick: a pause is offered after so many rows. */
const ROWS_A_PART = 32;

const OUTSIDE = new NotAvailable(
  "the ranges given have different sizes: this cell has no partner in one of them",
);

/** What a range holds at a place of the result; a single row or column serves every place along it. */
function at({ rows, columns, values }: Argument, row: number, column: number): unknown {
  const r = rows === 1 ? 0 : row;
  const c = columns === 1 ? 0 : column;
  return r < rows && c < columns ? values[r * columns + c] : OUTSIDE;
}

/** One result for every place of the arguments, broadcast as a spreadsheet's own operators do; may pause now and then. */
export function* evaluateScalar(fn: ScalarFunction, args: readonly Argument[]): InParts<Cells> {
  const rows = Math.max(1, ...args.map((argument) => argument.rows));
  const columns = Math.max(1, ...args.map((argument) => argument.columns));
  const varying = args.filter((argument) => argument.values.length > 1);
  const judged = varying.length > 0 ? varying : args;
  const values: Record<string, unknown> = {};
  const open = readSingles(args, values);
  const result: Cell[][] = [];
  for (let row = 0; row < rows; row += 1) {
    const cells: Cell[] = [];
    for (let column = 0; column < columns; column += 1) {
      cells.push(
        judged.length > 0 && isBlankPlace(judged, row, column) ? "" : answer(fn, open, row, column, values),
      );
    }
    result.push(cells);
    if (row % ROWS_A_PART === ROWS_A_PART - 1) yield;
  }
  return result;
}

/** Settles what is the same at every place, once; gives the arguments still to settle place by place. */
function readSingles(args: readonly Argument[], values: Record<string, unknown>): readonly Argument[] {
  const open: Argument[] = [];
  for (const argument of args) {
    const value =
      argument.values.length === 1 ? readArgument(argument.values[0], argument.parameter) : argument;
    if (value === argument || value instanceof Refusal) open.push(argument);
    else values[argument.key] = value;
  }
  return open;
}

/** A place is blank when everything that belongs to it alone is: a half-filled sheet stays clean. */
function isBlankPlace(args: readonly Argument[], row: number, column: number): boolean {
  for (const argument of args) if (at(argument, row, column) !== BLANK) return false;
  return true;
}

function answer(
  fn: ScalarFunction,
  args: readonly Argument[],
  row: number,
  column: number,
  values: Record<string, unknown>,
): Cell {
  return guarded(() => {
    for (const argument of args) {
      const value = readArgument(at(argument, row, column), argument.parameter);
      if (value instanceof Refusal) return value;
      values[argument.key] = value;
    }
    return checkedAnswer(fn.compute(values));
  });
}
