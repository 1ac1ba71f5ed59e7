import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";

/** Lower bound of a yield. */
export const YIELD_BOUND = relation({
  title: "Yield that the shop's own counts support",
  source: "clopper-pearson-1934",
  locator: "one-sided exact lower bound of a proportion",
  evidence: "standard",
  inputs: { tried: { label: "tried", unit: "", min: 1, max: 10_000 } },
  output: { label: "yield", unit: "" },
  error: { size: 0, unit: "", kind: "exact; holds at least as often as the confidence says" },
});

const STEPS = 200;

/** ln of n over k, as a sum: exact enough for any count a shop keeps. */
function logChoose(n: number, k: number): number {
  let sum = 0;
  for (let i = 1; i <= k; i += 1) sum += Math.log((n - k + i) / i);
  return sum;
}

/** Chance of `good` or more of `tried` at a yield; `choose` is ln of tried over good. */
function atLeast(good: number, tried: number, share: number, choose: number): number {
  let term = Math.exp(choose + good * Math.log(share) + (tried - good) * Math.log1p(-share));
  let sum = term;
  for (let k = good; k < tried; k += 1) {
    term *= ((tried - k) * share) / ((k + 1) * (1 - share));
    sum += term;
  }
  return sum;
}

/** How sure the floor of a yield is where nothing is said. */
export const USUAL_FLOOR_CONFIDENCE = 0.95;

/**
 * Yield that is exceeded with the confidence asked, given the shop's own counts: the one-sided exact
 * lower bound (Clopper and Pearson).
 *
 * @param good - Good blades, 0 to `tried`.
 * @param tried - Blades started, from 1.
 * @param confidence - Above 0, below 1; 0.95 where left out.
 * @returns Share, 0 to 1 [-]
 * @throws InvalidValue for more good than tried.
 * Error and source: {@link YIELD_BOUND}.
 */
export function yieldFloor(good: number, tried: number, confidence = USUAL_FLOOR_CONFIDENCE): number {
  if (good > tried) {
    throw new InvalidValue(
      `good ${numberText(good)} is more than tried, ${numberText(tried)}: good blades first`,
    );
  }
  if (good === 0) return 0;
  const tail = 1 - confidence;
  if (good === tried) return tail ** (1 / tried);
  const choose = logChoose(tried, good);
  let low = 0;
  let high = good / tried;
  for (let step = 0; step < STEPS && high - low > 1e-15; step += 1) {
    const middle = (low + high) / 2;
    if (atLeast(good, tried, middle, choose) < tail) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
