import { findQuench, type QuenchMedium } from "../hardening/quench-media";
import { type SectionVerdict, sectionVerdict } from "../hardening/section-verdict";
import { asSentence } from "../quantity-text";
import { attempt, NotAvailable } from "../refusal";
import type { Steel } from "../steel/steel";

export interface ThroughHardening {
  /** "hardens through", "marginal", "does not harden through" or "not judged". */
  readonly word: string;
  /** Empty where there is nothing to be wary of. */
  readonly caution: string;
}

const BETWEEN = "medium oil";
const SLOWER = findQuench("slow oil");
const FASTER = findQuench("fast oil");

/** Medium oil has no figure of its own but lies between two that have. */
function betweenOils(steel: Steel, thicknessMm: number): SectionVerdict {
  const slow = sectionVerdict(steel, thicknessMm, SLOWER);
  const fast = sectionVerdict(steel, thicknessMm, FASTER);
  const verdict = slow.verdict === fast.verdict ? slow.verdict : "marginal";
  const sentence = `in medium oil, which lies between slow oil and fast oil: ${slow.sentence}; ${fast.sentence}`;
  return { ...slow, verdict, sentence };
}

/**
 * Whether the thickest place of a blade hardens through.
 *
 * @param thicknessMm - Thickest place that has to harden, mm.
 * @returns A word and, unless it hardens through, the figures behind it.
 */
export function throughHardening(steel: Steel, thicknessMm: number, quench: QuenchMedium): ThroughHardening {
  const judge = quench.word === BETWEEN ? betweenOils : sectionVerdict;
  const found = attempt(() => judge(steel, thicknessMm, quench), NotAvailable);
  if (found instanceof NotAvailable) {
    return { word: "not judged", caution: asSentence(`through-hardening not judged: ${found.message}`) };
  }
  const { verdict, sentence } = found;
  return { word: verdict, caution: verdict === "hardens through" ? "" : asSentence(sentence) };
}
