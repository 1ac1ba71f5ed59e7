import table from "../../data/hardening/jominy-divisors.json";
import { checkRange, type Relation, relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { carbonOf } from "../steel/carbon";
import type { Composition } from "../steel/composition";
import { checkElements, elements } from "../steel/element-ranges";
import type { Steel } from "../steel/steel";
import { number, orNull, records } from "../table";
import { CARBIDE_CARBON, dissolvedAt } from "./dissolved";
import { GRADE_SERIES, gradeHardenability } from "./grade-series";
import { usualHardening } from "./hardening-temperature";
import { IDEAL_DIAMETER, idealDiameter } from "./ideal-diameter";
import { initialHardness } from "./initial-hardness";
import { HRC_PER_PERCENT_AUSTENITE, retainedAustenite } from "./martensite";
import { solutionAt, withinFactors } from "./max-section";
import { martensiteHardness } from "./quenched";

/** Effect of the austenite grain on the ideal diameter. */
const GRAIN_EFFECT = relation({
  title: "Effect of grain size on the ideal diameter",
  source: "grain-factor",
  locator: "factor by ASTM grain number",
  evidence: "compiled",
  inputs: { grain: { label: "ASTM grain number", unit: "", min: 4, max: 10 } },
  output: { label: "ideal diameter", unit: "mm" },
  error: { size: null, unit: "mm", kind: "seen in one public calculation only, not in the standard" },
});

/** Hardness along the end-quenched bar. */
export const JOMINY_CURVE = relation({
  title: "End-quench hardness: initial hardness over a dividing factor",
  source: "astm-a255",
  locator: "calculation of end-quench hardenability, metric factors",
  evidence: "standard",
  inputs: {
    ...elements({
      C: [0.1, 1.2],
      Mn: [0.2, 2.2],
      Si: [0.1, 2.2],
      Cr: [0, 1.8],
      Ni: [0, 2],
      Cu: [0, 0.35],
      Mo: [0, 0.55],
      V: [0, 0.2],
      // The method has no factor for tungsten, which keeps carbon out of the austenite.
      W: [0, 0.6],
    }),
    diameter: { label: "ideal diameter", unit: "mm", min: 15, max: 177.8 },
    distance: { label: "distance from the quenched end", unit: "mm", min: 1.5, max: 50 },
  },
  output: { label: "hardness", unit: "HRC" },
  error: {
    size: 5,
    unit: "HRC",
    kind: "half-width that covers 90 % of the middles of eight recalled hardenability bands, 1045H to 9260H, none used in a fit",
  },
  note: "For a grade, 0.10 % Ni, 0.08 % Cr, 0.02 % Mo and 0.10 % Cu are counted as residuals where it has less. The standard stops at 0.70 % C; above it what is in solution counts, an estimate. The span of ideal diameters is recalled; above it the largest stands. Bias over all eight -0.3 HRC; 5150 and 5160, alloyed with chromium alone, read 3 HRC under the middle of their bands, the foot of 1045 5 under it.",
});

const PRINTED_GRAINS = [1.27, 1.172, 1.083, 1];

/** Factor on the ideal diameter for an ASTM grain number from 4 to 10; straight between whole numbers. */
function grainFactor(grain: number): number {
  checkRange(GRAIN_EFFECT, "grain", grain);
  if (grain >= 7) return 1 - 0.08 * (grain - 7);
  const left = Math.floor(grain);
  const [low, high] = [PRINTED_GRAINS[left - 4] as number, PRINTED_GRAINS[left - 3] as number];
  return low + (grain - left) * (high - low);
}

/** From 0.70 % C only what is in solution counts, and vanadium stays in carbide. */
function austeniteOf(steel: Steel): Composition {
  const carbon = carbonOf(steel);
  if (carbon < CARBIDE_CARBON) return { ...steel.composition, C: carbon };
  const inSolution = dissolvedAt(steel, usualHardening(steel).celsius);
  return { ...steel.composition, C: inSolution.carbon, Cr: inSolution.chromium, V: 0 };
}

/** Diameters of grades whose carbon lies outside the factors. */
const heldDiameters = new Map(gradeHardenability.map(({ grade, diameter }) => [grade, diameter]));

/**
 * Ideal diameter of a steel.
 *
 * @param steel - A grade or an analysis; a held grade with more carbon in solution than the factors
 *   cover gives the figure of the grade series that MAX_SECTION uses.
 * @param grain - ASTM grain number of the austenite, 4 to 10.
 * @returns Diameter of a round that is half martensite at its centre in an ideal quench [mm]
 * @throws NotAvailable outside the element ranges of the method.
 * Error and source: {@link IDEAL_DIAMETER}, {@link GRAIN_EFFECT}, {@link GRADE_SERIES}.
 */
export function hardenability(steel: SteelAsked, grain = 7): number {
  steel = steelAsked(steel);
  const factor = grainFactor(grain);
  const austenite = austeniteOf(steel);
  const diameter = heldDiameters.get(steel.grade?.designation ?? "");
  const isBeyond = austenite.C > IDEAL_DIAMETER.inputs.C.max;
  return factor * (isBeyond && diameter !== undefined ? diameter : idealDiameter(austenite));
}

const divisors = records(table, {
  distance: number,
  a0: number,
  a1: number,
  a2: number,
  a3: number,
  a4: number,
  a5: number,
  oneAbove: orNull(number),
});

type Divisor = (typeof divisors)[number];

/** Dividing factor at a printed distance; past the limit of its polynomial the factor is 1. */
function dividingFactor({ a0, a1, a2, a3, a4, a5, oneAbove }: Divisor, diameter: number): number {
  if (oneAbove !== null && diameter >= oneAbove) return 1;
  let sum = 0;
  for (const coefficient of [a5, a4, a3, a2, a1, a0]) sum = sum * diameter + coefficient;
  return Math.max(1, sum);
}

/**
 * Hardness along an end-quenched bar.
 *
 * @param initial - Hardness at the quenched end in HRC.
 * @param diameter - Ideal diameter in mm, 25.4 to 177.8.
 * @param distance - Distance from the quenched end in mm, 1.5 to 50.
 * @returns HRC; straight lines between the printed distances.
 * @throws NotAvailable outside the ranges.
 */
export function endQuenchHardness(initial: number, diameter: number, distance: number): number {
  checkRange(JOMINY_CURVE, "diameter", diameter);
  checkRange(JOMINY_CURVE, "distance", distance);
  const above = divisors.findIndex((divisor) => divisor.distance >= distance);
  const right = divisors[above] as Divisor;
  const left = divisors[above - 1];
  const [start, startHardness] =
    left === undefined
      ? [JOMINY_CURVE.inputs.distance.min, initial]
      : [left.distance, initial / dividingFactor(left, diameter)];
  const endHardness = initial / dividingFactor(right, diameter);
  return startHardness + ((distance - start) / (right.distance - start)) * (endHardness - startHardness);
}

/** The composition that hardens: from 0.70 % C only what is in solution counts, and vanadium stays in carbide. */
function hardenedAustenite(steel: Steel, carbon: number): Composition {
  const whole = withResiduals(steel);
  if (carbon < CARBIDE_CARBON) return { ...whole, C: carbon };
  const { carbon: C, chromium } = solutionAt(steel, usualHardening(steel).celsius);
  return { ...whole, C, Cr: Math.max(RESIDUALS.Cr, chromium), V: 0 };
}

/**
 * What a heat of a grade carries without being asked [mass %]; the worked example of the standard counts such
 * residuals too. An analysis is taken as it is given.
 */
const RESIDUALS = { Ni: 0.1, Cr: 0.08, Mo: 0.02, Cu: 0.1 } as const;

function withResiduals({ grade, composition: c }: Steel): Composition {
  if (grade === null) return c;
  const counted = Object.entries(RESIDUALS).map(([element, usual]) => [
    element,
    Math.max(usual, c[element as keyof typeof RESIDUALS]),
  ]);
  return { ...c, ...Object.fromEntries(counted) };
}

/**
 * End-quench hardness of a steel from its composition.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param distance - Distance from the quenched end [mm]
 * @returns [HRC]
 * @throws NotAvailable outside the composition and distance ranges, above 1.2 % C or 1.8 % Cr.
 * Error and source: {@link JOMINY_CURVE}.
 */
export function jominyHardness(steel: SteelAsked, distance: number): number {
  steel = steelAsked(steel);
  const carbon = carbonOf(steel);
  checkElements(JOMINY_CURVE, { ...steel.composition, C: carbon });
  const austenite = hardenedAustenite(steel, carbon);
  const initial =
    carbon < CARBIDE_CARBON
      ? initialHardness(carbon)
      : martensiteHardness(austenite.C) - HRC_PER_PERCENT_AUSTENITE * retainedAustenite(austenite);
  const diameter = idealDiameter(withinFactors(austenite).counted);
  return endQuenchHardness(initial, Math.min(diameter, JOMINY_CURVE.inputs.diameter.max), distance);
}

/** The relations behind `hardenability`. */
export const HARDENABILITY_RELATIONS: readonly Relation[] = [IDEAL_DIAMETER, GRADE_SERIES, GRAIN_EFFECT];
