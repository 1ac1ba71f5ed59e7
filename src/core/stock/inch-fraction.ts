import { greatestCommonDivisor } from "./cutting-grid";

const MM_PER_INCH = 25.4;

/** Parts into which an inch is divided on rules and drill sets. */
export const DENOMINATORS: readonly number[] = [2, 4, 8, 16, 32, 64, 128];

/**
 * A length as the nearest fraction of an inch, reduced: "1 1/4".
 *
 * @param millimetres - From 0 [mm]
 * @param denominator - Finest part of an inch, one of `DENOMINATORS`.
 * Limits: none are checked. Error: half of the finest part. Source: 1 in = 25.4 mm by definition.
 */
export function inchFraction(millimetres: number, denominator: number): string {
  const parts = Math.round((millimetres / MM_PER_INCH) * denominator);
  const whole = Math.floor(parts / denominator);
  const rest = parts % denominator;
  if (rest === 0) return String(whole);
  const common = greatestCommonDivisor(rest, denominator);
  const fraction = `${rest / common}/${denominator / common}`;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}
