import { withinWords } from "../cell-text";
import { airHardeningMm } from "../hardening/air-hardening";
import { softBySteel } from "../hardening/hardens";
import { maxSection } from "../hardening/max-section";
import { numberText } from "../quantity-text";
import { attempt, NotAvailable, Refusal } from "../refusal";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { limitsCaution } from "../steel/composition-text";
import type { Steel } from "../steel/steel";
import { brittleText, embrittlementCaution } from "./embrittlement";
import { CURVE_BANDS } from "./fits";
import { hollomonJaffe, totalHours } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { type QuenchedSection, sectionEffect } from "./section-effect";
import { hardnessIn, type KnownTemper, readingShift, type Treatment } from "./tempered";
import { temperModel } from "./tempering-model";

/** Hardness after temper with its band. */
export interface TemperedRange {
  /** Lower end of the band [HRC]. */
  readonly low: number;
  /** Likely hardness [HRC]. */
  readonly likely: number;
  /** Upper end of the band [HRC]. */
  readonly high: number;
  /** Where the figures come from, in words. */
  readonly basis: string;
  /** What to be wary of, in words; empty where nothing is. */
  readonly caution: string;
}

/** Half-width with a reading of the same steel near by, and farther from it. */
export const KNOWN_HALF_WIDTH = 2;
const FAR_HALF_WIDTH = 2.5;
const FAR_FROM_KNOWN_C = 75;

/** Half-width of the band that covers 90 %, HRC. */
export function bandHalfWidth(
  model: TemperModel,
  celsius: number,
  hours: number,
  known?: KnownTemper,
): number {
  if (known === undefined) return model.halfWidthAt(celsius, hollomonJaffe(celsius, hours));
  return Math.abs(celsius - known.celsius) > FAR_FROM_KNOWN_C ? FAR_HALF_WIDTH : KNOWN_HALF_WIDTH;
}

/** The hottest temper of the narrower error, and that error [HRC]. */
function narrowBand(model: TemperModel, hours: number, known: KnownTemper | undefined) {
  if (known !== undefined) return { endC: known.celsius + FAR_FROM_KNOWN_C, narrow: KNOWN_HALF_WIDTH };
  const { bladeC } = CURVE_BANDS;
  return { endC: bladeC, narrow: model.halfWidthAt(bladeC, hollomonJaffe(bladeC, hours)) };
}

/**
 * Top of a band, HRC. Above the tempers of blades, and far from a reading, the error is wider; yet what was tempered
 * hotter cannot come out harder than what was tempered at the end of the narrower band, unless the curve itself rises.
 */
export function bandTop(
  model: TemperModel,
  celsius: number,
  hours: number,
  {
    likely,
    shift,
    halfWidth,
    known,
  }: {
    readonly likely: number;
    readonly shift: number;
    readonly halfWidth: number;
    readonly known?: KnownTemper | undefined;
  },
): number {
  const top = likely + halfWidth;
  const { endC, narrow } = narrowBand(model, hours, known);
  if (celsius <= endC) return top;
  const before = attempt(() => hardnessIn(model, endC, hours) + shift);
  if (before instanceof Refusal) return top;
  return Math.min(top, Math.max(before, likely) + Math.min(halfWidth, narrow));
}

const sections = new WeakMap<Steel, string>();

/** What "hardened through" means for a steel, in the bath most smiths use. */
function sectionCaution(steel: Steel): string {
  const known = sections.get(steel);
  if (known !== undefined) return known;
  const text = sectionText(steel);
  sections.set(steel, text);
  return text;
}

function sectionText(steel: Steel): string {
  const airMm = airHardeningMm(steel);
  if (airMm !== undefined) {
    return `taken as hardened through: ${steel.name} hardens in still air to about ${numberText(airMm)} mm`;
  }
  const section = attempt(() => maxSection(steel, "fast oil"));
  if (section instanceof Refusal) return "taken as hardened through";
  const { fullyHardMm } = section;
  const mm = numberText(fullyHardMm < 10 ? Math.round(fullyHardMm) : Math.round(fullyHardMm / 5) * 5);
  return `taken as hardened through: ${steel.name}, fast oil: about ${mm} mm fully hard`;
}

/** What every answer of a model takes for granted. */
export function generalCautions(
  { steel, assumptions }: TemperModel,
  section = sectionCaution(steel),
): string[] {
  return [section, limitsCaution(steel), ...assumptions];
}

function cautionOf(model: TemperModel, celsius: number, section: string | undefined): string {
  // Beside what is said of a section there is room for the range alone.
  const brittle = section === undefined ? embrittlementCaution : brittleText;
  return withinWords([brittle(model.steel, celsius), ...generalCautions(model, section)]);
}

/**
 * Hardness after temper with the band that covers 90 % of blades that hardened through.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param temperC - Temper of the steel itself [°C]
 * @param treatment - Time of one cycle [h], cycles, and what is known of the blade.
 * @param section - Thickness [mm] and bath; left out, the section is taken as hardened through.
 * @returns Low, likely and high, not rounded [HRC], basis and caution in words.
 * @throws NotAvailable as `temperedHardness` does, and for a section that does not harden through.
 * Error: the half-width in the answer holds 90 % of the rows that took no part in the fit. Source: {@link COMPOSITION_FORMULA}
 * or the grade's own curve, named in the basis.
 */
export function temperedRange(
  steel: SteelAsked,
  temperC: number,
  treatment: Treatment = {},
  section?: QuenchedSection,
): TemperedRange {
  steel = steelAsked(steel);
  const { known, hardenC, quenchToC } = treatment;
  const soft = softBySteel(steel);
  if (soft !== "") throw new NotAvailable(soft);
  const model = temperModel(steel, hardenC, quenchToC);
  const hours = totalHours(treatment.hours, treatment.cycles);
  const effect = section?.quench === undefined ? undefined : sectionEffect(steel, section);
  const shift = readingShift(model, known, hours);
  const likely = hardnessIn(model, temperC, hours) + shift;
  const halfWidth = bandHalfWidth(model, temperC, hours, known);
  const basis = model.basisAt(hollomonJaffe(temperC, hours));
  return {
    low: likely - halfWidth - (effect?.lower ?? 0),
    likely,
    high: bandTop(model, temperC, hours, { likely, shift, halfWidth, known }),
    basis: `${basis}${known === undefined ? "" : ", moved to your reading"}, ±${numberText(halfWidth)} HRC`,
    caution: cautionOf(model, temperC, effect?.caution),
  };
}
