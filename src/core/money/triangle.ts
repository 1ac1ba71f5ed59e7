import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";

/** A figure that is not certain: the least and the most to be believed, and the likeliest between them. */
export interface Triangle {
  /** The least to be believed [in the unit of the figure]. */
  readonly low: number;
  /** The likeliest [in the unit of the figure]. */
  readonly likely: number;
  /** The most to be believed [in the unit of the figure]. */
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
function valueAt({ low, likely, high }: Triangle, chance: number): number {
  const whole = high - low;
  if (whole === 0) return low;
  if (chance * whole < likely - low) return low + Math.sqrt(chance * whole * (likely - low));
  return high - Math.sqrt((1 - chance) * whole * (high - likely));
}

/** Middles of slices of equal chance: what stands for the whole figure in a sum. */
export function slices(triangle: Triangle, count: number): number[] {
  return Array.from({ length: count }, (_, index) => valueAt(triangle, (index + 0.5) / count));
}

/** Density at a value between the ends. */
function densityAt({ low, likely, high }: Triangle, value: number): number {
  const peak = 2 / (high - low);
  return value < likely ? (peak * (value - low)) / (likely - low) : (peak * (high - value)) / (high - likely);
}

/** Places of the two points of the rule of Gauss, which is exact for a cubic. */
const GAUSS = [0.5 - Math.sqrt(3) / 6, 0.5 + Math.sqrt(3) / 6] as const;

/**
 * Chance that two figures that know nothing of each other add up to no more than a value. Exact: between the
 * corners of the two, density of one times chance of the other is a cubic.
 */
export function chanceOfSum(one: Triangle, other: Triangle, value: number): number {
  const [wide, narrow] = spread(one) > spread(other) ? [one, other] : [other, one];
  if (spread(narrow) === 0) return chanceUpTo(wide, value - narrow.likely);
  if (value >= wide.high + narrow.high) return 1;
  if (value <= wide.low + narrow.low) return 0;
  const within = (at: number) => Math.min(narrow.high, Math.max(narrow.low, at));
  const corners = [narrow.low, narrow.likely, narrow.high];
  for (const corner of [wide.low, wide.likely, wide.high]) corners.push(within(value - corner));
  corners.sort((a, b) => a - b);
  let sum = 0;
  for (let at = 1; at < corners.length; at += 1) {
    const from = corners[at - 1] as number;
    const width = (corners[at] as number) - from;
    if (width <= 0) continue;
    for (const share of GAUSS) {
      const place = from + share * width;
      sum += (width / 2) * densityAt(narrow, place) * chanceUpTo(wide, value - place);
    }
  }
  return sum;
}
