import type { SourceKey } from "../sources";
import { sourceKey } from "../table";
import file from "./fits.json";

type Span = readonly [low: number, high: number];

interface FittedCurveBase {
  readonly id: string;
  readonly grades: readonly string[];
  readonly sources: readonly SourceKey[];
  /** Temper of the rows, °C. */
  readonly temperC: Span;
  /** Rows behind the curve. */
  readonly rows: number;
  /** Root mean square of the rows about the curve, HRC. */
  readonly rms: number;
}

/** Least squares through measured series. */
export interface CubicFit extends FittedCurveBase {
  readonly form: "cubic";
  readonly parameter: Span;
  readonly centre: number;
  readonly coefficients: readonly number[];
}

/** The rows of a steelmaker's table, °C and HRC, all at `hours` in all. */
export interface TableFit extends FittedCurveBase {
  readonly form: "table";
  readonly hours: number;
  /** False where the source prints no time and 2 h is assumed. */
  readonly timePrinted: boolean;
  /** Hardening temperature of the table, °C; `null` where it is not printed. */
  readonly hardenC: Span | null;
  readonly knots: readonly (readonly [celsius: number, hrc: number])[];
}

export type FittedCurve = CubicFit | TableFit;

/** A published temper of a grade that has no curve. */
export interface PublishedPoint {
  readonly grade: string;
  readonly source: SourceKey;
  readonly temperC: Span;
  readonly hrc: Span;
}

/** How far curves miss rows that took no part in them: rows of another source, or of one left out. */
export interface UnfittedBand {
  readonly rows: number;
  /** The error that 90 % of the rows stay under, HRC. */
  readonly within: number;
  /** Half-width of the band, HRC. */
  readonly halfWidth: number;
}

/** Contents of `fits.json`. */
export interface FitFile {
  /** Up to `bladeC` in °C, and above it. */
  readonly bands: { readonly bladeC: number; readonly blade: UnfittedBand; readonly above: UnfittedBand };
  readonly curves: readonly FittedCurve[];
  readonly points: readonly PublishedPoint[];
}

function pair([first = Number.NaN, second = Number.NaN]: readonly number[]): Span {
  return [first, second];
}

function curveFrom(curve: (typeof file.curves)[number]): FittedCurve {
  const sources = curve.sources.map(sourceKey);
  const temperC = pair(curve.temperC);
  if (curve.knots === undefined) {
    return { ...curve, form: "cubic", sources, temperC, parameter: pair(curve.parameter) };
  }
  const hardenC = curve.hardenC === null ? null : pair(curve.hardenC);
  return { ...curve, form: "table", sources, temperC, hardenC, knots: curve.knots.map(pair) };
}

const CURVES = file.curves.map(curveFrom);

const POINTS: readonly PublishedPoint[] = file.points.map((point) => ({
  ...point,
  source: sourceKey(point.source),
  temperC: pair(point.temperC),
  hrc: pair(point.hrc),
}));

/** Half-widths of the grades' own curves. */
export const CURVE_BANDS: FitFile["bands"] = file.bands;

const byGrade = new Map<string, FittedCurve[]>();
for (const curve of CURVES) {
  for (const grade of curve.grades) byGrade.set(grade, [...(byGrade.get(grade) ?? []), curve]);
}

/** The curves of a grade: one, or one for each hardening temperature of its table. */
export function fittedCurves(grade: string): readonly FittedCurve[] {
  return byGrade.get(grade) ?? [];
}

/** Single published tempers of a grade without a curve. */
export function publishedPoints(grade: string): readonly PublishedPoint[] {
  return POINTS.filter((point) => point.grade === grade);
}
