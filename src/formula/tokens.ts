import { COLUMN, ROW } from "./addresses";
import { CELL, END, PATTERNS, pieceAt, type Token, type TokenKind } from "./pieces";

/** Pieces of one character that begin nothing else. */
const SIGNS: Readonly<Record<string, TokenKind>> = {
  "(": "open",
  ")": "close",
  ",": "comma",
  ";": "semicolon",
  "{": "openArray",
  "}": "closeArray",
  ...Object.fromEntries([..."-+*/^&=%@:"].map((sign) => [sign, "operator"])),
};

const PLAIN_WORD = /[A-Za-z_\\][\w.\\?]*/y;
const PLAIN_CELL = new RegExp(`^${COLUMN}${ROW}$`);
const FIXED_CELL = new RegExp(`(?=\\$)${CELL}${END}`, "uy");
/** Behind a word of plain letters, what leaves no doubt that the word ends there and is no part of a range. */
const ENDS_WORD = new Set(["", ..."),;}+-*/^&=<>%#"]);

/** A sheet, a call, a cell or a name in plain letters, where one look at what follows tells which. */
function plainWordAt(formula: string, at: number): Token | undefined {
  PLAIN_WORD.lastIndex = at;
  const text = PLAIN_WORD.exec(formula)?.[0];
  if (text === undefined) return undefined;
  const next = formula[at + text.length] ?? "";
  if (next === "!") return { kind: "sheet", text: `${text}!`, at };
  if (next === "(") return { kind: "call", text, at };
  const isCell = PLAIN_CELL.test(text);
  if (ENDS_WORD.has(next) || (isCell && next === ":")) return { kind: isCell ? "cell" : "name", text, at };
  return undefined;
}

/**
 * The same pieces by their first character, for what nearly all formulas are made of: the patterns try one kind after
 * the other, which took a sixth of the time of reading and calculating a plan.
 */
function plainPieceAt(formula: string, at: number): Token | undefined {
  const first = formula[at] ?? "";
  const sign = SIGNS[first];
  if (sign !== undefined) return { kind: sign, text: first, at };
  if (first !== "$") return plainWordAt(formula, at);
  FIXED_CELL.lastIndex = at;
  const text = FIXED_CELL.exec(formula)?.[0];
  return text === undefined ? undefined : { kind: "cell", text, at };
}

function cut(formula: string): Token[] {
  const tokens: Token[] = [];
  for (let at = 0; at < formula.length; ) {
    const token = plainPieceAt(formula, at) ?? pieceAt(formula, at);
    tokens.push(token);
    at += token.text.length;
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
