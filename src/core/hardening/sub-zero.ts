import { temperatureText } from "../quantity-text";
import { attempt, Refusal } from "../refusal";
import type { Steel } from "../steel/steel";
import { usualHardening } from "./hardening-temperature";
import { HRC_PER_PERCENT_AUSTENITE } from "./martensite";
import { retainedAt } from "./retained";

/** Where a quench ends without a freezer [°C]. */
export const ROOM_C = 20;

/** What a sub-zero treatment straight after the quench adds. */
export interface SubZeroGain {
  /** HRC as quenched. */
  readonly hrc: number;
  /** What is said with it; "" where nothing was treated. */
  readonly caution: string;
}

/**
 * Hardness gained by cooling below room temperature straight after the quench: 0.15 HRC for each % of
 * austenite that turns.
 *
 * @param steel - A grade or an analysis.
 * @param hardenC - Hardening temperature [°C]; left out, the usual one.
 * @param quenchToC - Coldest temperature before the first temper [°C].
 * @returns Gain [HRC], 0 where the retained austenite of the steel is not known, which the caution says.
 */
export function subZeroGain(steel: Steel, hardenC: number | undefined, quenchToC: number): SubZeroGain {
  if (quenchToC === ROOM_C) return { hrc: 0, caution: "" };
  const at = hardenC ?? usualHardening(steel).celsius;
  const turned = attempt(() => retainedAt(steel, at, ROOM_C) - retainedAt(steel, at, quenchToC));
  const treatment = `cooled to ${temperatureText(quenchToC)} straight after the quench`;
  if (turned instanceof Refusal) {
    return { hrc: 0, caution: `${treatment}: not counted, its retained austenite is not known` };
  }
  return {
    hrc: HRC_PER_PERCENT_AUSTENITE * turned,
    caution: `${treatment}, about ${turned.toFixed(0)} % of austenite turned`,
  };
}
