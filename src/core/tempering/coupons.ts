import { quantityText, temperatureText } from "../quantity-text";
import { attempt, attemptOr, NotAvailable } from "../refusal";
import { type Relation, relation } from "../relation";
import { type SteelAsked, steelAsked } from "../steel/asked";
import type { Steel } from "../steel/steel";
import { equivalentTemperature, hollomonJaffe } from "./hollomon-jaffe";
import type { TemperModel } from "./model";
import { hardnessIn, readingShift } from "./tempered";
import { temperModel } from "./tempering-model";

/** A coupon of the shop: its temper, time in all, and reading. */
export interface Coupon {
  /** Its temper [°C]. */
  readonly celsius: number;
  /** At temperature, all cycles together [h]. */
  readonly hours: number;
  /** What it read [HRC]. */
  readonly hrc: number;
}

/** What the coupons of a shop say of its steel, weighed with what is published. */
export interface CouponFit {
  /** To be handed on as a known temper, for the hours asked [°C]. */
  readonly knownC: number;
  /** To be handed on as the reading after it [HRC]. */
  readonly knownHrc: number;
  /** Above the published curve at that temper [HRC]. */
  readonly shift: number;
  /** Holds 9 of 10 blades treated as the coupons were [HRC]. */
  readonly halfWidth: number;
  /** Readings that were weighed [-]. */
  readonly readings: number;
  /** How far the reading that lies farthest off the fit lies above it [HRC]. */
  readonly worstMisfit: number;
  /** How the curve was turned [HRC for each 100 °C hotter]. */
  readonly slope: number;
}

/** 90 % of a normal distribution lie within this many standard deviations. */
const NINETY = 1.645;
/**
 * Standard deviation of one reading about a shop's own curve, HRC: tester, oven and section together. Published
 * series scatter by this much about the curve moved to one of their rows.
 */
const READING_SD = 0.9;
/** How much the slope of one shop may differ from the published one, HRC for each 100 °C. */
const SLOPE_SD = 1;
/** How far a curve of one shop may wander from that line, HRC for each 100 °C from the nearest coupon. */
const WANDER_SD = 1;
/** Farther than this from what the others say, a coupon contradicts them, HRC. */
const MAX_MISFIT = 3;

/** How coupons are weighed. */
export const COUPON_FIT = relation({
  title: "The shop's own coupons weighed with the published curve",
  source: "bayesian-line",
  locator: "normal prior on shift and slope, normal readings",
  evidence: "fitted",
  inputs: { readings: { label: "readings", unit: "", min: 1, max: null } },
  output: { label: "hardness", unit: "HRC" },
  error: {
    size: 2,
    unit: "HRC",
    kind: "half-width that covers 90 % with one coupon, 1.5 with many; wider away from their tempers",
  },
  note: "Prior: half-width of the steel's own band on the shift, 1 HRC for each 100 °C (180 °F) on the slope, as much again for each 100 °C from the nearest coupon; one reading 0.9 HRC (standard deviations).",
});

interface Deviation {
  readonly celsius: number;
  readonly hrc: number;
}

