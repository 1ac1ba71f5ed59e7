import { textLiteral } from "../../formula/tokens";
/**
 * The rule by which a file colours cells that contain a word. Capitals count (FIND, not SEARCH): "FAIL: Mn high"
 * is no HIGH.
 */
export const wordFormula = (word: string, cell: string): string =>
  `ISNUMBER(FIND(${textLiteral(word)},${cell}))`;

const WORD_FORMULA = /^ISNUMBER\(FIND\("((?:[^"]|"")+)",\$?[A-Z]{1,3}\$?\d+\)\)$/i;

/** The word of such a rule; `undefined` for any other formula. */
export const wordOfFormula = (formula: string): string | undefined =>
  WORD_FORMULA.exec(formula.trim())?.[1]?.replaceAll('""', '"');
