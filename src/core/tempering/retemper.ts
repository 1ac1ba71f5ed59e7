import { quantityText, temperatureText } from "../quantity-text";
import { NotAvailable } from "../refusal";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { brittleText, embrittlementCaution } from "./embrittlement";
import { equivalentTemperature, hollomonJaffe, hoursAtParameter, totalHours } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { checkHours } from "./temper-limits";
import { HALF_HRC, planFor, type TargetQuestion } from "./temper-plan";
import { hardnessIn, readingShift } from "./tempered";
import { bandHalfWidth } from "./tempered-range";
import { temperModel } from "./tempering-model";
import { COOLEST_TEMPER_C, checkTarget, nearestUsual, temperSpanFor, tempersFor } from "./usual-tempers";

/** What a blade has been through and what it read. */
export interface BladeSoFar {
  /** Temper that it had [°C]. */
  readonly celsius: number;
  /** At temperature, all cycles together [h]. */
  readonly hours: number;
  /** What it read [HRC]. */
  readonly hrc: number;
}

/** The next step for a blade that read too hard. */
export interface Retemper {
  /** Next temper [°C]; `null` where no temper helps or none is needed. */
  readonly nextC: number | null;
  /** Hardness expected after it [HRC]. */
  readonly likely: number;
  /** What to do, one sentence. */
  readonly advice: string;
}

/** Readings this near to the target are at it: no tester tells them apart. */
const AT_TARGET_HRC = 0.5;

/** Parameter of the whole history once a second temper has been added at its own temperature. */
function combined(soFar: number, celsius: number, hours: number): number {
  return hollomonJaffe(celsius, hours + hoursAtParameter(soFar, celsius));
}

function bisect(rising: (celsius: number) => number, wanted: number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let step = 0; step < 50; step++) {
    const middle = (a + b) / 2;
    if (rising(middle) < wanted) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

function tooSoft({ hrc }: BladeSoFar, target: number): Retemper {
  return {
    nextC: null,
    likely: hrc,
    advice:
      `re-harden: ${quantityText(hrc, "HRC")} is under the target of ${quantityText(target, "HRC")} and a temper only softens; ` +
      "first grind a spot through the skin and read again, then check hardening temperature, section and quench; never temper lower to make up for it",
  };
}

/** A blade that was tempered and read, on the way to a target. */
interface Next extends TargetQuestion {
  readonly blade: BladeSoFar;
}

/** Refuses a target under what every temper gives that is hotter than those the blade has had. */
function refuseBehind({ model, target, blade }: Next): never {
  throw new NotAvailable(
    `${quantityText(target, "HRC")} in ${model.steel.name} has only tempers under the ${temperatureText(blade.celsius)} ` +
      "that the blade has had: choose a softer target, or harden it again",
  );
}

/**
 * The temper that a new blade of this reading would get for the target, as TEMPER_PLAN has it; of several the coolest
 * that softens more than what the blade has had.
 */
function freshTemper(next: Next): number {
  const { model, hours, target, shift, blade } = next;
  const plan = planFor(next);
  if (plan.likelyC === null) throw new NotAvailable(plan.caution);
  const had = equivalentTemperature(blade.celsius, blade.hours, hours);
  const ahead = [plan.likelyC, ...tempersFor(model, target - shift, hours)].find((celsius) => celsius > had);
  if (ahead !== undefined) return ahead;
  const [, hottest] = temperSpanFor(model, hours);
  if (Math.ceil(had) > hottest) return refuseBehind(next);
  const nearest = nearestUsual(model, target - shift, hours, had);
  const off = Math.abs(hardnessIn(model, nearest, hours) + shift - target);
  return off > bandHalfWidth(model, nearest, hours, blade) ? refuseBehind(next) : nearest;
}

/** The temper that takes a blade from where it is to the target. */
function nextTemper(model: TemperModel, blade: BladeSoFar, target: number, hours: number): Retemper {
  const shift = readingShift(model, blade, blade.hours);
  const fresh = freshTemper({ model, hours, target, shift, treatment: { hours, known: blade }, blade });
  const soFar = hollomonJaffe(blade.celsius, blade.hours);
  const wanted = hollomonJaffe(fresh, hours);
  const least = Math.max(COOLEST_TEMPER_C, blade.celsius);
  const rising = (celsius: number) => combined(soFar, celsius, hours);
  const again = rising(least);
  if (again >= wanted) return sameAgain(model, least, Math.min(again, model.curve.to), shift, hours);
  const nextC = bisect(rising, wanted, least, fresh);
  const reached = model.curve.hrcAt(wanted) + shift;
  const misses = Math.abs(reached - target) > HALF_HRC;
  const nearest = misses ? `: ${reached.toFixed(1)} HRC is the nearest that a temper gives` : "";
  // Beside it there is room for the range alone.
  const how = adviceFor(model, nextC, hours, misses ? brittleText : embrittlementCaution);
  const advice = `${how}${nearest}; then read again`;
  return { nextC, likely: misses ? reached : target, advice };
}

function sameAgain(
  model: TemperModel,
  celsius: number,
  parameter: number,
  shift: number,
  hours: number,
): Retemper {
  const likely = model.curve.hrcAt(parameter) + shift;
  return {
    nextC: celsius,
    likely,
    advice: `${adviceFor(model, celsius, hours)}: as hot as before is enough; then read again`,
  };
}

function adviceFor(
  model: TemperModel,
  celsius: number,
  hours: number,
  caution: typeof brittleText = embrittlementCaution,
): string {
  const brittle = caution(model.steel, celsius);
  const temper = `temper at ${temperatureText(celsius)} for ${quantityText(hours, "h")}`;
  return brittle === "" ? temper : `${temper} (${brittle})`;
}

/**
 * The next temper of a blade that has been tempered and read.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param blade - Temper so far [°C], its time [h], and the reading [HRC]
 * @param target - Wanted hardness [HRC]
 * @param hours - Time of the next temper [h]
 * @returns Temper [°C] and likely hardness [HRC]; never a temper for a blade that reads under the target: that one
 *   must be hardened again.
 * @throws NotAvailable where the target is out of reach and where the reading lies more than 3 HRC off
 *   the published curve.
 * Error and source: {@link COMPOSITION_FORMULA} or the grade's own curve, moved by the reading; {@link HOLLOMON_JAFFE}.
 */
export function retemper(steel: SteelAsked, blade: BladeSoFar, target: number, hours: number): Retemper {
  steel = steelAsked(steel);
  checkTarget(target);
  checkTarget(blade.hrc);
  const model = temperModel(steel);
  checkHours(model, totalHours(hours, 1));
  checkHours(model, totalHours(blade.hours, 1));
  if (blade.hrc < target - AT_TARGET_HRC) return tooSoft(blade, target);
  if (blade.hrc <= target + AT_TARGET_HRC) {
    const advice = "at the target within what a tester can tell: no further temper for hardness";
    return { nextC: null, likely: blade.hrc, advice };
  }
  return nextTemper(model, blade, target, hours);
}
