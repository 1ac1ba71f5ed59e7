import { Refusal } from "../../core/refusal";
import { callsOurs } from "../../formula/functions-called";
import { ownNamesTyped } from "../../formula/own-names";
import { parseFormula } from "../../formula/parse";
import type { Cell, Cells } from "../../functions/cells";
import type { Column, WorksheetFunction } from "../../functions/declare";
import type { HostPort, SelectedCell } from "../../host/port";
import { type Reading, readingsOf } from "./readings";
import { answerOf, type Known, type OwnCall, ownCalls, referencesIn } from "./values";
import { wayOut } from "./way-out";

/** One of our calls in a cell, in words. */
export interface ExplainedCall {
  readonly fn: WorksheetFunction;
  /** As the formula has it. */
  readonly text: string;
  /** True where the formula is nothing but this call. */
  readonly isWhole: boolean;
  readonly readings: readonly Reading[];
  /** The row of the answer that the cell stands in; empty where it cannot be worked out here. */
  readonly answer: readonly Answered[];
  /** How many rows the answer has. */
  readonly rows: number;
  /** The sentence of an error and what to do about it; `null` where there is none. */
  readonly problem: { readonly code: string; readonly sentence: string; readonly wayOut: string } | null;
}

/** One column of an answer. */
export interface Answered {
  readonly column: Column;
  readonly cell: Cell;
  /** True for the one that the selected cell shows. */
  readonly isSelected: boolean;
}

export interface Explanation {
  /** The formula that gives the cell its value, with our names as they are typed. */
  readonly formula: string;
  /** False for a formula that could not be taken apart. */
  readonly isReadable: boolean;
  readonly calls: readonly ExplainedCall[];
}

/** Where in the answer the selected cell stands. */
interface Spot {
  readonly row: number;
  readonly column: number;
}

const columnsOf = (fn: WorksheetFunction): readonly Column[] =>
  fn.shape === "scalar" ? [fn.result] : fn.result;

/** Columns of an answer with what each is; a function that lists, or one that answers cell by cell, has others. */
function answered(fn: WorksheetFunction, row: readonly Cell[], spot: Spot): Answered[] {
  const columns = columnsOf(fn);
  if (fn.shape === "scalar") {
    const cell = row[spot.column] ?? null;
    return [{ column: fn.result, cell, isSelected: true }];
  }
  return columns.map((column, at) => ({ column, cell: row[at] ?? null, isSelected: at === spot.column }));
}

function refusalIn(cells: Cells, { row, column }: Spot): Refusal | undefined {
  const own = cells[row]?.[column];
  if (own instanceof Refusal) return own;
  return cells[row]?.find((cell) => cell instanceof Refusal);
}

function explainedCall(call: OwnCall, selected: SelectedCell, known: Known): ExplainedCall {
  const { fn, given, text, isWhole } = call;
  const cells = answerOf(fn, given, known);
  const spot: Spot = (isWhole ? selected.filledBy : null) ?? { row: 0, column: 0 };
  const readings = readingsOf(call, known, spot.row);
  const refusal = cells === null ? undefined : refusalIn(cells, spot);
  return {
    fn,
    text,
    isWhole,
    readings,
    answer: answered(fn, cells?.[spot.row] ?? [], spot).filter(() => cells !== null),
    rows: cells?.length ?? 0,
    problem:
      refusal === undefined
        ? null
        : { code: refusal.code, sentence: refusal.message, wayOut: wayOut(readings) },
  };
}

/** The values that a formula refers to. */
async function knownValues(port: HostPort, references: readonly string[], beside: string): Promise<Known> {
  const values = await port.readValues(references, beside);
  return new Map(references.map((reference, at) => [reference, values[at] ?? null]));
}

/**
 * What a selected cell's formula says about blades: every call of ours in it, with its inputs as read, its answer
 * worked out by the same code as in the sheet, and the way out of an error.
 *
 * @returns `null` for a cell without a formula of ours.
 */
export async function explain(port: HostPort, selected: SelectedCell): Promise<Explanation | null> {
  const { address, formula: raw } = selected.filledBy ?? selected;
  const formula = ownNamesTyped(raw);
  const expression = parseFormula(formula);
  if (expression === null) return callsOurs(formula) ? { formula, isReadable: false, calls: [] } : null;
  const calls = ownCalls(expression);
  if (calls.length === 0) return null;
  const known = await knownValues(port, referencesIn(expression), address);
  return {
    formula,
    isReadable: true,
    calls: calls.map((call) => explainedCall(call, selected, known)),
  };
}
