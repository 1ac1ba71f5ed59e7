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

export const RECIPE: readonly Example[] = [
  {
    given: ["52100", null, "medium oil"],
    gives: "low alloy, harden 830 °C (1526 °F) to 870 °C (1598 °F), medium oil",
    source: "Lucefin, 100Cr6: hardening 830 to 870 °C",
  },
];

/** A list of words, checked in tests/plan/headings.test.ts against what RUN_PLAN reads. */
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
      ],
      ["", 407.4, 1, "", "", "", "", "", "", 28, 4, 80.73, 14.13, "", 7.54, "", "", "", "", "…"],
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
