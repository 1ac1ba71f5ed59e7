import { temperatureText } from "../core/quantity-text";

/** A band in words: "57 to 61 HRC", or one figure where both ends agree. */
export function spanText(low: string, high: string, unit: string): string {
  if (low === "" && high === "") return "";
  const after = unit === "" || unit === "°" ? unit : ` ${unit}`;
  if (high === "") return `from ${low}${after}`;
  if (low === "") return `up to ${high}${after}`;
  return low === high ? `${low}${after}` : `${low} to ${high}${after}`;
}

/** A temperature that arrived as text, in both scales. */
export function celsiusText(celsius: string): string {
  return celsius === "" ? "" : temperatureText(Number(celsius));
}

export function fahrenheit(celsius: number): number {
  return Math.round(celsius * 1.8 + 32);
}

/** A text as a formula quotes it. */
export function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/** What was typed as a formula takes it: a bare number as it is, anything else in quotes. */
export function typed(text: string): string {
  const plain = text.trim().replace(",", ".");
  return /^-?\d+(\.\d+)?$/.test(plain) ? plain : quoted(text.trim());
}
