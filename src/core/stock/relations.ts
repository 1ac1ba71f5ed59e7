import { relation } from "../relation";

/** Plans of cutting. */
export const CUTTING_PLAN = relation({
  title: "Cheapest way to cut pieces from bars",
  source: "gilmore-gomory-1961",
  locator: "column generation for the bound; rounding and re-solving of the residue for the plan",
  evidence: "standard",
  inputs: {
    length: { label: "bar length", unit: "mm", min: 0, max: 30_000 },
    kinds: { label: "different lengths", unit: "", min: 1, max: 200 },
  },
  output: { label: "bars", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: "none where the plan meets the bound; else at most the gap that is shown",
  },
  note:
    "In tenths of a millimetre: pieces, kerf and trim rounded up, bars down. A kerf is lost beside every piece, " +
    "save where the last piece ends at the end of the bar. The search ends after a fixed amount of work, about a " +
    "second, and then says so; the same order gives the same plan everywhere.",
});

/** Length of bar for a forging. */
export const FORGE_STOCK = relation({
  title: "Length of bar to forge a blade from",
  source: "forging-losses",
  locator: "finished volume, raised by the grinding allowance and the losses to scale and crop",
  evidence: "common practice",
  inputs: {
    grind: { label: "grinding allowance", unit: "", min: 0, max: 1 },
    scale: { label: "scale loss", unit: "", min: 0, max: 0.5 },
    crop: { label: "crop loss", unit: "", min: 0, max: 0.5 },
  },
  output: { label: "length", unit: "mm" },
  error: {
    size: null,
    unit: "mm",
    kind: "as good as the losses given: sources print 5 to 7.5 % for scale alone",
  },
  note:
    "Rule multiply: volume × (1 + grind) ÷ ((1 - scale) (1 - crop)). Rule add, as some texts print it: volume × " +
    "(1 + grind + scale + crop), about 2 % less for the usual losses. Usual grinding allowance 0.15 to 0.35 " +
    "(common practice, no source).",
});

/** Gauge numbers of sheet. */
export const SHEET_GAUGE = relation({
  title: "Thickness of a gauge number",
  source: "gauge-sheet-steel",
  locator: "thickness by gauge number",
  evidence: "standard",
  inputs: { gauge: { label: "gauge", unit: "", min: 3, max: 30 } },
  output: { label: "thickness", unit: "mm" },
  error: { size: null, unit: "mm", kind: "nominal thickness; sheet is rolled to a tolerance on either side" },
  note:
    "Carbon steel sheet unless the text says stainless or SWG: 16 gauge is 1.519 mm in carbon steel, 1.588 mm in " +
    "stainless, 1.626 mm in SWG. Numbers for stainless sheet are recalled.",
});
