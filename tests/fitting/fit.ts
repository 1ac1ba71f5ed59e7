import { readFileSync } from "node:fs";
import { SOURCES, type SourceKey } from "../../src/core/sources";
import { polynomialCurve } from "../../src/core/tempering/curve";
import type {
  CubicFit,
  FitFile,
  FittedCurve,
  PublishedPoint,
  TableFit,
  UnfittedBand,
} from "../../src/core/tempering/fits";
import { hollomonJaffe } from "../../src/core/tempering/hollomon-jaffe";
import { fitPolynomial, type WeightedPoint } from "./least-squares";
import { middleHrc, sound, type TemperRow, temperSource } from "./tempering-rows";

type Series = readonly [source: string, grade: string];

interface CurveGrades {
  readonly rows: readonly [string, "cubic" | "table", string[], Series[]][];
  readonly checks: readonly [string, string, string][];
  readonly points: readonly [string, string, string][];
}

const PLAN = JSON.parse(readFileSync("tests/fitting/data/curve-grades.json", "utf8")) as CurveGrades;

/** Weight of a whole source by its quality: paper or handbook, steelmaker, secondary page. */
const QUALITY_WEIGHT: Readonly<Record<string, number>> = { A: 1, B: 0.7, C: 0.5 };

/** Taken where a source prints no time: merchants' rule is 1 to 2 h for each 25 mm. */
const ASSUMED_HOURS = 2;
const MIN_HALF_WIDTH = 2;
const CENTRE = 12;
/** Hottest temper of the composition formula; blades are rarely tempered hotter. */
const BLADE_C = 430;
/** Nothing softens up to here: W2 keeps its as-quenched 67 HRC (Ryerson). */
const UNSOFTENED_C = 100;
const LOW_FIRST_ROW_C = 205;

function sourceKey(name: string): SourceKey {
  if (!(name in SOURCES)) throw new Error(`no source ${name}`);
  return name as SourceKey;
}

/** Decimals that keep rounding far below the scatter of the rows. */
function rounded(value: number, digits = 6): number {
  return Number(value.toFixed(digits));
}

function rowsOf([source, grade]: Series): TemperRow[] {
  return temperSource(source).rows.filter((row) => row.grade === grade);
}

/** Total hours of a row, the assumed time where none is printed. */
export function hoursOf(row: TemperRow): number {
  return row.hours === null ? ASSUMED_HOURS : row.hours * (row.cycles ?? 1);
}

/** Hollomon-Jaffe parameter of a row. */
export function parameterOf(row: TemperRow): number {
  return hollomonJaffe(row.temperLow as number, hoursOf(row));
}

function weighted(rows: readonly TemperRow[]): WeightedPoint[] {
  const counts = new Map<string, number>();
  for (const { source } of rows) counts.set(source, (counts.get(source) ?? 0) + 1);
  return rows.map((row) => {
    const weight = (QUALITY_WEIGHT[temperSource(row.source).quality] ?? 0) / (counts.get(row.source) ?? 1);
    return { x: parameterOf(row) - CENTRE, y: middleHrc(row), weight };
  });
}

interface Cubic {
  readonly coefficients: number[];
  readonly from: number;
  readonly to: number;
}

function falls({ coefficients, from, to }: Cubic): boolean {
  const curve = polynomialCurve(coefficients, CENTRE, from, to);
  const values = Array.from({ length: 201 }, (_, i) => curve.hrcAt(from + ((to - from) * i) / 200));
  return values.every((value, i) => i === 0 || value < (values[i - 1] as number));
}

/** A cubic, or the highest lower order that falls all the way. */
function cubicThrough(rows: readonly TemperRow[]): Cubic {
  const parameters = rows.map(parameterOf);
  // Outwards, so that the first and the last row stay inside.
  const from = Math.floor(Math.min(...parameters) * 1e4) / 1e4;
  const to = Math.ceil(Math.max(...parameters) * 1e4) / 1e4;
  for (const order of [3, 2, 1]) {
    const coefficients = fitPolynomial(weighted(rows), order).map((c) => rounded(c));
    const fit = { coefficients, from, to };
    if (falls(fit)) return fit;
  }
  throw new Error("no falling curve");
}

