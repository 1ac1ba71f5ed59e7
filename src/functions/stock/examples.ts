import type { Example } from "../declare";

export const BEST_OFFER: readonly Example[] = [
  {
    given: [
      [
        ["steel", "section", "length", "quantity"],
        ["1075", "60 x 2.5", 611, 14],
        ["52100", "50 x 3", 346, 28],
      ],
      [
        ["supplier", "steel", "section", "price", "per", "bar length", "minimum charge", "freight", "week"],
        ["Alder", "1075", "60 x 2.5", 30, "bar", 3000, 150, 18, "2027-W03"],
        ["Alder", "52100", "50 x 3", 40, "bar", 3000, null, null, "2027-W04"],
        ["Birch", "1075", "2.5 x 60", 12, "m", 3000, 60, 12, "2027-W02"],
        ["Birch", "52100", "50 x 3", 30, "bar", 2000, null, null, "2027-W02"],
      ],
      1,
    ],
    gives: [
      ["1075", "60 × 2.5 mm", "Alder", 4, 3000, 120, 14.13, "2027-W03"],
      ["52100", "50 × 3 mm", "Alder", 4, 3000, 160, 14.058, "2027-W04"],
      ["freight", "", "Alder", "", "", 18, "", ""],
      ["total", "", "Alder", 8, "", 298, 28.188, "2027-W04"],
      ["lower bound", "no mix costs less", "", "", "", 298, "", ""],
      ["all from one", "", "Alder", 8, "", 298, 28.188, "2027-W04"],
      ["all from one", "", "Birch", 10, "", 336, 28.188, "2027-W02"],
    ],
    within: 1e-6,
    source:
      "by hand: 4 blades a bar of 3000 mm gives 4 bars, 8 blades a bar gives 4, 5 a bar of 2000 mm gives 6; Alder 4 × 30 + 4 × 40 + 18, Birch 4 × 36 + 6 × 30 + 12; masses at 7.85 and 7.81 g/cm³",
  },
];

export const CUT_PLAN: readonly Example[] = [
  {
    given: [346, 28, 3000],
    gives: [
      ["8 × 346 mm", 3, 8, 212.4, 3000],
      ["4 × 346 mm", 1, 4, 1601.2, 3000],
      ["bars", 4, "", "", ""],
      ["lower bound", 4, "…", "", ""],
      ["waste %", 19.2667, "", "", ""],
    ],
    within: 1e-4,
    source: "by hand: (2990 + 1.2) / 347.2 gives 8 a bar, 28 / 8 gives 4 bars; waste 1 - 28 × 346 / 12000",
  },
  {
    given: [[600, 400], [3, 3], 1000, 0, 0],
    gives: [
      ["1 × 600 mm + 1 × 400 mm", 3, 2, 0, 1000],
      ["bars", 3, "", "", ""],
      ["lower bound", 3, "…", "", ""],
      ["waste %", 0, "", "", ""],
    ],
    within: 1e-9,
    source: "by hand: 600 + 400 fills a bar",
  },
];

export const FORGE_LENGTH: readonly Example[] = [
  {
    given: [100_000, 30, 8],
    gives: 542.77,
    within: 5e-4,
    source: "by hand: 120 000 / (0.94 × 0.98) / 240",
  },
  {
    given: [100_000, 30, 8, null, null, null, 25, "add"],
    gives: 558.3333,
    within: 1e-4,
    source: "by hand: 128 000 / 240 + 25",
  },
  {
    given: [94_020.83, 30, 8, 0.22, 0.06, 0.02, 25],
    gives: 543.8,
    within: 0.05,
    source: "by hand: 94 020.83 × 1.22 / (0.94 × 0.98) / 240 + 25",
  },
];

export const FRACTION: readonly Example[] = [
  { given: [31.75], gives: "1 1/4", source: "by definition: 31.75 / 25.4 = 1.25" },
  { given: [4.7625], gives: "3/16", source: "by definition: 4.7625 / 25.4 = 0.1875" },
  { given: [5], gives: "13/64", source: "by hand: 5 / 25.4 × 64 = 12.6" },
  { given: [5, 16], gives: "3/16", source: "by hand: 5 / 25.4 × 16 = 3.15" },
  { given: [25.4], gives: "1", source: "by definition" },
];

export const LENGTH: readonly Example[] = [
  { given: ["10 ga"], gives: 3.4163, within: 5e-5, source: "manufacturers' standard gauge, 0.1345 in" },
  {
    given: ["10 ga carbon"],
    gives: 3.4163,
    within: 5e-5,
    source: "manufacturers' standard gauge, 0.1345 in",
  },
  {
    given: ["16 ga stainless"],
    gives: 1.5875,
    within: 5e-5,
    source: "US standard gauge, 0.0625 in, from memory",
  },
  { given: ["14 SWG"], gives: 2.032, within: 5e-5, source: "BS 3737, 0.080 in" },
  { given: ['1 1/4"'], gives: 31.75, within: 1e-9, source: "by definition, 25.4 mm an inch" },
  { given: ["3 ft 2-1/2 in"], gives: 977.9, within: 1e-9, source: "by definition: 38.5 × 25.4" },
];

export const OFFERS_COMPARED: readonly Example[] = [
  {
    given: [
      [
        ["steel", "section", "length", "quantity"],
        ["1075", "60 x 2.5", 611, 14],
        ["52100", "50 x 3", 346, 28],
      ],
      [
        ["supplier", "steel", "section", "price", "per", "bar length", "minimum charge", "freight", "week"],
        ["Alder", "1075", "60 x 2.5", 30, "bar", 3000, 150, 18, "2027-W03"],
        ["Birch", "1075", "2.5 x 60", 12, "m", 3000, 60, 12, "2027-W02"],
        ["Birch", "52100", "50 x 3", 30, "bar", 2000, null, null, "2027-W02"],
      ],
    ],
    gives: [
      ["steel", "section", "needed", "Alder", "Birch"],
      ["1075", "60 × 2.5 mm", "14 pieces", 120, 144],
      ["52100", "50 × 3 mm", "28 pieces", "not offered", 180],
      ["goods", "", "", 120, 324],
      ["up to the minimum charge", "", "", 30, 0],
      ["freight", "", "", 18, 12],
      ["all that is offered", "", "", 168, 336],
      ["whole order", "", "", "", 336],
      ["last delivery", "", "", "2027-W03", "2027-W02"],
    ],
    within: 1e-6,
    source: "by hand: 4 bars at 30; 4 bars of 3 m at 12 a m and 6 bars at 30",
  },
];

export const STEEL_ORDER: readonly Example[] = [
  {
    given: [["1075", "1075"], 60, 2.5, [611, 346], [14, 4], 3000],
    gives: [["1075", "60 × 2.5 mm", 4, 14.13, 2000.4]],
    within: 1e-6,
    source:
      "by hand: 9959.6 mm of pieces and cuts in 4 bars of 2990 mm; 4 × 60 × 2.5 × 3000 mm³ at 7.85 g/cm³; drop 4 × 2990 less 14 × 612.2 and 4 × 347.2",
  },
];
