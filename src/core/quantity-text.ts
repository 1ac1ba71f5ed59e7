/** A number as people write it: no more than six significant digits, no trailing zeros; a refusal may tell that none came. */
export function numberText(value: number): string {
  if (typeof value !== "number") return String(value ?? "nothing");
  return String(Number(value.toPrecision(6)));
}

/** Degrees Fahrenheit a kelvin, and what 0 °C is on that scale, by definition (NIST SP 811). */
const FAHRENHEIT_A_KELVIN = 1.8;
const FREEZING_FAHRENHEIT = 32;

/** A temperature in °F. */
export function fahrenheit(celsius: number): number {
  return celsius * FAHRENHEIT_A_KELVIN + FREEZING_FAHRENHEIT;
}

/** A temperature in °C. */
export function celsiusOf(fahrenheit: number): number {
  return (fahrenheit - FREEZING_FAHRENHEIT) / FAHRENHEIT_A_KELVIN;
}

/** A difference of temperatures in °F: it has no zero point to shift. */
export function fahrenheitDifference(kelvin: number): number {
  return kelvin * FAHRENHEIT_A_KELVIN;
}

/** True for a figure in which a kitchen oven and many a workshop count tempers as °F. */
export function isUsualFahrenheit(figure: number): boolean {
  return figure >= 300 && figure <= 800;
}

/** A temperature in both scales, whole degrees: 400 typed as °C by someone who meant °F costs a blade. */
export function temperatureText(celsius: number): string {
  const rounded = Math.round(celsius);
  return `${rounded} °C (${Math.round(fahrenheit(celsius))} °F)`;
}

/** A difference of temperatures in both scales. */
export function differenceText(kelvin: number): string {
  return `${kelvin} °C (${fahrenheitDifference(kelvin)} °F)`;
}

/** A number with its unit; temperatures in both scales. */
export function quantityText(value: number, unit: string): string {
  if (unit === "°C") return temperatureText(value);
  return unit === "" ? numberText(value) : `${numberText(value)} ${unit}`;
}

/** A stretch from one figure to another, as a sentence says that something lies in it. */
export function betweenText(low: number, high: number, unit: string): string {
  return `between ${quantityText(low, unit)} and ${quantityText(high, unit)}`;
}

/** A length in mm. */
export function lengthText(value: number): string {
  return quantityText(value, "mm");
}

/** A sentence with a capital and a full stop, to stand among others. */
export function asSentence(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
