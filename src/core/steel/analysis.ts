import { numberText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { familyOf } from "./classify";
import { type Composition, ELEMENTS, type Element } from "./composition";
import { checkContent, checkTotal, elementNamed } from "./plausible";
import type { Steel } from "./steel";

const PAIR = String.raw`([A-Z]{1,2})\s*[=:]?\s*(\d*[.,]?\d+)\s*%?`;
const BREAK = String.raw`\s*[,;|/]?\s*`;
const WHOLE = new RegExp(`^${PAIR}(?:${BREAK}${PAIR})*${BREAK}$`, "i");
const EACH = new RegExp(PAIR, "gi");
/** Figures in front, "0.95% C 0.4% Mn", as people say it. */
const SAID = String.raw`(\d*[.,]?\d+)\s*%\s*([A-Z]{1,2})\b`;
const WHOLE_SAID = new RegExp(`^${SAID}(?:${BREAK}${SAID})*${BREAK}$`, "i");
/** A name such as Cr12MoV has neither; figures set apart or with decimals make an analysis of it. */
const SET_APART = /[\s=:;%]|\d[.,]\d/;

/** True where a text is built like an analysis rather than like a name. */
export function looksLikeAnalysis(text: string): boolean {
  const tidied = text.normalize("NFKC").trim();
  return SET_APART.test(text.trim()) && (WHOLE.test(tidied) || WHOLE_SAID.test(tidied));
}

/** Symbols and figures in the order they stand. */
function pairsOf(text: string): (readonly [symbol: string, value: number])[] {
  const tidied = text.normalize("NFKC").trim();
  const value = (figure: string) => Number(figure.replace(",", "."));
  if (WHOLE_SAID.test(tidied)) {
    return [...tidied.matchAll(new RegExp(SAID, "gi"))].map(([, figure = "", symbol = ""]) => [
      symbol,
      value(figure),
    ]);
  }
  return [...tidied.matchAll(EACH)].map(([, symbol = "", figure = ""]) => [symbol, value(figure)]);
}

function contentsFrom(pairs: readonly (readonly [string, number])[]): Map<Element, number> {
  const contents = new Map<Element, number>();
  for (const [symbol, value] of pairs) {
    const element = elementNamed(symbol);
    if (contents.has(element)) throw new InvalidValue(`${element} is given twice`);
    checkContent(element, value);
    contents.set(element, value);
  }
  if (!contents.get("C"))
    throw new InvalidValue('an analysis needs carbon, in mass %: for example "C 0.95 Mn 0.40 Si 0.22"');
  checkTotal(contents);
  return contents;
}

/**
 * A steel from the figures of a certificate.
 *
 * @param text - Element symbols and contents [mass %], in any order: `C 0.95 Mn 0.40 Si 0.22`. Decimal point or
 *   comma; `=`, `:` and `%` are tolerated. Elements left out count as 0.
 * @returns The steel, its name being the text as given.
 * @throws InvalidValue for an unknown symbol, an element given twice, no carbon, a total over 100 % or
 *   a figure that looks like a slip of units.
 */
export function parseAnalysis(text: string): Steel {
  const contents = contentsFrom(pairsOf(text));
  const entries = ELEMENTS.map((element) => [element, contents.get(element) ?? 0]);
  const composition = Object.fromEntries(entries) as Composition;
  const stated = [...contents.keys()];
  return { name: text.trim(), grade: null, family: familyOf(composition), stated, composition };
}

/**
 * The text of an analysis, usable wherever a steel is asked for.
 *
 * @param symbols - Element symbols.
 * @param values - Mass % of each, in the same order.
 * @throws InvalidValue as {@link parseAnalysis}, or where the lists differ in length or a figure is negative.
 */
export function analysisText(symbols: readonly string[], values: readonly number[]): string {
  if (symbols.length !== values.length)
    throw new InvalidValue(
      `${symbols.length} elements but ${values.length} figures: give one figure an element`,
    );
  const negative = values.find((value) => value < 0);
  if (negative !== undefined)
    throw new InvalidValue(`${numberText(negative)} % given; content cannot be negative`);
  const contents = contentsFrom(symbols.map((symbol, at) => [symbol, values[at] ?? 0]));
  return [...contents].map(([element, value]) => `${element} ${plain(value)}`).join(" ");
}

/** A figure without exponent, to six decimals: 0.00005 is not 5e-5 in an analysis. */
function plain(value: number): string {
  return value.toFixed(6).replace(/\.?0+$/, "");
}
