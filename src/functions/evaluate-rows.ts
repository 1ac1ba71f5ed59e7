import { InvalidValue, NotAvailable, Refusal } from "../core/refusal";
import { checkedRow, emptyRow, refusedRow } from "./answer";
import { type Argument, asRefusal, BLANK, type Read, settle } from "./arguments";
import type { Cell, Cells } from "./cells";
import type { RowFunction } from "./declare";

const UNEQUAL = new NotAvailable(
  "the ranges given have different lengths: this row has no partner in one of them",
);

/** How one argument serves the inputs: the reads of input `index`. */
interface Feed {
  readonly argument: Argument;
  readonly inputs: number;
  readonly take: (index: number) => readonly Read[];
}

const isList = ({ parameter }: Argument) => parameter.takes === "series";
const isMatrix = ({ rows, columns }: Argument) => rows > 1 && columns > 1;

function single(argument: Argument): Feed {
  return { argument, inputs: argument.values.length, take: (index) => [oneOf(argument, index)] };
}

function oneOf({ values }: Argument, index: number): Read {
  if (values.length === 1) return values[0];
  return index < values.length ? values[index] : UNEQUAL;
}

function matrixRows(argument: Argument): Feed {
  const { rows, columns, values } = argument;
  const take = (index: number) =>
    index < rows ? values.slice(index * columns, (index + 1) * columns) : [UNEQUAL];
  return { argument, inputs: rows, take };
}

/** Station values that serve every blade: the same list each time. */
function shared(argument: Argument): Feed {
  return { argument, inputs: 1, take: () => argument.values };
}

/** Station arguments: a matrix is a blade a row; beside one, a column is a value a blade and a row is shared. */
function seriesFeed(argument: Argument, beside: boolean): Feed {
  if (isMatrix(argument)) return matrixRows(argument);
  return beside && argument.rows > 1 ? single(argument) : shared(argument);
}

function feeds(args: readonly Argument[]): Feed[] {
  const beside = args.some((argument) => isList(argument) && isMatrix(argument));
  return args.map((argument) => {
    if (isList(argument)) return seriesFeed(argument, beside);
    if (argument.parameter.takes === "range") return shared(argument);
    if (isMatrix(argument))
      throw new InvalidValue(
        `${argument.parameter.label}: give one column, a row of results needs the space beside it`,
      );
    return single(argument);
  });
}

/** A row of results for every input. */
export function evaluateRows(fn: RowFunction, args: readonly Argument[]): Cells {
  const all = feeds(args);
  const inputs = Math.max(1, ...all.map((feed) => feed.inputs));
  const varying = all.filter((feed) => feed.inputs > 1);
  const judged = varying.length > 0 ? varying : all;
  const rows: Cell[][] = [];
  for (let index = 0; index < inputs; index += 1) {
    const isBlank =
      judged.length > 0 && judged.every((feed) => feed.take(index).every((read) => read === BLANK));
    rows.push(isBlank ? emptyRow(fn.result) : answer(fn, all, index));
  }
  return rows;
}

function answer(fn: RowFunction, all: readonly Feed[], index: number): Cell[] {
  try {
    const values = valuesOf(all, index);
    return values instanceof Refusal
      ? refusedRow(values, fn.result)
      : checkedRow(fn.compute(values as never));
  } catch (thrown) {
    return refusedRow(asRefusal(thrown), fn.result);
  }
}

function valuesOf(all: readonly Feed[], index: number): Record<string, unknown> | Refusal {
  const values: Record<string, unknown> = {};
  const stations = stationCount(all, index);
  for (const feed of all) {
    const value = valueFor(feed, index, stations);
    if (value instanceof Refusal) return value;
    values[feed.argument.key] = value;
  }
  return values;
}

function valueFor(feed: Feed, index: number, stations: number): unknown {
  const { parameter } = feed.argument;
  const reads = feed.take(index);
  if (parameter.takes === "cell") return settle(reads[0], parameter);
  return parameter.takes === "range" ? rangeValues(reads) : seriesValues(feed, reads, stations);
}

export function rangeValues(reads: readonly Read[]): readonly unknown[] | Refusal {
  const refused = reads.find((read) => read instanceof Refusal);
  return refused instanceof Refusal ? refused : reads.map((read) => (read === BLANK ? undefined : read));
}

/** Stations of this blade: up to the last place where any station list holds something. */
function stationCount(all: readonly Feed[], index: number): number {
  const lists = all.filter((feed) => isList(feed.argument)).map((feed) => feed.take(index));
  let count = Math.max(1, ...lists.map((reads) => reads.length));
  while (count > 1 && lists.every((reads) => reads.length < count || reads[count - 1] === BLANK)) count -= 1;
  return count;
}

/** What a list holds at a station; a single cell serves them all. */
function atStation(reads: readonly Read[], station: number): Read {
  if (reads.length === 1) return reads[0];
  return station < reads.length ? reads[station] : BLANK;
}

function seriesValues(
  { argument }: Feed,
  reads: readonly Read[],
  stations: number,
): readonly unknown[] | Refusal {
  const values: unknown[] = [];
  for (let station = 0; station < stations; station += 1) {
    const value = settle(atStation(reads, station), argument.parameter);
    if (value instanceof Refusal) return new InvalidValue(`station ${station + 1}: ${value.message}`);
    values.push(value);
  }
  return values;
}
