import { hardens } from "../hardening/hardens";
import type { QuenchMedium } from "../hardening/quench-media";
import { asSentence } from "../quantity-text";
import type { Steel } from "../steel/steel";

export interface ThroughHardening {
  /** "hardens through", "marginal", "does not harden through", "does not harden" or "not judged". */
  readonly word: string;
  /** Empty where there is nothing to be wary of. */
  readonly caution: string;
}

/**
 * Whether the thickest place of a blade hardens through.
 *
 * @param thicknessMm - Thickest place that has to harden, mm.
 * @returns A word and, unless it hardens through, the figures behind it.
 */
export function throughHardening(steel: Steel, thicknessMm: number, quench: QuenchMedium): ThroughHardening {
  const { word, sentence } = hardens(steel, { quench, thicknessMm });
  if (word === "hardens through") return { word, caution: "" };
  const caution = asSentence(sentence);
  return { word, caution: word === "not judged" ? `Through-hardening is not judged. ${caution}` : caution };
}
