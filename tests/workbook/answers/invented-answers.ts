import type { Answers } from "./fill";

/** What one of those who are asked answers; every firm, heat, price and reading is invented. */
export interface InventedAnswer {
  /** As the command share takes it: for whom, and the name. */
  readonly whom: string;
  readonly name: string;
  readonly answers: Readonly<Record<string, Answers>>;
  readonly head: { readonly by: string; readonly on: string };
}

/** An offer as suppliers write one: currency word, decimal comma, week and a content given as a limit. */
export const OFFER_OF_C60: Answers[string] = {
  Price: "3,05 EUR/kg",
  "Week of delivery": "KW 42",
  "Heat no.": "Q4-7731",
  Condition: "normalised, 205 HB",
  "C %": 0.6,
  "Si %": "0,25",
  "Mn %": "0.72 %",
  "P %": 0.011,
  "S %": "<0.005",
};

/**
 * The orders of R-07 answered. The analyses lie inside their grades (EN ISO 683-1: C60 C 0.57 to 0.65, Mn 0.60 to 0.90);
 * doubtful on purpose are a price far above the last one, a content given as a limit, a piece above its band, and a
 * price for a bar, which is only known by its planned mass.
 */
export const ANSWERS_TO_R07: readonly InventedAnswer[] = [
  {
    whom: "supplier",
    name: "Brackwater Steel Yard",
    head: { by: "order desk", on: "2026-09-21" },
    answers: {
      "Answer to order": {
        "L1/S1": { Price: 8.4, "Week of delivery": "2026-W40", "Heat no.": "TH-4512", Condition: "annealed" },
        "L2/S2": { Price: 7.9, "Week of delivery": "KW 40", "Heat no.": "TH-3308" },
        "L3/S3": { Price: 24, "Price for": "bar", "Week of delivery": 41 },
      },
    },
  },
  {
    whom: "supplier",
    name: "Old Quay Metals",
    head: { by: "Quay sales", on: "2026-09-22" },
    answers: {
      "Answer to order": {
        "L4/S4": OFFER_OF_C60,
        "L5/S5": {
          Price: 990,
          "Price for": "100 kg",
          "Week of delivery": "2026-10-12",
          "Heat no.": "Q5-0412",
        },
      },
    },
  },
  {
    whom: "heat-treater",
    name: "Salt Lane Heat Treatment",
    head: { by: "hardening shop", on: "2026-10-28" },
    answers: {
      "Answer to heat treatment": {
        "HB5/L5": {
          Price: 6.9,
          "Minimum charge": 110,
          "Back on": "2026-10-28",
          "Temper as run °C": "734 °F",
        },
        "HB6/L6": { Price: 6.9, "Back on": "2026-10-28" },
      },
      "Readings by piece": {
        "HB5/L5/1": { Piece: "R-07-L5-02", "1st HRC": 49, "2nd HRC": "48,9", "3rd HRC": 49.2 },
        "HB5/L5/2": { Piece: "R-07-L5-04", "1st HRC": 56.1, "2nd HRC": 56, "3rd HRC": 55.8 },
      },
    },
  },
];

/** The orders of the run of eight lines answered; analyses of 1095 by SAE J403 (C 0.90 to 1.03, Mn 0.30 to 0.50). */
export const ANSWERS_TO_EIGHT: readonly InventedAnswer[] = [
  {
    whom: "supplier",
    name: "Brackwater Steel Yard",
    head: { by: "order desk", on: "2026-09-21" },
    answers: {
      "Answer to order": Object.fromEntries(
        ["K1/S1", "K2/S2", "K3/S3", "K4/S4", "K5/S5"].map((line, at) => [
          line,
          { Price: 6.2 + at / 2, "Week of delivery": "2026-W43", "Heat no.": `B${at + 1}-200` },
        ]),
      ),
    },
  },
  {
    whom: "supplier",
    name: "Old Quay Metals",
    head: { by: "Quay sales", on: "2026-09-22" },
    answers: {
      "Answer to order": {
        "K6/S6": { Price: 8.6, "Heat no.": "T6-1" },
        "K7/S7": { Price: "9,10", "Heat no.": "T7-1", "C %": 0.95, "Mn %": 0.4, "P %": "<0.02" },
        "K8/S8": { Price: 19.5, "Heat no.": "T8-1" },
      },
    },
  },
  {
    whom: "heat-treater",
    name: "Salt Lane Heat Treatment",
    head: { by: "hardening shop", on: "2026-10-19" },
    answers: {
      "Answer to heat treatment": {
        "B5/K5": { Price: 6.5, "Minimum charge": 120, "Back on": "2026-10-19" },
        "B6/K6": { Price: 6.5, "Back on": "2026-10-19" },
        "B8/K8": { Price: 7.1, "Back on": "2026-10-26", Remarks: "cold at -80 °C, one hour" },
      },
    },
  },
];
