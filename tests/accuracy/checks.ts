import { readdirSync, readFileSync } from "node:fs";
import { SOURCES, type Source } from "../../src/core/sources";
import { QUANTITIES, type Row } from "../published-quantities";
import checkSources from "./sources.json";

/** A table of the literature that the library is checked against, row by row. */
export interface PublishedTable {
  readonly title: string;
  /** One key, or those of several pages of which each gave a figure or two. */
  readonly source: string | readonly string[];
  readonly locator: string;
  /** READ or MEMORY, where it differs from what the source list says. */
  readonly seen?: string;
  /** True where the rows helped to make the relation: such a table shows the fit, it proves nothing. */
  readonly fitted: boolean;
  /** A key of `QUANTITIES`: what is computed from a row, to be compared with its last column. */
  readonly quantity: string;
  readonly columns: readonly (readonly [name: string, unit: string])[];
  readonly allowed: {
    readonly mean: number;
    readonly largest: number;
    /** Root mean square, where the accuracy is stated as one. */
    readonly rms?: number;
    readonly why: string;
  };
  readonly rows: readonly Row[];
}

/** One row with what the library answers to it. */
export interface Answered {
  readonly row: Row;
  readonly inputs: Row;
  readonly answer: number;
  readonly expected: number;
}

/** From the root of the project, where every script and every test runs. */
const TESTS = "tests";

/** Sources of the tables: those that answers rest on, and those that serve checks only. */
export const ALL_SOURCES: Readonly<Record<string, Source>> = { ...SOURCES, ...checkSources };

/** Paths of every published table below `tests`, in alphabetical order. */
export function tablePaths(): string[] {
  return readdirSync(TESTS, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /published$/.test(entry.parentPath) && entry.name.endsWith(".json"))
    .map((entry) => `${entry.parentPath}/${entry.name}`)
    .sort();
}

export function readTable(path: string): PublishedTable {
  return JSON.parse(readFileSync(path, "utf8")) as PublishedTable;
}

/** Keys of the sources of a table. */
export function sourcesOf({ source }: PublishedTable): readonly string[] {
  return typeof source === "string" ? [source] : source;
}

/** Whether a table was read in a text or recalled. */
export function seenOf(table: PublishedTable): string {
  const [first = ""] = sourcesOf(table);
  return table.seen ?? ALL_SOURCES[first]?.seen ?? "";
}

/** What the library answers to every row of a table; none is ever left out. */
export function answered(table: PublishedTable): Answered[] {
  const compute = QUANTITIES[table.quantity];
  if (compute === undefined) throw new Error(`no quantity "${table.quantity}"`);
  return table.rows.map((row) => {
    const inputs = row.slice(0, -1);
    return { row, inputs, answer: compute(inputs), expected: row[row.length - 1] as number };
  });
}
