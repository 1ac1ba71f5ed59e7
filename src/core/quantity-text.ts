/** A number as people write it: no more than six significant digits, no trailing zeros. */
export function numberText(value: number): string {
  return String(Number(value.toPrecision(6)));
}

/** A temperature in °F. */
export function fahrenheit(celsius: number): number {
  return celsius * 1.8 + 32;
}

/** A temperature in °C. */
export function celsiusOf(fahrenheit: number): number {
  return (fahrenheit - 32) / 1.8;
}

/** A temperature in both scales, whole degrees: 400 typed as °C by someone who meant °F costs a blade. */
export function temperatureText(celsius: number): string {
  const rounded = Math.round(celsius);
  return `${rounded} °C (${Math.round(fahrenheit(celsius))} °F)`;
}

/** A difference of temperatures in both scales: it has no zero point to shift. */
export function differenceText(kelvin: number): string {
  return `${kelvin} °C (${kelvin * 1.8} °F)`;
}

/** A number with its unit; temperatures in both scales. */
export function quantityText(value: number, unit: string): string {
  if (unit === "°C") return temperatureText(value);
  return unit === "" ? numberText(value) : `${numberText(value)} ${unit}`;
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
