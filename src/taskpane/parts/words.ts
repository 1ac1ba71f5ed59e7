import { fahrenheit } from "../../core/quantity-text";
import { textLiteral } from "../../formula/tokens";
import { lengthFigure, lengthUnit, temperatureReading } from "./reading";

/** A band in words: "57 to 61 HRC", or one figure where both ends agree; lengths in the reader's unit. */
export function spanText(low: string, high: string, unit: string): string {
  if (unit === "mm" && lengthUnit() !== unit)
    return spanText(lengthFigure(low), lengthFigure(high), lengthUnit());
  if (low === "" && high === "") return "";
  const after = unit === "" || unit === "°" ? unit : ` ${unit}`;
  if (high === "") return `from ${low}${after}`;
  if (low === "") return `up to ${high}${after}`;
  return low === high ? `${low}${after}` : `${low} to ${high}${after}`;
}

/** A temperature that arrived as text, in both scales, the reader's first. */
export function celsiusText(celsius: string): string {
  return celsius === "" ? "" : temperatureReading(Number(celsius));
}

/** The tempers at some places of a list, neighbours taken together: "150 °C (302 °F) to 225 °C (437 °F)". */
export function runsText(tempers: readonly number[], places: readonly number[]): string {
  const starts = places.filter((place, at) => place - 1 !== places[at - 1]);
  const runs = starts.map((start, at) => {
    const until = starts[at + 1] ?? Number.POSITIVE_INFINITY;
    const end = places.filter((place) => place >= start && place < until).at(-1) ?? start;
    return spanText(temperatureReading(tempers[start] ?? 0), temperatureReading(tempers[end] ?? 0), "");
  });
  return runs.join(" and ");
}

/** A temperature in whole °F. */
export function wholeFahrenheit(celsius: number): number {
  return Math.round(fahrenheit(celsius));
}

/** `1,200` may be 1.2 or 1200: the function refuses it with both readings. */
const AMBIGUOUS = /^-?[1-9]\d{0,2},\d{3}$/;

/**
 * What was typed as a formula takes it: a bare number as it is, anything else in quotes.
 */
export function typed(text: string): string {
  return typedIn(text, ".");
}

/** As {@link typed}, in the reader's own way of writing figures. */
export function typedIn(text: string, decimal: string): string {
  if (decimal !== "," && AMBIGUOUS.test(text.trim())) return textLiteral(text.trim());
  const plain = text.trim().replace(",", ".");
  return /^-?\d+(\.\d+)?$/.test(plain) ? plain : textLiteral(text.trim());
}
