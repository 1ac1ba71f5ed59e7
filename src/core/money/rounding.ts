/** How an amount half way between two steps is rounded, or any amount up or down. */
export const ROUNDING_RULES = ["half up", "half even", "up", "down"] as const;

export type RoundingRule = (typeof ROUNDING_RULES)[number];

/** Digits in which a binary fraction is still the decimal that was typed. */
const DECIMAL_DIGITS = 15;

function decimal(value: number): number {
  return Number(value.toPrecision(DECIMAL_DIGITS));
}

function wholeSteps(steps: number, rule: RoundingRule): number {
  const floor = Math.floor(steps);
  const rest = decimal(steps - floor + 1) - 1;
  const isExact = Math.abs(rest) < 1e-9 || Math.abs(rest - 1) < 1e-9;
  if (isExact) return Math.round(steps);
  if (rule === "down") return floor;
  if (rule === "up") return floor + 1;
  const isHalf = Math.abs(rest - 0.5) < 1e-9;
  if (isHalf) return rule === "half up" || floor % 2 === 1 ? floor + 1 : floor;
  return Math.round(steps);
}

/**
 * An amount rounded to a step, as it would be on paper: 1.005 counts as one and a half hundredths, though its
 * binary fraction is a little less. Amounts below 0 mirror those above: half up goes away from 0.
 *
 * @param value - Any amount.
 * @param step - Smallest step of the price, above 0, in the same currency.
 * @param rule - How an amount half way between two steps is rounded.
 * @returns Amount, a multiple of the step [same currency]
 * Limits: none are checked. Error and source: {@link MONEY}.
 */
export function roundMoney(value: number, step: number, rule: RoundingRule): number {
  const steps = wholeSteps(decimal(Math.abs(value) / step), rule);
  const rounded = decimal(steps * step);
  return value < 0 && rounded !== 0 ? -rounded : rounded;
}
