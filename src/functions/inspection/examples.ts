import type { Example } from "../declare";

export const ACCEPT_CHANCE: readonly Example[] = [
  { given: [20, 1, 0.025], gives: 0.9118, within: 0.00005, source: "binomial distribution" },
  { given: [8, 0, 0.1, 50], gives: 0.40149, within: 0.000005, source: "hypergeometric distribution" },
];

export const READINGS: readonly Example[] = [
  {
    given: [[[58], [59], [60]], 57, 61],
    gives: [3, 59, 2, 1, 0.6667, "inside the limits"],
    within: 0.0001,
    source: "arithmetic: deviation 1, nearer limit 2 away, 2 / (3 × 1)",
  },
];

export const SAMPLE_PLAN: readonly Example[] = [
  { given: [60, 2.5], gives: ["F", 20, 1, 2], source: "MIL-STD-105E, tables I and II-A" },
  { given: [200, 2.5], gives: ["G", 32, 2, 3], source: "MIL-STD-105E, tables I and II-A" },
  { given: [10, 2.5], gives: ["C", 5, 0, 1], source: "MIL-STD-105E, tables I and II-A" },
];

export const TEST_THICKNESS: readonly Example[] = [
  { given: [60], gives: 0.8, within: 1e-9, source: "ISO 6508-1: ten times (100 - HRC) × 0.002 mm" },
  { given: [50], gives: 1, within: 1e-9, source: "ISO 6508-1: ten times (100 - HRC) × 0.002 mm" },
  { given: [62, "ASTM E18"], gives: 0.71, within: 1e-9, source: "ASTM E18, table of least thickness" },
];
