import { relation } from "../relation";

/** Hours that fall with practice. */
export const LEARNING_CURVE = relation({
  title: "Hours that fall with practice",
  source: "learning-curve-unit",
  locator:
    "unit model: hours of piece n = first × n^b; average model: mean of n pieces = first × n^b; b = ln rate ÷ ln 2",
  evidence: "standard",
  inputs: {
    n: { label: "piece", unit: "", min: 1, max: 1_000_000 },
    rate: { label: "rate", unit: "", min: 0.5, max: 1 },
  },
  output: { label: "hours", unit: "h" },
  error: { size: null, unit: "h", kind: "as good as the rate: take it from the shop's own hours" },
  note:
    "The two models differ by a third over ten pieces at 0.8. Usual rates: 0.92 to 0.97 for a known pattern, 0.85 " +
    "to 0.9 for a new one (common practice, no source). Learning stops some day, and furnaces and prices do not learn.",
});

/** Starts by expected gain. */
export const BEST_STARTS = relation({
  title: "Number to start for the highest expected gain",
  source: "reject-allowance",
  locator: "one more is started as long as it brings in more than it costs",
  evidence: "standard",
  inputs: {
    good: { label: "good blades wanted", unit: "", min: 1, max: 10_000 },
    yield: { label: "yield", unit: "", min: 0.01, max: 1 },
  },
  output: { label: "starts", unit: "" },
  error: { size: 0, unit: "", kind: "exact if each blade fails on its own and the yield is right" },
  note: "An average over many such orders; a single order may end with too few. Compare with STARTS.",
});

/** Lower bound of a yield. */
export const YIELD_BOUND = relation({
  title: "Yield that the shop's own counts support",
  source: "clopper-pearson-1934",
  locator: "one-sided exact lower bound of a proportion",
  evidence: "standard",
  inputs: { tried: { label: "tried", unit: "", min: 1, max: 10_000 } },
  output: { label: "yield", unit: "" },
  error: { size: 0, unit: "", kind: "exact; holds at least as often as the confidence says" },
});

/** Chance of enough. */
export const ENOUGH = relation({
  title: "Chance of enough good blades",
  source: "binomial",
  locator: "P(good in starts ≥ wanted)",
  evidence: "standard",
  inputs: {
    good: { label: "good blades wanted", unit: "", min: 1, max: 10_000 },
    yield: { label: "yield", unit: "", min: 0.01, max: 1 },
  },
  output: { label: "chance", unit: "" },
  error: { size: 0, unit: "", kind: "exact if each blade fails on its own and the yield is right" },
});

/** Sums of money. */
export const MONEY = relation({
  title: "Costs, charges and prices",
  source: "shop-arithmetic",
  locator: "definitions of margin (share of the price) and markup (share of the cost)",
  evidence: "standard",
  inputs: {},
  output: { label: "amount", unit: "money" },
  error: { size: 0, unit: "money", kind: "exact; round once, at the price" },
});
