import type { InParts } from "../../core/parts";
import { InvalidValue, Refusal } from "../../core/refusal";
import { type LinePlan, type PlanRow, planRunInParts } from "../../core/run/plan";
import { type Cell, type Cells, isEmpty } from "../cells";
import { foldHeading, readHeadings, type TableColumns } from "./heading-row";
import { OTHER_WORDS, PLAN_HEADINGS } from "./plan-headings";
import { filledRows, readRowAndFaults } from "./table-rows";

/** A run table, read and planned. */
export interface PlannedTable {
  readonly headings: readonly Cell[];
  readonly columns: TableColumns;
  /** Below the headings, as they stand on the sheet. */
  readonly rows: Cells;
  /** One for each row. */
  readonly plans: readonly PlanRow<LinePlan>[];
}

/** Words that tell typed cells from calculated ones in a row of their own, under the headings. */
const MARKS: ReadonlySet<string> = new Set(["type", "calc", "either", "in", "frozen"]);

/** A row of nothing but marks is no line of the run. */
function isMarks(row: readonly Cell[]): boolean {
  const filled = row.filter((cell) => !isEmpty(cell));
  return filled.length > 0 && filled.every((cell) => MARKS.has(String(cell).trim().toLowerCase()));
}

/** Blank rows and titles above the headings come with a range drawn a little large. */
function headingRow(rows: Cells): number {
  const known = new Set(Object.values(PLAN_HEADINGS).map(({ label }) => foldHeading(label)));
  const isHeadings = (row: readonly Cell[]) =>
    row.filter((cell) => typeof cell === "string" && known.has(foldHeading(cell))).length > 1;
  const found = rows.findIndex(isHeadings);
  return found >= 0 ? found : rows.findIndex((row) => !row.every(isEmpty));
}

/** Lines read between two pauses. */
const LINES_A_PART = 16;

function* readLines(rows: Cells, columns: TableColumns): InParts<ReturnType<typeof readLine>[]> {
  const lines: ReturnType<typeof readLine>[] = [];
  for (const row of rows) {
    lines.push(readLine(row, columns));
    if (lines.length % LINES_A_PART === 0) yield;
  }
  return lines;
}

const readLine = (row: readonly Cell[], columns: TableColumns) =>
  isMarks(row) ? undefined : readRowAndFaults(row, columns, PLAN_HEADINGS);

/**
 * Reads and plans a run table, in parts.
 *
 * @param date - Day number that prices are compared with.
 * @throws InvalidValue for headings that cannot be told apart.
 */
export function* plannedTable(table: Cells, date: number | undefined): InParts<PlannedTable> {
  const filled = filledRows(table);
  const top = headingRow(filled);
  const [headings = [], ...rows] = filled.slice(Math.max(0, top));
  const columns = readHeadings(headings, PLAN_HEADINGS, OTHER_WORDS);
  for (const key of ["steel", "good", "yieldShare"] as const) {
    if (columns.known.has(key)) continue;
    throw new InvalidValue(
      `no heading reads "${PLAN_HEADINGS[key].label}": a run needs steel, good and yield; RUN_HEADINGS() lists every heading`,
    );
  }
  const read = yield* readLines(rows, columns);
  const lines = read.map((row) => (row === undefined || row instanceof Refusal ? row : row.values));
  const faults = read.map((row) => (row === undefined || row instanceof Refusal ? {} : row.faults));
  return { headings, columns, rows, plans: yield* planRunInParts(lines, date, faults) };
}
