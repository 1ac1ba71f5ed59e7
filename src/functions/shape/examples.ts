import type { Example } from "../declare";

export const ASSEMBLY: readonly Example[] = [
  {
    given: [
      [606.184, 131.88, 180, 60, 260],
      [341.643, -105, -8, -110, -225],
      [0.0335543, 0.000484659, 0.000486, 0.0001805, 0.0000416],
    ],
    gives: [1238.064, 102.346, 0.1078864],
    within: 5e-4,
    source:
      "sums by hand; own inertias: blade from its stations, bars as mass × length² ÷ 12, pommel as 0.4 × mass × radius²",
  },
  {
    given: [
      [100, 300],
      [0, 400],
    ],
    gives: [400, 300, 0.012],
    within: 1e-12,
    source: "two points by hand: (100 × 300² + 300 × 100²) g mm²",
  },
];

export const EDGE_ANGLE: readonly Example[] = [
  { given: [0.5, 0.731], gives: 20, within: 5e-3, source: "by hand: asin(0.5 / 1.462)" },
  { given: [1, 1.1831], gives: 25, within: 5e-3, source: "by hand: asin(1 / 2.3662)" },
];

export const EDGE_BEVEL: readonly Example[] = [
  { given: [0.4, 15], gives: 0.7464, within: 5e-5, source: "by hand: 0.4 / (2 tan 15°)" },
  { given: [1, 25], gives: 1.0723, within: 5e-5, source: "by hand: 1 / (2 tan 25°)" },
];

export const GRIND_ANGLE: readonly Example[] = [
  { given: [45, 3, 0.4], gives: 3.31, within: 5e-4, source: "by hand: 2 atan(2.6 / 90)" },
];

export const FULLERED_AREA: readonly Example[] = [
  {
    given: ["lenticular", 45, 5.5, 14, 1.2],
    gives: 138.0571,
    within: 5e-5,
    source: "by hand: 165.4919 less twice the segment 11.26555 and the crown sliver 2.45185",
  },
  {
    given: ["diamond", 45, 5.5, 14, 1.2],
    gives: 89.2411,
    within: 5e-5,
    source: "by hand: 123.75 less twice 11.26555 and the ridge 14² × 5.5 / (4 × 45)",
  },
  {
    given: ["lenticular", 45, 5.5, 14, 1.46262, null, null, "crown"],
    gives: 138.0571,
    within: 5e-4,
    source: "by hand: the crown stands 0.26262 above the chord of a 14 mm fuller",
  },
  {
    given: ["rectangle", 40, 6, 14, 1.2, 2, 1],
    gives: 217.4689,
    within: 5e-5,
    source: "by hand: 240 less two segments of 11.26555",
  },
];

export const GRINDS: readonly Example[] = [];

export const MASS: readonly Example[] = [
  {
    given: [800, 50, 6, "diamond", 20, 3],
    gives: 518.1,
    within: 1e-9,
    source: "by hand: 0.5 × 800 × (600 + 150 + 120 + 120) / 6 = 66 000 mm³, at 7.85 g/cm³",
  },
  {
    given: [300, 40, 5, "rectangle", null, null, null, 8.5],
    gives: 510,
    within: 1e-9,
    source: "by hand: 300 × 40 × 5 mm³ at 8.5 g/cm³",
  },
];

export const EFFECTIVE_MASS: readonly Example[] = [
  {
    given: [1238.064, 102.346, 0.1078864, 650],
    gives: 278.7,
    within: 0.05,
    source: "by hand: 1 / (1 / 1.238064 + 0.547654² / 0.1078864) kg",
  },
  {
    given: [1000, 300, 0.05, 300],
    gives: 1000,
    within: 1e-9,
    source: "by definition: all of it at the balance",
  },
];

export const PERCUSSION_CENTRE: readonly Example[] = [
  {
    given: [1238.064, 102.346, 0.1078864, 0],
    gives: 953.78,
    within: 0.01,
    source: "by hand: 102.346 + 87141.27 / 102.346, the square of the radius of gyration over the distance",
  },
  {
    given: [1000, 500, 0.083333333, 0],
    gives: 666.6667,
    within: 1e-3,
    source: "mechanics texts: a uniform rod held at its end, two thirds of its length",
  },
];

