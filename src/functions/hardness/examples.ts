import type { Example } from "../declare";

export const ACCEPT_CHANCE: readonly Example[] = [
  { given: [20, 1, 0.025], gives: 0.9118, within: 0.00005, source: "binomial distribution" },
  { given: [8, 0, 0.1, 50], gives: 0.40149, within: 0.000005, source: "hypergeometric distribution" },
];

export const HARDENABILITY: readonly Example[] = [
  {
    given: ["C 0.22 Mn 0.80 Si 0.18 Ni 0.10 Cr 0.43 Mo 0.25 Cu 0.10 V 0.05"],
    gives: 49.53,
    within: 0.76,
    source: "ASTM A255, worked example of SAE 4118 modified: 1.95 in, rounded factors; 0.03 in allowed",
  },
];

export const HARDNESS: readonly Example[] = [
  { given: [700, "HV", "HRC"], gives: 60.1, source: "ISO 18265, table A.1" },
  { given: [700, "HV", "HRC", "hardened"], gives: 59.2, source: "ISO 18265, annex B" },
  { given: [700, "HV", "HRC", "cold work"], gives: 60.4, source: "ISO 18265, annex C" },
  { given: [700, "HV", "HRC", "high speed"], gives: 59.7, source: "ISO 18265, annex D" },
  { given: [400, "HV", "MPa"], gives: 1290, source: "ISO 18265, table A.1" },
  {
    given: [[[400], [450]], "HV", "HB"],
    gives: [[380], [428]],
    source: "ISO 18265, table A.1",
  },
];

export const JOMINY: readonly Example[] = [
  {
    given: ["C 0.22 Mn 0.80 Si 0.18 Ni 0.10 Cr 0.43 Mo 0.25 Cu 0.10 V 0.05", 3],
    gives: 45,
    within: 0.3,
    source: "ASTM A255, metric factors worked by hand at an ideal diameter of 49.5 mm",
  },
];

export const READ_HARDNESS: readonly Example[] = [
  { given: ["58-60"], gives: [58, 59, 60], source: "as the text says" },
  { given: ["60 +-1"], gives: [59, 60, 61], source: "as the text says" },
  { given: ["59 HRC"], gives: [59, 59, 59], source: "as the text says" },
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

export const SCALES: readonly Example[] = [];

export const SECTION_FIT: readonly Example[] = [
  {
    given: ["1095", 30, 7, 1.5, "agitated water", 0.001, 8, 0.0002, null, null, null, 6.7],
    gives: [0.0016, 1, 0],
    within: 0.0007,
    source:
      "a separate program for the same section: 0.8 mm of clay with 0.5 W/mK hardens 6.0 mm at a nose of 0.35 s and 7.1 mm at 0.5 s; 1095 has 0.44 s",
  },
];

export const SECTION_PROFILE: readonly Example[] = [
  {
    given: ["1084", 30, 4, 0.5, "fast oil"],
    gives: Array.from({ length: 30 }, (_, column) => [column + 0.5, 63.8, 65.8, 67.8]),
    within: 1.5,
    source:
      "a separate program for the same conduction: 4 mm 1084 in fast oil is fully hard, 65.8 HRC, from edge to spine, 2 HRC allowed either way",
  },
];

export const SECTION_QUENCH: readonly Example[] = [
  {
    given: ["1084", 30, 4, 0.5, "fast oil"],
    gives: [30, 66, 66, 66, "…"],
    within: 1,
    source:
      "a separate program for the same conduction: 4 mm 1084 in fast oil is fully hard, 65.8 HRC, from edge to spine",
  },
];

export const STRENGTH: readonly Example[] = [
  {
    given: [400, "HV"],
    gives: [1059.7, 1290],
    within: 0.1,
    source: "Pavlina and Van Tyne 2008: 2.876 HV - 90.7; ISO 18265, table A.1",
  },
];

export const TEST_THICKNESS: readonly Example[] = [
  { given: [60], gives: 0.8, within: 1e-9, source: "ISO 6508-1: ten times (100 - HRC) × 0.002 mm" },
  { given: [50], gives: 1, within: 1e-9, source: "ISO 6508-1: ten times (100 - HRC) × 0.002 mm" },
  { given: [62, "ASTM E18"], gives: 0.71, within: 1e-9, source: "ASTM E18, table of least thickness" },
];
