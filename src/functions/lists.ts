import { InvalidValue } from "../core/refusal";

/** A column as a function receives it: `undefined` for an empty cell. */
export type Column<T> = readonly (T | undefined)[];

/** True where a column was left out or holds nothing. */
export function isEmptyColumn(column: Column<unknown>): boolean {
  return column.every((value) => value === undefined);
}

/**
 * The value of a column in a row of another: one cell serves every row.
 *
 * @throws InvalidValue where the columns differ in length.
 */
export function besideRow<T>(column: Column<T>, row: number, rows: number, label: string): T | undefined {
  if (column.length === 1) return column[0];
  if (column.length === rows) return column[row];
  throw new InvalidValue(
    `${label}: ${column.length} cells given beside ${rows} rows; give one for all or one a row`,
  );
}

/** A value that its row cannot do without. */
export function filled<T>(value: T | undefined, row: number, label: string): T {
  if (value !== undefined) return value;
  throw new InvalidValue(`row ${row + 1}: ${label} is empty`);
}
