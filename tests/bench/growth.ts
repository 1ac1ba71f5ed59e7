import { linearRegression } from "simple-statistics";
import { functionNamed } from "../../src/functions/catalogue";
import { type BenchLine, LINEAR } from "./line";
import { warm } from "./measure";

const SIZES = [100, 1_000, 10_000, 100_000];

const column = <T>(length: number, cell: (row: number) => T): T[][] =>
  Array.from({ length }, (_, row) => [cell(row)]);

/** Column calls whose time should grow as their rows do. */
const CALLS: Readonly<Record<string, (rows: number) => unknown[]>> = {
  CARBON: (rows) => [column(rows, (row) => ["1095", "5160", "O1"][row % 3])],
  TEMPERED_HRC: (rows) => ["1095", column(rows, (row) => 150 + (row % 250))],
  TEMPER_FOR: (rows) => ["5160", column(rows, (row) => 50 + (row % 60) / 10)],
  HARDNESS: (rows) => [column(rows, (row) => 20.5 + (row % 470) / 10), "HRC", "HV"],
  MASS: (rows) => [column(rows, (row) => 100 + (row % 400)), 30, 3],
};

/** Time against rows on logarithmic scales: the slope is the power with which it grows. */
export function growthWithRows(): BenchLine[] {
  return Object.entries(CALLS).flatMap(([name, given]) => {
    const fn = functionNamed(name);
    if (fn === undefined) throw new Error(`no function ${name}`);
    const times = SIZES.map((rows) => warm(fn, given(rows), 5));
    const { m } = linearRegression(times.map((ms, at) => [Math.log10(SIZES[at] ?? 1), Math.log10(ms)]));
    const each = ((times.at(-1) ?? 0) / 100_000) * 1000;
    return [
      { what: `${name}, growth over 100 to 100,000 rows`, value: m, unit: "power", budget: LINEAR },
      { what: `${name}, of 100,000 rows each`, value: each, unit: "µs" },
    ];
  });
}
