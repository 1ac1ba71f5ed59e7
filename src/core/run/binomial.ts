import { crossing } from "../root";

/** From here the series of Stirling is exact to a double; below, the logarithms are summed. */
const STIRLING_FROM = 20;

const summed = Array.from({ length: STIRLING_FROM }, () => 0);
for (let n = 2; n < STIRLING_FROM; n += 1) summed[n] = (summed[n - 1] as number) + Math.log(n);

/** ln n!, from Stirling's series to 1/n^7 (Abramowitz and Stegun 6.1.41). */
function logFactorial(n: number): number {
  if (n < STIRLING_FROM) return summed[n] as number;
  const inverse = 1 / n;
  const square = inverse * inverse;
  const series = inverse * (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square / 1680)));
  return n * Math.log(n) - n + Math.log(2 * Math.PI * n) / 2 + series;
}

/** A term this small beside the sum, past the largest, changes nothing. */
const NOTHING = 1e-18;

/** ln of the smallest term that is held in full precision. */
const MIN_LOG = -700;

/**
 * Chance of fewer good blades than wanted, summed down from one too few: only the terms that count are
 * visited, a few times the square root of the starts.
 *
 * @param starts - Blades begun, at least `good`.
 * @param good - Good blades wanted, from 1.
 * @param yieldShare - Above 0, below 1.
 */
function chanceOfTooFew(starts: number, good: number, yieldShare: number): number {
  const most = good - 1;
  const odds = (1 - yieldShare) / yieldShare;
  const choose = logFactorial(starts) - logFactorial(most) - logFactorial(starts - most);
  const log = choose + most * Math.log(yieldShare) + (starts - most) * Math.log1p(-yieldShare);
  // So far above the mean that the term is no double any more, all the chance lies below.
  if (log < MIN_LOG && most > starts * yieldShare) return 1;
  let term = Math.exp(log);
  let sum = term;
  for (let k = most; k > 0; k -= 1) {
    const ratio = (k * odds) / (starts - k + 1);
    term *= ratio;
    sum += term;
    if (ratio < 1 && term < NOTHING * sum) break;
  }
  return sum;
}

/** Rounding of a sum of a few thousand terms must not cost a blade: 0.9 asked, 0.9 less 1e-16 reached. */
export const ROUNDING = 1e-12;

/** Whether a number of starts yields enough with the confidence asked. */
function excess(starts: number, good: number, yieldShare: number, confidence: number): number {
  const chance = yieldShare >= 1 ? 1 : 1 - chanceOfTooFew(starts, good, yieldShare);
  return chance - (confidence - ROUNDING);
}

/** Yields that differ by less need no telling apart. */
const CLOSE = 1e-11;

/**
 * Lowest yield at which a number of starts is enough.
 *
 * @param low - A yield at which it is not.
 * @param high - A yield at which it is.
 */
export function yieldEnough(
  starts: number,
  good: number,
  confidence: number,
  low: number,
  high: number,
): number {
  return crossing((share) => excess(starts, good, share, confidence), low, high, CLOSE);
}

/**
 * Smallest number of starts that is enough, as `startsNeeded` counts it, by halving between two that bracket it.
 *
 * @param fewest - No more than needed.
 * @param most - Enough.
 */
export function startsBetween(
  good: number,
  yieldShare: number,
  confidence: number,
  fewest: number,
  most: number,
): number {
  let [low, high] = [fewest, most];
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (excess(middle, good, yieldShare, confidence) >= 0) high = middle;
    else low = middle + 1;
  }
  return high;
}

/**
 * The same number, found from a guess: where yields follow each other closely the guess is off by a blade or two.
 *
 * @param guess - Between `fewest` and `most`.
 */
export function startsNear(
  good: number,
  yieldShare: number,
  confidence: number,
  guess: number,
  [fewest, most]: readonly [number, number],
): number {
  const isEnough = (starts: number) => excess(starts, good, yieldShare, confidence) >= 0;
  const direction = isEnough(guess) ? -1 : 1;
  let near = guess;
  for (let step = 1; ; step *= 2) {
    const far = Math.min(most, Math.max(fewest, near + direction * step));
    const isOver = far === fewest || far === most || isEnough(far) !== direction < 0;
    if (isOver) return startsBetween(good, yieldShare, confidence, Math.min(near, far), Math.max(near, far));
    near = far;
  }
}
