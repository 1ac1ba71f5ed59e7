import table from "../../data/hardening/plate-critical-thickness.json";
import { numberText } from "../quantity-text";
import { attempt, NotAvailable, Refusal } from "../refusal";
import { type Relation, relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { carbonOf } from "../steel/carbon";
import type { Composition } from "../steel/composition";
import { checkElements } from "../steel/element-ranges";
import type { Steel } from "../steel/steel";
import { grouped, number, oneOf, records } from "../table";
import { wordAsked } from "../word-list";
import { AIR_HARDENING, AIRS, type Air, airHardeningMm, airHardeningNote, notInAir } from "./air-hardening";
import { CARBIDE_CARBON, DISSOLVED_CEMENTITE, dissolvedAt } from "./dissolved";
import { gradeHardenability } from "./grade-series";
import { usualHardening } from "./hardening-temperature";
import type { Dissolved } from "./high-chromium";
import { IDEAL_DIAMETER, idealDiameter } from "./ideal-diameter";
import { findQuench, type QuenchMedium } from "./quench-media";

/** Baths that the plate calculation covers. */
export const BATHS = ["brine", "agitated water", "fast oil", "oil A", "slow oil"] as const;

/** Quenches that have a figure: baths, and air, plates and gas for air-hardening steels. */
export type Bath = (typeof BATHS)[number] | Air;

const WITH_FIGURE: readonly Bath[] = [...BATHS, ...AIRS];

/**
 * The bath of a quench.
 *
 * @param quench - One of `QUENCH_MEDIA`.
 * @throws NotAvailable for quenches without a figure, naming those that have one.
 */
export function bathOf({ word }: QuenchMedium): Bath {
  const bath = WITH_FIGURE.find((name) => name === word);
  if (bath !== undefined) return bath;
  throw new NotAvailable(`no plate thickness is held for ${word}: use ${WITH_FIGURE.join(", ")}`);
}

/** Thickest plate that hardens. */
export const MAX_PLATE = relation({
  title: "Thickest plate that hardens in a bath",
  source: "plate-quench-calculation",
  locator: table.locator,
  evidence: "compiled",
  inputs: { nose: { label: "pearlite nose time", unit: "s", min: 0.2, max: 40 } },
  output: { label: "plate thickness", unit: "mm" },
  error: { size: 1.5, unit: "times", kind: "factor either way" },
  note: "Both faces cooled, from 800 °C (1472 °F), grain size 7. Bainite is not in the calculation. Below 0.29 s the last slope is carried on.",
});

/** How thick a flat section may be. */
export interface MaxSection {
  /** Under 5 % pearlite at mid-thickness [mm]. */
  readonly fullyHardMm: number;
  /** Under 50 % pearlite at mid-thickness [mm]. */
  readonly halfHardMm: number;
  /** What the figures rest on, in words. */
  readonly note: string;
}

/** The calculation stopped at plates of this thickness, which the last printed nose time reaches in every bath. */
const THICKEST_MM = 60;
/** The nose time printed before the last. */
const LAST_UNSTOPPED_S = 10;
/** 0.9 s is the pearlite nose time of a steel with an ideal diameter of 31 mm; it grows as the square. */
const NOSE_S = 0.9;
const NOSE_DIAMETER_MM = 31;

const printed = records(table, {
  bath: oneOf(BATHS),
  noseS: number,
  fullyHardMm: number,
  halfHardMm: number,
});

type Plate = (typeof printed)[number];

const series = grouped(printed, ({ bath }) => bath);

const grades = new Map(gradeHardenability.map((held) => [held.grade, held]));

/** Pearlite nose time of a steel. */
export interface Nose {
  readonly seconds: number;
  readonly note: string;
}

/**
 * Nose time from the ideal diameter: 0.9 s at 31 mm, growing as the square.
 *
 * @param hardenC - Hardening temperature in °C, which sets what is in solution from 0.70 % C up.
 * @throws NotAvailable outside the element ranges of the ideal diameter, and for boron steels.
 */
export function noseOf(steel: Steel, hardenC = usualHardening(steel).celsius): Nose {
  const held = grades.get(steel.grade?.designation ?? "");
  if (held !== undefined) return { seconds: held.noseS, note: held.note };
  if (/^\d\dB\d\d/.test(steel.name)) {
    throw new NotAvailable(`${steel.name} hardens by boron, whose effect on hardenability is not held here`);
  }
  const c = steel.composition;
  checkElements(IDEAL_DIAMETER, c, ["Cr"]);
  const { carbon, chromium, assumed } = solutionAt(steel, hardenC);
  // Vanadium that stays in carbide does not slow pearlite; counting it would promise too much.
  const { counted, left } = withinFactors({ ...c, C: carbon, Cr: chromium, V: 0 });
  const diameter = idealDiameter(counted);
  const notes = [
    `hardenability from composition, ideal diameter ${numberText(Math.round(diameter))} mm`,
    c.V > 0 ? "vanadium not counted" : "",
    left.length > 0 ? `${left.join(", ")} counted only up to what the factors cover` : "",
    assumed,
  ];
  return {
    seconds: NOSE_S * (diameter / NOSE_DIAMETER_MM) ** 2,
    note: notes.filter((note) => note !== "").join(", "),
  };
}

/** Contents that slow pearlite, cut to what the factors cover: more of them could only harden deeper. */
const CUT = ["C", "Mn", "Mo"] as const;

export function withinFactors(c: Composition): { counted: Composition; left: string[] } {
  const limits = IDEAL_DIAMETER.inputs;
  const left = CUT.filter((element) => c[element] > limits[element].max);
  const cut = Object.fromEntries(left.map((element) => [element, limits[element].max]));
  return { counted: { ...c, ...cut }, left: [...left] };
}

/** Carbon of the eutectoid, which austenite holds beside any carbide of the low-alloy tool steels [mass %]. */
const EUTECTOID_CARBON = 0.8;

/** What is in solution at a hardening temperature, and what had to be assumed for it. */
export interface Solution extends Dissolved {
  readonly assumed: string;
}

/**
 * Carbon and chromium in solution. Tungsten and much silicon are not in the equilibrium regressions: for
 * such a grade the eutectoid carbon and half of the chromium stand, and the answer says so.
 *
 * @throws NotAvailable where `dissolvedAt` refuses a temperature or an analysis.
 */
export function solutionAt(steel: Steel, hardenC: number): Solution {
  const whole = carbonOf(steel);
  if (whole < CARBIDE_CARBON) return { carbon: whole, chromium: steel.composition.Cr, assumed: "" };
  const found = attempt(() => dissolvedAt(steel, hardenC));
  if (!(found instanceof Refusal)) return { ...found, assumed: "" };
  const c = steel.composition;
  if (!(c.W > 0.6 || c.Si > 0.6) || c.Cr > DISSOLVED_CEMENTITE.inputs.Cr.max) throw found;
  return {
    carbon: EUTECTOID_CARBON,
    chromium: c.Cr / 2,
    assumed: "carbon in solution not calculated for this steel: 0.8 % and half of its chromium taken",
  };
}

function checkNose(steel: Steel, seconds: number): void {
  const { min, max } = MAX_PLATE.inputs.nose;
  if (seconds >= min && seconds <= max) return;
  const limit = seconds > max ? "deeper" : "shallower";
  const diameter = Math.round(NOSE_DIAMETER_MM * Math.sqrt((seconds > max ? max : min) / NOSE_S));
  throw new NotAvailable(
    `${steel.name} hardens ${limit} than the plate calculation reaches: its ideal diameter is ` +
      `${seconds > max ? "over" : "under"} ${diameter} mm (${MAX_PLATE.title}, calculated ${MAX_PLATE.locator})`,
  );
}

/** Straight line on logarithmic scales between two printed nose times. */
function between(plates: readonly Plate[], noseS: number, column: "fullyHardMm" | "halfHardMm"): number {
  const above = Math.max(
    1,
    plates.findIndex((plate) => plate.noseS >= noseS),
  );
  const left = plates[above - 1] as Plate;
  const right = plates[above] as Plate;
  const share = Math.log(noseS / left.noseS) / Math.log(right.noseS / left.noseS);
  return left[column] * (right[column] / left[column]) ** share;
}

function isAir(bath: Bath): bath is Air {
  return AIRS.some((word) => word === bath);
}

/**
 * Thickest flat section that hardens in a bath.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param asked - A bath: one of `BATHS` or `AIRS`, what `findQuench` gives, or a word for it.
 * @returns Thickness, fully hard and half martensite [mm], good to a factor of 1.5; for air-hardening
 *   steels what is stated for still air, 0 where a steel does not harden in air.
 * @throws NotAvailable where the hardenability of the steel is outside the calculated series, and for a quench without
 *   a figure.
 * Error and source: {@link MAX_PLATE}, {@link AIR_HARDENING}.
 */
export function maxSection(steel: SteelAsked, asked: Bath | QuenchMedium | string): MaxSection {
  steel = steelAsked(steel);
  const bath = bathOf(wordAsked(asked, findQuench));
  const airMm = airHardeningMm(steel);
  if (airMm !== undefined) {
    return { fullyHardMm: airMm, halfHardMm: airMm, note: airHardeningNote(bath, airMm) };
  }
  if (isAir(bath)) return { fullyHardMm: 0, halfHardMm: 0, note: notInAir(steel, bath) };
  const nose = noseOf(steel);
  checkNose(steel, nose.seconds);
  const plates = series.get(bath) ?? [];
  const fullyHardMm = between(plates, nose.seconds, "fullyHardMm");
  const halfHardMm = between(plates, nose.seconds, "halfHardMm");
  const parts = ["within a factor 1.5 either way", nose.note];
  if (nose.seconds > LAST_UNSTOPPED_S) {
    parts.push(`may be more: the calculation stopped at ${THICKEST_MM} mm`);
  }
  return { fullyHardMm, halfHardMm, note: parts.filter((part) => part !== "").join("; ") };
}

/** The relations behind `maxSection` for a steel. */
export function maxSectionRelations(steel: Steel): readonly Relation[] {
  if (airHardeningMm(steel) !== undefined) return [AIR_HARDENING];
  return grades.has(steel.grade?.designation ?? "") ? [MAX_PLATE] : [MAX_PLATE, IDEAL_DIAMETER];
}
