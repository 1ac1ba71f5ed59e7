import type { Example } from "../declare";

export const FURNACE: readonly Example[] = [
  { given: [8, 845, null, 0.35], gives: 3.778, within: 5e-4, source: "by hand: 8 × 595.07 / 3600 / 0.35" },
  { given: [8, 845, 4, 0.35], gives: 5.667, within: 5e-4, source: "by hand: 12 × 595.07 / 3600 / 0.35" },
  { given: [5.6, 845, null, 0.25, 3.6, 3], gives: 14.503, within: 5e-4, source: "by hand: 3.703 + 10.8" },
];

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

export const HISTORY: readonly Example[] = [
  {
    given: [
      [
        ["kWh", "item", "started", "good", "hours", "loads"],
        [19, "Chef 210", 28, 26, 56, 4],
        [null, "chef 210", 22, 20, null, 3],
      ],
    ],
    gives: [["Chef 210", 2, 50, 46, 0.92, 0.826209, 2, 4.75]],
    within: 5e-7,
    source: "by hand: 46 of 50; Clopper-Pearson lower bound by the beta quantile; 56 / 28; 19 / 4",
  },
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

export const OIL_LITRES: readonly Example[] = [
  { given: [2, 815, 60, 31.9], gives: 20, within: 0.02, source: "the worked rise of 31.9 K turned round" },
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

export const RECIPE: readonly Example[] = [
  {
    given: ["52100", null, "medium oil"],
    gives: "low alloy, harden 830 °C (1526 °F) to 870 °C (1598 °F), medium oil",
    source: "Lucefin, 100Cr6: hardening 830 to 870 °C",
  },
];

export const TREATMENT: readonly Example[] = [
  {
    given: ["52100", null, null, "medium oil", 3],
    gives: [
      [
        "no use given",
        "none held",
        "none",
        "none",
        "none held",
        "none held",
        "none held",
        "none held",
        "hardens through",
        910,
        850,
        10,
        14,
        "…",
        "none",
        "none",
        "none",
        "…",
        "none",
        "none",
      ],
    ],
    source:
      "Lucefin, 100Cr6: hardening 830 to 870 °C, its middle; soak of low-alloy steel at least 10 min, common practice; the rest as SOAK, MAX_SECTION and HARDENING give it",
  },
];

/** A list of words, checked in tests/run/headings.test.ts against what RUN_PLAN reads. */
export const RUN_HEADINGS: readonly Example[] = [];

export const RUN_PLAN: readonly Example[] = [
  {
    given: [
      [
        ["good", "steel", "yield", "length", "width", "thickness", "grind", "bar length"],
        [24, "C 1.00 Si 0.24 Mn 0.34 Cr 1.45", 0.92, 346, 50, 3, "rectangle", 3000],
      ],
    ],
    gives: [
      [
        "line",
        "mass g",
        "carbon %",
        "HRC low",
        "HRC high",
        "band status",
        "temper C",
        "temper F",
        "through-hardens",
        "starts",
        "bars",
        "use of bar %",
        "kg",
        "loads",
        "kWh",
        "hours",
        "unit cost",
        "price",
        "margin",
        "cautions",
        "chance",
        "next step",
        "soak min",
        "quench words",
        "tempers",
      ],
      [
        ...["", 407.4, 1, "", "", "", "", "", "", 28, 4, 80.73, 14.13, "", 7.54, "", "", "", "", "…"],
        ...["", "", "", "", ""],
      ],
    ],
    within: 0.02,
    source:
      "by hand: 346 × 50 × 3 mm³ at 7.85 g/cm³; 28 starts by the binomial; (2990 + 1.2) / 347.2 = 8 pieces a bar, 4 bars, " +
      "28 × 346 / 12 000; 4 × 3.5325 kg; 28 × 0.4074 kg × 595 kJ/kg (EN 1993-1-2 to 845 °C) / 3600 / 0.25",
  },
];

export const RUN_TOTALS: readonly Example[] = [
  {
    given: [
      [
        ["line", "good", "steel", "yield", "hours first"],
        ["L1", 10, "1095", 1, 2],
        ["L2", 5, "1095", 1, 4],
      ],
      1,
      30,
    ],
    gives: [
      ["lines", 2, "", ""],
      ["good", 15, "", ""],
      ["starts", 15, "", ""],
      ["bars", "", "", ""],
      ["steel", "", "kg", ""],
      ["loads", "", "", ""],
      ["energy", "", "kWh", ""],
      ["bench hours", 40, "h", ""],
      ["oven hours", "", "h", ""],
      ["cost", "", "money", ""],
      ["income", "", "money", ""],
      ["bench time", 4 / 3, "weeks", "LATE: 10.0 h over what 1 × 30 h hold"],
    ],
    within: 1e-9,
    source: "by hand: 10 × 2 h + 5 × 4 h against 30 h",
  },
];

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
