import { Refusal } from "../../core/refusal";
import { functionNamed } from "../../functions/catalogue";
import type { Cell } from "../../functions/cells";
import type { Column } from "../../functions/declare";
import { ask, cellText } from "../parts/ask";

/** One line of the run as RUN_PLAN answers it. */
export interface LineReport {
  /** As the smith calls it, else its row. */
  readonly name: string;
  /** Why it is not planned; `null` where it is. */
  readonly fault: string | null;
  /** All its cautions in one text. */
  readonly cautions: string;
  readonly figures: readonly (readonly [column: Column, text: string])[];
}

export interface RunReport {
  readonly lines: readonly LineReport[];
  /** What, figure, unit, note. */
  readonly totals: readonly (readonly string[])[];
}

/** Hours to be had until the run is due, as typed; empty where not given. */
export interface Calendar {
  readonly weeks: string;
  readonly benchHours: string;
  readonly ovenHours: string;
}

function resultColumns(): readonly Column[] {
  const fn = functionNamed("RUN_PLAN");
  return fn === undefined || fn.shape === "scalar" ? [] : fn.result.slice(1);
}

/** Hundredths, or three digits of a small share: the sheet keeps all of them. */
function tidy(cell: Cell): string {
  if (typeof cell !== "number") return cellText(cell);
  return String(Number(Math.abs(cell) < 1 ? cell.toPrecision(3) : cell.toFixed(2)));
}

function lineReport(row: readonly Cell[], at: number, columns: readonly Column[]): LineReport[] {
  const results = row.slice(-columns.length);
  const refused = results.find((cell) => cell instanceof Refusal);
  const texts = results.map(tidy);
  if (refused === undefined && texts.every((text) => text === "")) return [];
  const figures = columns.map((column, place) => [column, texts[place] ?? ""] as const);
  return [
    {
      name: cellText(row[0] ?? null) || `Row ${at + 2} of the table`,
      fault: refused instanceof Refusal ? refused.message : null,
      cautions: texts.at(-1) ?? "",
      figures: figures.filter(([{ label }]) => label !== "cautions"),
    },
  ];
}

/**
 * A run's table checked line by line, by the same functions as on a sheet.
 *
 * @param table - Headings in the first row, as RUN_HEADINGS lists them.
 * @returns The report, or the sentence of the refusal where the table itself cannot be read.
 */
export function runReport(
  table: readonly (readonly unknown[])[],
  { weeks, benchHours, ovenHours }: Calendar,
): RunReport | string {
  const plan = ask("RUN_PLAN", table);
  if (plan.rows.length === 1 && plan.refusal !== null) return plan.refusal;
  const columns = resultColumns();
  const totals = ask("RUN_TOTALS", table, weeks, benchHours, ovenHours);
  if (totals.refusal !== null) return totals.refusal;
  return {
    lines: plan.rows.slice(1).flatMap((row, at) => lineReport(row, at, columns)),
    totals: totals.rows.map((row) => row.map(tidy)).filter(([, figure]) => figure !== ""),
  };
}
