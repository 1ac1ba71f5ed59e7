import type { Example } from "../declare";

const HAND =
  "by hand: set-up 120, hours by the unit model at 90 %, 45 an hour, material 14, heat treating max(150, 9 a piece)";

export const COST_RANGE: readonly Example[] = [
  {
    given: [10, 1, 1, 1, 2, 3, 6, 50, 20, 20, 20, 100],
    gives: [152.361, 180, 291.27, 130, 330, "hours: alone it moves the cost from 130.00 to 330.00"],
    within: 5e-3,
    source:
      "by hand: only the hours vary, so 10 + 20 + 50 × hours; ends of a triangle 2, 3, 6 at 5 % and 95 %: " +
      "2 + √(0.05 × 4 × 1) = 2.44721 and 6 - √(0.05 × 4 × 3) = 5.22540",
  },
];

export const PRICE_BREAKS: readonly Example[] = [
  {
    given: [[[1], [10], [25]], 120, 1.5, 0.9, "unit", 45, 14, 9, 150, null, 0.35],
    gives: [
      [1, 1, 1.5, 150, 351.5, 351.5, 540.77],
      [10, 10, 11.9917, 150, 949.63, 94.96, 146.1],
      [25, 25, 26.5698, 225, 1890.64, 75.63, 116.35],
    ],
    within: 5e-3,
    source: HAND,
  },
];

export const LOT_COST: readonly Example[] = [
  {
    given: [120, 1.5, 45, 14, 150, 1],
    gives: 351.5,
    within: 1e-9,
    source: "by hand: 120 + 67.50 + 14 + 150",
  },
  {
    given: [120, 11.9917, 45, 14, 150, 10],
    gives: 949.63,
    within: 5e-3,
    source: "by hand: 120 + 539.63 + 140 + 150",
  },
];

export const OUTSIDE_CHARGE: readonly Example[] = [
  { given: [10, 9, 150], gives: 150, source: "by hand: 90 is under the minimum" },
  { given: [25, 9, 150], gives: 225, source: "by hand: 25 × 9" },
  { given: [9, 6.5, 120, 25], gives: 145, source: "by hand: the minimum 120 and 25" },
];

export const PRICE_AT_MARGIN: readonly Example[] = [
  { given: [100, 0.4], gives: 166.667, within: 5e-4, source: "by hand: 100 / 0.6" },
];

export const PRICE_AT_MARKUP: readonly Example[] = [
  { given: [100, 0.4], gives: 140, within: 1e-9, source: "by hand: 100 × 1.4" },
];

export const ROUND_MONEY: readonly Example[] = [
  { given: [1.005], gives: 1.01, source: "by hand on the decimal typed" },
  { given: [2.675], gives: 2.68, source: "by hand on the decimal typed" },
  { given: [2.665, 0.01, "half even"], gives: 2.66, source: "by hand: 266.5 goes to the even 266" },
  { given: [297.88, 5], gives: 300, source: "by hand: 59.576 steps" },
];
