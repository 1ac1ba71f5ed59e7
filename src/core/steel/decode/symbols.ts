import table from "../../../data/steel/decode-symbols.json";

/** A way of writing elements into names. */
export type Alphabet = "Latin" | "JIS" | "GOST";

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

const rows = table.rows as [string, string, string, number][];

function symbolsOf(alphabet: Alphabet): readonly Symbol[] {
  return rows
    .filter(([kind]) => kind === alphabet)
    .map(([, symbol, element, factor]) => ({ symbol, element, factor }));
}

const SYMBOLS: Readonly<Record<Alphabet, readonly Symbol[]>> = {
  Latin: symbolsOf("Latin"),
  JIS: symbolsOf("JIS"),
  GOST: symbolsOf("GOST"),
};

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
    const found = SYMBOLS[alphabet].find(({ symbol }) => rest.startsWith(symbol));
    if (found === undefined) return undefined;
    rest = rest.slice(found.symbol.length);
    const figure = FIGURE.exec(rest)?.[0];
    rest = rest.slice(figure?.length ?? 0);
    written.push({ ...found, figure: figure === undefined ? null : Number(figure) });
  }
  return written;
}
