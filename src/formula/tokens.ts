const KINDS = [
  "space",
  "text",
  "error",
  "call",
  "reference",
  "number",
  "operator",
  "open",
  "close",
  "comma",
  "semicolon",
  "openArray",
  "closeArray",
] as const;

export type TokenKind = Exclude<(typeof KINDS)[number], "space">;

/** A piece of a formula with its place in it. */
export interface Token {
  readonly kind: TokenKind;
  readonly text: string;
  readonly at: number;
}

const SHEET = String.raw`(?:(?:'(?:[^']|'')*'|[\p{L}_][\p{L}\p{N}_.]*)!)?`;
const CELL = String.raw`\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}`;
const NAME = String.raw`[\p{L}_\\][\p{L}\p{N}_.\\]*`;
const WHOLE = String.raw`\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}|\$?[1-9]\d{0,6}:\$?[1-9]\d{0,6}`;
/** Of a table: brackets inside brackets, as in `Lines[[#This Row],[Temper C]]`. */
const COLUMNS = String.raw`\[(?:[^[\]]|\[[^[\]]*\])*\]`;
const END = String.raw`(?![\p{L}\p{N}_.])`;

const PATTERNS: Readonly<Record<(typeof KINDS)[number], string>> = {
  space: String.raw`\s+`,
  text: `"(?:[^"]|"")*"`,
  error: "#[A-Z][A-Z/0_]*[!?]?",
  call: String.raw`${NAME}(?=\s*\()`,
  reference: `${SHEET}(?:${WHOLE}|${CELL}(?::${CELL})?#?|${NAME}(?:${COLUMNS})?)${END}`,
  number: String.raw`(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`,
  operator: "<=|>=|<>|[-+*/^&=<>%@]",
  open: String.raw`\(`,
  close: String.raw`\)`,
  comma: ",",
  semicolon: ";",
  openArray: String.raw`\{`,
  closeArray: String.raw`\}`,
};

const READERS = KINDS.map((kind) => ({ kind, pattern: new RegExp(PATTERNS[kind], "uy") }));

/** Spaces stay in the list: they end a piece, and count for its place. */
function pieceAt(formula: string, at: number) {
  for (const { kind, pattern } of READERS) {
    pattern.lastIndex = at;
    const text = pattern.exec(formula)?.[0];
    if (text !== undefined && text !== "") return { kind, text, at };
  }
  return undefined;
}

/**
 * Cuts a formula into its pieces.
 *
 * @param formula - As Excel stores it in English: `,` between arguments, `;` between rows, `.` as decimal point.
 * @returns The pieces without spaces; `null` where something in it is none that is known.
 */
export function tokensOf(formula: string): Token[] | null {
  const tokens: Token[] = [];
  let at = formula.startsWith("=") ? 1 : 0;
  while (at < formula.length) {
    const piece = pieceAt(formula, at);
    if (piece === undefined) return null;
    const { kind, text } = piece;
    if (kind !== "space") tokens.push({ kind, text, at });
    at += text.length;
  }
  return tokens;
}
