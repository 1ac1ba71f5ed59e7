import { COLUMN, ROW } from "./addresses";

const LETTER = String.raw`[\p{L}_\\]`;
const WORD = String.raw`[\p{L}\p{M}\p{N}_.\\?]`;
const NAME = `${LETTER}${WORD}*`;
/** The address of a cell, fixed or not, as part of a pattern. */
export const CELL = String.raw`\$?${COLUMN}\$?${ROW}`;
/** Behind it no word goes on and no sheet ends. */
export const END = `(?!${WORD}|!)`;
const BOOK = String.raw`\[[^[\]]*\]`;
/** Brackets nest once; an apostrophe inside takes the next character as it is (ECMA-376 Part 1, 18.17.6.2). */
const IN_BRACKETS = String.raw`'[^]|[^[\]']`;

const ONE_SHEET = `'(?:[^']|'')*'|(?:${BOOK})?${WORD}+|${BOOK}`;
const SEVERAL_SHEETS = `(?!${CELL}:)(?:${BOOK})?${WORD}+:${WORD}+`;

/**
 * The pieces of a formula in the order in which they are tried (grammar: ECMA-376 Part 1, 18.17.2). `sheet` is what
 * stands in front of a reference, with its exclamation mark: a sheet, several sheets, another workbook, or both.
 * A range of several sheets, `First:Last!`, cannot begin behind a sheet or with the address of a cell: that is a
 * range of cells whose second end names its sheet too. `unknown` is what has no place in a formula; a quote that is
 * not closed takes the rest with it.
 */
export const PATTERNS = {
  space: String.raw`\s+`,
  text: `"(?:[^"]|"")*"`,
  sheet: `(?:${ONE_SHEET}|${SEVERAL_SHEETS})!`,
  error: "#[A-Za-z][A-Za-z0-9/_]*[!?]?",
  call: String.raw`(?!${CELL}\s+\()${NAME}(?=\s*\()`,
  columns: String.raw`\$?${COLUMN}:\$?${COLUMN}(?!\()${END}`,
  rows: String.raw`\$?${ROW}:\$?${ROW}${END}`,
  cell: `${CELL}${END}`,
  name: NAME,
  number: String.raw`(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`,
  brackets: String.raw`\[(?:${IN_BRACKETS}|\[(?:${IN_BRACKETS})*\])*\]`,
  operator: "<=|>=|<>|[-+*/^&=<>%@:#]",
  open: String.raw`\(`,
  close: String.raw`\)`,
  comma: ",",
  semicolon: ";",
  openArray: String.raw`\{`,
  closeArray: String.raw`\}`,
  unknown: `'(?:[^']|'')*'?|["[][^]*|[^]`,
} as const;

export type TokenKind = keyof typeof PATTERNS;

const KINDS = Object.keys(PATTERNS) as TokenKind[];

const pieces = (patterns: Readonly<Record<TokenKind, string>>) =>
  new RegExp(KINDS.map((kind) => `(${patterns[kind]})`).join("|"), "uy");

const PIECE = pieces(PATTERNS);
/** Tried behind an exclamation mark. A look behind within the pattern would end the whole script in Safari before 16.4. */
const PIECE_BEHIND_SHEET = pieces({ ...PATTERNS, sheet: `(?:${ONE_SHEET})!` });

/** A piece of a formula with its place in it. */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly at: number;
}

/** The piece that begins at a place of a formula. */
export function pieceAt(formula: string, at: number): Token {
  const piece = formula[at - 1] === "!" ? PIECE_BEHIND_SHEET : PIECE;
  piece.lastIndex = at;
  const match = piece.exec(formula);
  if (match === null) throw new Error("the last kind of piece takes anything");
  // A loop of its own: every workbook is read through here, and a search by callback took half of the time.
  let group = 1;
  while (match[group] === undefined) group += 1;
  return { kind: KINDS[group - 1] ?? "unknown", text: match[0], at };
}
