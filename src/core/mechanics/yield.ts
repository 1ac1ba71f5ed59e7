import { strengthOf, YIELD_STRENGTH } from "../hardness/strength";

/** Yield strength that a hardness stands for, with the band that the relation states [MPa]. */
export interface YieldBand {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  /** True where the likely figure is itself only a lower bound. */
  readonly bounded: boolean;
}

/**
 * Yield strength of hardened and tempered steel.
 *
 * @param hrc - Hardness [HRC], within the range of the yield relation.
 * @throws NotAvailable outside that range.
 * Error and source: those of the yield relation of `core/hardness`.
 */
export function yieldBand(hrc: number): YieldBand {
  const { yieldMPa, bounded } = strengthOf(hrc, "HRC");
  const share = (YIELD_STRENGTH.error.size ?? 0) / 100;
  return { low: yieldMPa * (1 - share), likely: yieldMPa, high: yieldMPa * (1 + share), bounded };
}
