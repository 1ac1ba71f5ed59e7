import { extremes } from "./curve";
import { hollomonJaffe } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { temperSpan, wholeDegrees } from "./temper-limits";
import type { KnownTemper } from "./tempered";
import { bandHalfWidth } from "./tempered-range";
import { temperSpanFor } from "./usual-tempers";

/** What hardness the tempers of a steel give. */
export interface TemperReach {
  /** Lowest hardness from the coolest to the hottest usual temper [HRC]. */
  readonly lowest: number;
  /** Highest hardness between them [HRC]. */
  readonly highest: number;
  /** Coolest usual temper [°C]. */
  readonly coolestC: number;
  /** Hottest usual temper [°C]. */
  readonly hottestC: number;
  /** At tempers too cool to advise; as `highest` where none is published [HRC]. */
  readonly highestBelowUsual: number;
  /** How far 9 blades in 10 lie at most from the published curve, at its lowest [HRC]. */
  readonly lowestError: number;
  /** The same at its highest [HRC]. */
  readonly highestError: number;
}

function between(model: TemperModel, hours: number, fromC: number, toC: number) {
  return extremes(model.curve, hollomonJaffe(fromC, hours), hollomonJaffe(toC, hours));
}

/**
 * Lowest and highest hardness that the published tempers of a steel give.
 *
 * @param model - The steel's hardness after temper.
 * @param hours - Time in all [h].
 * @param shift - How far a reading of this steel lies above the published curve [HRC].
 * @param known - That reading, where there is one.
 */
export function temperReach(
  model: TemperModel,
  hours: number,
  shift: number,
  known?: KnownTemper,
): TemperReach {
  const [coolestC, hottestC] = temperSpanFor(model, hours);
  const usual = between(model, hours, coolestC, hottestC);
  const [least] = temperSpan(model, hours);
  const cooler = least < coolestC ? between(model, hours, least, coolestC).highest : usual.highest;
  const [from, to] = wholeDegrees([coolestC, hottestC]);
  return {
    lowest: usual.lowest + shift,
    highest: usual.highest + shift,
    coolestC: from,
    hottestC: to,
    highestBelowUsual: Math.max(cooler, usual.highest) + shift,
    lowestError: bandHalfWidth(model, hottestC, hours, known),
    highestError: bandHalfWidth(model, coolestC, hours, known),
  };
}

/** Whether no published temper is likely to give a hardness [HRC]. */
export function isOutOfReach({ lowest, highestBelowUsual }: TemperReach, hrc: number): boolean {
  return hrc < lowest || hrc > highestBelowUsual;
}

/** Whether a hardness [HRC] lies beyond what the usual tempers give by more than the stated error. */
export function isBeyondError(reach: TemperReach, hrc: number): boolean {
  return hrc < reach.lowest - reach.lowestError || hrc > reach.highest + reach.highestError;
}
