import { type SteelAsked, steelAsked } from "../steel/asked";
import { carbonOf } from "../steel/carbon";
import type { Steel } from "../steel/steel";

/** Kinds of steel as the trade sorts them by use. */
export const STEEL_KINDS = [
  "medium carbon",
  "spring steel",
  "0.7-0.85 % C low alloy",
  "plain high carbon",
  "low-alloy high carbon",
  "cold work",
  "stainless",
  "high alloy",
  "shock resisting",
  "hot work",
] as const;

export type SteelKind = (typeof STEEL_KINDS)[number];

/** Borders between the kinds, mass %: set for this library inside the gaps between the trade's examples. */
const HIGH_CARBON = 0.8;
const SPRING_CARBON = 0.65;
const LOW_ALLOY_HIGH_CARBON = 0.88;
const COLD_WORK = { chromium: 4, carbon: 0.9 };
/** Chromium from which a steel below that carbon hardens in air, and the least carbon that holds an edge [mass %]. */
const AIR_HARDENING = { chromium: 3, carbon: 0.45 };
const STAINLESS_CHROMIUM = 11;
/** Above any of these a steel hardens clearly deeper than a plain carbon steel. */
const ALLOYED = { Cr: 0.3, Ni: 0.4, Mo: 0.1, W: 0.3, Si: 1, Mn: 1.3 } as const;

function isAlloyed({ composition }: Steel): boolean {
  return (
    composition.Cr >= ALLOYED.Cr ||
    composition.Ni >= ALLOYED.Ni ||
    composition.Mo >= ALLOYED.Mo ||
    composition.W >= ALLOYED.W ||
    composition.Si >= ALLOYED.Si ||
    composition.Mn >= ALLOYED.Mn
  );
}

function byCarbon(steel: Steel, carbon: number): SteelKind {
  if (!isAlloyed(steel)) return carbon < HIGH_CARBON ? "medium carbon" : "plain high carbon";
  if (carbon < SPRING_CARBON) return "spring steel";
  return carbon < LOW_ALLOY_HIGH_CARBON ? "0.7-0.85 % C low alloy" : "low-alloy high carbon";
}

/**
 * True for steels that resist rust enough to be sold as stainless, by chromium and carbon in all [mass %].
 *
 * @param steel - A grade or an analysis, or its name.
 * Limits: none are checked. Error: a border of the trade. Source: common practice; what hardening dissolves is judged by `stainless`.
 */
export function isStainless(steel: SteelAsked): boolean {
  const { family, composition } = steelAsked(steel);
  return family.endsWith("stainless") && composition.Cr >= STAINLESS_CHROMIUM;
}

/**
 * Sorts a steel into the kinds by which the trade says what suits a use.
 *
 * @throws NotAvailable where the carbon decides and the grade does not fix it.
 */
export function steelKind(steel: Steel): SteelKind {
  const { family, composition } = steel;
  if (isStainless(steel)) return "stainless";
  if (family === "high speed") return "high alloy";
  const carbon = carbonOf(steel);
  if (composition.Cr >= COLD_WORK.chromium && carbon >= COLD_WORK.carbon) return "cold work";
  if (family === "hot work") return "hot work";
  if (composition.Cr < AIR_HARDENING.chromium) return byCarbon(steel, carbon);
  return carbon >= AIR_HARDENING.carbon ? "shock resisting" : "hot work";
}
