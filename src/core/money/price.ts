import { relation } from "../relation";

/** Sums of money. */
export const MONEY = relation({
  title: "Costs, charges and prices",
  source: "shop-arithmetic",
  locator: "definitions of margin (share of the price) and markup (share of the cost)",
  evidence: "standard",
  inputs: {},
  output: { label: "amount", unit: "money" },
  error: { size: 0, unit: "money", kind: "exact; round once, at the price" },
});

/**
 * An outside shop's charge: rate × quantity but no less than the minimum, plus the set-up.
 *
 * @param quantity - Pieces, or mass [kg], as the rate counts them.
 * @param rate - Amount for one.
 * @param minimum - Least amount for a lot.
 * @param setUp - Amount on top, once.
 * @returns Amount in the same currency.
 * Limits: none are checked. Error and source: {@link MONEY}.
 */
export function outsideCharge(quantity: number, rate: number, minimum: number, setUp: number): number {
  return Math.max(minimum, rate * quantity) + setUp;
}

/** What a lot costs. Money in one currency. */
export interface Lot {
  /** Once a lot [money]. */
  readonly setUp: number;
  /** Of all pieces together [h]. */
  readonly runHours: number;
  /** Cost of an hour of work [money]. */
  readonly hourRate: number;
  /** Of one piece [money]. */
  readonly material: number;
  /** Outside services for the whole lot [money]. */
  readonly outside: number;
  /** Pieces in the lot, 1 and more [-]. */
  readonly quantity: number;
}

/**
 * Cost of the whole lot; divide by the quantity for the unit cost.
 *
 * @param lot - Amounts in one currency, hours [h]
 * @returns Amount in the same currency.
 * Limits: none are checked. Error and source: {@link MONEY}.
 */
export function lotCost({ setUp, runHours, hourRate, material, outside, quantity }: Lot): number {
  return setUp + runHours * hourRate + material * quantity + outside;
}

/**
 * Price of which the margin is a share.
 *
 * @param cost - Amount.
 * @param margin - Share of the price, below 1 [-]
 * @returns Amount in the same currency.
 * Limits: none are checked. Error and source: {@link MONEY}.
 */
export function priceAtMargin(cost: number, margin: number): number {
  return cost / (1 - margin);
}

/**
 * Price that is the cost and a share of the cost on top.
 *
 * @param cost - Amount.
 * @param markup - Share of the cost [-]
 * @returns Amount in the same currency.
 * Limits: none are checked. Error and source: {@link MONEY}.
 */
export function priceAtMarkup(cost: number, markup: number): number {
  return cost * (1 + markup);
}
