import { temperatureText } from "../../core/quantity-text";
import { type Preferences, preferences } from "./preferences";

const MM_AN_INCH = 25.4;

/** Both scales, as every sentence of the functions carries them: `208 °C (406 °F)`. */
const BOTH_SCALES = /(-?\d+(?:\.\d+)?) °C \((-?\d+(?:\.\d+)?) °F\)/g;

/** A sentence with the reader's scale first; both stay, since one taken for the other costs a blade. */
export function reading(sentence: string, { temperature }: Preferences = preferences()): string {
  return temperature === "°C" ? sentence : sentence.replace(BOTH_SCALES, "$2 °F ($1 °C)");
}

/** A temperature in both scales, the reader's first. */
export function temperatureReading(celsius: number, chosen: Preferences = preferences()): string {
  return reading(temperatureText(celsius), chosen);
}

/** The unit that lengths are read in: for the heading of a column. */
export function lengthUnit({ length }: Preferences = preferences()): string {
  return length;
}

/**
 * The figure of a length without its unit, as given in mm, in inches to the thousandth.
 *
 * @param mm - A figure, or its text; any other text (an empty cell, a word) stays as it is.
 */
export function lengthFigure(mm: number | string, { length }: Preferences = preferences()): string {
  const figure = Number(mm);
  if (length === "mm" || mm === "" || !Number.isFinite(figure)) return String(mm);
  return (figure / MM_AN_INCH).toFixed(3);
}

/** A figure with its unit, in the reader's units where it is a temperature or a length. */
export function figureReading(value: string, unit: string, chosen: Preferences = preferences()): string {
  if (value === "" || unit === "" || unit === "text") return value;
  if (unit === "°C" && Number.isFinite(Number(value))) return temperatureReading(Number(value), chosen);
  if (unit === "mm") return `${lengthFigure(value, chosen)} ${lengthUnit(chosen)}`;
  return `${value} ${unit}`;
}
