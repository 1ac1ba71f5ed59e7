import { CellValueType, type ICellData, type IWorkbookData, type IWorksheetData } from "@univerjs/core";
import { downColumnForm } from "../formula/references";
import type { CellInput } from "./cell-value";

export interface SheetInput {
  readonly name: string;
  /** Cells by row and column, from the top left. */
  readonly rows: readonly (readonly (CellInput | undefined)[])[];
}

/** A table with its headings in the first row. Rows and columns count from 0; `rows` counts the headings too. */
export interface TableInput {
  readonly name: string;
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly headings: readonly string[];
}

/** A workbook to calculate. */
export interface WorkbookInput {
  readonly sheets: readonly SheetInput[];
  /** Defined names and what they stand for: `{ Target: "Plan!$B$2" }`. */
  readonly names?: Readonly<Record<string, string>>;
  readonly tables?: readonly TableInput[];
}

export const UNIT = "workbook";

/** The engine's id of a sheet; names may hold any character, ids stay plain. */
export function sheetId(position: number): string {
  return `sheet-${position + 1}`;
}

/** A cell in the engine's own form. It counts an error as one only where a formula gives it. */
export function cellData(content: CellInput): ICellData {
  if ("formula" in content) return { f: content.formula };
  if ("error" in content) return { f: `=${content.error}` };
  const { value } = content;
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: typeof value === "number" ? CellValueType.NUMBER : CellValueType.STRING };
}

/** Room below and beside what is filled, so that results can spill. */
const SPARE_ROWS = 2000;
const SPARE_COLUMNS = 200;

/** First formula of those alike in a column. */
interface Shared {
  readonly id: string;
  readonly cell: ICellData;
}

/**
 * Gives formulas alike down a column one text: the engine reads it once and moves its references for the others,
 * which takes half the time and memory of reading each.
 */
class SharedFormulas {
  private readonly known = new Map<string, Shared>();

  constructor(private readonly sheet: string) {}

  cell(content: CellInput, row: number, column: number): ICellData {
    const cell = cellData(content);
    const formula = cell.f;
    if (typeof formula !== "string") return cell;
    const form = `${column} ${downColumnForm(formula, row)}`;
    const first = this.known.get(form);
    if (first === undefined) {
      this.known.set(form, { id: `${this.sheet}-${this.known.size}`, cell });
      return cell;
    }
    first.cell.si = first.id;
    return { si: first.id };
  }
}

function sheetData({ name, rows }: SheetInput, id: string): Partial<IWorksheetData> {
  const cells: Record<number, Record<number, ICellData>> = {};
  const shared = new SharedFormulas(id);
  rows.forEach((row, r) => {
    const filled: Record<number, ICellData> = {};
    row.forEach((content, c) => {
      if (content !== undefined) filled[c] = shared.cell(content, r, c);
    });
    cells[r] = filled;
  });
  const widest = rows.reduce((most, row) => Math.max(most, row.length), 0);
  return {
    id,
    name,
    cellData: cells,
    rowCount: rows.length + SPARE_ROWS,
    columnCount: widest + SPARE_COLUMNS,
  };
}

/** The workbook in the engine's own form. */
export function workbookData({ sheets }: WorkbookInput): Partial<IWorkbookData> {
  const named = sheets.map((sheet, position) => [sheetId(position), sheet] as const);
  return {
    id: UNIT,
    sheetOrder: named.map(([id]) => id),
    sheets: Object.fromEntries(named.map(([id, sheet]) => [id, sheetData(sheet, id)])),
  };
}
