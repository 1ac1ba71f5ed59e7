import type { Example } from "../declare";

const WORKED = "worked by hand: T (18 + log t) with T in kelvin";

export const SAME_TEMPER: readonly Example[] = [{ given: [200, 4, 1], gives: 215.8, source: WORKED }];

export const TEMPER_TIME_AT: readonly Example[] = [
  { given: [200, 2, 230], gives: [0.162], source: WORKED },
  { given: [[[200], [200]], 2, 200], gives: [4], source: "cycles add as time" },
];

export const OVEN_SET: readonly Example[] = [
  { given: [210, 200, 188], gives: [222], source: "by hand: the oven reads 12 °C under its setting" },
  { given: [215, [[200], [250]], [[190], [240]]], gives: [225], source: "by hand: 10 °C under at both" },
];

export const OXIDE_COLOUR: readonly Example[] = [
  {
    given: [275],
    gives: "purple (270 °C (518 °F) to 288 °C (550 °F)); clean carbon steel, no measurement",
    source: "Sheffield Gauge Plate 270 to 280 °C; Dooley 530 to 550 °F",
  },
];

export const RETEMPER: readonly Example[] = [
  {
    given: ["O1", 204.4, 2, 62, 60],
    gives: [259, 60, "…"],
    within: 2,
    source:
      "Diamond Metals, O1 data page: 62 HRC after 204 °C, 60 after 260 °C; the first temper counts for little at 260 °C",
  },
  {
    given: ["1084", 230, 4, 57, 60],
    gives: ["", 57, "…"],
    source: "a temper only softens (common practice, no source)",
  },
];

export const TEMPER_CURVE: readonly Example[] = [
  {
    given: ["D2", 205, 315, 55, 4],
    gives: [
      [205, 58.5, 61, 63.5],
      [260, 57.5, 60, 62.5],
      [315, 56.5, 59, 61.5],
    ],
    within: 0.05,
    source: "Crucible, D2 data sheet (61, 60, 59 HRC), ±2.5 HRC as the scored rows need",
  },
];

export const TEMPER_FIT: readonly Example[] = [
  {
    given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", [[205], [205], [205]], [[58.53], [58.53], [58.53]]],
    gives: [205, 58.6, -0.92, 1.7, 3, -0.1, 0],
    within: 0.06,
    source:
      "by hand: prior N(0, 3/1.645), readings of 0.9: -1 × 3/0.81 / (3/0.81 + 1/3.326) = -0.925 on the worked 59.53 HRC; ± 1.645 √(0.250 + 0.81)",
  },
];

export const TEMPER_FOR: readonly Example[] = [
  {
    given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 57, 4],
    gives: 255.3,
    within: 0.2,
    source: "worked inverse of the composition formula",
  },
  {
    given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 51],
    gives: 375.7,
    within: 0.2,
    source: "worked inverse of the composition formula",
  },
  {
    given: ["L6", 58],
    gives: 260,
    within: 12,
    source: "Diamond Metals, L6 data page; a handbook reads lower",
  },
  { given: ["S7", 55, 2, 2], gives: 260, within: 0.1, source: "Eastern Tool Steel, S-7 data sheet" },
];

export const TEMPER_PLAN: readonly Example[] = [
  {
    given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 51],
    gives: [330, 376, 413, "embrittlement range", 51.8, 50.2, "…"],
    within: 12,
    source:
      "worked inverse of the composition formula, 375.7 °C, slope -0.064 HRC/°C at 250 and -0.083 at 400 °C; ±3 HRC",
  },
  {
    given: ["H13", 54],
    gives: [350, 400, 558, "two answers", 53.8, 54.3, "…"],
    within: 6,
    source:
      "Akrostal, 1.2344 page: 53, 54 and 55.5 HRC after 350, 400 and 450 °C, 52.5 and 48 after 550 and 600; ±2.5 HRC",
  },
  {
    given: ["D2", 58, 2, 2],
    gives: [232, 371, 530, "plateau", 58.2, 58, "…"],
    within: 2,
    source:
      "Crucible, D2 data sheet: 58 HRC from 371 to 480 °C, 61 and 60 after 205 and 260, 55 after 540; ±2.5 HRC",
  },
  {
    given: ["1045", 62],
    gives: ["", "", "", "out of reach", "", "", "…"],
    source: "Hollomon and Jaffe 1945: 0.56 % C reads 63 HRC as quenched and less after any temper",
  },
];

export const TEMPERED_HRC: readonly Example[] = [
  {
    given: ["C 0.60 Mn 0.88 Si 0.25 Cr 0.80", 205],
    gives: 59.53,
    within: 0.05,
    source: "worked value of the composition formula",
  },
  {
    given: ["1045", 204.4, 1],
    gives: 56.3,
    within: 2.5,
    source: "Grange and Baughman 1956, analysed 1045",
  },
  { given: ["1095", "400 °F", 2.5], gives: 62, within: 2.5, source: "Hollomon and Jaffe 1945, 0.98 % C" },
  { given: ["D2", 205, 2, 2], gives: 61, source: "Crucible, D2 data sheet" },
  { given: ["O1", 260], gives: 60, within: 0.05, source: "Diamond Metals, O1 data page" },
  {
    given: ["M2 (regular C)", 540, 2, 2, null, null, 1120],
    gives: 62,
    source: "Eastern Tool Steel, M-2 data sheet",
  },
];

export const TEMPERED_RANGE: readonly Example[] = [
  {
    given: ["5160", 204.4],
    gives: [57, 60, 63, "…", "…"],
    source: "composition formula worked at 205 °C (59.5), ±3; 58.6 published (627 HB, open materials table)",
  },
  {
    given: ["1095", 200, 2, 1, null, null, null, 4, "fast oil"],
    gives: [51, 62, 64, "…", "…"],
    within: 1,
    source:
      "Hollomon and Jaffe 1945 (62), ±2.5; 1095 in fast oil is fully hard to 2.9 mm and half martensite at 5.2 mm, and part-hardened bars read up to 8 HRC under",
  },
  { given: ["A2", 205, 2, 2], gives: [59, 61, 64, "…", "…"], source: "Crucible, A2 data sheet (61), ±2.5" },
];
