import type { Example } from "../declare";

export const HEAT_CONTENT: readonly Example[] = [
  {
    given: [20, 845],
    gives: 595.07,
    within: 5e-3,
    source: "EN 1993-1-2, integrated piece by piece by hand",
  },
  {
    given: [20, 700],
    gives: 419.11,
    within: 5e-3,
    source: "EN 1993-1-2, integrated piece by piece by hand",
  },
  {
    given: [20, 1050],
    gives: 729.56,
    within: 5e-3,
    source: "EN 1993-1-2, integrated piece by piece by hand",
  },
];

export const FURNACE: readonly Example[] = [
  { given: [8, 845, null, 0.35], gives: 3.778, within: 5e-4, source: "by hand: 8 × 595.07 / 3600 / 0.35" },
  { given: [8, 845, 4, 0.35], gives: 5.667, within: 5e-4, source: "by hand: 12 × 595.07 / 3600 / 0.35" },
  { given: [5.6, 845, null, 0.25, 3.6, 3], gives: 14.503, within: 5e-4, source: "by hand: 3.703 + 10.8" },
];

export const LEARNING: readonly Example[] = [
  {
    given: [100, 125, 0.85, "unit"],
    gives: 32.23647,
    within: 5e-6,
    source: "learning-curve reference pages, unit model",
  },
  {
    given: [110, 2200, 0.885, "average"],
    gives: 23.34001,
    within: 5e-6,
    source: "learning-curve reference pages, cumulative average model",
  },
  {
    given: [100, 125, 0.85, "unit", "total"],
    gives: 5201.085,
    within: 5e-4,
    source: "learning-curve reference pages, exact cumulative",
  },
  {
    given: [1, 2, 0.8, "average"],
    gives: 0.6,
    within: 1e-9,
    source: "Wideman, appendix 2: at 80 % the second unit takes 60 %",
  },
];

export const LOADS: readonly Example[] = [
  {
    given: [["52100", "80CrV2"], [10, 3], [0.2, 0.2], 7],
    gives: [
      [1, "52100", 7, 1.4],
      [2, "52100", 3, 0.6],
      [3, "80CrV2", 3, 0.6],
    ],
    within: 1e-9,
    source: "by hand: 10 = 7 + 3; another recipe goes into a load of its own",
  },
];

export const OIL_RISE: readonly Example[] = [
  {
    given: [2, 815, 60, 20],
    gives: [31.9, 81.9, "…"],
    within: 0.05,
    source: "by hand: 2 × (573.28 - 18.13) / (20 × 0.87 × 2.0) with EN 1993-1-2",
  },
  {
    given: [1.4, 845, 60, 30, 50, 190],
    gives: [15.5, 65.5, "…"],
    within: 0.05,
    source: "by hand: 1.4 × (595.07 - 18.13) / (30 × 0.87 × 2.0) with EN 1993-1-2",
  },
];

export const OIL_LITRES: readonly Example[] = [
  { given: [2, 815, 60, 31.9], gives: 20, within: 0.02, source: "the worked rise of 31.9 K turned round" },
];

export const OUTSIDE_CHARGE: readonly Example[] = [
  { given: [10, 9, 150], gives: 150, source: "by hand: 90 is under the minimum" },
  { given: [25, 9, 150], gives: 225, source: "by hand: 25 × 9" },
  { given: [9, 6.5, 120, 25], gives: 145, source: "by hand: the minimum 120 and 25" },
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

export const CHANCE_OF_ENOUGH: readonly Example[] = [
  { given: [27, 24, 0.92], gives: 0.834214, within: 5e-7, source: "binomial sum in exact fractions" },
  {
    given: [10, 8, 0.88],
    gives: 0.891318,
    within: 5e-7,
    source: "published exercise: 10 made at 12 % rejects, at most 2 rejects, 0.891",
  },
];

export const STARTS_BY_PROFIT: readonly Example[] = [
  {
    given: [4, 0.85, 420, 900, 300, 150],
    gives: [5, 1429.72],
    within: 5e-3,
    source: "binomial sums by hand: 4 give 1290.00, 6 give 1369.78",
  },
  {
    given: [4, 0.85, 420, 900, 300, 900],
    gives: [6, 1329.55],
    within: 5e-3,
    source: "binomial sums by hand: 5 give 1284.44",
  },
  {
    given: [4, 0.85, 420, 900, 0, 150],
    gives: [5, 1296.61],
    within: 5e-3,
    source: "binomial sums by hand: 4 give 1290.00",
  },
];

export const YIELD_FLOOR: readonly Example[] = [
  { given: [46, 50], gives: 0.826209, within: 5e-7, source: "Clopper-Pearson, beta quantile" },
  { given: [10, 10], gives: 0.741134, within: 5e-7, source: "by hand: 0.05 to the power of 1/10" },
];
