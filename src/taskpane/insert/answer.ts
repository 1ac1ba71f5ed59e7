import { numberText } from "../../core/quantity-text";
import { Refusal } from "../../core/refusal";
import { parseFormula } from "../../formula/parse";
import type { Cell, Cells } from "../../functions/cells";
import { answeredColumns, type WorksheetFunction } from "../../functions/declare";
import type { HostPort } from "../../host/port";
import { type Reading, readingsOf } from "../cell/readings";
import { problemBlock } from "../cell/this-cell";
import { answerOf, type Known, ownCalls, referencesIn } from "../cell/values";
import { wayOut } from "../cell/way-out";
import { element } from "../parts/dom";
import { figureReading } from "../parts/reading";
import { facts, note, table } from "../parts/tables";

/** Rows of an answer that are shown before it is in the sheet. */
const SHOWN_ROWS = 6;

/** What a call comes to before it is in the sheet. */
export interface Preview {
  readonly readings: readonly Reading[];
  /** `null` where only the sheet can work it out. */
  readonly cells: Cells | null;
}

/**
 * Works a call out as the sheet would.
 *
 * @param beside - Address of the cell it is meant for.
 */
export async function preview(port: HostPort, formula: string, beside: string): Promise<Preview | null> {
  const expression = parseFormula(formula);
  const [call] = expression === null ? [] : ownCalls(expression);
  if (expression === null || call === undefined) return null;
  const references = referencesIn(expression);
  const values = await port.readValues(references, beside);
  const known: Known = new Map(references.map((reference, at) => [reference, values[at] ?? null]));
  return { readings: readingsOf(call, known, 0), cells: answerOf(call.fn, call.given, known) };
}

function shown(cell: Cell, unit: string): string {
  if (cell instanceof Refusal) return cell.code;
  return figureReading(typeof cell === "number" ? numberText(cell) : String(cell ?? ""), unit);
}

function many(fn: WorksheetFunction, cells: Cells): HTMLElement {
  const columns = answeredColumns(fn, cells[0]?.length ?? 1);
  const headings = columns.map(({ label, unit }) => ({ text: label, isFigure: unit !== "text" }));
  const rows = cells
    .slice(0, SHOWN_ROWS)
    .map((row) => row.map((cell, at) => shown(cell, columns[at]?.unit ?? "")));
  const more = cells.length > SHOWN_ROWS ? `, the first ${SHOWN_ROWS} shown` : "";
  return element("div", { class: "wide" }, table(`${cells.length} rows${more}`, headings, rows));
}

function one(fn: WorksheetFunction, row: readonly Cell[]): HTMLElement {
  const columns = answeredColumns(fn, row.length);
  return facts(
    row.map((cell, at): [string, string] => [columns[at]?.label ?? "", shown(cell, columns[at]?.unit ?? "")]),
  );
}

/** The answer in words: a figure with its unit, a few rows, or the sentence of the refusal with the way out. */
export function answerShown(fn: WorksheetFunction, { readings, cells }: Preview): HTMLElement {
  if (cells === null) return note("What it comes to is worked out in the sheet.");
  const refusal = cells.flat().find((cell) => cell instanceof Refusal);
  if (refusal instanceof Refusal && cells.length === 1)
    return problemBlock(refusal.code, refusal.message, wayOut(readings));
  const [row = []] = cells;
  return cells.length === 1 ? one(fn, row) : many(fn, cells);
}
