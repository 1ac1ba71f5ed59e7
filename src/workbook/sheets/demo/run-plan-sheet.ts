import { cellName } from "../../../formula/addresses";
import type { CellModel, SheetModel } from "../../model/sheet-model";
import {
  FORMAT,
  field,
  filled,
  fixedBlock,
  fixedName,
  headed,
  heading,
  helperSheet,
  mark,
  note,
  type Row,
  room,
  title,
  typed,
  words,
  worked,
} from "../parts/sheet-parts";
import type { Run } from "../run-r07/run";
import demo from "../run-r07/run-plan.json";
import { planColumns, type Sheets } from "./run-plan-columns";

const WEEKS = 2;
const BENCH = 3;
const OVEN = 4;
export const PLAN_WITH = 5;
const TABLE = 7;
/** First line of the table as typed, below its title, marks and headings. */
export const FIRST_TYPED = TABLE + 3;
const LINES = 6;
const PLANNED = FIRST_TYPED + LINES + 1;
/** First line of the plan, below its title and the headings that RUN_PLAN gives. */
export const FIRST_PLANNED = PLANNED + 2;
const CAUTIONS = FIRST_PLANNED + LINES + 1;
export const FIRST_CAUTION = CAUTIONS + 3;
const TOTALS = FIRST_CAUTION + LINES + 1;
export const FIRST_TOTAL = TOTALS + 2;

/** What RUN_PLAN gives behind line and blade, with the format each figure is shown in. */
const RESULTS = {
  mass: FORMAT.whole,
  carbon: FORMAT.hundredth,
  low: FORMAT.whole,
  high: FORMAT.whole,
  status: undefined,
  celsius: FORMAT.whole,
  fahrenheit: FORMAT.whole,
  through: undefined,
  starts: FORMAT.whole,
  bars: FORMAT.whole,
  use: FORMAT.whole,
  kilograms: FORMAT.tenth,
  loads: FORMAT.whole,
  energy: FORMAT.tenth,
  hours: FORMAT.tenth,
  unitCost: FORMAT.money,
  price: FORMAT.money,
  margin: FORMAT.hundredth,
  cautions: undefined,
} as const;

/** Column of a result on the sheet. */
export function planColumn(key: keyof typeof RESULTS): number {
  return 2 + Object.keys(RESULTS).indexOf(key);
}

/** Where a heading of the typed table stands. */
export function typedColumn(name: string): number {
  return planColumns.findIndex(({ heading }) => heading === name);
}

const tableRange = fixedBlock(FIRST_TYPED - 1, 0, LINES + 1, planColumns.length);

type Planted = Readonly<Record<string, Readonly<Record<string, number | string>>>>;
const planted: Planted = demo.planted;

function tableRow(run: Run, sheets: Sheets, line: number): Row {
  const row = FIRST_TYPED + line;
  const faults = planted[run.lines[line]?.line ?? ""];
  const place = {
    line,
    sheets,
    item: cellName(row, typedColumn("blade")),
    planWith: fixedName(PLAN_WITH, 1),
  };
  return planColumns.map(({ heading: name, cell }): CellModel => {
    const dressed = cell(place);
    const fault = faults?.[name];
    return fault === undefined ? dressed : typed(fault, dressed.format);
  });
}

function tableRows(run: Run, sheets: Sheets): Row[] {
  return [
    [title("The run: a row a line")],
    planColumns.map((column) => mark(column.filled)),
    planColumns.map((column) => heading(column.heading)),
    ...run.lines.map((_, line) => tableRow(run, sheets, line)),
  ];
}

function plannedRows(): Row[] {
  const figures = Object.values(RESULTS).map((format) => filled(format));
  const names = [undefined, ...Object.keys(RESULTS)].map(() => heading(""));
  return [
    [title("As planned")],
    [heading(`=BLADE.RUN_PLAN(${tableRange})`), ...names],
    ...room(LINES, [filled(), filled(), ...figures]),
  ];
}

/** A refused line has no cautions of its own; why it was refused stands among the totals. */
function caution(line: number): string {
  const row = FIRST_PLANNED + line;
  const own = cellName(row, planColumn("cautions"));
  const [lines, notes] = [2, 3].map((column) => fixedBlock(FIRST_TOTAL, column, TOTAL_ROOM));
  return `=IF(${own}<>"",${own},IFERROR("not planned: "&INDEX(${notes},MATCH(${cellName(row, 0)},${lines},0)),""))`;
}

function cautionRows(): Row[] {
  return [
    [title("Cautions")],
    ...headed([
      ["Line", "calc"],
      ["Caution", "calc"],
    ]),
    ...Array.from(
      { length: LINES },
      (_, line): Row => [worked(`=${cellName(FIRST_PLANNED + line, 0)}`), words(caution(line))],
    ),
  ];
}

/** Sums, weeks, and a row for each line that could not be planned. */
const TOTAL_ROOM = 14 + LINES;

function totalRows(): Row[] {
  const [weeks, bench, oven] = [WEEKS, BENCH, OVEN].map((row) => fixedName(row, 1));
  const row: Row = [filled(), filled("#,##0.0"), filled(), filled()];
  return [
    [title("Totals, and the hours against the due date")],
    ["What", "Figure", "Unit or line", "Note"].map(heading),
    [worked(`=BLADE.RUN_TOTALS(${tableRange},${weeks},${bench},${oven})`), ...row.slice(1)],
    ...room(TOTAL_ROOM - 1, row),
  ];
}

/** The whole run in one table: planned, costed and held against its due date. */
export function runPlanSheet(run: Run, sheets: Sheets): SheetModel {
  const rows: Row[] = [
    [title("Run plan: every line from bar to price")],
    [
      note(
        "Taken from the other sheets until you type over it. Four cells are wrong on purpose: the cautions below name them.",
      ),
    ],
    field("Due in weeks", typed(demo.weeks, FORMAT.whole), "type"),
    field("Bench hours a week", typed(demo.bench, FORMAT.whole), "type"),
    field("Oven hours a week", typed(demo.oven, FORMAT.whole), "type"),
    field("Yield to plan with", typed(demo.planWith), "type", "counted or floor, from the history"),
    [],
    ...tableRows(run, sheets),
    [],
    ...plannedRows(),
    [],
    ...cautionRows(),
    [],
    ...totalRows(),
  ];
  const heights = Array.from({ length: LINES }, (_, line) => [FIRST_CAUTION + line, 110]);
  return helperSheet("Run plan", rows, {
    columnWidths: [150, 330, 84, 180, ...planColumns.slice(4).map(() => 82)],
    rowHeights: { 0: 28, [FIRST_TYPED - 1]: 36, [FIRST_PLANNED - 1]: 36, ...Object.fromEntries(heights) },
    statusColumns: [planColumn("status")],
    lines: [FIRST_PLANNED, FIRST_PLANNED + LINES - 1],
  });
}
