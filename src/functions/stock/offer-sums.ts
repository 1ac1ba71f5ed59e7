import type { SupplierOrder } from "../../core/stock/best-offer";

/** A sum without the traces of binary fractions. */
export const tidy = (value: number) => Number(value.toPrecision(12));

const WITH_YEAR = /^\d{4}\D/;

/** The last of the weeks where they are written year first, else all of them. */
function lastWeek(weeks: readonly string[]): string {
  const given = [...new Set(weeks.filter((week) => week !== ""))];
  const isDated = given.every((week) => WITH_YEAR.test(week));
  return isDated ? (given.sort().at(-1) ?? "") : given.join(", ");
}

interface Sums {
  readonly bars: number;
  readonly kilograms: number;
  readonly week: string;
}

/** Bars, mass and last week of what is ordered. */
export function sumsOf(orders: readonly SupplierOrder[]): Sums {
  const bought = orders.flatMap(({ items }) => items.flatMap((item) => item.bought));
  return {
    bars: bought.reduce((sum, { bars }) => sum + bars, 0),
    kilograms: tidy(bought.reduce((sum, { kilograms }) => sum + kilograms, 0)),
    week: lastWeek(bought.map(({ week }) => week)),
  };
}
