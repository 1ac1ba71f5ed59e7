import type { Relation } from "../relation";

/** Bars for pieces of one length. */
export const BAR_COUNT: Relation = {
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
};
