import { relation } from "../relation";

/** Bars for pieces of one length. */
export const BAR_COUNT = relation({
  title: "Bars for pieces of one length",
  source: "shop-arithmetic",
  locator: "pieces a bar = whole part of (bar - trim + kerf) ÷ (piece + kerf); the last piece needs no cut",
  evidence: "standard",
  inputs: {},
  output: { label: "bars", unit: "" },
  error: {
    size: 0,
    unit: "",
    kind: "exact for sizes as given; lines of one steel and section may share bars, STEEL_ORDER counts that",
  },
});

/** Band on the cost of one piece. */
export const COST_BAND = relation({
  title: "Band on the cost of one good piece",
  source: "triangular",
  locator:
    "yield, hours and material each triangular between low and high with its peak at likely, independent",
  evidence: "standard",
  inputs: { yield: { label: "yield", unit: "", min: 0.01, max: 1 } },
  output: { label: "cost", unit: "money" },
  error: {
    size: null,
    unit: "money",
    kind: "holds nine lots in ten if the three ranges do; ends computed to a thousandth of the width of the band",
  },
  note:
    "Fixed rule: each number to start weighed by the chance of its yields, the wider of labour and material by its " +
    "formula, the other in 64 slices of equal chance, so the same figures give the same band every time. The number " +
    "to start follows the yield. Where all prices rise together the cost goes towards worst. The luck of a single lot is not in it: see CHANCE_OF_ENOUGH.",
});

/** Lines that may share a load. */
export const RECIPE_RULE = relation({
  title: "What may share a furnace load",
  source: "common",
  locator: "same family of steel, same published hardening window, same quench, same temper",
  evidence: "common practice",
  inputs: {},
  output: { label: "recipe", unit: "text" },
  error: {
    size: null,
    unit: "",
    kind: "a rule of the shop; two heats of one grade may still want different tempers: test a coupon",
  },
});

/** Means over past lots. */
export const SHOP_RECORD = relation({
  title: "Yield, hours and energy of past lots",
  source: "shop-arithmetic",
  locator: "sums of the lots of one item; hours ÷ starts and kWh ÷ loads over the lots where both are known",
  evidence: "measured",
  inputs: {},
  output: { label: "mean", unit: "" },
  error: { size: null, unit: "", kind: "as good as the shop's own record" },
});
