import { temperatureText } from "../quantity-text";
import { hrcOf, type SectionBand, type SectionInputs } from "./section-quench";
import { sectionWord } from "./section-word";
import { pearliteWord } from "./through-words";

/** Hardness at one place of a section; `undefined` where it is under the Rockwell C scale. */
export interface SectionPoint {
  readonly fromEdgeMm: number;
  readonly low: number | undefined;
  readonly likely: number | undefined;
  readonly high: number | undefined;
  /** The same in Vickers, without the allowance on full hardness: never empty, for drawing. */
  readonly hvLow: number;
  readonly hvLikely: number;
  readonly hvHigh: number;
}

/** Retained austenite and a decarburised edge move full hardness by this much, HRC. */
const FULL_HARDNESS_ALLOWANCE = 2;
const HIGHEST_HRC = 68;
/** A band narrower than this is shown as one figure. */
const ONE_FIGURE_HRC = 4;
const LOWER_CRITICAL_C = 727;
const LOWEST_HRC = 20;

/** The smallest hardness of the scale as text; cells show it where a figure would not be one. */
export const UNDER_SCALE = `under ${LOWEST_HRC}`;

function allowed(hrc: number | undefined, by: number): number | undefined {
  if (hrc === undefined) return undefined;
  const moved = Math.min(HIGHEST_HRC, hrc + by);
  return moved < LOWEST_HRC ? undefined : moved;
}

/** Hardness from edge to spine, one point a column of the calculation. */
export function sectionPoints({ soft, likely, hard, widthMm }: SectionBand): SectionPoint[] {
  return likely.hv.map((hvLikely, column) => {
    const ends = [soft.hv[column] as number, hard.hv[column] as number];
    const hvLow = Math.min(...ends, hvLikely);
    const hvHigh = Math.max(...ends, hvLikely);
    return {
      fromEdgeMm: ((column + 0.5) * widthMm) / likely.hv.length,
      low: allowed(hrcOf(hvLow), -FULL_HARDNESS_ALLOWANCE),
      likely: hrcOf(hvLikely),
      high: allowed(hrcOf(hvHigh), FULL_HARDNESS_ALLOWANCE),
      hvLow,
      hvLikely,
      hvHigh,
    };
  });
}

function wholeOrUnderScale(hrc: number | undefined): string {
  return hrc === undefined ? UNDER_SCALE : String(Math.round(hrc));
}

/** One whole figure where the band is narrow, else the band as text. */
export function hardnessOrBand(point: SectionPoint): number | string {
  const { likely, high, low } = point;
  if (high === undefined) return UNDER_SCALE;
  const [softest, hardest] = [hrcOf(point.hvLow), hrcOf(point.hvHigh)];
  const isNarrow = softest !== undefined && hardest !== undefined && hardest - softest <= ONE_FIGURE_HRC;
  if (isNarrow && likely !== undefined) return Math.round(likely);
  return `${wholeOrUnderScale(low)} to ${wholeOrUnderScale(high)}`;
}

/** Where the hardened zone ends, as a band; empty where even the soft end reaches the spine. */
function depthText({ soft, hard, widthMm }: SectionBand): string {
  if (soft.depthMm >= widthMm) return "";
  const [from, to] = [soft.depthMm.toFixed(0), hard.depthMm.toFixed(0)];
  if (hard.depthMm >= widthMm) return `hard from the edge to between ${from} mm and the spine`;
  if (to === "0") return "it hardens nowhere";
  return from === to
    ? `hard from the edge to about ${to} mm`
    : `hard from the edge to between ${from} mm and ${to} mm`;
}

/** What may be soft at the soft end of the band; empty where nothing is. */
function softText(band: SectionBand): string {
  const depth = depthText(band);
  if (depth !== "" || pearliteWord(band.soft.most) === "hardens through") return depth;
  return `soft spots possible inside, at worst about ${wholeOrUnderScale(hrcOf(Math.min(...band.soft.hv)))} HRC`;
}

/**
 * The hardened depth that goes with the word for a section.
 *
 * @param inputs - The section as it is quenched.
 * @param band - As `quenchSection` gives it.
 * @returns The likely depth to half martensite from the edge [mm]. A taper may come out hard to the spine by its own
 *   calculation where a plate as thick as its spine does not harden through, and both are good to a factor of 1.5: the
 *   word stays with the plate, and the depth ends at the place with most pearlite.
 * Error and source: those of `quenchSection` and `sectionWord`.
 */
export function hardenedMm(inputs: SectionInputs, band: SectionBand): number {
  const { depthMm, pearlite } = band.likely;
  if (depthMm < band.widthMm || !sectionWord(inputs, band).startsWith("does not harden")) return depthMm;
  const softest = pearlite.indexOf(Math.max(...pearlite));
  return ((softest + 0.5) * band.widthMm) / pearlite.length;
}

/** Verdict with the depth as a band, and the cautions that belong to it. */
export function verdictText(inputs: SectionInputs, band: SectionBand): string {
  const word = sectionWord(inputs, band);
  const { likely } = band;
  const soft = softText(band);
  const parts = [soft === "" ? word : `${word}${word === "hardens through" ? ", but" : ":"} ${soft}`];
  const [hasClay, isTransferred] = [inputs.clay > 0, inputs.transferS > 0];
  if (hasClay) parts.push("no clay value is published: measure one blade and fit it with SECTION_FIT");
  if (isTransferred && likely.edgeC < LOWER_CRITICAL_C) {
    parts.push(
      `the edge falls to ${temperatureText(likely.edgeC)} on the way to the bath, under ${temperatureText(LOWER_CRITICAL_C)}: it may be soft`,
    );
  }
  return parts.join("; ");
}
