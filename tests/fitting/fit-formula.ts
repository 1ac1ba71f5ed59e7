import { readFileSync } from "node:fs";
import type { FormulaComposition } from "../../src/core/tempering/composition-formula";
import { hollomonJaffe } from "../../src/core/tempering/hollomon-jaffe";
import { leastSquares } from "./least-squares";

const CENTRE = 10;
const ELEMENTS = ["C", "Mn", "Si", "Ni", "Cr", "Mo"] as const;

type Row = readonly [
  C: number,
  Mn: number,
  Si: number,
  Ni: number,
  Cr: number,
  Mo: number,
  celsius: number,
  hours: number,
  hrc: number,
];

/** The rows of the fit: composition, temper in °C, time in h, HRC. */
const ROWS: readonly Row[] = (
  JSON.parse(readFileSync("tests/tempering/published/formula-fit-set.json", "utf8")) as { rows: Row[] }
).rows;

/** Terms of the composition formula at a temper, in the order of its equation. */
function terms(c: FormulaComposition, celsius: number, hours: number): number[] {
  const p = hollomonJaffe(celsius, hours) - CENTRE;
  const f = 1 - Math.exp(-5 * c.C);
  const silicon = c.Si - 0.18;
  return [1, f, p, p * f, p * p, c.Mn - 0.65, silicon, silicon * p, c.Ni, c.Cr, c.Cr * p, c.Mo, c.Mo * p];
}

const compositionOf = ([C, Mn, Si, Ni, Cr, Mo]: Row): FormulaComposition => ({ C, Mn, Si, Ni, Cr, Mo });

/** Whether two analyses are the same measured steel. */
export function isSameSteel(one: FormulaComposition, other: FormulaComposition): boolean {
  return ELEMENTS.every((element) => Math.abs(one[element] - other[element]) < 1e-9);
}

/** The composition formula fitted anew, and what its steels cover. */
export interface Refit {
  hrc(c: FormulaComposition, celsius: number, hours: number): number;
  /** Whether every element lies inside the steels that were left in, give or take a tenth of their span. */
  covers(c: FormulaComposition): boolean;
  readonly rows: number;
}

const keyOf = (row: Row) => row.slice(0, 6).join(" ");

/**
 * The composition formula fitted to the same rows but those left out, every steel with equal weight.
 *
 * @param leaveOut - True for the steels that take no part.
 */
export function refitFormula(leaveOut: (c: FormulaComposition) => boolean): Refit {
  const rows = ROWS.filter((row) => !leaveOut(compositionOf(row)));
  const counts = new Map<string, number>();
  for (const row of rows) counts.set(keyOf(row), (counts.get(keyOf(row)) ?? 0) + 1);
  const coefficients = leastSquares(
    rows.map((row) => ({
      terms: terms(compositionOf(row), row[6], row[7]),
      y: row[8],
      weight: 1 / (counts.get(keyOf(row)) ?? 1),
    })),
  );
  return {
    rows: rows.length,
    hrc: (c, celsius, hours) =>
      terms(c, celsius, hours).reduce((sum, term, i) => sum + term * (coefficients[i] as number), 0),
    covers: (c) => ELEMENTS.every((element, i) => within(c[element], rows, i)),
  };
}

/** Residuals up to this much of an element are none: they move no hardness. */
const TRACE = 0.15;

function within(percent: number, rows: readonly Row[], column: number): boolean {
  const values = rows.map((row) => row[column] as number);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const margin = (most - least) / 10;
  return percent <= Math.max(most + margin, TRACE) && percent >= least - margin - (column > 0 ? TRACE : 0);
}