/** Error of a curve on one row, HRC, curve less row. */
export interface RowError {
  readonly row: TemperRow;
  readonly error: number;
}

function errorsOf(cubic: Cubic, rows: readonly TemperRow[]): RowError[] {
  const curve = polynomialCurve(cubic.coefficients, CENTRE, cubic.from, cubic.to);
  return rows
    .filter((row) => parameterOf(row) >= cubic.from && parameterOf(row) <= cubic.to)
    .map((row) => ({ row, error: curve.hrcAt(parameterOf(row)) - middleHrc(row) }));
}

/** Errors of a curve on rows that took no part: each source left out in turn, and the check rows. */
export function unfittedErrors(id: string): RowError[] {
  const [, form, , series] = PLAN.rows.find(([curve]) => curve === id) ?? [];
  if (form !== "cubic" || series === undefined) return [];
  const rows = series.flatMap(rowsOf).filter(sound);
  const sources = [...new Set(rows.map(({ source }) => source))];
  const leftOut = sources.flatMap((source) => {
    const others = rows.filter((row) => row.source !== source);
    if (others.length === 0) return [];
    const left = rows.filter((row) => row.source === source);
    return errorsOf(cubicThrough(others), left);
  });
  const checks = PLAN.checks
    .filter(([, , curve]) => curve === id)
    .flatMap(([source, grade]) => rowsOf([source, grade]));
  return [...leftOut, ...errorsOf(cubicThrough(rows), checks.filter(sound))];
}

/** The curve whose rows a row belongs to; `undefined` where it took no part in any. */
export function curveOfRow({ source, grade }: TemperRow): string | undefined {
  const isMember = ([from, name]: Series) => from === source && name === grade;
  return PLAN.rows.find(([, , , series]) => series.some(isMember))?.[0];
}

const withoutSource = new Map<string, Cubic | null>();

function cubicWithout(id: string, source: string): Cubic | null {
  const key = `${id} ${source}`;
  const known = withoutSource.get(key);
  if (known !== undefined) return known;
  const [, form, , series] = PLAN.rows.find(([curve]) => curve === id) ?? [];
  const others = (series ?? []).flatMap(rowsOf).filter((row) => sound(row) && row.source !== source);
  const cubic = form === "cubic" && others.length > 0 ? cubicThrough(others) : null;
  withoutSource.set(key, cubic);
  return cubic;
}

/** HRC of a curve made without the source of a row; `null` where nothing is left or its span ends before. */
export function curveWithout(id: string, row: TemperRow): number | null {
  const cubic = cubicWithout(id, row.source);
  const parameter = parameterOf(row);
  if (cubic === null || parameter < cubic.from || parameter > cubic.to) return null;
  return polynomialCurve(cubic.coefficients, CENTRE, cubic.from, cubic.to).hrcAt(parameter);
}

/** The error that 90 % of a list stay under. */
export function ninetieth(errors: readonly RowError[]): number {
  const sizes = errors.map(({ error }) => Math.abs(error)).sort((a, b) => a - b);
  return sizes[Math.ceil(0.9 * sizes.length) - 1] ?? 0;
}

function rootMeanSquare(errors: readonly RowError[]): number {
  return Math.sqrt(errors.reduce((sum, { error }) => sum + error * error, 0) / errors.length);
}

/** The next half HRC, and never under the scatter between laboratories. */
function bandOf(errors: readonly RowError[]): UnfittedBand {
  const within = ninetieth(errors);
  const halfWidth = Math.max(MIN_HALF_WIDTH, Math.ceil(within * 2) / 2);
  return { rows: errors.length, within: rounded(within, 2), halfWidth };
}

/**
 * Half-widths from all curves together: one source against another is the only honest measure, and
 * most grades have too few rows for one of their own.
 */
