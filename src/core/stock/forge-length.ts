import { relation } from "../relation";

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

/** What is taken for the losses where nothing is said, as shares: common practice, no source. */
export const USUAL_LOSSES = { grind: 0.2, scale: 0.06, crop: 0.02 } as const;

/** A piece cut before it is forged is held in the tongs at 20 to 30 mm of its end: forging estimates, as relayed [mm] */
export const USUAL_TONG_HOLD = 25;

/** How losses are put together: each of what the last one left, or all of the net volume. */
export const LOSS_RULES = ["multiply", "add"] as const;

export type LossRule = (typeof LOSS_RULES)[number];

/** A forging and the bar it starts from. */
export interface Forging {
  /** Finished blade with its tang, above 0 [mm³]. */
  readonly volume: number;
  /** Of the bar, above 0 [mm]. */
  readonly barWidth: number;
  /** Of the bar, above 0 [mm]. */
  readonly barThickness: number;
  /** Ground off, as a share of the finished volume, 0 to below 1 [-]. */
  readonly grind: number;
  /** Lost to scale, as a share, 0 to below 1 [-]. */
  readonly scale: number;
  /** Cut off at the ends, as a share, 0 to below 1 [-]. */
  readonly crop: number;
  /** Held in the tongs and cut off, 0 and more [mm]. */
  readonly tong: number;
  /** How the losses are put together. */
  readonly rule: LossRule;
}

/** Volume of bar that goes into the forging, mm³. */
function stockVolume({ volume, grind, scale, crop, rule }: Forging): number {
  if (rule === "add") return volume * (1 + grind + scale + crop);
  return (volume * (1 + grind)) / ((1 - scale) * (1 - crop));
}

/**
 * Length of bar to cut for a forging.
 *
 * @param forging - Finished volume [mm³], bar [mm], losses as shares, each below 1.
 * @returns Length, tong hold included [mm]
 * Limits: none are checked. Error and source: {@link FORGE_STOCK}.
 */
export function forgeLength(forging: Forging): number {
  return stockVolume(forging) / (forging.barWidth * forging.barThickness) + forging.tong;
}
