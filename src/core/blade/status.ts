import { relation } from "../relation";

export type BandStatus = "inside the usual band" | "LOW" | "HIGH" | "DOUBTFUL";

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
  note: "A single hardness, or a range narrower than 2 HRC, is judged as its middle ±1 HRC.",
});

/**
 * Compares a hardness or a range with a band.
 *
 * A range counts as it stands; a single figure, or a range narrower than the tester can tell, counts as
 * its middle give or take `TESTER_HRC`. What then lies partly outside is doubtful.
 *
 * @param band - Limits [HRC]
 * @param low - Hardness, or the low end of a range [HRC]
 * @param high - High end; equal to `low` for a single figure [HRC]
 */
export function judge(
  band: { readonly low: number; readonly high: number },
  low: number,
  high: number,
): BandStatus {
  const middle = (low + high) / 2;
  const reach = Math.max((high - low) / 2, TESTER_HRC);
  if (middle - reach >= band.high) return "HIGH";
  if (middle + reach <= band.low) return "LOW";
  const isInside = middle - reach >= band.low && middle + reach <= band.high;
  return isInside ? "inside the usual band" : "DOUBTFUL";
}
