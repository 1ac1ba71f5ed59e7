/** Rows of a sheet: a range this tall is a whole column, A:A. */
const SHEET_ROWS = 1_048_576;

function isWholeColumn(raw: unknown): raw is readonly unknown[] {
  return Array.isArray(raw) && raw.length === SHEET_ROWS;
}

function isEmptyRow(row: unknown): boolean {
  if (!Array.isArray(row)) return row === null || row === undefined || row === "";
  return row.every((cell) => cell === null || cell === undefined || cell === "");
}

/** Rows down to the last that holds something, at least one. */
function filledRows(range: readonly unknown[]): number {
  let rows = range.length;
  while (rows > 1 && isEmptyRow(range[rows - 1])) rows -= 1;
  return rows;
}

/**
 * Cuts the empty tail off whole columns, off all of them at the same row, so that rows still stand side by side:
 * nothing is read, and no result spilled, for a million cells that nobody filled in.
 *
 * @param args - Arguments as the host hands them over.
 * @returns The same arguments where none is a whole column.
 */
export function withoutEmptyTails(args: readonly unknown[]): readonly unknown[] {
  if (!args.some(isWholeColumn)) return args;
  const rows = Math.max(
    ...args.map((raw) => (isWholeColumn(raw) ? filledRows(raw) : Array.isArray(raw) ? raw.length : 1)),
  );
  return args.map((raw) => (isWholeColumn(raw) ? raw.slice(0, rows) : raw));
}
