import { InvalidValue } from "../../core/refusal";
import { quoted } from "../../functions/cells";
import { isAbsurd, parseMeasure } from "../../functions/measure";
import type { Reading } from "./reading";

/** Signs of currencies and the codes they stand for (ISO 4217). */
const SIGNS: readonly (readonly [sign: RegExp, codes: readonly string[]])[] = [
  [/€|\beuros?\b/i, ["EUR"]],
  [/\$|\bdollars?\b/i, ["USD", "CAD", "AUD", "NZD"]],
  [/£|\bpounds? sterling\b/i, ["GBP"]],
  [/¥|\byen\b|\byuan\b/i, ["JPY", "CNY"]],
];
const CODE =
  /\b(EUR|USD|GBP|CHF|SEK|NOK|DKK|PLN|CZK|HUF|RON|JPY|CNY|CAD|AUD|NZD|INR|BRL|MXN|ZAR|TRY|UAH|RUB)\b/i;

/** The currencies that a text names, and the text without them. */
function currencyIn(text: string): readonly [codes: readonly string[] | undefined, rest: string] {
  const code = CODE.exec(text);
  if (code !== null) return [[code[1]?.toUpperCase() ?? ""], text.replace(code[0], " ")];
  const sign = SIGNS.find(([pattern]) => pattern.test(text));
  return sign === undefined ? [undefined, text] : [sign[1], text.replace(sign[0], " ")];
}

/** What a price is for, behind the figure: `/ kg`, `per lb`, `a bar`. */
const PER = /(?:\/|\bper\b|\ba\b|\bje\b)\s*([\d\s]*[a-z]+)\.?\s*$/i;

/** The figure of a price, and what it is for. */
function parted(text: string): { readonly figure: string; readonly per: string | undefined } {
  const found = PER.exec(text);
  const figure = found === null ? text : text.slice(0, found.index);
  return { figure: figure.trim(), per: found?.[1]?.trim() };
}

/**
 * A price or a charge.
 *
 * @param currency - That of the plan; empty where it names none.
 * @throws InvalidValue for another currency, and for what is no amount.
 */
export function readMoney(given: number | string, currency: string): Reading {
  const text = String(given).trim();
  const [codes, bare] = typeof given === "number" ? [undefined, text] : currencyIn(text);
  const own = currency.trim().toUpperCase();
  const isNamed = codes !== undefined;
  if (isNamed && own !== "" && !codes.includes(own))
    throw new InvalidValue(
      `${quoted(text)} is in ${codes[0]}, the plan counts in ${own}: ask for the price in ${own}`,
    );
  const { figure, per } = parted(bare);
  const value = typeof given === "number" ? given : parseMeasure(figure, "money", "");
  if (value < 0 || isAbsurd(value))
    throw new InvalidValue(`${quoted(text)} is no price: give an amount above 0`);
  const isUnsure = isNamed && own === "";
  return {
    value,
    shown: String(value),
    ...(per === undefined ? {} : { per }),
    ...(isUnsure ? { doubt: `${quoted(text)} names a currency, the plan's cover names none` } : {}),
  };
}

/** Pounds and tonnes in kg, and spellings of what a price is for. */
const KILOGRAMS: Readonly<Record<string, number>> = {
  "": 1,
  kg: 1,
  "1 kg": 1,
  kilo: 1,
  lb: 0.453_592_37,
  lbs: 0.453_592_37,
  pound: 0.453_592_37,
  "100 kg": 100,
  t: 1000,
  tonne: 1000,
  "1000 kg": 1000,
};

/** Mass of what a price can be for besides, where the plan knows it [kg]. */
export type OtherUnits = Readonly<Partial<Record<"bar" | "piece" | "lot", number>>>;

/**
 * A price as one for a kilogram.
 *
 * @returns The price and a doubt where it was turned over by a mass that is only planned.
 * @throws InvalidValue for a unit that cannot be turned into kg.
 */
export function pricePerKilogram(
  price: number,
  unit: string,
  others: OtherUnits,
): Pick<Reading, "value" | "doubt"> {
  const word = unit.trim().toLowerCase().replace(/\s+/g, " ");
  const known = KILOGRAMS[word];
  if (known !== undefined) return { value: Number((price / known).toPrecision(12)) };
  const mass = others[word as keyof OtherUnits];
  if (mass !== undefined && mass > 0)
    return {
      value: Math.round((price / mass) * 10_000) / 10_000,
      doubt: `${price} a ${word} is taken over ${mass} kg as planned`,
    };
  throw new InvalidValue(
    `a price for "${unit}" cannot be turned into one a kg: kg, lb, 100 kg, t${Object.keys(others)
      .map((other) => `, ${other}`)
      .join("")} can`,
  );
}
