import type { InParts } from "../core/parts";
import type { Refusal } from "../core/refusal";
import type { Relation } from "../core/relation";
import type { Steel } from "../core/steel/steel";
import type { Cell, Cells } from "./cells";
import type { ListParameter, Parameter, TableParameter } from "./parameters";

/** One figure or text of a result. */
export interface Column {
  readonly label: string;
  /** Unit, or `text` for words. */
  readonly unit: string;
}

/** What a cell of a result may hold. `""` is a result that is empty on purpose. */
export type Answer = number | string;

/** A worked case. It documents the function and is run as a test. */
export interface Example {
  /** Arguments in order; a nested list is a range; `null` is an argument left out. */
  readonly given: readonly ExampleArgument[];
  /** The expected result: a value, a row, or rows. `"…"` stands for any text that is not checked. */
  readonly gives: Answer | readonly Answer[] | readonly (readonly Answer[])[];
  /** Largest difference allowed; 0 where absent. */
  readonly within?: number;
  /** Where the expected value comes from: a standard, a table, a worked example, or common practice. */
  readonly source: string;
}

type ExampleCell = string | number | null;
export type ExampleArgument = ExampleCell | readonly ExampleCell[] | readonly (readonly ExampleCell[])[];

/** Any argument, whatever it is read into; `Values` recovers the type. */
// biome-ignore lint/suspicious/noExplicitAny: a parameter is read and consumed with the same type, which a heterogeneous record cannot express
export type AnyParameter = Parameter<any> | ListParameter<any> | TableParameter;

export type Parameters = Readonly<Record<string, AnyParameter>>;

/** What a parameter is read into: a series or a whole range arrives as a list, a table as rows of cells. */
type ValueOf<P> = P extends TableParameter
  ? Cells
  : P extends ListParameter<infer T>
    ? readonly T[]
    : P extends Parameter<infer T>
      ? T
      : never;

/** The values handed to a function. */
export type Values<P extends Parameters> = { readonly [K in keyof P]: ValueOf<P[K]> };

/** Arguments that could not be read and stand as if left out. */
export type FaultsOf<P extends Parameters> = { readonly [K in keyof P]?: Refusal };

interface Common<P extends Parameters> {
  /** Upper case with underscores, without the namespace; frozen once released. */
  readonly name: string;
  /** One sentence, as the host's function help shows it. */
  readonly summary: string;
  /** True where a column of rows, or a long table, takes seconds: the host may call it off. */
  readonly takesLong?: true;
  /** In the order of the arguments. */
  readonly parameters: P;
  /** Relations the answer rests on; as a function, those that apply to a given steel (`null`: all of them). */
  readonly relations: readonly Relation[] | ((steel: Steel | null) => readonly Relation[]);
}

/** One result a set of arguments; ranges broadcast as a spreadsheet's own operators do. */
export interface ScalarFunction<P extends Parameters = Parameters> extends Common<P> {
  readonly shape: "scalar";
  readonly result: Column;
  compute(values: Values<P>): Answer;
  /** For a function that lists everything when one optional argument is left out. */
  readonly listing?: {
    readonly whenBlank: keyof P & string;
    readonly result: readonly Column[];
    compute(values: Values<P>): readonly (readonly Answer[])[];
  };
}

/** A row of results a set of arguments; a column of inputs gives one row each. */
export interface RowFunction<P extends Parameters = Parameters> extends Common<P> {
  readonly shape: "row";
  readonly result: readonly Column[];
  compute(values: Values<P>): readonly Answer[];
  /** The argument and its word with which a host that has cards makes one of the row, in the first cell. */
  readonly card?: { readonly parameter: keyof P & string; readonly word: string };
}

export type TableRows = readonly (readonly Cell[])[];

/** A table for one set of arguments. One of its cells may hold a refusal; a refusal thrown is the only cell, unless `refused` places it. */
export interface TableFunction<P extends Parameters = Parameters> extends Common<P> {
  readonly shape: "table";
  readonly result: readonly Column[];
  /** At once, or in parts where a large table takes longer than a host should be kept waiting. */
  compute(values: Values<P>, faults: FaultsOf<P>): TableRows | InParts<TableRows>;
  /** True where an argument that may be left out and cannot be read costs only what rests on it: `compute` is told. */
  readonly toleratesFaults?: true;
  /** What stands in place of a refused call, for a table in which one cell tells the refusal in words. */
  readonly refused?: (refusal: Refusal) => TableRows;
}

export type WorksheetFunction = ScalarFunction | RowFunction | TableFunction;

/** Declares a function with one result; a helper for type inference only. */
export function scalarFunction<P extends Parameters>(
  declaration: Omit<ScalarFunction<P>, "shape">,
): ScalarFunction {
  return { ...declaration, shape: "scalar" };
}

/** Declares a function that answers with a row. */
export function rowFunction<P extends Parameters>(declaration: Omit<RowFunction<P>, "shape">): RowFunction {
  return { ...declaration, shape: "row" };
}

/** Declares a function that answers with a table. */
export function tableFunction<P extends Parameters>(
  declaration: Omit<TableFunction<P>, "shape">,
): TableFunction {
  return { ...declaration, shape: "table" };
}

/** The relations a function rests on, for one steel or for all. */
export function relationsOf(fn: WorksheetFunction, steel: Steel | null): readonly Relation[] {
  return typeof fn.relations === "function" ? fn.relations(steel) : fn.relations;
}

/**
 * What each column of an answer is. A scalar function answers a range cell by cell, and one that lists answers with
 * other columns.
 *
 * @param width - Columns of the answer.
 */
export function answeredColumns(fn: WorksheetFunction, width: number): readonly Column[] {
  if (fn.shape !== "scalar") return fn.result;
  const listed = fn.listing?.result;
  if (width > 1 && listed?.length === width) return listed;
  return Array.from({ length: width }, () => fn.result);
}
