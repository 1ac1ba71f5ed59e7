import type { InParts } from "../core/parts";
import { InvalidValue, Refusal } from "../core/refusal";
import { checkedRow } from "./answer";
import { type Argument, BLANK, guardedInParts, readArgument } from "./arguments";
import type { Cell, Cells } from "./cells";
import type { FaultsOf, Parameters, TableFunction, TableRows, Values } from "./declare";
import { rangeValues } from "./evaluate-rows";

type TableCompute = (
  values: Values<Parameters>,
  faults: FaultsOf<Parameters>,
) => TableRows | InParts<TableRows>;

type Answering = Pick<TableFunction, "refused" | "toleratesFaults">;

/** Rows of an answer that are checked between two pauses. */
const ROWS_A_PART = 512;

/** A table for one set of arguments; a list instead of one cell is refused, since tables cannot be stacked. */
export function* evaluateTable(
  compute: TableCompute,
  args: readonly Argument[],
  { refused = (refusal) => [[refusal]], toleratesFaults }: Answering = {},
): InParts<Cells> {
  if (isUnfilled(args)) return [[""]];
  const rows = yield* guardedInParts(checkedTable(compute, args, toleratesFaults === true));
  if (rows instanceof Refusal) return refused(rows);
  return rows.length === 0 ? [[""]] : rows;
}

const isInParts = (found: TableRows | InParts<TableRows>): found is InParts<TableRows> => "next" in found;

function* checkedTable(
  compute: TableCompute,
  args: readonly Argument[],
  isTolerant: boolean,
): InParts<Cells> {
  const { values, faults } = valuesOf(args, isTolerant);
  const found = compute(values, faults);
  const rows = isInParts(found) ? yield* found : found;
  const checked: Cell[][] = [];
  for (const row of rows) {
    checked.push(checkedRow(row));
    if (checked.length % ROWS_A_PART === 0) yield;
  }
  return checked;
}

/** Nothing given where something is required: the table stays empty until the sheet is filled in. */
function isUnfilled(args: readonly Argument[]): boolean {
  const isEmpty = ({ values }: Argument) => values.every((read) => read === BLANK);
  return args.some(({ parameter }) => !parameter.optional) && args.every(isEmpty);
}

function valuesOf(args: readonly Argument[], isTolerant: boolean) {
  const values: Record<string, unknown> = {};
  const faults: Record<string, Refusal> = {};
  for (const argument of args) {
    const value = valueFor(argument);
    const { key, parameter } = argument;
    const isFault = value instanceof Refusal;
    if (isFault && !(isTolerant && parameter.optional)) throw value;
    if (isFault) faults[key] = value;
    values[key] = isFault ? parameter.fallback() : value;
  }
  return { values, faults };
}

/** A table as it stands on the sheet; what goes wrong in one of its cells is for the function to place. */
function tableRows({ columns, values }: Argument): Cells {
  const rows: Cell[][] = [];
  for (let start = 0; start < values.length; start += columns) {
    rows.push(values.slice(start, start + columns).map((read) => (read === BLANK ? null : (read as Cell))));
  }
  return rows;
}

function valueFor(argument: Argument): unknown {
  const { parameter, values } = argument;
  if (parameter.takes === "table") return tableRows(argument);
  if (parameter.takes === "range") return rangeValues(values);
  if (values.length > 1)
    throw new InvalidValue(
      `${parameter.label}: this function answers with a table, so give one cell, not ${values.length}`,
    );
  return readArgument(values[0], parameter);
}
