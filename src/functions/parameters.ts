import { type FigureLimits, isWithinLimits, limitsText } from "../core/figure-limits";
import { numberText, quantityText } from "../core/quantity-text";
import { attempt, InvalidValue } from "../core/refusal";
import { type Cell, isEmpty, quoted } from "./cells";
import { hasUnit, isAbsurd, parseMeasure } from "./measure";
import { QUANTITIES, type Quantity } from "./quantities";

/** How one argument of a worksheet function is named, explained and read. */
interface Reader<T> {
  /** As the argument hint shows it, unit included: "temper C". */
  readonly label: string;
  /** One sentence for the host's argument help. */
  readonly help: string;
  /** `steel`, a quantity, `text` or `word`; shown in the documentation. */
  readonly kind: string;
  readonly unit: string;
  readonly optional: boolean;
  /** The default as people write it; empty where there is none. */
  readonly fallbackText: string;
  /** True where an empty cell may arrive as 0 (Excel for Windows) and 0 can mean nothing else. */
  readonly zeroIsBlank: boolean;
  /** Accepted values in words. */
  readonly accepts: string;
  /** Every word that is accepted, where they can be counted: a host may offer them. */
  readonly words: readonly string[];
  /** The value where nothing was given; only called for optional parameters. */
  fallback(): T;
  /**
   * Reads one filled cell.
   *
   * @throws Refusal with the sentence that the cell shows.
   */
  read(cell: Cell): T;
}

/** An argument of one cell a result: given a range, the function answers for each cell of it. */
export interface Parameter<T> extends Reader<T> {
  readonly takes: "cell";
}

/**
 * An argument of many cells. `series`: the stations of one blade, a matrix being one blade a row.
 * `range`: the whole range belongs to one result and keeps its empty cells as `undefined`.
 */
export interface ListParameter<T> extends Reader<T> {
  readonly takes: "series" | "range";
}

/** A whole range kept as rows of cells, first row included; only for functions that answer with a table. */
export interface TableParameter extends Reader<Cell> {
  readonly takes: "table";
}

interface Described {
  readonly label: string;
  readonly help: string;
}

export interface NumberOptions extends Described, FigureLimits {
  readonly quantity: Quantity;
  /** A bare figure of a length under this cannot be mm on a blade: whether inches are meant is asked. */
  readonly inchesUnder?: number;
  /** Extra question for a value over `max`: "was 0.92 meant?". */
  readonly askOver?: (value: number) => string;
}

function acceptsText(options: NumberOptions): string {
  const span = limitsText(options);
  const noun: string = options.whole ? "a whole number" : QUANTITIES[options.quantity].noun;
  const unit = options.unit === "" ? "" : ` in ${options.unit}`;
  return span === "" ? `${noun}${unit}` : `${noun}${unit}, ${span}`;
}

/** Days counted by a spreadsheet from 2000 to 2099: what a fraction such as 3/16 turns into when it is typed bare. */
function looksLikeDate(value: number): boolean {
  return Number.isInteger(value) && value >= 36526 && value < 73051;
}

/** A text read as a quantity; the sentence of one that is none starts with the argument, as the others do. */
function numberFromText(text: string, { label, quantity, unit }: NumberOptions): number {
  const found = attempt(() => parseMeasure(text, quantity, unit), InvalidValue);
  if (found instanceof InvalidValue) throw new InvalidValue(`${label}: ${found.message}`);
  return found;
}

function numberFrom(cell: Cell, options: NumberOptions): number {
  if (typeof cell === "string") return numberFromText(cell, options);
  if (typeof cell === "number" && !isAbsurd(cell)) return cell;
  const problem = typeof cell === "number" ? "is too large to be meant" : "is not a number";
  throw new InvalidValue(`${options.label}: ${quoted(cell)} ${problem}; give ${acceptsText(options)}`);
}

function refuseNumber(value: number, options: NumberOptions): never {
  const given = `${options.label}: ${quantityText(value, options.unit)} given`;
  if (options.quantity === "length" && looksLikeDate(value)) {
    throw new InvalidValue(`${given}, which looks like a date: type a fraction with its unit, "3/16 in"`);
  }
  const question = options.max !== undefined && value > options.max ? options.askOver?.(value) : undefined;
  if (question === undefined) throw new InvalidValue(`${given}; give ${acceptsText(options)}`);
  throw new InvalidValue(`${given}; ${question} (accepted: ${acceptsText(options)})`);
}

/** With its unit written beside it a figure is meant as it stands. */
function askInches(cell: Cell, value: number, { label, unit, inchesUnder = 0 }: NumberOptions): void {
  if (value <= 0 || value >= inchesUnder || hasUnit(cell)) return;
  const figure = numberText(value);
  throw new InvalidValue(
    `${label}: ${quantityText(value, unit)} is too small for a blade: did you mean inches? ` +
      `Write "${figure} in", or "${figure} ${unit}" if it is meant`,
  );
}

