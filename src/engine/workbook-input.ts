import { CellValueType, type ICellData } from "@univerjs/core";
import type { CellInput, CellValue } from "./cell-value";

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

/** A result in the engine's own form. */
export function resultData(result: CellValue): ICellData {
  if ("error" in result) return { v: result.error, t: CellValueType.STRING };
  const { value } = result;
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: typeof value === "number" ? CellValueType.NUMBER : CellValueType.STRING };
}

/** A cell in the engine's own form. It counts an error as one only where a formula gives it. */
export function cellData(content: CellInput): ICellData {
  if ("formula" in content) return { f: content.formula, ...(content.result && resultData(content.result)) };
  if ("error" in content) return { f: `=${content.error}` };
  return resultData(content);
}
