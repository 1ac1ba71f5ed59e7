/**
 * A price table worked by hand: set-up 120, 1.5 h first blade at 90 % (unit), 45 an hour, material 14, heat treating
 * max(150, 9 a blade), 35 % margin. Quantity, cost of one, price of one:
 * 120 + 45 × 1.5 × Σ n^(ln 0.9 / ln 2) + 14 n + max(150, 9 n).
 */
export const PRICE_TABLE: readonly (readonly [number, number, number])[] = [
  [1, 351.5, 540.77],
  [5, 126.58, 194.74],
  [10, 94.96, 146.1],
  [25, 75.63, 116.35],
  [50, 68.79, 105.83],
  [100, 63.45, 97.61],
];
