import { readdirSync, readFileSync } from "node:fs";
import { relative } from "node:path";
import { describe, expect, test } from "vitest";
import { SOURCES } from "../src/core/sources";
import { QUANTITIES, type Row } from "./published-quantities";

/** A table of the literature that the library is checked against, row by row. */
interface PublishedTable {
  readonly title: string;
  readonly source: string;
  readonly locator: string;
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

const TESTS = new URL(".", import.meta.url).pathname;

function paths(): string[] {
  return readdirSync(TESTS, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /published$/.test(entry.parentPath) && entry.name.endsWith(".json"))
    .map((entry) => `${entry.parentPath}/${entry.name}`)
    .sort();
}

interface Miss {
  readonly row: Row;
  readonly error: number;
}

function missOf(table: PublishedTable, row: Row): Miss {
  const compute = QUANTITIES[table.quantity];
  if (compute === undefined) throw new Error(`no quantity "${table.quantity}"`);
  const expected = row[row.length - 1] as number;
  return { row, error: Math.abs(compute(row.slice(0, -1)) - expected) };
}

for (const path of paths()) {
  const table = JSON.parse(readFileSync(path, "utf8")) as PublishedTable;
  describe(`${relative(TESTS, path)}: ${table.title}${table.fitted ? " (fitted)" : ""}`, () => {
    test("says where it comes from and why its tolerance is what it is", () => {
      expect(Object.keys(SOURCES)).toContain(table.source);
      expect(table.locator).not.toBe("");
      expect(table.allowed.why).not.toBe("");
      expect(table.rows.length).toBeGreaterThan(0);
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
    });

    test(`agrees within ${table.allowed.mean} on average and ${table.allowed.largest} at most, no row dropped`, () => {
      const misses = table.rows.map((row) => missOf(table, row));
      const mean = misses.reduce((sum, { error }) => sum + error, 0) / misses.length;
      const rms = Math.sqrt(misses.reduce((sum, { error }) => sum + error * error, 0) / misses.length);
      const worst = misses.reduce((a, b) => (b.error > a.error ? b : a));
      console.info(
        `${table.title}: ${misses.length} rows, mean ${mean.toPrecision(3)}, rms ${rms.toPrecision(3)}, largest ${worst.error.toPrecision(3)} at ${JSON.stringify(worst.row)}`,
      );
      expect(misses.every(({ error }) => Number.isFinite(error))).toBe(true);
      expect(mean).toBeLessThanOrEqual(table.allowed.mean);
      expect(rms).toBeLessThanOrEqual(table.allowed.rms ?? Number.POSITIVE_INFINITY);
      expect(worst.error).toBeLessThanOrEqual(table.allowed.largest);
    });
  });
}
