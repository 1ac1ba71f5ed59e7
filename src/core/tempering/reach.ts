import { extremes } from "./curve";
import { hollomonJaffe } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { temperSpanFor } from "./temper-for";
import { temperSpan } from "./temper-limits";

/** What hardness the tempers of a steel give. */
export interface TemperReach {
  /** HRC, from the coolest to the hottest usual temper. */
  readonly lowest: number;
  readonly highest: number;
  /** °C */
  readonly coolestC: number;
  readonly hottestC: number;
  /** HRC at tempers too cool to advise; as `highest` where none is published. */
  readonly highestBelowUsual: number;
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
 */
export function temperReach(model: TemperModel, hours: number, shift: number): TemperReach {
  const [coolestC, hottestC] = temperSpanFor(model, hours);
  const usual = between(model, hours, coolestC, hottestC);
  const [least] = temperSpan(model, hours);
  const cooler = least < coolestC ? between(model, hours, least, coolestC).highest : usual.highest;
  return {
    lowest: usual.lowest + shift,
    highest: usual.highest + shift,
    coolestC,
    hottestC,
    highestBelowUsual: Math.max(cooler, usual.highest) + shift,
  };
}

/** Whether no published temper gives a hardness [HRC]. */
export function isOutOfReach({ lowest, highestBelowUsual }: TemperReach, hrc: number): boolean {
  return hrc < lowest || hrc > highestBelowUsual;
}
