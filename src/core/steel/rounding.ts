/** Hair by which binary arithmetic may miss a half. */
const HAIR = 1e-9;

/**
 * Rounds to a number of decimals, halves to the even digit, as ASTM E29 compares a result with a limit.
 *
 * @param value - A figure as reported.
 * @param places - Decimals to keep.
 */
export function roundToPlaces(value: number, places: number): number {
  const scaled = value * 10 ** places;
  const below = Math.floor(scaled + HAIR);
  const over = scaled - below;
  const isHalf = Math.abs(over - 0.5) < 1e-6;
  const whole = isHalf ? below + (below % 2) : Math.round(scaled);
  return Number((whole / 10 ** places).toFixed(places));
}