interface Line {
  /** °C about which shift and slope are independent. */
  readonly centre: number;
  readonly shift: number;
  readonly slope: number;
  readonly shiftVariance: number;
  readonly slopeVariance: number;
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Posterior of shift and slope; about the mean temper the two do not mix. */
function lineThrough(deviations: readonly Deviation[], priorSd: number): Line {
  const centre = mean(deviations.map(({ celsius }) => celsius));
  const precision = 1 / READING_SD ** 2;
  let [sum, moment, spread] = [0, 0, 0];
  for (const { celsius, hrc } of deviations) {
    const x = (celsius - centre) / 100;
    sum += hrc;
    moment += x * hrc;
    spread += x * x;
  }
  const shiftVariance = 1 / (1 / priorSd ** 2 + deviations.length * precision);
  const slopeVariance = 1 / (1 / SLOPE_SD ** 2 + spread * precision);
  return {
    centre,
    shift: shiftVariance * precision * sum,
    slope: slopeVariance * precision * moment,
    shiftVariance,
    slopeVariance,
  };
}

function valueAt(line: Line, celsius: number): number {
  return line.shift + (line.slope * (celsius - line.centre)) / 100;
}

/** Half-width for the next reading at a temper. */
function halfWidthAt(line: Line, deviations: readonly Deviation[], celsius: number): number {
  const x = (celsius - line.centre) / 100;
  const away = Math.min(...deviations.map((coupon) => Math.abs(celsius - coupon.celsius))) / 100;
  const variance = line.shiftVariance + x * x * line.slopeVariance + (WANDER_SD * away) ** 2;
  return NINETY * Math.sqrt(variance + READING_SD ** 2);
}

function couponText({ celsius, hrc }: Coupon, index: number): string {
  return `coupon ${index + 1} (${quantityText(hrc, "HRC")} after ${temperatureText(celsius)})`;
}

/** How far a coupon lies above the published curve; refuses one that cannot have hardened. */
function deviationOf(model: TemperModel, coupon: Coupon, index: number, hours: number): Deviation {
  const known = { celsius: coupon.celsius, hrc: coupon.hrc };
  const found = attempt(() => {
    const hrc = readingShift(model, known, coupon.hours);
    return { celsius: equivalentTemperature(coupon.celsius, coupon.hours, hours), hrc };
  }, NotAvailable);
  if (found instanceof NotAvailable) throw new NotAvailable(`coupon ${index + 1}: ${found.message}`);
  return found;
}

/** Each coupon against what the others say; the worst is named. */
function checkAgreement(coupons: readonly Coupon[], deviations: readonly Deviation[], priorSd: number): void {
  if (deviations.length < 2) return;
  const misfits = deviations.map((own, i) => {
    const others = lineThrough(
      deviations.filter((_, at) => at !== i),
      priorSd,
    );
    return own.hrc - valueAt(others, own.celsius);
  });
  const worst = misfits.reduce(
    (at, misfit, i) => (Math.abs(misfit) > Math.abs(misfits[at] as number) ? i : at),
    0,
  );
  const misfit = misfits[worst] as number;
  if (Math.abs(misfit) <= MAX_MISFIT) return;
  throw new NotAvailable(
    `the coupons contradict each other: ${couponText(coupons[worst] as Coupon, worst)} lies ${Math.abs(misfit).toFixed(1)} HRC ` +
      `${misfit > 0 ? "over" : "under"} what the others say; read it again on a ground spot, check its temper, or leave it out`,
  );
}

/** What the fit is made for. */
export interface CouponQuestion {
  /** Time of the temper that is being planned, all cycles together [h]. */
  readonly hours: number;
  /** Temper about which it is being planned [°C]; left out, the mean of the coupons. */
  readonly atC?: number | undefined;
  /** Hardening temperature [°C]; left out, the usual one of the steel. */
  readonly hardenC?: number | undefined;
}

/**
 * Moves the published curve to the shop's own coupons, as far as they deserve.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param coupons - One or more: temper [°C], time [h], reading [HRC]
 * @param question - Time [h] and temper [°C] of the plan, hardening temperature [°C]
 * @returns Temper [°C] and reading [HRC] to plan with, shift and its uncertainty [HRC]
 * @throws NotAvailable for a coupon more than 3 HRC off the published curve, for coupons that contradict
 *   each other, and outside the published range.
 * Error and source: {@link COUPON_FIT}.
 */
export function fitCoupons(
  steel: SteelAsked,
  coupons: readonly Coupon[],
  question: CouponQuestion,
): CouponFit {
  steel = steelAsked(steel);
  const model = temperModel(steel, question.hardenC);
  const { hours } = question;
  const deviations = coupons.map((coupon, i) => deviationOf(model, coupon, i, hours));
  const centre = mean(deviations.map(({ celsius }) => celsius));
  const knownC = question.atC ?? centre;
  const priorSd = model.halfWidthAt(centre, hollomonJaffe(centre, hours)) / NINETY;
  checkAgreement(coupons, deviations, priorSd);
  const line = lineThrough(deviations, priorSd);
  const shift = valueAt(line, knownC);
  const misfits = deviations.map(({ celsius, hrc }) => hrc - valueAt(line, celsius));
  return {
    knownC,
    knownHrc: hardnessIn(model, knownC, hours) + shift,
    shift,
    halfWidth: halfWidthAt(line, deviations, knownC),
    readings: coupons.length,
    worstMisfit: misfits.reduce((worst, misfit) => (Math.abs(misfit) > Math.abs(worst) ? misfit : worst), 0),
    slope: line.slope,
  };
}

/** The relations behind `fitCoupons`: the prior and how readings are weighed. */
export function couponRelations(steel: Steel | null, prior: readonly Relation[]): readonly Relation[] {
  const others = steel === null ? prior : attemptOr([], () => temperModel(steel).relations);
  return [COUPON_FIT, ...others];
}
