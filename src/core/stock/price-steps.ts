import { InvalidValue } from "../refusal";
import { greatestCommonDivisor } from "./cutting-grid";

/** Prices as multiples of a step. */
export interface PriceSteps {
  readonly steps: readonly number[];
  /** Money a step; 0 where no prices were given and bars are counted. */
  readonly step: number;
  readonly isWhole: boolean;
}

const DECIMALS = [1, 10, 100, 1000, 10_000];
const ROUNDING = 1e-9;

function isWholeAt(prices: readonly number[], factor: number): boolean {
  return prices.every((price) => Math.abs(price * factor - Math.round(price * factor)) <= ROUNDING * factor);
}

/**
 * Prices of bars as whole multiples of their greatest common step, so that a bound on the cost can be
 * rounded up to the next cost that is possible. No price at all counts every bar as 1.
 *
 * @throws InvalidValue where some bars have a price and others none.
 */
export function priceSteps(prices: readonly (number | undefined)[]): PriceSteps {
  const given = prices.filter((price): price is number => price !== undefined);
  if (given.every((price) => price === 0)) return { steps: prices.map(() => 1), step: 0, isWhole: true };
  const missing = prices.indexOf(undefined);
  if (missing >= 0) {
    throw new InvalidValue(
      `bar ${missing + 1} has no price: give every length of bar a price (0 for stock that costs nothing), or none`,
    );
  }
  const factor = DECIMALS.find((decimals) => isWholeAt(given, decimals));
  if (factor === undefined) return { steps: given, step: 1, isWhole: false };
  const units = given.map((price) => Math.round(price * factor));
  const common = units.reduce(greatestCommonDivisor, 0);
  return { steps: units.map((unit) => unit / common), step: common / factor, isWhole: true };
}
