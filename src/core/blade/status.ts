import { relation } from "../relation";

/** What can be said of a blade against the usual band of its use. */
export const BLADE_STATUSES = [
  "inside",
  "likely inside",
  "uncertain",
  "too hard",
  "too soft",
  "out of reach",
  "does not harden",
  "not known",
] as const;

export type BladeStatus = (typeof BLADE_STATUSES)[number];

/** Chance from which a blade counts as inside the band, and as likely inside. */
const INSIDE_CHANCE = 0.9;
export const LIKELY_CHANCE = 0.6;

/** What a good shop tester may be out by, either way, HRC. */
export const TESTER_HRC = 1;

export const TESTER_UNCERTAINTY = relation({
  title: "Uncertainty of a hardness tester",
  source: "tester-uncertainty",
  locator: "lower figure of the page",
  evidence: "compiled",
  inputs: {},
  output: { label: "hardness", unit: "HRC" },
  error: { size: TESTER_HRC, unit: "HRC", kind: "what a tester alone may be out by; the page says 1 to 2" },
  note: "Counted as 90 % of readings within ±1 HRC of the true hardness, on top of what an estimate may be out by.",
});

/** From here a hardness is shown as harder than a band [HRC]: in whole points, one on the very end of it lies in it as often as not. */
export function shownTooHardFrom({ high }: { readonly high: number }): number {
  return high + 0.5;
}

/** A miss of a band of this much or less [HRC] is within what a curve and a tester are out by: a coupon decides. */
export const NEAR_MISS_HRC = 2;

/** How far a hardness, as it is shown in whole points, lies outside a band [HRC]: above it positive, below it negative, 0 inside. */
export function missOf({ low, high }: { readonly low: number; readonly high: number }, hrc: number): number {
  const shown = Math.round(hrc);
  return shown > high ? shown - high : Math.min(0, shown - low);
}

/**
 * The word for a hardness against a band.
 *
 * @param band - Limits [HRC].
 * @param likely - Middle of what is known of the hardness [HRC].
 * @param chance - That a careful reading lies in the band, 0 to 1.
 * @returns From the chance; a hardness whose middle in whole points lies outside the band, and which is not likely inside, is
 *   too hard or too soft.
 */
export function statusOf(
  band: { readonly low: number; readonly high: number },
  likely: number,
  chance: number,
): BladeStatus {
  if (chance >= INSIDE_CHANCE) return "inside";
  if (chance >= LIKELY_CHANCE) return "likely inside";
  if (likely >= shownTooHardFrom(band)) return "too hard";
  return Math.round(likely) < band.low ? "too soft" : "uncertain";
}