function bands(): FitFile["bands"] {
  const errors = PLAN.rows.flatMap(([id]) => unfittedErrors(id));
  const blade = ({ row }: RowError) => (row.temperLow as number) <= BLADE_C;
  return {
    bladeC: BLADE_C,
    blade: bandOf(errors.filter(blade)),
    above: bandOf(errors.filter((error) => !blade(error))),
  };
}

function span(values: readonly number[]): [number, number] {
  return [Math.min(...values), Math.max(...values)];
}

function fitCubic(id: string, grades: readonly string[], series: readonly Series[]): CubicFit {
  const rows = series.flatMap(rowsOf).filter(sound);
  const cubic = cubicThrough(rows);
  return {
    id,
    grades,
    form: "cubic",
    sources: [...new Set(rows.map(({ source }) => sourceKey(source)))],
    temperC: span(rows.map(({ temperLow }) => temperLow as number)),
    parameter: [cubic.from, cubic.to],
    centre: CENTRE,
    coefficients: cubic.coefficients,
    rows: rows.length,
    rms: rounded(rootMeanSquare(errorsOf(cubic, rows)), 2),
  };
}

function tablesOf(id: string, grades: readonly string[], series: readonly Series[]): TableFit[] {
  const all = series.flatMap(rowsOf);
  const rows = all.filter(sound);
  const hardened = [...new Set(rows.map(({ hardenLow }) => hardenLow))];
  return hardened.map((low) =>
    tableFit(
      id,
      grades,
      all.filter((row) => row.hardenLow === low),
    ),
  );
}

function tableFit(id: string, grades: readonly string[], all: readonly TemperRow[]): TableFit {
  const usable = all.filter(sound);
  const timed = usable.filter(({ hours }) => hours !== null);
  const rows = (timed.length > 0 ? timed : usable).sort(
    (a, b) => (a.temperLow as number) - (b.temperLow as number),
  );
  const first = rows[0] as TemperRow;
  const knots = rows.map((row): [number, number] => [row.temperLow as number, middleHrc(row)]);
  const quenched = all.find(({ kind, hrcHigh }) => kind === "as_quenched" && hrcHigh !== null);
  const [lowest] = knots[0] as [number, number];
  if (quenched !== undefined && lowest > UNSOFTENED_C && lowest <= LOW_FIRST_ROW_C) {
    knots.unshift([UNSOFTENED_C, middleHrc(quenched)]);
  }
  return {
    id,
    grades,
    form: "table",
    sources: [sourceKey(first.source)],
    hours: hoursOf(first),
    timePrinted: timed.length > 0,
    hardenC: first.hardenLow === null ? null : [first.hardenLow, first.hardenHigh ?? first.hardenLow],
    temperC: span(knots.map(([celsius]) => celsius)),
    knots,
    rows: knots.length,
    rms: 0,
  };
}

function pointsOf([grade, source, sourceGrade]: readonly [string, string, string]): PublishedPoint[] {
  return rowsOf([source, sourceGrade])
    .filter(({ kind }) => kind === "point" || kind === "band")
    .map(({ temperLow, temperHigh, hrcLow, hrcHigh }) => ({
      grade,
      source: sourceKey(source),
      temperC: [temperLow as number, temperHigh as number],
      hrc: [hrcLow as number, hrcHigh as number],
    }));
}

/** Every tempering curve, fitted anew from the printed rows; the same answer each time. */
export function fitAll(): FitFile {
  const curves = PLAN.rows.flatMap(([id, form, grades, series]): FittedCurve[] =>
    form === "cubic" ? [fitCubic(id, grades, series)] : tablesOf(id, grades, series),
  );
  return { bands: bands(), curves, points: PLAN.points.flatMap(pointsOf) };
}

/** The text of `fits.json`: one curve a line. */
function fitText(file: FitFile): string {
  const lines = (list: readonly unknown[]) => list.map((item) => `  ${JSON.stringify(item)}`).join(",\n");
  return `{\n "bands": ${JSON.stringify(file.bands)},\n "curves": [\n${lines(file.curves)}\n ],\n "points": [\n${lines(file.points)}\n ]\n}\n`;
}

/** What `fits.json` must hold today. */
export function fitFileText(): string {
  return fitText(fitAll());
}
