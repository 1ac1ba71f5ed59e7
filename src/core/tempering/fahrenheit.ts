import { celsiusOf, isUsualFahrenheit, numberText, temperatureText } from "../quantity-text";
import { attemptOr } from "../refusal";
import type { Steel } from "../steel/steel";
import { totalHours } from "./hollomon-jaffe";
import { temperSpanFor } from "./temper-for";
import type { Treatment } from "./tempered";
import { temperModel } from "./tempering-model";

/**
 * The question whether °F was meant: for a figure of 300 to 800 that as °F would be a usual temper too.
 *
 * @param celsius - Temper as typed [°C].
 * @returns A sentence, empty where there is nothing to ask.
 */
export function fahrenheitMeant(
  steel: Steel,
  celsius: number,
  { hours, cycles, hardenC, quenchToC }: Treatment,
): string {
  if (!isUsualFahrenheit(celsius) || !Number.isInteger(celsius)) return "";
  const span = attemptOr(undefined, () =>
    temperSpanFor(temperModel(steel, hardenC, quenchToC), totalHours(hours, cycles)),
  );
  const meant = celsiusOf(celsius);
  if (span === undefined || Math.ceil(meant) < span[0] || meant > span[1]) return "";
  const figure = numberText(celsius);
  return `${figure} taken as ${temperatureText(celsius)}; write "${figure}F" if °F was meant (${temperatureText(meant)}).`;
}
