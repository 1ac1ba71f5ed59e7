import { CellValueType, type ICellData, type Nullable } from "@univerjs/core";
import { ERROR_TYPE_SET, type ErrorType } from "@univerjs/engine-formula";
import type { CellValue } from "./cell-value";
import { carriedSentence } from "./refused-value";

/** A calculated cell, rows and columns counted from 0. */
export interface CellAddress {
  readonly unitId: string;
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

function isErrorCode(value: unknown): value is ErrorType {
  return ERROR_TYPE_SET.has(value as ErrorType);
}

/** Reads the data the engine leaves for a cell. An empty result counts as 0, as a spreadsheet shows it. */
export function resultOf(cell: Nullable<ICellData>): CellValue {
  const value = cell?.v ?? 0;
  if (isErrorCode(value)) return { error: value, message: carriedSentence(cell?.custom) };
  return { value: cell?.t === CellValueType.BOOLEAN ? value === 1 : value };
}
