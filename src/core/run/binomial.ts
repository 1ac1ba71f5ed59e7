import { crossing } from "../root";

/** From here the series of Stirling is exact to a double; below, the logarithms are summed. */
const STIRLING_FROM = 20;
const HALF_LOG_TWO_PI = Math.log(2 * Math.PI) / 2;

/** What Stirling's formula leaves out of ln n!, from its series to 1/n^7 (Abramowitz and Stegun 6.1.41). */
function beyondStirling(n: number): number {
  if (n < STIRLING_FROM) return summed[n] as number;
  const inverse = 1 / n;
  const square = inverse * inverse;
  return inverse * (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square / 1680)));
}

const summed = Array.from({ length: STIRLING_FROM }, () => 0);
for (let n = 1, log = 0; n < STIRLING_FROM; n += 1) {
  log += Math.log(n);
  summed[n] = log - ((n + 0.5) * Math.log(n) - n + HALF_LOG_TWO_PI);
}

/** Figures nearer to each other than this share lose their places when they are subtracted: a series keeps them. */
const NEAR = 0.1;

/** x ln(x ÷ m) + m - x, in full precision for x near m as well. */
function deviance(x: number, m: number): number {
  if (Math.abs(x - m) >= NEAR * (x + m)) return x * Math.log(x / m) + m - x;
  const v = (x - m) / (x + m);
  let sum = (x - m) * v;
  let power = 2 * x * v;
  for (let odd = 3; ; odd += 2) {
    power *= v * v;
    const more = sum + power / odd;
    if (more === sum) return sum;
    sum = more;
  }
}

/**
 * ln of the chance of exactly `k` good blades of `n`, by the saddle-point form (C. Loader, Fast and accurate computation
 * of binomial probabilities, 2000; from memory): a sum of logarithms of factorials would lose nine places at a million.
 */
function logChance(n: number, k: number, share: number): number {
  if (k === 0) return n * Math.log1p(-share);
  if (k === n) return n * Math.log(share);
  const rest = n - k;
  const exponent =
    beyondStirling(n) -
    beyondStirling(k) -
    beyondStirling(rest) -
    deviance(k, n * share) -
    deviance(rest, n * (1 - share));
  return exponent + Math.log(n / k / rest) / 2 - HALF_LOG_TWO_PI;
}

/** A term this small beside the sum, past the largest, changes nothing. */
const NOTHING = 1e-18;

/** Chance of `k` good blades and fewer; worth asking where that is less than half. */
function chanceDownFrom(k: number, n: number, share: number): number {
  const odds = (1 - share) / share;
  let term = Math.exp(logChance(n, k, share));
  let sum = term;
  for (let at = k; at > 0 && term > NOTHING * sum; at -= 1) {
    term *= (at * odds) / (n - at + 1);
    sum += term;
  }
  return sum;
}

/** Chance of `k` good blades and more; worth asking where that is less than half. */
function chanceUpFrom(k: number, n: number, share: number): number {
  const odds = share / (1 - share);
  let term = Math.exp(logChance(n, k, share));
  let sum = term;
  for (let at = k; at < n && term > NOTHING * sum; at += 1) {
    term *= ((n - at) * odds) / (at + 1);
    sum += term;
  }
  return sum;
}

/**
 * Chance that so many starts yield at least `good` blades. Summed away from the mean, so that only terms that count are
 * visited, a few times the square root of the starts.
 *
 * @param starts - At least `good`.
 * @param good - From 1.
 * @param share - Above 0, to 1.
 */
export function chanceOfAtLeast(good: number, starts: number, share: number): number {
  if (share >= 1) return 1;
  const isAboveMean = good > starts * share;
  const chance = isAboveMean
    ? chanceUpFrom(good, starts, share)
    : 1 - chanceDownFrom(good - 1, starts, share);
  return Math.min(1, Math.max(0, chance));
}

/** Rounding of a sum of a few thousand terms must not cost a blade: 0.9 asked, 0.9 less 1e-16 reached. */
export const ROUNDING = 1e-12;

/** Whether a number of starts yields enough with the confidence asked. */
function excess(starts: number, good: number, yieldShare: number, confidence: number): number {
  return chanceOfAtLeast(good, starts, yieldShare) - (confidence - ROUNDING);
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
