/** What a cell shows: a value in full precision, or the code of an error with the sentence behind it. */
export type CellValue =
  | { readonly value: number | string | boolean }
  | { readonly error: string; readonly message?: string | undefined };

/** What stands in a cell that is to be calculated: a constant, or a formula with its equals sign. */
export type CellInput = CellValue | { readonly formula: string };
