import type { InParts } from "../core/parts";
import { InvalidValue, NotAvailable, Refusal } from "../core/refusal";
import { checkedRow, emptyRow, refusedRow } from "./answer";
import { type Argument, BLANK, guarded, type Read, readArgument } from "./arguments";
import type { Cell, Cells } from "./cells";
import type { AnyParameter, RowFunction } from "./declare";

const UNEQUAL = new NotAvailable(
  "the ranges given have different lengths: this row has no partner in one of them",
);

/** How one argument serves the inputs: the reads of input `index`. */
interface Feed {
  readonly argument: Argument;
  readonly inputs: number;
  readonly take: (index: number) => readonly Read[];
}

/** A value that is the same for every input, with the number of stations it was settled for. */
interface Kept {
  readonly stations: number;
  readonly value: unknown;
}

const isList = ({ parameter }: Argument) => parameter.takes === "series";
const isMatrix = ({ rows, columns }: Argument) => rows > 1 && columns > 1;

function single(argument: Argument): Feed {
  const { values } = argument;
  if (values.length === 1) return shared(argument);
  const take = (index: number) => [index < values.length ? values[index] : UNEQUAL];
  return { argument, inputs: values.length, take };
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

/** What serves every input of one call. */
interface Call {
  readonly fn: RowFunction;
  readonly feeds: readonly Feed[];
  /** Places of the station lists among the feeds. */
  readonly lists: readonly number[];
  /** Places of the feeds that differ from input to input. */
  readonly varying: readonly number[];
  /** Places of the feeds that make an input blank when they are. */
  readonly judged: readonly number[];
  /** What was settled of each feed that is the same for every input. */
  readonly kept: (Kept | undefined)[];
}

type Reads = readonly (readonly Read[])[];

function placesWhere(all: readonly Feed[], fits: (feed: Feed) => boolean): number[] {
  return all.flatMap((feed, at) => (fits(feed) ? [at] : []));
}

function prepared(fn: RowFunction, all: readonly Feed[]): Call {
  const varying = placesWhere(all, (feed) => feed.inputs > 1);
  return {
    fn,
    feeds: all,
    lists: placesWhere(all, ({ argument }) => isList(argument)),
    varying,
    judged: varying.length > 0 ? varying : placesWhere(all, () => true),
    kept: all.map(() => undefined),
  };
}

/** A row of results for every input; may pause after each. */
export function* evaluateRows(fn: RowFunction, args: readonly Argument[]): InParts<Cells> {
  const call = prepared(fn, feeds(args));
  const inputs = Math.max(1, ...call.feeds.map((feed) => feed.inputs));
  // What is the same for every input stays in its place from the first one on.
  const reads = call.feeds.map((feed) => feed.take(0));
  const rows: Cell[][] = [];
  for (let index = 0; index < inputs; index += 1) {
    for (const at of call.varying) reads[at] = (call.feeds[at] as Feed).take(index);
    rows.push(isBlankInput(call, reads) ? emptyRow(fn.result) : answer(call, reads));
    yield;
  }
  return rows;
}

function isBlankInput({ judged }: Call, reads: Reads): boolean {
  for (const at of judged) {
    for (const read of reads[at] ?? []) if (read !== BLANK) return false;
  }
  return judged.length > 0;
}

function answer(call: Call, reads: Reads): Cell[] {
  const { fn } = call;
  const row = guarded(() => {
    const values = valuesOf(call, reads);
    return values instanceof Refusal ? values : checkedRow(fn.compute(values));
  });
  return row instanceof Refusal ? refusedRow(row, fn.result) : row;
}

function valuesOf(call: Call, reads: Reads): Record<string, unknown> | Refusal {
  const values: Record<string, unknown> = {};
  const stations = stationCount(call.lists, reads);
  for (let at = 0; at < reads.length; at += 1) {
    const feed = call.feeds[at] as Feed;
    const own = reads[at] as readonly Read[];
    const value = feed.inputs > 1 ? valueFor(feed, own, stations) : keptValue(call, at, own, stations);
    if (value instanceof Refusal) return value;
    values[feed.argument.key] = value;
  }
  return values;
}

/** What is the same for every input is settled once. */
function keptValue({ feeds, kept }: Call, at: number, reads: readonly Read[], stations: number): unknown {
  const known = kept[at];
  if (known?.stations === stations) return known.value;
  const value = valueFor(feeds[at] as Feed, reads, stations);
  kept[at] = { stations, value };
  return value;
}

function valueFor({ argument: { parameter } }: Feed, reads: readonly Read[], stations: number): unknown {
  if (parameter.takes === "cell") return readArgument(reads[0], parameter);
  return parameter.takes === "range" ? rangeValues(reads) : seriesValues(parameter, reads, stations);
}

export function rangeValues(reads: readonly Read[]): readonly unknown[] | Refusal {
  const refused = reads.find((read) => read instanceof Refusal);
  return refused instanceof Refusal ? refused : reads.map((read) => (read === BLANK ? undefined : read));
}

/** Stations of this blade: up to the last place where any station list holds something. */
function stationCount(lists: readonly number[], reads: Reads): number {
  let count = 1;
  for (const at of lists) count = Math.max(count, reads[at]?.length ?? 0);
  while (count > 1 && !isHeld(lists, reads, count - 1)) count -= 1;
  return count;
}

/** Whether any list holds something at a station. */
function isHeld(lists: readonly number[], reads: Reads, station: number): boolean {
  for (const at of lists) {
    const list = reads[at] ?? [];
    if (station < list.length && list[station] !== BLANK) return true;
  }
  return false;
}

/** What a list holds at a station; a single cell serves them all. */
function atStation(reads: readonly Read[], station: number): Read {
  if (reads.length === 1) return reads[0];
  return station < reads.length ? reads[station] : BLANK;
}

/** Whether a list holds a value at each place and can be taken as it stands. */
function isComplete(reads: readonly Read[]): boolean {
  for (const read of reads) if (read === BLANK || read instanceof Refusal) return false;
  return true;
}

function seriesValues(
  parameter: AnyParameter,
  reads: readonly Read[],
  stations: number,
): readonly unknown[] | Refusal {
  if (reads.length === stations && isComplete(reads)) return reads;
  const values: unknown[] = [];
  for (let station = 0; station < stations; station += 1) {
    const value = readArgument(atStation(reads, station), parameter);
    if (value instanceof Refusal) return new InvalidValue(`station ${station + 1}: ${value.message}`);
    values.push(value);
  }
  return values;
}
