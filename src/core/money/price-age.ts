import type { ReadLine } from "../run/line";

/** Older than this a price is asked about, days. */
const YEAR = 365;
const DAYS_A_MONTH = 365.25 / 12;

/** The day that prices are compared with, and what a sentence calls it. */
export interface PriceDay {
  readonly day: number;
  readonly called: string;
}

/**
 * The day against which prices age: the one given, else the newest price date of the table, so that
 * nothing depends on when the sheet is calculated.
 */
export function priceDay(
  lines: readonly (Pick<ReadLine, "priceDate"> | undefined)[],
  given: number | undefined,
): PriceDay | undefined {
  if (given !== undefined) return { day: given, called: "the date given" };
  let newest = Number.NEGATIVE_INFINITY;
  for (const line of lines) newest = Math.max(newest, line?.priceDate ?? newest);
  return Number.isFinite(newest) ? { day: newest, called: "the newest price date of the table" } : undefined;
}

/** What is to be said about the date of a steel price; empty where it is fresh or no price is given. */
export function priceCaution(
  { priceKg, priceDate }: Pick<ReadLine, "priceKg" | "priceDate">,
  today: PriceDay | undefined,
): string {
  if (priceKg === undefined) return "";
  if (priceDate === undefined) return "The price a kg carries no date: write when it was quoted.";
  if (today === undefined) return "";
  const age = today.day - priceDate;
  if (age < 0) return `The price a kg is dated after ${today.called}: check the date.`;
  if (age <= YEAR) return "";
  return `The price a kg is ${Math.round(age / DAYS_A_MONTH)} months older than ${today.called}: ask for a new one.`;
}
