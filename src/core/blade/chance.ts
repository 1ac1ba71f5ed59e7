import { TESTER_HRC } from "./status";

/** A hardness with the band that holds 9 blades in 10; the two sides may differ in width. HRC. */
export interface HardnessEstimate {
  /** Lower end of the band [HRC]. */
  readonly low: number;
  /** Likely hardness [HRC]. */
  readonly likely: number;
  /** Upper end of the band [HRC]. */
  readonly high: number;
}

/** A band of hardness, HRC. */
export interface HardnessBand {
  readonly low: number;
  readonly high: number;
}

/** 90 % of a normal distribution lie within this many standard deviations of its middle. */
export const NINETY = 1.645;

/**
 * Share of a normal distribution below z standard deviations.
 * Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.17; error under 7.5e-8.
 */
function normalShareBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const polynomial =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * polynomial;
  return z > 0 ? 1 - tail : tail;
}

/** Standard deviation of a reading whose estimate reaches `side` HRC to one side: estimate and tester together. */
function readingSd(side: number): number {
  return Math.hypot(side, TESTER_HRC) / NINETY;
}

function shareBelow({ low, likely, high }: HardnessEstimate, hrc: number): number {
  const side = hrc < likely ? likely - low : high - likely;
  return normalShareBelow((hrc - likely) / readingSd(side));
}

/**
 * Chance that a careful reading lies in a band.
 *
 * @param band - Limits [HRC].
 * @param estimate - Likely hardness with its 90 % band [HRC]; both ends equal for a reading of the blade itself.
 * @returns 0 to 1. Half of the chance lies on each side of the likely hardness, each side falling as a
 *   normal distribution with standard deviation (half-width combined with the tester's ±1 HRC) / 1.645.
 */
export function chanceInBand(band: HardnessBand, estimate: HardnessEstimate): number {
  return shareBelow(estimate, band.high) - shareBelow(estimate, band.low);
}

/** A chance as people say it: "62 %". */
export function chanceText(chance: number): string {
  return `${Math.round(chance * 100)} %`;
}
