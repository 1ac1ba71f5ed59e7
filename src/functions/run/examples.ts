import type { Example } from "../declare";

export const STARTS: readonly Example[] = [
  {
    given: [24, 0.92],
    gives: 28,
    source: "binomial sums in exact fractions: 27 give 0.8342, 28 give 0.9314",
  },
  {
    given: [24, 0.92, 0.95],
    gives: 29,
    source: "binomial sums in exact fractions: 28 give 0.9314, 29 give 0.9749",
  },
  {
    given: [10, 0.9, 0.95],
    gives: 13,
    source: "binomial sums in exact fractions: 12 give 0.8891, 13 give 0.9658",
  },
];
