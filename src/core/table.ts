import { SOURCES, type SourceKey } from "./sources";

/** A table as the files of `src/data` hold it: a heading for each column, and rows in that order. */
export interface Table {
  readonly title: string;
  readonly columns: readonly unknown[] | Readonly<Record<string, string>>;
  readonly rows: readonly (readonly unknown[])[];
}

/** Turns one cell of a table into a value; throws where the cell holds something else. */
export type ColumnReader<T> = (cell: unknown) => T;

type Readers = Readonly<Record<string, ColumnReader<unknown>>>;

/** One row of a table, its cells under the names that the readers gave them. */
export type TableRecord<R extends Readers> = { readonly [K in keyof R]: ReturnType<R[K]> };

/** A column of numbers. */
export function number(cell: unknown): number {
  if (typeof cell === "number") return cell;
  throw new Error(`${JSON.stringify(cell)} is not a number`);
}

/** A column of words. */
export function text(cell: unknown): string {
  if (typeof cell === "string") return cell;
  throw new Error(`${JSON.stringify(cell)} is not a text`);
}

/** A column of true and false. */
export function flag(cell: unknown): boolean {
  if (typeof cell === "boolean") return cell;
  throw new Error(`${JSON.stringify(cell)} is neither true nor false`);
}

/** A column in which only the words of a list may stand. */
export function oneOf<const T extends string>(words: readonly T[]): ColumnReader<T> {
  const known: ReadonlySet<unknown> = new Set(words);
  return (cell) => {
    if (known.has(cell)) return cell as T;
    throw new Error(`${JSON.stringify(cell)} is none of ${words.join(", ")}`);
  };
}

/** A column of keys of `src/data/sources`. */
export const sourceKey = oneOf(Object.keys(SOURCES) as SourceKey[]);

/** A column that may be empty, which is `null`, never zero. */
export function orNull<T>(read: ColumnReader<T>): ColumnReader<T | null> {
  return (cell) => (cell === null ? null : read(cell));
}

/** A column whose cells hold a list each. */
export function listOf<T>(read: ColumnReader<T>): ColumnReader<readonly T[]> {
  return (cell) => {
    if (Array.isArray(cell)) return cell.map(read);
    throw new Error(`${JSON.stringify(cell)} is not a list`);
  };
}

/** Records in groups, each in the order of the table: the rows of one grade, of one bath. */
export function grouped<K, T>(all: readonly T[], keyOf: (record: T) => K): ReadonlyMap<K, readonly T[]> {
  const groups = new Map<K, T[]>();
  for (const record of all) {
    const group = groups.get(keyOf(record));
    if (group === undefined) groups.set(keyOf(record), [record]);
    else group.push(record);
  }
  return groups;
}

/** A value with all that it holds made unchangeable: a program that shares a table must not alter it for the others. */
export function frozen<T>(value: T): T {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const part of Object.values(value)) frozen(part);
  return value;
}

/**
 * Reads a table of `src/data` into records.
 *
 * @param table - The file.
 * @param readers - A name and a reader for each column, in the order of the columns.
 * @returns One record a row, frozen.
 * @throws Error where the columns are of another number or a cell is of another kind: a slip in the
 *   data, which every test that loads the table finds.
 */
export function records<const R extends Readers>(table: Table, readers: R): readonly TableRecord<R>[] {
  const columns = Object.entries(readers);
  const width = Object.keys(table.columns).length;
  if (columns.length !== width) {
    throw new Error(`"${table.title}" has ${width} columns, ${columns.length} are read`);
  }
  return frozen(table.rows.map((row, index) => recordFrom(table, row, index, columns) as TableRecord<R>));
}

function recordFrom(
  { title }: Table,
  row: readonly unknown[],
  index: number,
  columns: readonly [name: string, read: ColumnReader<unknown>][],
): Record<string, unknown> {
  const record: Record<string, unknown> = {};
  columns.forEach(([name, read], column) => {
    try {
      record[name] = read(row[column]);
    } catch (thrown) {
      throw new Error(`"${title}", row ${index + 1}, ${name}: ${(thrown as Error).message}`);
    }
  });
  return record;
}
