import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { SOURCES, type SourceKey } from "../../src/core/sources";
import { findSteel } from "../../src/core/steel/find";
import { temperedRange } from "../../src/core/tempering/tempered-range";

type Row = readonly [steel: string, celsius: number, hours: number, hrc: number];

interface Table {
  readonly title: string;
  readonly source: SourceKey;
  readonly quantity: string;
  readonly fitted: boolean;
  readonly rows: readonly Row[];
}

const FOLDER = new URL("./published/", import.meta.url);

/** Every table of measured hardness that took no part in a curve or in the formula. */
const UNFITTED: readonly Table[] = readdirSync(FOLDER)
  .map((name) => JSON.parse(readFileSync(new URL(name, FOLDER), "utf8")) as Table)
  .filter(({ quantity, fitted }) => quantity === "hardness after temper" && !fitted);

const READ = UNFITTED.filter(({ source }) => SOURCES[source].seen === "READ");

function holds([steel, celsius, hours, hrc]: Row): boolean {
  const { low, high } = temperedRange(findSteel(steel), celsius, { hours, cycles: 1 });
  return hrc >= Math.round(low) && hrc <= Math.round(high);
}

function share(tables: readonly Table[]): { rows: number; share: number } {
  const rows = tables.flatMap((table) => table.rows);
  return { rows: rows.length, share: rows.filter(holds).length / rows.length };
}

test("bands in whole HRC hold 90 % of the rows that took no part in a fit", () => {
  const read = share(READ);
  const all = share(UNFITTED);
  console.info(
    `read: ${read.rows} rows, ${(100 * read.share).toFixed(0)} % inside; with recalled rows ${all.rows}, ${(100 * all.share).toFixed(0)} %`,
  );
  expect(read.rows).toBeGreaterThanOrEqual(49);
  expect(read.share).toBeGreaterThanOrEqual(0.9);
  expect(all.share).toBeGreaterThanOrEqual(0.9);
});

/** The row of a series nearest to 205 °C stands for a smith's own coupon. */
function coupon(rows: readonly Row[]): Row {
  return rows.reduce((best, row) => (Math.abs(row[1] - 205) < Math.abs(best[1] - 205) ? row : best));
}

function seriesOf(tables: readonly Table[]): Row[][] {
  const series = new Map<string, Row[]>();
  for (const { title, rows } of tables)
    for (const row of rows)
      series.set(`${title} ${row[0]}`, [...(series.get(`${title} ${row[0]}`) ?? []), row]);
  return [...series.values()].filter((rows) => rows.length > 2 && rows.some(([, celsius]) => celsius < 260));
}

function holdsFromCoupon(known: Row, [steel, celsius, hours, hrc]: Row): boolean {
  const treatment = { hours, cycles: 1, known: { celsius: known[1], hrc: known[3] } };
  const { low, high } = temperedRange(findSteel(steel), celsius, treatment);
  return hrc >= Math.round(low) && hrc <= Math.round(high);
}

test("bands moved to one reading of the series hold 90 % of its other rows up to 430 °C", () => {
  const held = seriesOf(UNFITTED)
    .filter((rows) => Math.abs(missOf(coupon(rows))) <= 3)
    .flatMap((rows) => {
      const known = coupon(rows);
      return rows.filter((row) => row !== known && row[1] <= 430).map((row) => holdsFromCoupon(known, row));
    });
  const inside = held.filter(Boolean).length / held.length;
  console.info(`with a coupon: ${held.length} rows, ${(100 * inside).toFixed(0)} % inside`);
  expect(held.length).toBeGreaterThanOrEqual(34);
  expect(inside).toBeGreaterThanOrEqual(0.9);
});

function missOf([steel, celsius, hours, hrc]: Row): number {
  return hrc - temperedRange(findSteel(steel), celsius, { hours, cycles: 1 }).likely;
}