function readNumber(cell: Cell, options: NumberOptions): number {
  const value = numberFrom(cell, options);
  if (!isWithinLimits(value, options)) refuseNumber(value, options);
  askInches(cell, value, options);
  return value;
}

/** Excel for Windows hands an empty cell over as 0, so 0 is read as empty wherever it could not be meant. */
function zeroIsImpossible(options: NumberOptions): boolean {
  return !isWithinLimits(0, options);
}

function numeric(options: NumberOptions) {
  return {
    label: options.label,
    help: options.help,
    kind: options.quantity,
    unit: options.unit,
    accepts: acceptsText(options),
    words: [],
    zeroIsBlank: zeroIsImpossible(options),
    read: (cell: Cell) => readNumber(cell, options),
  } as const;
}

function never(): never {
  throw new Error("a required argument has no default");
}

/** A required number in a fixed unit. */
export function number(options: NumberOptions): Parameter<number> {
  return { ...numeric(options), optional: false, fallbackText: "", takes: "cell", fallback: never };
}

/** A number that may be left out. */
export function optionalNumber(options: NumberOptions & { readonly fallback: number }): Parameter<number> {
  const { fallback } = options;
  const base = numeric(options);
  return {
    ...base,
    // A 0 that means the same as nothing reads as nothing, so that an empty row stays empty on Windows too.
    zeroIsBlank: base.zeroIsBlank || fallback === 0,
    optional: true,
    fallbackText: String(fallback),
    takes: "cell",
    fallback: () => fallback,
  };
}

/** A number that may be left out without any default: the function then does without it. */
export function numberOrNothing(options: NumberOptions): Parameter<number | undefined> {
  return { ...numeric(options), optional: true, fallbackText: "", takes: "cell", fallback: () => undefined };
}

/** One number a station: a column or row is one blade, a matrix one blade a row, one cell serves every station. */
export function series(options: NumberOptions): ListParameter<number> {
  return { ...number(options), takes: "series" };
}

/** A station value that may be left out. */
export function optionalSeries(
  options: NumberOptions & { readonly fallback: number },
): ListParameter<number> {
  return { ...optionalNumber(options), takes: "series" };
}

export interface TextOptions<T> extends Described {
  /** Shown as the kind of argument: "grind", "use", "quench". */
  readonly kind: string;
  readonly accepts: string;
  /** The words themselves, where they can be counted. */
  readonly words?: readonly string[];
  /** Turns the trimmed text (or a number, as typed) into a value, or refuses with a sentence. */
  readonly find: (given: string | number) => T;
}

function worded<T>(options: TextOptions<T>) {
  return {
    label: options.label,
    help: options.help,
    kind: options.kind,
    unit: "",
    accepts: options.accepts,
    words: options.words ?? [],
    zeroIsBlank: true,
    read(cell: Cell): T {
      if (typeof cell === "string") return options.find(cell.trim());
      if (typeof cell === "number") return options.find(cell);
      throw new InvalidValue(`${options.label}: ${quoted(cell)} given; give ${options.accepts}`);
    },
  } as const;
}

/** A required text that core turns into something: a steel, a use, a grind. */
export function text<T>(options: TextOptions<T>): Parameter<T> {
  return { ...worded(options), optional: false, fallbackText: "", takes: "cell", fallback: never };
}

/** A text that may be left out. `fallback` is given as people would type it and read like any other. */
export function optionalText<T>(options: TextOptions<T> & { readonly fallback: string }): Parameter<T> {
  const { fallback, find } = options;
  return {
    ...worded(options),
    optional: true,
    fallbackText: fallback,
    takes: "cell",
    fallback: () => find(fallback),
  };
}

/** A text that may be left out without any default. */
export function textOrNothing<T>(options: TextOptions<T>): Parameter<T | undefined> {
  return { ...worded(options), optional: true, fallbackText: "", takes: "cell", fallback: () => undefined };
}

/** A whole range as one argument, in reading order, each cell read as the given parameter reads one. */
export function rangeParameter<T>(each: Parameter<T>): ListParameter<T | undefined> {
  return { ...each, takes: "range" };
}

/** A whole range with headings in its first row: arrives as rows of cells, an error in one of them left in its place. */
export function table(options: Described & { readonly accepts: string }): TableParameter {
  return {
    ...options,
    kind: "table",
    unit: "",
    words: [],
    optional: false,
    fallbackText: "",
    zeroIsBlank: false,
    takes: "table",
    fallback: never,
    read: (cell) => cell,
  };
}

/** True where nothing was filled in: empty, empty text, or a 0 that cannot be meant. */
export function isBlank(cell: Cell, parameter: Pick<Parameter<unknown>, "zeroIsBlank">): boolean {
  return isEmpty(cell) || (cell === 0 && parameter.zeroIsBlank);
}
