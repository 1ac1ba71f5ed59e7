import type { Rectangle } from "../formula/addresses";

/** What a cell shows: a value in full precision, or the code of an error with the sentence behind it. */
export type CellValue =
  | { readonly value: number | string | boolean }
  | { readonly error: string; readonly message?: string | undefined };

/** A formula with its equals sign, and what is known of what it comes to. */
export interface FormulaInput {
  readonly formula: string;
  readonly result?: CellValue;
  /** The cells it fills; left out for one that fills its own alone. */
  readonly fills?: Rectangle;
  /** What stands in the cells it fills, row by row, where that is known. */
  readonly filled?: readonly (readonly CellValue[])[];
}

/** What stands in a cell that is to be calculated: a constant or a formula. */
export type CellInput = CellValue | FormulaInput;