export const POMMEL: readonly Example[] = [
  {
    given: [978.064, 189.365, -225, 100],
    gives: 268.94,
    within: 0.01,
    source: "by hand: 978.064 × 89.365 / 325",
  },
  {
    given: [978.064, 189.365, -225, 60],
    gives: 443.96,
    within: 0.01,
    source: "by hand: 978.064 × 129.365 / 285",
  },
];

export const SECTION_AREA: readonly Example[] = [
  {
    given: ["flat", 45, 3, 0.4],
    gives: 76.5,
    within: 1e-9,
    source: "trapezium by hand: 45 × (3 + 0.4) / 2",
  },
  {
    given: ["part flat", 40, 4, 0.5, 18],
    gives: 128.5,
    within: 1e-9,
    source: "by hand: 4 × 22 + 18 × 4.5 / 2",
  },
  {
    given: ["hollow", 32, 4, 0.5, 16, 127],
    gives: 94.5213,
    within: 5e-5,
    source: "by hand: 100 less two circular segments of radius 127 over a 16.0954 mm face, 2.73934 each",
  },
  {
    given: ["convex", 40, 4, null, null, 0.5],
    gives: 106.7033,
    within: 5e-5,
    source: "by hand: wedge 80 plus two circular segments of radius 401.25",
  },
  {
    given: ["lenticular", 40, 6],
    gives: 160.7177,
    within: 5e-5,
    source: "by hand: two circular segments of radius 68.1667",
  },
  { given: ["diamond", 40, 6], gives: 120, source: "by hand: 40 × 6 / 2" },
  { given: ["hexagonal", 40, 5, null, null, null, 12], gives: 130, source: "by hand: 5 × (40 + 12) / 2" },
  {
    given: ["t-back", 24, 2, 0.3, null, null, 7, 6],
    gives: 69.6,
    within: 1e-9,
    source: "by hand: rib 7 × 6 plus body 24 × (2 + 0.3) / 2",
  },
];

export const SET_RADIUS: readonly Example[] = [
  {
    given: [4, 52],
    gives: 280.3,
    within: 0.5,
    source: "by hand: 207 000 × 4 / (2 × 1477); ISO 18265 A.1 gives 545 HV, 2.876 × 545 - 90.7 MPa",
  },
];

export const STATIONS: readonly Example[] = [
  {
    given: [[0, 800], [50, 20], [6, 3], "diamond"],
    gives: [66000, 518.1, 303.0303, 0.023765],
    within: 5e-5,
    source: "by hand: A = 150 - 165 s + 45 s² integrated over 800 mm; balance 20 000 000 / 66 000",
  },
];

export const SWING_INERTIA: readonly Example[] = [
  {
    given: [1238.064, 327.346, 1.545784],
    gives: 0.1078864,
    within: 1e-6,
    source: "by hand: m g d T² / 4π² - m d² with g 9.80665",
  },
  {
    given: [1000, 500, 1.63823],
    gives: 0.0833333,
    within: 2e-6,
    source: "mechanics texts: a uniform 1 m rod on its end swings in 2π √(2L / 3g); m L² / 12",
  },
];

export const FULLER_WIDTH: readonly Example[] = [
  { given: [25.4, 1.5], gives: 17.199, within: 5e-4, source: "by hand: 2 √(2 × 25.4 × 1.5 - 1.5²)" },
  { given: [12.7, 1.5], gives: 11.975, within: 5e-4, source: "by hand: 2 √(2 × 12.7 × 1.5 - 1.5²)" },
  { given: [50.8, 1.5], gives: 24.507, within: 5e-4, source: "by hand: 2 √(2 × 50.8 × 1.5 - 1.5²)" },
];

export const HOLLOW_DEPTH: readonly Example[] = [
  { given: [254, 16], gives: 0.2522, within: 5e-5, source: "by hand: 127 - √(127² - 8²)" },
  { given: ["2 in", 16], gives: 1.2927, within: 5e-5, source: "by hand: 25.4 - √(25.4² - 8²)" },
  { given: ["72 in", 16], gives: 0.035, within: 5e-5, source: "by hand: 914.4 - √(914.4² - 8²)" },
];

export const WHEEL: readonly Example[] = [
  {
    given: [16.0954, 0.25524],
    gives: 254,
    within: 0.02,
    source: "by hand: 2 (16.0954² / 4 + 0.25524²) / (2 × 0.25524)",
  },
];
