import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";

/** A figure that is not certain: the least and the most to be believed, and the likeliest between them. */
export interface Triangle {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** Refuses figures that are not in order. */
export function checkTriangle({ low, likely, high }: Triangle, label: string): void {
  if (low <= likely && likely <= high) return;
  throw new InvalidValue(
    `${label}: low ${numberText(low)}, likely ${numberText(likely)}, high ${numberText(high)} given; ` +
      "give them from the lowest to the highest",
  );
}

export function scaled({ low, likely, high }: Triangle, factor: number): Triangle {
  return { low: low * factor, likely: likely * factor, high: high * factor };
}

export function spread({ low, high }: Triangle): number {
  return high - low;
}

/** Chance of no more than a value. */
export function chanceUpTo({ low, likely, high }: Triangle, value: number): number {
  if (value >= high) return 1;
  if (value < low) return 0;
  if (value < likely) return (value - low) ** 2 / ((high - low) * (likely - low));
  return 1 - (high - value) ** 2 / ((high - low) * (high - likely));
}

/**
 * The value that is not exceeded with a chance.
 *
 * @param chance - 0 to 1
 */
export function valueAt({ low, likely, high }: Triangle, chance: number): number {
  const whole = high - low;
  if (whole === 0) return low;
  if (chance * whole < likely - low) return low + Math.sqrt(chance * whole * (likely - low));
  return high - Math.sqrt((1 - chance) * whole * (high - likely));
}

/** Middles of slices of equal chance: what stands for the whole figure in a sum. */
export function slices(triangle: Triangle, count: number): number[] {
  return Array.from({ length: count }, (_, index) => valueAt(triangle, (index + 0.5) / count));
}
