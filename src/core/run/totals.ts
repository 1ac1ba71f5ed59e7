import { Refusal } from "../refusal";
import { type PlanPart, planFault } from "./faulty-cells";
import type { Figure } from "./line";
import type { LinePlan, PlanRow } from "./plan";

/** One sum over the lines of a run. */
export interface Total {
  /** What is summed. */
  readonly what: string;
  /** "" for a count. */
  readonly unit: string;
  /** The sum [in `unit`]; `undefined` where no line has the figure. */
  readonly figure: number | undefined;
  /** Lines that have it [-]. */
  readonly lines: number;
}

export interface RunTotals {
  /** The lines that could be planned. */
  readonly planned: readonly LinePlan[];
  /** Rows that were refused, counted from 1 [-], with their sentences. */
  readonly refused: readonly (readonly [row: number, refusal: Refusal])[];
  /** Sums over those lines. */
  readonly totals: readonly Total[];
}

type Reader = readonly [what: string, unit: string, of: (plan: LinePlan) => Figure, part?: PlanPart];

const READERS: readonly Reader[] = [
  ["good", "", ({ line }) => line.good],
  ["starts", "", ({ starts }) => starts, "starts"],
  ["bars", "", ({ stock }) => stock.bars?.bars, "bars"],
  ["steel", "kg", ({ stock }) => stock.kilograms, "bars"],
  ["loads", "", ({ energy }) => energy.loads, "loads"],
  ["energy", "kWh", ({ energy }) => energy.kilowattHours, "energy"],
  ["bench hours", "h", ({ hours }) => hours, "hours"],
  ["oven hours", "h", ({ energy }) => energy.ovenHours, "ovenHours"],
  ["cost", "money", ({ cost }) => cost.cost, "cost"],
  ["income", "money", ({ line, cost }) => cost.price && cost.price * line.good, "price"],
];

function total(plans: readonly LinePlan[], [what, unit, of, part]: Reader): Total {
  const told = plans.filter(
    ({ line, faults }) => part === undefined || planFault(line, faults, part) === undefined,
  );
  const figures = told.map(of).filter((figure) => typeof figure === "number");
  const figure = figures.length === 0 ? undefined : figures.reduce((sum, each) => sum + each, 0);
  return { what, unit, figure, lines: figures.length };
}

/**
 * Sums over the planned lines of a run; refused lines are named, not counted.
 *
 * @param rows - As `planRun` gives them.
 * @returns Sums with their units: masses [kg], lengths [mm], energy [kWh], hours [h], amounts.
 * Limits: a figure that is refused is left out and said; nothing is thrown. Error and source: those of `planRun`.
 */
export function runTotals(rows: readonly PlanRow<LinePlan>[]): RunTotals {
  const planned: LinePlan[] = [];
  const refused: [number, Refusal][] = [];
  rows.forEach((row, index) => {
    if (row instanceof Refusal) refused.push([index + 1, row]);
    else if (row !== undefined) planned.push(row);
  });
  return { planned, refused, totals: READERS.map((reader) => total(planned, reader)) };
}

/**
 * Whether hours fit the time that is left.
 *
 * @param hours - Needed in all.
 * @param aWeek - To be had a week.
 * @param weeks - Left until the due date.
 * @returns Weeks needed and a sentence.
 */
export function weeksNeeded(hours: number, aWeek: number, weeks: number | undefined) {
  const needed = hours / aWeek;
  if (weeks === undefined) return { needed, note: "" };
  const spare = weeks * aWeek - hours;
  const note =
    spare >= 0
      ? `fits ${weeks} × ${aWeek} h with ${spare.toFixed(1)} h to spare`
      : `LATE: ${(-spare).toFixed(1)} h over what ${weeks} × ${aWeek} h hold`;
  return { needed, note };
}
