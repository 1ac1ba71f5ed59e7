import { Refusal } from "../../src/core/refusal";
import { isWithin } from "../../src/core/relation";
import type { Composition } from "../../src/core/steel/composition";
import { findSteel } from "../../src/core/steel/find";
import type { Steel } from "../../src/core/steel/steel";
import { COMPOSITION_FORMULA, type FormulaComposition } from "../../src/core/tempering/composition-formula";
import { fittedCurves } from "../../src/core/tempering/fits";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { temperModel } from "../../src/core/tempering/tempering-model";
import { toolSteelModel } from "../../src/core/tempering/tool-steel-curves";
import { curveOfRow, curveWithout, hoursOf } from "../fitting/fit";
import { isSameSteel, type Refit, refitFormula } from "../fitting/fit-formula";
import {
  middleHrc,
  NEVER_FITTED,
  TEMPER_SOURCES,
  type TemperRow,
  temperSource,
} from "../fitting/tempering-rows";

/** What stands behind the prediction of a row. */
export type Ground =
  | "curve of other sources"
  | "formula, steel left out"
  | "as shipped, took no part"
  | "in sample only"
  | "refused";

/** One published row with what the library says of it. */
export interface Scored {
  readonly row: TemperRow;
  readonly ground: Ground;
  /** Prediction less row, HRC; NaN where refused. */
  readonly error: number;
  /** Under the ceilings: read, paper, handbook or steelmaker, hardened through, not of a source that is never fitted. */
  readonly counts: boolean;
  readonly why: string;
}

const COOLEST_C = 150;
const HOTTEST_C = 427;

/** Every row held whose temper starts between 150 and 427 °C (800 °F), whatever its quality. */
export const BLADE_ROWS: readonly TemperRow[] = [...TEMPER_SOURCES.values()].flatMap(({ rows }) =>
  rows.filter(({ temperLow }) => temperLow !== null && temperLow >= COOLEST_C && temperLow <= HOTTEST_C),
);

const SOURCE_STEEL: Readonly<Record<string, string>> = {
  "T10/T12": "T10",
  "W1-1.15C": "W1-11",
  M2: "M2 (regular C)",
  "1.4034": "X46Cr13",
  "1.4109": "440A",
  "1.4112": "440B",
  "1.4116": "X50CrMoV15",
  "1.4125": "440C",
  "1.4528": "1.4528",
};

/** Middle of the SAE J403 and J404 limits (from memory) of grades that are not in the grade table. */
const OUTSIDE_TABLE: Readonly<Record<string, string>> = {
  "1030": "C 0.31 Mn 0.75 Si 0.22",
  "1137": "C 0.36 Mn 1.5 Si 0.22",
  "1141": "C 0.41 Mn 1.5 Si 0.22",
  "1144": "C 0.44 Mn 1.5 Si 0.22",
  "1340": "C 0.40 Mn 1.75 Si 0.22",
  "4037": "C 0.37 Mn 0.8 Si 0.22 Mo 0.25",
  "4042": "C 0.42 Mn 0.8 Si 0.22 Mo 0.25",
  "4130": "C 0.30 Mn 0.5 Si 0.22 Cr 0.95 Mo 0.2",
  "5046": "C 0.46 Mn 0.85 Si 0.22 Cr 0.28",
  "5130": "C 0.30 Mn 0.8 Si 0.22 Cr 0.95",
  "5140": "C 0.40 Mn 0.8 Si 0.22 Cr 0.8",
  "8630": "C 0.30 Mn 0.8 Si 0.22 Ni 0.55 Cr 0.5 Mo 0.2",
  "8640": "C 0.40 Mn 0.875 Si 0.22 Ni 0.55 Cr 0.5 Mo 0.2",
  "8650": "C 0.50 Mn 0.875 Si 0.22 Ni 0.55 Cr 0.5 Mo 0.2",
  "8740": "C 0.40 Mn 0.875 Si 0.22 Ni 0.55 Cr 0.5 Mo 0.25",
};

const analysisOf = (row: TemperRow) => temperSource(row.source).analyses[row.grade];

/** The steel of a row: its grade where it is one of the table, else the analysis of the source. */
function steelOf(row: TemperRow): Steel {
  const analysis = analysisOf(row);
  const grade = SOURCE_STEEL[row.grade] ?? row.grade;
  if (analysis !== undefined && fittedCurves(grade).length === 0) {
    const [C, Mn, Si, Cr, Ni, Mo, V] = analysis;
    return findSteel(`C ${C} Mn ${Mn} Si ${Si} Cr ${Cr} Ni ${Ni} Mo ${Mo} V ${V}`);
  }
  return findSteel(OUTSIDE_TABLE[grade] ?? grade);
}

function formulaComposition(row: TemperRow, steel: Steel): FormulaComposition {
  const analysis = analysisOf(row);
  if (analysis === undefined) return steel.composition;
  const [C = 0, Mn = 0, Si = 0, Cr = 0, Ni = 0, Mo = 0] = analysis;
  return { C, Mn, Si, Cr, Ni, Mo };
}

