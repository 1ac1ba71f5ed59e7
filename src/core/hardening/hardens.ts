import { numberText, quantityText } from "../quantity-text";
import { attempt, attemptOr, NotAvailable } from "../refusal";
import { type SteelAsked, steelAsked } from "../steel/asked";
import { carbonOf } from "../steel/carbon";
import type { Family, Steel } from "../steel/steel";
import { AIRS, airHardeningMm, notInAir } from "./air-hardening";
import { findQuench, type QuenchMedium } from "./quench-media";
import { type SectionVerdict, sectionVerdict } from "./section-verdict";

/** What is known of how a blade was or will be quenched; what is left out is not judged. */
export interface QuenchQuestion {
  /** Medium of the quench. */
  readonly quench?: QuenchMedium | undefined;
  /** Thickest place that has to harden, above 0 [mm]. */
  readonly thicknessMm?: number | undefined;
}

/** What can be said of whether a blade hardens; "edge only" of one that has to be hard nowhere else. */
export const HARDENING_WORDS = [
  "hardens through",
  "edge only",
  "marginal",
  "does not harden through",
  "does not harden",
  "not judged",
] as const;

/** Whether a blade hardens. */
export interface Hardening {
  /** "yes", "no" or what lies between, from a closed list. */
  readonly word: (typeof HARDENING_WORDS)[number];
  /** Fully hard to about this thickness [mm]. */
  readonly fullyHardMm?: number;
  /** The word with its figures, or why nothing can be said. */
  readonly sentence: string;
}

const SOFT: readonly Family[] = ["austenitic stainless", "ferritic stainless"];
/** Less carbon than this makes no martensite hard enough for a blade (common practice), mass %. */
const MIN_CARBON = 0.3;
/** With this much chromium, carbon alone does not tell how hard a steel gets, mass %. */
const ALLOY_HARDENED = 3;

const BETWEEN = "medium oil";
const SLOWER = findQuench("slow oil");
const FASTER = findQuench("fast oil");

/** Why no quench hardens a steel; empty where one does. */
export function softBySteel(steel: Steel): string {
  const { name, family, composition } = steel;
  if (SOFT.includes(family)) return `${name} is ${family} steel: quenching does not harden it`;
  if (composition.Cr >= ALLOY_HARDENED) return "";
  const carbon = attemptOr(undefined, () => carbonOf(steel));
  if (carbon === undefined || carbon >= MIN_CARBON) return "";
  return `${name} does not harden: ${quantityText(carbon, "% C")} is too little carbon for a blade`;
}

function softByQuench(steel: Steel, quench: QuenchMedium): string {
  const air = AIRS.find((word) => word === quench.word);
  return air === undefined || airHardeningMm(steel) !== undefined ? "" : notInAir(steel, air);
}

/** Medium oil has no figure of its own but lies between two that have. */
function betweenOils(steel: Steel, thicknessMm: number): SectionVerdict {
  const slow = sectionVerdict(steel, thicknessMm, SLOWER);
  const fast = sectionVerdict(steel, thicknessMm, FASTER);
  const verdict = slow.verdict === fast.verdict ? slow.verdict : "marginal";
  if (slow.fullyHardMm === slow.halfHardMm) return slow;
  const span = (mm: "fullyHardMm" | "halfHardMm") => `${slow[mm].toFixed(1)} to ${fast[mm].toFixed(1)} mm`;
  const sentence =
    `${numberText(thicknessMm)} mm of ${steel.name} in medium oil, between slow and fast oil, ` +
    `${verdict === "marginal" ? "is marginal" : verdict}: about ${span("fullyHardMm")} is fully hard, ` +
    `${span("halfHardMm")} half martensite at mid-thickness, within a factor 1.5`;
  return { ...slow, verdict, sentence };
}

function bySection(steel: Steel, thicknessMm: number, quench: QuenchMedium): Hardening {
  const judge = quench.word === BETWEEN ? betweenOils : sectionVerdict;
  const found = attempt(() => judge(steel, thicknessMm, quench), NotAvailable);
  if (found instanceof NotAvailable) return { word: "not judged", sentence: found.message };
  const { verdict, sentence, fullyHardMm } = found;
  return { word: verdict, fullyHardMm, sentence };
}

/**
 * Whether a blade hardens: by its steel, its quench and its section, as far as they are given. What
 * a blade is for is counted by `partHardens`.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param given - Quench and thickness [mm]; what is left out is not judged.
 * @returns A word, and its reason.
 * Limits: nothing is refused. Error and source: {@link MAX_PLATE}; hardening without a section by carbon and quench.
 */
export function hardens(steel: SteelAsked, { quench, thicknessMm }: QuenchQuestion = {}): Hardening {
  steel = steelAsked(steel);
  const soft = softBySteel(steel) || (quench === undefined ? "" : softByQuench(steel, quench));
  if (soft !== "") return { word: "does not harden", sentence: soft };
  if (quench === undefined || thicknessMm === undefined) {
    return { word: "not judged", sentence: "taken as hardened through" };
  }
  return bySection(steel, thicknessMm, quench);
}
