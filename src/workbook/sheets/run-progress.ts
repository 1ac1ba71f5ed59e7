import { cellName } from "../../formula/addresses";
import { isErrorCode } from "../../formula/tokens";
import { FIRST_ROW, HEADINGS } from "./parts/table-sheet";
import {
  type PlanSheet,
  SHEETS_OF_THE_DEMO,
  SHEETS_OF_THE_PLAN,
  STEPS,
  type Step,
} from "./sheets-of-the-plan";

/** A workbook as far as its progress is read: what a cell shows, and how far a sheet reaches. */
export interface ShownWorkbook {
  readonly sheets: readonly string[];
  /** Rows and columns in use. */
  size(sheet: string): { readonly rows: number; readonly columns: number };
  /** What a cell shows, empty for an empty one. Rows and columns count from 0. */
  shown(sheet: string, row: number, column: number): string;
}

/** A cell that is blank though its row is begun. */
export interface Missing {
  readonly sheet: string;
  readonly address: string;
  /** What should stand there, with the row's own name: "Steel of L3". */
  readonly what: string;
}

export interface StepProgress {
  readonly step: Step;
  /** Sheets of the workbook that belong to it, in the workbook's order. */
  readonly sheets: readonly string[];
  /** Whether any row that must be filled in is begun. */
  readonly isBegun: boolean;
  readonly missing: readonly Missing[];
}

const KNOWN = new Map([...SHEETS_OF_THE_PLAN, ...SHEETS_OF_THE_DEMO].map((sheet) => [sheet.name, sheet]));

/** The step a sheet belongs to; `undefined` for a sheet of somebody's own. */
export function stepOf(sheet: string): Step | undefined {
  return KNOWN.get(sheet)?.step;
}

function columnsNeeded(book: ShownWorkbook, { name, needs = [] }: PlanSheet): ReadonlyMap<string, number> {
  const { columns } = book.size(name);
  const headings = Array.from({ length: columns }, (_, column) => book.shown(name, HEADINGS, column));
  const places = needs.map((heading) => [heading, headings.indexOf(heading)] as const);
  return new Map(places.filter(([, column]) => column >= 0));
}

interface SheetProgress {
  readonly isBegun: boolean;
  readonly missing: readonly Missing[];
}

/**
 * Rows are begun by their first cell: the tables of the plan name the line there. An error in it names none: what is
 * to be mended stands where the error comes from.
 */
function sheetProgress(book: ShownWorkbook, sheet: PlanSheet): SheetProgress {
  const needed = columnsNeeded(book, sheet);
  const missing: Missing[] = [];
  let isBegun = false;
  if (needed.size === 0) return { isBegun, missing };
  const { name } = sheet;
  const { rows } = book.size(name);
  for (let row = FIRST_ROW; row < rows; row += 1) {
    const line = book.shown(name, row, 0);
    if (line === "" || isErrorCode(line)) continue;
    isBegun = true;
    for (const [heading, column] of needed) {
      if (book.shown(name, row, column) !== "") continue;
      missing.push({ sheet: name, address: cellName(row, column), what: `${heading} of ${line}` });
    }
  }
  return { isBegun, missing };
}

/**
 * How far each step of a run has come: which cells of begun rows are still blank. A sheet counts where the
 * plan names columns that it needs; sheets that are worked out or printed have nothing to fill in.
 *
 * @returns One entry a step that the workbook has sheets of, in the order of a run.
 */
export function runProgress(book: ShownWorkbook): readonly StepProgress[] {
  return STEPS.flatMap((step) => {
    const sheets = book.sheets.filter((name) => stepOf(name) === step);
    if (sheets.length === 0) return [];
    const parts = sheets.flatMap((name) => {
      const known = KNOWN.get(name);
      return known === undefined ? [] : [sheetProgress(book, known)];
    });
    return [
      {
        step,
        sheets,
        isBegun: parts.some((part) => part.isBegun),
        missing: parts.flatMap((part) => part.missing),
      },
    ];
  });
}

/** Where a run begins: the first line of the plan. */
const FIRST_LINE: Missing = {
  sheet: "Lines",
  address: cellName(FIRST_ROW, 0),
  what: "the first line of the run",
};

/** The next thing to fill in; `undefined` where nothing is missing or the workbook is no plan. */
export function nextMissing(book: ShownWorkbook, progress: readonly StepProgress[]): Missing | undefined {
  if (!book.sheets.includes(FIRST_LINE.sheet)) return undefined;
  const isBlank = book.shown(FIRST_LINE.sheet, FIRST_ROW, 0) === "";
  const begun = progress.some(({ isBegun }) => isBegun);
  if (isBlank && !begun) return FIRST_LINE;
  return progress.flatMap(({ missing }) => missing)[0];
}
