import { celsiusOf, isUsualFahrenheit, numberText, temperatureText } from "../quantity-text";
import { attemptOr } from "../refusal";
import type { Steel } from "../steel/steel";
import { totalHours } from "./hollomon-jaffe";
import type { Treatment } from "./tempered";
import { temperModel } from "./tempering-model";
import { temperSpanFor } from "./usual-tempers";

/** A temper as it was typed. */
export interface TypedTemper {
  /** The temper [°C]. */
  readonly celsius: number;
  /** True for a figure whose unit was written beside it. */
  readonly hasUnit: boolean;
}

/**
 * What a figure of 300 to 800 would be as °F, where that is a usual temper of the steel.
 *
 * @param celsius - Temper as typed without a unit [°C].
 * @returns °C; `undefined` where there is nothing to ask.
 */
export function asFahrenheit(steel: Steel, celsius: number, treatment: Treatment): number | undefined {
  if (!isUsualFahrenheit(celsius)) return undefined;
  const { hours, cycles, hardenC, quenchToC } = treatment;
  const span = attemptOr(undefined, () =>
    temperSpanFor(temperModel(steel, hardenC, quenchToC), totalHours(hours, cycles)),
  );
  const meant = celsiusOf(celsius);
  return span === undefined || Math.ceil(meant) < span[0] || meant > span[1] ? undefined : meant;
}

/** The question whether °F was meant. */
export function fahrenheitQuestion(celsius: number, meant: number): string {
  const figure = numberText(celsius);
  return `${figure} taken as ${temperatureText(celsius)}; write "${figure}F" if °F was meant (${temperatureText(meant)}).`;
}
