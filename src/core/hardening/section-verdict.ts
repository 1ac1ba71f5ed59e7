import { numberText } from "../quantity-text";
import type { Steel } from "../steel/steel";
import { bathOf, maxSection } from "./max-section";
import type { QuenchMedium } from "./quench-media";
import { plateWord, type ThroughWord } from "./through-words";

/** Whether a flat section hardens through in a bath, by the table of plates. */
export interface SectionVerdict {
  readonly verdict: ThroughWord;
  /** The verdict with its figures, for a caution. */
  readonly sentence: string;
  readonly fullyHardMm: number;
  readonly halfHardMm: number;
}

/**
 * Judges a flat section, without running the section calculation.
 *
 * @param steel - A grade or an analysis.
 * @param thicknessMm - Thickest place that has to harden, at the quench, mm.
 * @param quench - The bath.
 * @returns Verdict: up to the fully hard thickness "hardens through", up to half martensite
 *   "marginal"; both figures are good to a factor of 1.5.
 * @throws NotAvailable for a bath without figures and a steel outside the table.
 */
export function sectionVerdict(steel: Steel, thicknessMm: number, quench: QuenchMedium): SectionVerdict {
  const { fullyHardMm, halfHardMm, note } = maxSection(steel, bathOf(quench));
  if (halfHardMm === 0)
    return { verdict: "does not harden through", sentence: note, fullyHardMm, halfHardMm };
  if (fullyHardMm === halfHardMm && thicknessMm <= fullyHardMm) {
    return { verdict: "hardens through", sentence: `${steel.name} ${note}`, fullyHardMm, halfHardMm };
  }
  const verdict = plateWord(thicknessMm, fullyHardMm, halfHardMm);
  const sentence =
    `${numberText(thicknessMm)} mm of ${steel.name} in ${quench.word} ${verdict === "marginal" ? "is marginal" : verdict}: ` +
    `about ${fullyHardMm.toFixed(1)} mm is fully hard, ${halfHardMm.toFixed(1)} mm half martensite at mid-thickness, within a factor 1.5`;
  return { verdict, sentence, fullyHardMm, halfHardMm };
}
