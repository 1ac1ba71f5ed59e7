import type { Steel } from "../steel/steel";
import { isNearBrittle } from "../tempering/embrittlement";
import { hollomonJaffe, totalHours } from "../tempering/hollomon-jaffe";
import type { TemperModel } from "../tempering/model";
import { type TemperReach, temperReach } from "../tempering/reach";
import { readingShift, type Treatment } from "../tempering/tempered";
import { bandHalfWidth } from "../tempering/tempered-range";
import { temperModel } from "../tempering/tempering-model";
import { nearestUsual } from "../tempering/usual-tempers";
import type { Use } from "./bands";
import { chanceInBand } from "./chance";

// Every usual temper of a steel, with the chance that it gives the band of a use.

/** A use and a steel, read whole. */
export interface BandTemperQuestion {
  readonly use: Use;
  readonly steel: Steel;
  readonly treatment: Treatment;
  /** How much lower the low end lies for a section that hardens in part, HRC. */
  readonly lower: number;
}

/** What a steel gives after the tempers of a treatment. */
export interface Tempers {
  readonly model: TemperModel;
  /** h in all */
  readonly hours: number;
  /** How far a reading lies above the published curve, HRC. */
  readonly shift: number;
  readonly reach: TemperReach;
}

export interface Point {
  /** °C, whole */
  readonly celsius: number;
  readonly hrc: number;
}

export interface Candidate extends Point {
  readonly halfWidth: number;
  readonly isBrittle: boolean;
  readonly chance: number;
}

export function chanceOf(use: Use, hrc: number, halfWidth: number, lower: number): number {
  return chanceInBand(use, { low: hrc - halfWidth - lower, likely: hrc, high: hrc + halfWidth });
}

export function tempersOf(steel: Steel, treatment: Treatment): Tempers {
  const model = temperModel(steel, treatment.hardenC, treatment.quenchToC);
  const hours = totalHours(treatment.hours, treatment.cycles);
  const shift = readingShift(model, treatment.known, hours);
  return { model, hours, shift, reach: temperReach(model, hours, shift, treatment.known) };
}

/** Every usual temper in steps of one degree, with its likely hardness. */
function pointsOf({ model, hours, shift, reach }: Tempers): Point[] {
  const from = Math.ceil(reach.coolestC);
  const count = Math.max(1, Math.floor(reach.hottestC) - from + 1);
  return Array.from({ length: count }, (_, i) => {
    const celsius = from + i;
    return { celsius, hrc: model.curve.hrcAt(hollomonJaffe(celsius, hours)) + shift };
  });
}

/**
 * What hardness the usual tempers of a steel give.
 *
 * @throws NotAvailable where no published curve or formula covers the steel and the time.
 */
export function usualReach(steel: Steel, treatment: Treatment): TemperReach {
  return tempersOf(steel, treatment).reach;
}

/**
 * The usual temper whose likely hardness comes nearest to a target [HRC], whole °C; of equals the coolest.
 *
 * @throws NotAvailable as `usualReach` does.
 */
export function nearestTemper(steel: Steel, treatment: Treatment, target: number): number {
  const { model, hours, shift } = tempersOf(steel, treatment);
  return nearestUsual(model, target - shift, hours);
}

export function candidates(question: BandTemperQuestion, tempers: Tempers): Candidate[] {
  const { use, steel, treatment, lower } = question;
  return pointsOf(tempers).map(({ celsius, hrc }) => {
    const halfWidth = bandHalfWidth(tempers.model, celsius, tempers.hours, treatment.known);
    const chance = chanceOf(use, hrc, halfWidth, lower);
    return { celsius, hrc, halfWidth, isBrittle: isNearBrittle(steel, celsius), chance };
  });
}
