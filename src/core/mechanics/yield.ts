import { strengthOf, YIELD_RATIO, YIELD_STRENGTH } from "../hardness/strength";

/** Yield strength that a hardness stands for, with the band that the relation states [MPa]. */
export interface YieldBand {
  /** Lower end [MPa]. */
  readonly low: number;
  /** Likely yield strength [MPa]. */
  readonly likely: number;
  /** Upper end [MPa]. */
  readonly high: number;
  /** True where the likely figure is itself only a lower bound. */
  readonly bounded: boolean;
}

/**
 * Yield strength of hardened and tempered steel.
 *
 * @param hrc - Hardness [HRC], within the range of the yield relation.
 * @param temperC - Temper [°C]; without it the yield of a usual temper, 200 °C and more.
 * @throws NotAvailable outside the ranges of the relations.
 * Error and source: those of the yield relations of `core/hardness`.
 */
export function yieldBand(hrc: number, temperC?: number): YieldBand {
  const { yieldMPa, bounded } = strengthOf(hrc, "HRC", temperC);
  const { error } = temperC === undefined ? YIELD_STRENGTH : YIELD_RATIO;
  const share = (error.size ?? 0) / 100;
  return { low: yieldMPa * (1 - share), likely: yieldMPa, high: yieldMPa * (1 + share), bounded };
}
