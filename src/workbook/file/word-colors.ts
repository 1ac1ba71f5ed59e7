import { textLiteral, textOf, tokensOf } from "../../formula/tokens";

/**
 * The rule by which a file colours cells that contain a word. Capitals count (FIND, not SEARCH): "FAIL: Mn high"
 * is no HIGH.
 */
export const wordFormula = (word: string, cell: string): string =>
  `ISNUMBER(FIND(${textLiteral(word)},${cell}))`;

const SHAPE = "ISNUMBER call, open, FIND call, open, text, comma, cell, close, close";

/** The word of such a rule; `undefined` for any other formula. */
export function wordOfFormula(formula: string): string | undefined {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const shape = tokens.map(({ kind, text }) => (kind === "call" ? `${text.toUpperCase()} call` : kind));
  const word = tokens.find(({ kind }) => kind === "text");
  return shape.join(", ") === SHAPE && word !== undefined && word.text !== '""'
    ? textOf(word.text)
    : undefined;
}
