import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";

/** Chance of exactly `bad` in a sample drawn from endless production. */
function binomial(sample: number, fraction: number): number[] {
  const chances: number[] = [];
  let logarithm = sample * Math.log1p(-fraction);
  for (let bad = 0; bad <= sample; bad += 1) {
    chances.push(Math.exp(logarithm));
    logarithm += Math.log(((sample - bad) / (bad + 1)) * (fraction / (1 - fraction)));
  }
  return chances;
}

/** Natural logarithms of factorials by summation, exact enough to 1e-13 at a thousand. */
function logFactorials(upTo: number): number[] {
  const logs = [0];
  for (let n = 1; n <= upTo; n += 1) logs.push((logs[n - 1] as number) + Math.log(n));
  return logs;
}

/** Chance of exactly 0, 1, 2 ... in a sample drawn from a lot without putting back. */
function hypergeometric(sample: number, lot: number, badInLot: number): number[] {
  const logs = logFactorials(lot);
  const choose = (n: number, k: number) =>
    k < 0 || k > n ? -Infinity : (logs[n] as number) - (logs[k] as number) - (logs[n - k] as number);
  const all = choose(lot, sample);
  return Array.from({ length: sample + 1 }, (_, bad) =>
    Math.exp(choose(badInLot, bad) + choose(lot - badInLot, sample - bad) - all),
  );
}

function wholeBad(fraction: number, lot: number): number {
  const bad = fraction * lot;
  const rounded = Math.round(bad);
  if (Math.abs(bad - rounded) <= 1e-6) return rounded;
  const [under, over] = [Math.floor(bad), Math.ceil(bad)];
  throw new InvalidValue(
    `${numberText(fraction)} of a lot of ${lot} is ${numberText(bad)} pieces, not a whole number: ` +
      `give ${under}/${lot} or ${over}/${lot}, or leave the lot out`,
  );
}

function chances(sample: number, fraction: number, lot: number | undefined): number[] {
  if (lot !== undefined) return hypergeometric(sample, lot, wholeBad(fraction, lot));
  if (fraction === 1) return Array.from({ length: sample + 1 }, (_, bad) => (bad === sample ? 1 : 0));
  return binomial(sample, fraction);
}

/**
 * Chance that a sampling plan lets a lot through.
 *
 * @param sample - Pieces tested.
 * @param accept - Most bad pieces allowed in the sample.
 * @param fraction - Fraction bad, 0 to 1.
 * @param lot - Pieces in the lot; left out, the sample comes from endless production.
 * @returns Probability, 0 to 1 [-]
 * @throws InvalidValue where the numbers contradict each other.
 * Error: exact to rounding. Source: binomial and hypergeometric distributions.
 */
export function acceptChance(sample: number, accept: number, fraction: number, lot?: number): number {
  if (accept > sample) {
    throw new InvalidValue(`accept ${accept} is more than the sample of ${sample}: nothing would ever fail`);
  }
  if (lot !== undefined && sample > lot)
    throw new InvalidValue(`sample ${sample} is more than the lot of ${lot}`);
  const upTo = chances(sample, fraction, lot).slice(0, accept + 1);
  return Math.min(
    1,
    upTo.reduce((sum, chance) => sum + chance, 0),
  );
}
