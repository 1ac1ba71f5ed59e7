import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { isWithin, relation } from "../relation";
import { chanceOfAtLeast, startsNear } from "./binomial";

/**
 * How many to start. The limits keep a sum short and catch slips; a run of blades lies far inside them.
 * Nearer to certain than the last of them the rounding of a million terms decides, and the sum may
 * never come there.
 */
export const BINOMIAL_STARTS = relation({
  title: "Number to start for enough good blades",
  source: "binomial",
  locator: "smallest S with P(good in S ≥ wanted) ≥ confidence",
  evidence: "standard",
  inputs: {
    good: { label: "good blades wanted", unit: "", min: 1, max: 10_000 },
    yield: { label: "yield", unit: "", min: 0.01, max: 1 },
    confidence: { label: "confidence", unit: "", min: 0, max: 0.999_999 },
  },
  output: { label: "starts", unit: "" },
  error: { size: null, unit: "", kind: "exact if each blade fails on its own and the yield is right" },
  note:
    "A cracked batch is not independent: plan a spare load as well. The shop's yield is itself uncertain: " +
    "46 good of 50 may stand for 83 %.",
});

/** Chance of enough. */
export const ENOUGH = relation({
  title: "Chance of enough good blades",
  source: "binomial",
  locator: "P(good in starts ≥ wanted)",
  evidence: "standard",
  inputs: { good: BINOMIAL_STARTS.inputs.good, yield: BINOMIAL_STARTS.inputs.yield },
  output: { label: "chance", unit: "" },
  error: { size: 0, unit: "", kind: "exact if each blade fails on its own and the yield is right" },
});

/** "92 given: was 0.92 meant?" for a percentage typed as a whole number. */
export function askIfPercent(value: number): string {
  return value > 1 && value <= 100 ? `was ${numberText(value / 100)} meant?` : "give a fraction from 0 to 1";
}

/** The chance of enough that is asked for where nothing is said. */
export const USUAL_CONFIDENCE = 0.9;

const { good: GOOD, yield: YIELD, confidence: CONFIDENCE } = BINOMIAL_STARTS.inputs;

function checkGood(good: number): void {
  if (Number.isInteger(good) && isWithin(GOOD, good)) return;
  throw new InvalidValue(
    `good: ${numberText(good)} given; give a whole number of blades from ${GOOD.min} to ${GOOD.max}`,
  );
}

function checkYield(yieldShare: number): void {
  if (isWithin(YIELD, yieldShare)) return;
  const hint =
    yieldShare > 1
      ? askIfPercent(yieldShare)
      : `give the share that comes out good, ${YIELD.min} to ${YIELD.max}`;
  throw new InvalidValue(`yield: ${numberText(yieldShare)} given; ${hint}`);
}

function checkConfidence(confidence: number): void {
  if (confidence > CONFIDENCE.min && confidence <= CONFIDENCE.max) return;
  const hint =
    confidence > 1
      ? askIfPercent(confidence)
      : `give a chance above 0, up to ${CONFIDENCE.max}; no number of starts makes it certain`;
  throw new InvalidValue(`confidence: ${numberText(confidence)} given; ${hint}`);
}

/** Terms are kept near 1 and carry their size as a logarithm, so that a large run does not underflow to 0. */
const RESCALE = 1e150;

/**
 * Chance that the last good blade of `good` comes after exactly 0, 1, 2 … bad ones: the terms whose sum
 * is the chance of enough.
 */
function* chances(good: number, yieldShare: number): Generator<number> {
  const bad = 1 - yieldShare;
  let scale = good * Math.log(yieldShare);
  let factor = yieldShare ** good;
  let term = 1;
  for (let failures = 0; ; failures += 1) {
    yield term * factor;
    term *= (bad * (good + failures)) / (failures + 1);
    if (term > RESCALE) {
      term /= RESCALE;
      scale += Math.log(RESCALE);
      factor = Math.exp(scale);
    }
  }
}

/** A term this small past the middle leaves a rest that no double can hold beside 1. */
const NOTHING_LEFT = 1e-20;

/**
 * Chance of enough good blades from `good` starts, from one more, and so on without end; each from the
 * one before, since a run of ten thousand at a yield of 0.01 asks for a million of them.
 *
 * @throws InvalidValue for figures outside 1 to 10,000 good and a yield of 0.01 to 1.
 */
export function chancesOfEnough(good: number, yieldShare: number): Generator<number> {
  checkGood(good);
  checkYield(yieldShare);
  return sums(good, yieldShare);
}

function* sums(good: number, yieldShare: number): Generator<number> {
  let sum = 0;
  for (const chance of chances(good, yieldShare)) {
    sum += chance;
    // What rounding lost over many terms must not keep the sum under 1 for ever.
    if (chance < NOTHING_LEFT && sum > 0.5) sum = 1;
    yield Math.min(1, sum);
  }
}

/**
 * Chance that a number of starts yields enough good blades.
 *
 * @param starts - Blades begun, a whole number.
 * @param good - Good blades wanted, a whole number from 1.
 * @param yieldShare - Share that comes out good, 0.01 to 1.
 * @returns Probability, 0 to 1 [-]
 * @throws InvalidValue for figures outside these limits.
 * Error and source: {@link ENOUGH}.
 */
export function chanceOfEnough(starts: number, good: number, yieldShare: number): number {
  checkGood(good);
  checkYield(yieldShare);
  if (!Number.isInteger(starts) || starts < 0) {
    throw new InvalidValue(`starts: ${numberText(starts)} given; give a whole number of blades`);
  }
  return starts < good ? 0 : chanceOfAtLeast(good, starts, yieldShare);
}

/**
 * Smallest number of starts that yields enough good blades with the confidence asked.
 *
 * @param good - Good blades wanted, a whole number from 1 to 10,000.
 * @param yieldShare - Share that comes out good, 0.01 to 1.
 * @param confidence - Above 0, up to 0.999999; 0.9 where left out.
 * @returns Blades to begin [-]
 * @throws InvalidValue for figures outside these limits; a percentage typed as a whole number is asked about.
 * Error and source: {@link BINOMIAL_STARTS}.
 */
export function startsNeeded(good: number, yieldShare: number, confidence = USUAL_CONFIDENCE): number {
  checkGood(good);
  checkYield(yieldShare);
  checkConfidence(confidence);
  const expected = Math.ceil(good / yieldShare);
  return startsNear(good, yieldShare, confidence, expected, [good, Number.POSITIVE_INFINITY]);
}
