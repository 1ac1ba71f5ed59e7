/** Lengths are planned in tenths of a millimetre: finer than a saw, and whole numbers add up exactly. */
export const TENTHS = 10;

const ROUNDING = 1e-6;

/** A length in whole tenths of a millimetre: pieces, kerf and trim up, bars down, so that no plan runs short. */
export function inTenths(millimetres: number, way: "up" | "down"): number {
  const tenths = millimetres * TENTHS;
  return way === "up" ? Math.ceil(tenths - ROUNDING) : Math.floor(tenths + ROUNDING);
}

export function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

/** The coarsest grid on which all sizes lie: the search works through its steps. */
export function gridOf(sizes: readonly number[]): number {
  return Math.max(1, sizes.reduce(greatestCommonDivisor, 0));
}
