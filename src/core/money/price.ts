/** An outside shop's charge: rate × quantity but no less than the minimum, plus the set-up. */
export function outsideCharge(quantity: number, rate: number, minimum: number, setUp: number): number {
  return Math.max(minimum, rate * quantity) + setUp;
}

/** What a lot costs. Money in one currency. */
export interface Lot {
  /** Once a lot. */
  readonly setUp: number;
  /** Of all pieces together, h. */
  readonly runHours: number;
  readonly hourRate: number;
  /** Of one piece. */
  readonly material: number;
  /** Outside services for the whole lot. */
  readonly outside: number;
  readonly quantity: number;
}

/** Cost of the whole lot; divide by the quantity for the unit cost. */
export function lotCost({ setUp, runHours, hourRate, material, outside, quantity }: Lot): number {
  return setUp + runHours * hourRate + material * quantity + outside;
}

/** Price of which the margin is a share. */
export function priceAtMargin(cost: number, margin: number): number {
  return cost / (1 - margin);
}

/** Price that is the cost and a share of the cost on top. */
export function priceAtMarkup(cost: number, markup: number): number {
  return cost * (1 + markup);
}
