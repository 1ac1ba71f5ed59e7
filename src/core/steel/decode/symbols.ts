import table from "../../../data/steel/decode-symbols.json";
import { grouped, number, oneOf, records, text } from "../../table";

const ALPHABETS = ["Latin", "JIS", "GOST"] as const;

/** A way of writing elements into names. */
export type Alphabet = (typeof ALPHABETS)[number];

interface Symbol {
  readonly symbol: string;
  readonly element: string;
  /** EN 10027-1: the content is multiplied by this in the names of low-alloy steels. */
  readonly factor: number;
}

/** One symbol of a name with the figure behind it, if any. */
export interface Written extends Symbol {
  readonly figure: number | null;
}

const SYMBOLS = grouped(
  records(table, { alphabet: oneOf(ALPHABETS), symbol: text, element: text, factor: number }),
  ({ alphabet }) => alphabet,
);

const FIGURE = /^\d+/;

/**
 * Splits "CRMO2V" into symbols and the figures behind them.
 *
 * @param text - Part of a name in capitals.
 * @param alphabet - How the system writes elements.
 * @returns The symbols in order, or undefined where the text holds anything else.
 */
export function splitSymbols(text: string, alphabet: Alphabet): readonly Written[] | undefined {
  const written: Written[] = [];
  let rest = text;
  while (rest !== "") {
    const found = SYMBOLS.get(alphabet)?.find(({ symbol }) => rest.startsWith(symbol));
    if (found === undefined) return undefined;
    rest = rest.slice(found.symbol.length);
    const figure = FIGURE.exec(rest)?.[0];
    rest = rest.slice(figure?.length ?? 0);
    written.push({ ...found, figure: figure === undefined ? null : Number(figure) });
  }
  return written;
}
