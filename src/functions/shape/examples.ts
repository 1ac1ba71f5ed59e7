import type { Example } from "../declare";

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

export const STATIONS: readonly Example[] = [
  {
    given: [[0, 800], [50, 20], [6, 3], "diamond"],
    gives: [66000, 518.1, 303.0303, 0.023765],
    within: 5e-5,
    source: "by hand: A = 150 - 165 s + 45 s² integrated over 800 mm; balance 20 000 000 / 66 000",
  },
];
