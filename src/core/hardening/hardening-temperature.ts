import type { SourceKey } from "../sources";
import type { Steel } from "../steel/steel";
import { publishedTreatment } from "./heat-treatment";

/** The hardening temperature used where none is given. */
export interface UsualHardening {
  readonly celsius: number;
  /** `null` where no window is held for the grade and the figure is the handbook's for its kind. */
  readonly source: SourceKey | null;
}

/** Chromium from which the bearing-steel temperature stands for a steel without a window of its own. */
const BEARING_CHROMIUM = 0.9;
/** From here a steel counts as stainless, EN 10020; 1030 °C is common practice for such steels, no source. */
const STAINLESS_CHROMIUM = 10.5;

/** The middle of the grade's published hardening window; `null` where none is held. */
export function publishedHardening(steel: Steel): UsualHardening | null {
  const treatment = publishedTreatment(steel);
  const [low, high] = [treatment?.harden.low ?? null, treatment?.harden.high ?? null];
  const [source] = treatment?.sources ?? [];
  if (low === null || high === null || source === undefined) return null;
  return { celsius: (low + high) / 2, source };
}

/**
 * The middle of the grade's published hardening window; else 815 °C as for plain high-carbon
 * steel, 845 °C as for bearing steel from 0.9 % Cr, and 1030 °C for stainless steel.
 */
export function usualHardening(steel: Steel): UsualHardening {
  const published = publishedHardening(steel);
  if (published !== null) return published;
  const { Cr } = steel.composition;
  if (Cr >= STAINLESS_CHROMIUM) return { celsius: 1030, source: null };
  return { celsius: Cr < BEARING_CHROMIUM ? 815 : 845, source: null };
}
