import { relation } from "../relation";

/** Hours that fall with practice. */
export const LEARNING_CURVE = relation({
  title: "Hours that fall with practice",
  source: "learning-curve-unit",
  locator:
    "unit model: hours of piece n = first × n^b; average model: mean of n pieces = first × n^b; b = ln rate ÷ ln 2",
  evidence: "standard",
  inputs: {
    n: { label: "piece", unit: "", min: 1, max: 1_000_000 },
    rate: { label: "rate", unit: "", min: 0.5, max: 1 },
  },
  output: { label: "hours", unit: "h" },
  error: { size: null, unit: "h", kind: "as good as the rate: take it from the shop's own hours" },
  note:
    "The two models differ by a third over ten pieces at 0.8. Usual rates: 0.92 to 0.97 for a known pattern, 0.85 " +
    "to 0.9 for a new one (common practice, no source). Learning stops some day, and furnaces and prices do not learn.",
});

/** How the curve is read: hours of the piece itself (Crawford), or the mean of all so far (Wright). */
export const LEARNING_MODELS = ["unit", "average"] as const;

export type LearningModel = (typeof LEARNING_MODELS)[number];

/** Hours of the nth piece, or of all pieces up to it. */
export const LEARNING_ANSWERS = ["nth", "total"] as const;

export interface LearningCurve {
  /** Hours of the first piece [h]. */
  readonly first: number;
  /** Share that is left each time the count doubles, 0.5 to 1 [-]. */
  readonly rate: number;
  /** How the rate is counted. */
  readonly model: LearningModel;
}

/** Up to here the sum is taken term by term; beyond, the remainder of the Euler-Maclaurin formula is below 1e-12. */
const SUMMED = 64;

function exponent(rate: number): number {
  return Math.log(rate) / Math.LN2;
}

/** Integral of x^b from a to n; b is never below -1. */
function integral(b: number, a: number, n: number): number {
  return Math.abs(b + 1) < 1e-12 ? Math.log(n / a) : (n ** (b + 1) - a ** (b + 1)) / (b + 1);
}

/** Sum of k^b for k from 1 to n. */
function powerSum(b: number, n: number): number {
  const last = Math.min(n, SUMMED);
  let sum = 0;
  for (let k = 1; k <= last; k += 1) sum += k ** b;
  if (n <= SUMMED) return sum;
  const slope = (x: number) => b * x ** (b - 1);
  const third = (x: number) => b * (b - 1) * (b - 2) * x ** (b - 3);
  const ends = (n ** b - last ** b) / 2;
  return sum + integral(b, last, n) + ends + (slope(n) - slope(last)) / 12 - (third(n) - third(last)) / 720;
}

/**
 * Hours of all pieces up to the nth.
 *
 * @param curve - Hours of the first piece [h], share left at each doubling 0.5 to 1, and which model.
 * @param n - A whole number from 1.
 * @returns [h]
 * Limits: none are checked. Error and source: {@link LEARNING_CURVE}.
 */
export function totalHours({ first, rate, model }: LearningCurve, n: number): number {
  const b = exponent(rate);
  return model === "unit" ? first * powerSum(b, n) : first * n ** (b + 1);
}

/**
 * Hours of the nth piece.
 *
 * @param curve - Hours of the first piece [h], share left at each doubling 0.5 to 1, and which model.
 * @param n - A whole number from 1.
 * @returns [h]
 * Limits: none are checked. Error and source: {@link LEARNING_CURVE}.
 */
export function nthHours(curve: LearningCurve, n: number): number {
  const { first, rate, model } = curve;
  if (model === "unit") return first * n ** exponent(rate);
  return totalHours(curve, n) - (n === 1 ? 0 : totalHours(curve, n - 1));
}
