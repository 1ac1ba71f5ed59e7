import { COLUMN, ROW } from "./addresses";

const LETTER = String.raw`[\p{L}_\\]`;
const WORD = String.raw`[\p{L}\p{M}\p{N}_.\\?]`;
const NAME = `${LETTER}${WORD}*`;
const CELL = String.raw`\$?${COLUMN}\$?${ROW}`;
const END = `(?!${WORD}|!)`;
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
const PATTERNS = {
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

function cut(formula: string): Token[] {
  const tokens: Token[] = [];
  for (let at = 0; at < formula.length; ) {
    const piece = formula[at - 1] === "!" ? PIECE_BEHIND_SHEET : PIECE;
    piece.lastIndex = at;
    const match = piece.exec(formula);
    if (match === null) throw new Error("the last kind of piece takes anything");
    // A loop of its own: every workbook is read through here, and a search by callback took half of the time.
    let group = 1;
    while (match[group] === undefined) group += 1;
    tokens.push({ kind: KINDS[group - 1] ?? "unknown", text: match[0], at });
    at += match[0].length;
  }
  return tokens;
}

/** Several questions are asked of one formula after the other: its pieces are kept until the next one comes. */
let latest: { readonly formula: string; readonly tokens: readonly Token[] } = { formula: "", tokens: [] };

/**
 * Cuts a formula into its pieces, spaces among them: joined they are the formula again, whatever it is.
 *
 * @param formula - In English, as typed or as a file holds it: `,` between arguments, `;` between rows, `.` as decimal point.
 */
export function tokensOf(formula: string): readonly Token[] {
  if (formula !== latest.formula) latest = { formula, tokens: cut(formula) };
  return latest.tokens;
}

/** The formula with some of its pieces written otherwise; `undefined` leaves a piece as it is. */
export function rewritten(
  formula: string,
  write: (token: Token, next: Token | undefined) => string | undefined,
): string {
  const tokens = tokensOf(formula);
  return tokens.map((token, at) => write(token, tokens[at + 1]) ?? token.text).join("");
}

const ERROR = new RegExp(`^${PATTERNS.error}$`);

/** True where a text is the code of an error, such as `#N/A`. */
export const isErrorCode = (text: string): boolean => ERROR.test(text);

/** A text as a formula quotes it. */
export function textLiteral(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/** What a quoted text of a formula says. */
export function textOf(literal: string): string {
  return literal.slice(1, -1).replaceAll('""', '"');
}

/** The cells of an array constant, `{"a",1;"b",2}`, row by row, as they are written. */
export function arrayRows(constant: string): string[][] {
  const rows = [[""]];
  for (const { kind, text } of tokensOf(constant)) {
    const row = rows.at(-1) ?? [];
    if (kind === "comma") row.push("");
    else if (kind === "semicolon") rows.push([""]);
    else if (kind !== "openArray" && kind !== "closeArray") row.push((row.pop() ?? "") + text);
  }
  return rows.map((row) => row.map((cell) => cell.trim()));
}
