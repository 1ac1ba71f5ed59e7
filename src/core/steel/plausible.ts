import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { ELEMENTS, type Element } from "./composition";

/**
 * Content above which a figure is taken for a slip of units, mass %. Common practice, no source:
 * wide enough for every tool, stainless and high-speed steel, narrow enough for 60 typed for 0.60.
 */
const HIGHEST: Readonly<Record<Element, number>> = {
  C: 2.5,
  Si: 5,
  Mn: 20,
  P: 0.5,
  S: 0.5,
  Cr: 30,
  Ni: 30,
  Mo: 12,
  V: 16,
  W: 22,
  Co: 16,
  Cu: 5,
  Al: 8,
  N: 2,
};

/** Certificates print phosphorus and sulphur in thousandths and nitrogen in parts per million. */
const USUAL_DIVISORS: Readonly<Partial<Record<Element, readonly number[]>>> = {
  P: [1000, 10000],
  S: [1000, 10000],
  N: [10000],
};

function question(element: Element, value: number): string {
  const divisors = USUAL_DIVISORS[element] ?? [100, 10000];
  const divisor = divisors.find((by) => value / by <= HIGHEST[element]);
  if (divisor === undefined) return "";
  const how = divisor === 10000 ? "parts per million given" : "the decimal point left out";
  return `; was ${numberText(value / divisor)} meant (${how})?`;
}

/**
 * Refuses a content that no steel for blades holds.
 *
 * @param element - The element.
 * @param value - Its content, mass %.
 * @throws InvalidValue asking whether the decimal point was left out or parts per million were given.
 */
export function checkContent(element: Element, value: number): void {
  if (value <= HIGHEST[element]) return;
  throw new InvalidValue(
    `${element} ${numberText(value)} % is more than the ${numberText(HIGHEST[element])} % accepted for a steel` +
      question(element, value),
  );
}

/** Refuses an analysis whose elements add up to more than the whole. */
export function checkTotal(contents: ReadonlyMap<Element, number>): void {
  const total = [...contents.values()].reduce((sum, value) => sum + value, 0);
  if (total <= 100) return;
  throw new InvalidValue(`the elements add up to ${numberText(total)} %, more than 100 %: give mass %`);
}

const BY_SPELLING = new Map(ELEMENTS.map((element) => [element.toUpperCase(), element]));

/**
 * The element that a symbol stands for, in any case.
 *
 * @throws InvalidValue naming the symbols accepted.
 */
export function elementNamed(symbol: string): Element {
  const element = BY_SPELLING.get(symbol.trim().toUpperCase());
  if (element !== undefined) return element;
  const hint = symbol.trim().toUpperCase() === "FE" ? "iron is the rest and is left out" : "leave out others";
  throw new InvalidValue(`"${symbol}" is not an element used here: give ${ELEMENTS.join(", ")}; ${hint}`);
}
