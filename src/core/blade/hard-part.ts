import { type Hardening, hardens } from "../hardening/hardens";
import type { Steel } from "../steel/steel";
import type { QuenchedSection } from "../tempering/section-effect";
import type { Use } from "./bands";

/** Where only the edge or the bit has to be hard, so much of it is at the quench: common practice [mm]. */
export const HARD_EDGE_MM = 2;

/** What of a blade is asked about. */
interface Part extends QuenchedSection {
  readonly use?: Use | undefined;
}

/** Thickest place that has to harden [mm]: of the whole blade, or where the use asks for no more, of its edge. */
export function hardPartMm({ use, thicknessMm }: Part): number | undefined {
  if (thicknessMm === undefined || use === undefined || use.part === "whole") return thicknessMm;
  return Math.min(thicknessMm, HARD_EDGE_MM);
}

/**
 * Whether a blade hardens where its use wants it hard. Every function that judges a blade asks here.
 *
 * @param steel - Of the blade.
 * @param part - Use, quench and thickest place [mm]; what is left out is not judged.
 * @returns The word of `hardens`; "edge only" where the edge hardens, which is all that is wanted, and the rest may not.
 */
export function partHardens(steel: Steel, part: Part): Hardening {
  const whole = hardens(steel, part);
  if (whole.word !== "marginal" && whole.word !== "does not harden through") return whole;
  const edge = hardens(steel, { ...part, thicknessMm: hardPartMm(part) });
  return edge.word === "hardens through" ? { ...whole, word: "edge only" } : edge;
}
