import { MONEY } from "../../core/money/price";
import type { InParts } from "../../core/parts";
import { type RunTotals, runTotals, type Total, weeksNeeded } from "../../core/run/totals";
import { type Cell, type Cells, isEmpty } from "../cells";
import { tableFunction } from "../declare";
import { numberOrNothing, table } from "../parameters";
import { dateOrNothing } from "./dates";
import { type PlannedTable, plannedTable } from "./plan-lines";

interface Calendar {
  readonly weeks: number | undefined;
  readonly benchAWeek: number | undefined;
  readonly ovenAWeek: number | undefined;
}

function partNote({ figure, lines }: Total, planned: number): string {
  return figure === undefined || lines === planned ? "" : `from ${lines} of ${planned} lines`;
}

function weeksRow(
  what: string,
  hours: number | undefined,
  aWeek: number | undefined,
  weeks?: number,
): Cell[][] {
  if (hours === undefined || aWeek === undefined) return [];
  const { needed, note } = weeksNeeded(hours, aWeek, weeks);
  return [[what, needed, "weeks", note]];
}

function marginRow(totals: readonly Total[]): Cell[][] {
  const [cost, income] = ["cost", "income"].map((what) => totals.find((total) => total.what === what));
  if (cost?.figure === undefined || !income?.figure || cost.lines !== income.lines) return [];
  return [["margin", (income.figure - cost.figure) / income.figure, "", "share of the income"]];
}

/** The line of a refused row as the smith calls it. */
function nameOf({ rows, columns }: PlannedTable, row: number): string {
  const cell = rows[row - 1]?.[columns.known.get("name") ?? -1] ?? null;
  return isEmpty(cell) || typeof cell === "object" ? `row ${row + 1}` : String(cell);
}

function refusedRows(planned: PlannedTable, { refused }: RunTotals): Cell[][] {
  return refused.map(([row, { message }]) => ["not planned", "", nameOf(planned, row), message]);
}

function* totalRows(lines: Cells, date: number | undefined, calendar: Calendar): InParts<Cells> {
  const planned = yield* plannedTable(lines, date);
  const run = runTotals(planned.plans);
  const count = run.planned.length;
  const hours = (what: string) => run.totals.find((total) => total.what === what)?.figure;
  const { weeks, benchAWeek, ovenAWeek } = calendar;
  return [
    ["lines", count, "", run.refused.length === 0 ? "" : `${run.refused.length} more not planned`],
    ...run.totals.map((total) => [total.what, total.figure ?? "", total.unit, partNote(total, count)]),
    ...marginRow(run.totals),
    ...weeksRow("bench time", hours("bench hours"), benchAWeek, weeks),
    ...weeksRow("oven time", hours("oven hours"), ovenAWeek, weeks),
    ...refusedRows(planned, run),
    ...planned.columns.remarks.map((remark): Cell[] => ["remark", "", "", remark]),
  ];
}

function hoursAWeek(label: string, help: string) {
  return numberOrNothing({ label, help, quantity: "time", unit: "h", min: 0.01, max: 10_000 });
}

export const RUN_TOTALS = tableFunction({
  name: "RUN_TOTALS",
  takesLong: true,
  summary:
    "Sums of a run as RUN_PLAN plans it, and whether bench and oven hours fit the time until it is due.",
  parameters: {
    lines: table({
      label: "lines",
      help: "The same table that RUN_PLAN takes.",
      accepts: "a table whose first row holds headings such as steel, good, yield, length",
    }),
    weeks: numberOrNothing({
      label: "weeks",
      quantity: "number",
      unit: "",
      above: 0,
      max: 1000,
      help: "Weeks until the run is due.",
    }),
    benchAWeek: hoursAWeek("bench h a week", "Bench hours to be had a week."),
    ovenAWeek: hoursAWeek("oven h a week", "Hours that the ovens can be kept busy a week."),
    date: dateOrNothing({ label: "date", help: "Day that steel prices are compared with, as in RUN_PLAN." }),
  },
  result: [
    { label: "what", unit: "text" },
    { label: "figure", unit: "" },
    { label: "unit or line", unit: "text" },
    { label: "note", unit: "text" },
  ],
  relations: [MONEY],
  compute: ({ lines, date, ...calendar }) => totalRows(lines, date, calendar),
});
