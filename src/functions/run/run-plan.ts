import type { InParts } from "../../core/parts";
import { Refusal } from "../../core/refusal";
import { MEND_LINE, NOT_ASSESSED, type PlanPart, planFault } from "../../core/run/faulty-cells";
import type { Figure } from "../../core/run/line";
import type { LinePlan, PlanRow } from "../../core/run/plan";
import { emptyRow, refusedRow } from "../answer";
import { type Cell, type Cells, isEmpty } from "../cells";
import { type Column, tableFunction } from "../declare";
import { table } from "../parameters";
import { dateOrNothing } from "./dates";
import { foldHeading } from "./heading-row";
import { type PlannedTable, plannedTable } from "./plan-lines";
import { planRelations } from "./plan-relations";
import { passedOn } from "./table-rows";

/** What is worked out for each line; the order is frozen once released. */
const RESULTS: readonly Column[] = [
  { label: "mass g", unit: "g" },
  { label: "carbon %", unit: "mass %" },
  { label: "HRC low", unit: "HRC" },
  { label: "HRC high", unit: "HRC" },
  { label: "band status", unit: "text" },
  { label: "temper C", unit: "°C" },
  { label: "temper F", unit: "°F" },
  { label: "through-hardens", unit: "text" },
  { label: "starts", unit: "" },
  { label: "bars", unit: "" },
  { label: "use of bar %", unit: "%" },
  { label: "kg", unit: "kg" },
  { label: "loads", unit: "" },
  { label: "kWh", unit: "kWh" },
  { label: "hours", unit: "h" },
  { label: "unit cost", unit: "money" },
  { label: "price", unit: "money" },
  { label: "margin", unit: "" },
  { label: "cautions", unit: "text" },
  { label: "chance", unit: "" },
  { label: "next step", unit: "text" },
  { label: "soak min", unit: "min" },
  { label: "quench words", unit: "text" },
  { label: "tempers", unit: "text" },
];

const LINE: Column = { label: "line", unit: "text" };

/** Each result in its order: the part of the plan that it belongs to, and what that came to. */
function figuresOf(plan: LinePlan): readonly (readonly [PlanPart | "carbon", Figure | string])[] {
  const { recipe, stock, energy, cost } = plan;
  const { temper } = recipe;
  return [
    ["mass", plan.massG],
    ["carbon", plan.carbon],
    ["temper", temper.low],
    ["temper", temper.high],
    ["status", temper.status],
    ["temper", temper.celsius],
    ["temper", temper.fahrenheit],
    ["through", recipe.hardening.word],
    ["starts", plan.starts],
    ["bars", stock.bars?.bars],
    ["bars", stock.bars && stock.bars.use * 100],
    ["bars", stock.kilograms],
    ["loads", energy.loads],
    ["energy", energy.kilowattHours],
    ["hours", plan.hours],
    ["cost", cost.unitCost],
    ["price", cost.price],
    ["margin", cost.margin],
  ];
}

/** What was added to a plan after its first release, behind the cautions. */
function appendedOf({
  recipe,
  faults,
}: LinePlan): readonly (readonly [PlanPart | "next", Figure | string])[] {
  const { chance, next, tempers } = recipe.temper;
  const isWhole = Object.keys(faults).length === 0;
  return [
    ["status", chance === undefined ? undefined : Math.round(chance * 100) / 100],
    ["next", isWhole ? next : MEND_LINE],
    ["soak", recipe.soakMinutes],
    ["quench", recipe.quench],
    ["temper", tempers],
  ];
}

/** A part that rests on a faulty cell: figures carry the refusal, words say that nothing was assessed. */
function unlessFaulty({ line, faults }: LinePlan) {
  return ([part, came]: readonly [PlanPart | "carbon" | "next", Figure | string]): Cell => {
    const fault = part === "carbon" || part === "next" ? undefined : planFault(line, faults, part);
    if (fault === undefined) return came ?? "";
    return typeof came === "string" ? NOT_ASSESSED : fault;
  };
}

function resultRow(plan: LinePlan, remarks: readonly string[]): Cell[] {
  const told = unlessFaulty(plan);
  const cautions = [...plan.cautions, ...remarks].join(" ");
  return [...figuresOf(plan).map(told), cautions, ...appendedOf(plan).map(told)];
}

/** Remarks on the headings stand with the cautions of the first line that is planned. */
function results(plan: PlanRow<LinePlan>, remarks: readonly string[]): Cell[] {
  if (plan === undefined) return emptyRow(RESULTS);
  return plan instanceof Refusal ? refusedRow(plan, RESULTS) : resultRow(plan, remarks);
}

const RESULT_HEADINGS: ReadonlySet<string> = new Set(RESULTS.map(({ label }) => foldHeading(label)));

/** Columns of the smith's own. Empty ones beside the table, and those headed like a result, are left out. */
function ownColumns({ headings, columns, rows }: PlannedTable): number[] {
  return columns.own.filter((position) => {
    const heading = headings[position] ?? null;
    if (RESULT_HEADINGS.has(foldHeading(String(heading ?? "")))) return false;
    return !isEmpty(heading) || rows.some((row) => !isEmpty(row[position] ?? null));
  });
}

function* runPlan(lines: Cells, date: number | undefined): InParts<Cells> {
  const planned = yield* plannedTable(lines, date);
  const { headings, columns, rows, plans } = planned;
  const own = ownColumns(planned);
  const first = plans.findIndex((plan) => plan !== undefined && !(plan instanceof Refusal));
  const name = columns.known.get("name") ?? -1;
  const asGiven = (row: readonly Cell[]) => [name, ...own].map((position) => passedOn(row, position));
  const top = [LINE.label, ...own.map((position) => passedOn(headings, position))];
  return [
    [...top, ...RESULTS.map(({ label }) => label)],
    ...rows.map((row, index) => [
      ...asGiven(row),
      ...results(plans[index], index === first ? columns.remarks : []),
    ]),
  ];
}

export const RUN_PLAN = tableFunction({
  name: "RUN_PLAN",
  takesLong: true,
  summary:
    "Plans a whole run from your table, a row a line: mass, temper, starts, bars, loads, kWh, hours, cost, price, cautions.",
  parameters: {
    lines: table({
      label: "lines",
      help: "Your table with its headings in the first row, in any order; RUN_HEADINGS() lists them, other columns are passed on.",
      accepts: "a table whose first row holds headings such as steel, good, yield, length",
    }),
    date: dateOrNothing({
      label: "date",
      help: "Day that steel prices are compared with, TODAY() if you like; the newest price date of the table where left out.",
    }),
  },
  result: [LINE, ...RESULTS],
  relations: planRelations,
  compute: ({ lines, date }) => runPlan(lines, date),
});
