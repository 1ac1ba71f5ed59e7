import { InvalidValue } from "../../core/refusal";

/** Symbols with a figure each, in the order of the certificate. */
export interface HeatFigures {
  readonly elements: readonly string[];
  /** Mass %. */
  readonly values: readonly number[];
}

interface Token {
  readonly text: string;
  readonly isSymbol: boolean;
}

const TOKEN = /([A-Za-z]+)|([+-]?\d+(?:[.,]\d+)?)|([^\s,;:=|%])/g;

const FORMS = "give pairs such as C 0.74 Mn 0.62, or a line of symbols and a line of figures";

function tokensOf(text: string): Token[] {
  return [...text.matchAll(TOKEN)].map(([found, symbol, , other]) => {
    if (other === "<")
      throw new InvalidValue(
        'the certificate says "less than" (<): type the figure alone, or leave that element out',
      );
    if (other !== undefined) throw new InvalidValue(`"${other}" is no part of an analysis: ${FORMS}`);
    return { text: found, isSymbol: symbol !== undefined };
  });
}

function figureOf({ text }: Token): number {
  return Number(text.replace(",", "."));
}

/** Symbol, figure, symbol, figure ... */
function pairs(tokens: readonly Token[]): HeatFigures {
  const slip = tokens.findIndex(({ isSymbol }, at) => isSymbol !== (at % 2 === 0));
  const last = tokens.length % 2 === 1 ? tokens.length - 1 : -1;
  const at = slip >= 0 ? slip : last;
  const here = tokens[at];
  const before = tokens[at - 1];
  if (here !== undefined) {
    const what =
      slip >= 0 && here.isSymbol
        ? `${before?.text} has no figure`
        : `${here.text} has no ${here.isSymbol ? "figure" : "element before it"}`;
    throw new InvalidValue(`${what}: ${FORMS}`);
  }
  return {
    elements: tokens.filter(({ isSymbol }) => isSymbol).map(({ text }) => text),
    values: tokens.filter(({ isSymbol }) => !isSymbol).map(figureOf),
  };
}

/** A line of symbols over one line of figures a piece. */
function lines(symbols: readonly Token[], figures: readonly Token[]): HeatFigures {
  if (figures.length % symbols.length !== 0)
    throw new InvalidValue(
      `${symbols.length} symbols over ${figures.length} figures: give as many figures as symbols in each line`,
    );
  return {
    elements: figures.map((_, at) => symbols[at % symbols.length]?.text ?? ""),
    values: figures.map(figureOf),
  };
}

/**
 * Reads an analysis as people paste it: pairs in a line or one below another, or a line of symbols
 * over lines of figures; decimal point or comma, `%`, colons and tabs between.
 *
 * @throws InvalidValue naming what has no partner.
 */
export function readHeat(text: string): HeatFigures {
  const tokens = tokensOf(text);
  const firstFigure = tokens.findIndex(({ isSymbol }) => !isSymbol);
  const symbols = tokens.slice(0, firstFigure);
  const rest = tokens.slice(firstFigure);
  const isLines = symbols.length > 1 && rest.every(({ isSymbol }) => !isSymbol);
  return isLines ? lines(symbols, rest) : pairs(tokens);
}