const refits = new Map<string, Refit>();

/** The formula without the steel of a row; the same fit serves every row of it. */
function refitWithout(c: FormulaComposition): Refit {
  const key = JSON.stringify(c);
  const known = refits.get(key);
  if (known !== undefined) return known;
  const refit = refitFormula((member) => isSameSteel(member, c));
  refits.set(key, refit);
  return refit;
}

const FULL_FIT = refitFormula(() => false);

function middleC({ temperLow, temperHigh }: TemperRow): number {
  return ((temperLow as number) + (temperHigh ?? (temperLow as number))) / 2;
}

function inFormulaRange(c: FormulaComposition, celsius: number, hours: number): boolean {
  const given: Record<string, number> = { ...c, temperC: celsius, hours };
  const limits = Object.entries(COMPOSITION_FORMULA.inputs);
  return limits.every(([name, limit]) => given[name] === undefined || isWithin(limit, given[name]));
}

interface Prediction {
  readonly hrc: number;
  readonly ground: Ground;
}

/** What the formula would say had the steel of the row never been measured. */
function formulaPrediction(row: TemperRow, steel: Steel): Prediction | null {
  const c = formulaComposition(row, steel);
  const refit = refitWithout(c);
  const isMember = refit.rows < FULL_FIT.rows;
  if (!isMember || !refit.covers(c) || !inFormulaRange(c, middleC(row), hoursOf(row))) return null;
  return { hrc: refit.hrc(c, middleC(row), hoursOf(row)), ground: "formula, steel left out" };
}

/** The composition formula for a grade whose own table is the very source to be left out. */
function formulaForTable(row: TemperRow, steel: Steel): Prediction | null {
  try {
    const model = temperModel(findSteel(analysisText(steel.composition)), row.hardenLow ?? undefined);
    if (model.relations[0] !== COMPOSITION_FORMULA) return null;
    const treatment = { hours: hoursOf(row), cycles: 1, hardenC: row.hardenLow ?? undefined };
    const hrc = temperedHardness(model.steel, middleC(row), treatment);
    return { hrc, ground: "formula, steel left out" };
  } catch (thrown) {
    if (thrown instanceof Refusal) return null;
    throw thrown;
  }
}

function analysisText(c: Composition): string {
  return Object.entries(c)
    .filter(([, percent]) => percent > 0)
    .map(([element, percent]) => `${element} ${percent}`)
    .join(" ");
}

/** Rows of such a steel may have made its curve. */
function hasToolSteelCurve(steel: Steel): boolean {
  return toolSteelModel(steel, steel.grade?.designation ?? "") !== undefined;
}

function withoutItsSource(row: TemperRow, steel: Steel): Prediction | null {
  const curve = curveOfRow(row);
  const shipped = steel.grade === null ? [] : fittedCurves(steel.grade.designation);
  if (curve === undefined && shipped.length > 0) return asShipped(row, steel, "as shipped, took no part");
  if (curve !== undefined) {
    const hrc = curveWithout(curve, row);
    if (hrc !== null) return { hrc, ground: "curve of other sources" };
  }
  if (analysisOf(row) !== undefined) return formulaPrediction(row, steel);
  return curve === undefined && !hasToolSteelCurve(steel)
    ? asShipped(row, steel, "as shipped, took no part")
    : formulaForTable(row, steel);
}

function asShipped(row: TemperRow, steel: Steel, ground: Ground): Prediction {
  const treatment = { hours: hoursOf(row), cycles: 1, hardenC: hardenOf(row, steel) };
  return { hrc: temperedHardness(steel, middleC(row), treatment), ground };
}

/** Only a steel with several tables needs to be told where it was hardened. */
function hardenOf(row: TemperRow, steel: Steel): number | undefined {
  const several = fittedCurves(steel.grade?.designation ?? "").length > 1;
  return several ? (row.hardenLow ?? undefined) : undefined;
}

function predict(row: TemperRow): Prediction {
  const steel = steelOf(row);
  // What is refused as shipped is refused here, whatever a curve without its source would say.
  const shipped = asShipped(row, steel, "in sample only");
  return withoutItsSource(row, steel) ?? shipped;
}

const QUALITIES = ["A", "B"];

function counted(row: TemperRow): boolean {
  const { quality, seen } = temperSource(row.source);
  return (
    QUALITIES.includes(quality) && seen === "READ" && row.kind === "point" && !NEVER_FITTED.has(row.source)
  );
}

/** A row with its prediction by everything but its own source. */
export function score(row: TemperRow): Scored {
  const counts = counted(row);
  try {
    const { hrc, ground } = predict(row);
    return { row, ground, error: hrc - middleHrc(row), counts, why: "" };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return { row, ground: "refused", error: Number.NaN, counts, why: thrown.message };
  }
}
