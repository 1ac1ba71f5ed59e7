import { SHEET_COLUMNS, SHEET_ROWS } from "./addresses";

/**
 * A workbook writes the same few hundred formulas with other addresses and numbers thousands of times. What a formula
 * says apart from them is found here in one walk over its letters, so that all the rest is asked once a form.
 */

/** What stands in a form for the address of a cell, and for a number; no formula holds these characters. */
export const ADDRESS = "\u0001";
export const NUMBER = "\u0002";

/** A formula with its addresses and numbers taken out. */
export interface BareForm {
  /** The formula with marks in their places: of two formulas of one form all other pieces are the same. */
  readonly form: string;
  /** Of each address in turn: row, column, and what of it is fixed. */
  readonly cells: readonly number[];
  /** Its numbers as they are written. */
  readonly numbers: readonly string[];
  /** Of each address and number in turn: where it begins and where it ends. */
  readonly spans: readonly number[];
}

/** Figures of one address in `cells`. */
export const FIGURES = 3;
/** What of an address is fixed; added up where both are. */
export const ROW_FIXED = 1;
export const COLUMN_FIXED = 2;

/** Kinds of characters: in a word, in a number, letters of a column, before an address, behind one, in quotes. */
const WORD = 1;
const DIGIT = 2;
const LETTER = 4;
const BEFORE = 8;
const BEHIND = 16;
const BEGINS = 32;
/** In words that are addresses, or else more than one piece. */
const DOUBTFUL = 64;

/** A formula that holds a character without a kind outside quotes is left to be read piece by piece. */
const KINDS = new Uint8Array(65_536);

function mark(characters: string, kind: number): void {
  for (const character of characters) {
    const code = character.charCodeAt(0);
    KINDS[code] = (KINDS[code] ?? 0) | kind;
  }
}

mark("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz", WORD | LETTER);
mark("0123456789", WORD | DIGIT);
mark("_.\\", WORD);
mark("?$", WORD | DOUBTFUL);
mark("(,=+-*/^&<>:%@! ", BEFORE);
mark("),+-*/^&=<>%#: ", BEHIND);
mark("\"'#{", BEGINS);

const [EXCLAMATION, QUOTE, DOLLAR, APOSTROPHE, OPEN, SLASH, DOT, COLON, UNDERSCORE, BRACE] = [
  ..."!\"$'(/.:_{",
].map((character) => character.charCodeAt(0));
const CLOSE_ARRAY = "}";
/** `$XFD$1048576`. */
const LONGEST_ADDRESS = 12;
const LETTERS = 26;
const ZERO = 48;

/** The end of a formula has no kind. */
const kindAt = (formula: string, at: number): number =>
  at < formula.length ? (KINDS[formula.charCodeAt(at)] as number) : 0;

/** Where something quoted ends that begins at a place; -1 where it does not. A doubled quote stands for itself. */
function quotedEnd(formula: string, at: number, quote: string): number {
  let end = formula.indexOf(quote, at + 1);
  while (end >= 0 && formula[end + 1] === quote) end = formula.indexOf(quote, end + 2);
  return end < 0 ? -1 : end + 1;
}

/** Where a list of constants ends; -1 where it does not. */
function arrayEnd(formula: string, at: number): number {
  for (let from = at + 1; from < formula.length; from += 1) {
    if (formula[from] === CLOSE_ARRAY) return from + 1;
    if (formula.charCodeAt(from) !== QUOTE) continue;
    const end = quotedEnd(formula, from, '"');
    if (end < 0) return -1;
    from = end - 1;
  }
  return -1;
}

/** Where the code of an error ends, such as `#N/A`; -1 where a word goes on behind it. */
function errorEnd(formula: string, at: number): number {
  let end = at + 1;
  if ((kindAt(formula, end) & LETTER) === 0) return end;
  while (isInError(formula.charCodeAt(end))) end += 1;
  return (kindAt(formula, end) & WORD) === 0 ? end : -1;
}

const isInError = (code: number) =>
  code === SLASH || code === UNDERSCORE || (code < 128 && ((KINDS[code] ?? 0) & (LETTER | DIGIT)) !== 0);

function longerEnd(formula: string, at: number): number {
  const code = formula.charCodeAt(at);
  if (code === QUOTE) return quotedEnd(formula, at, '"');
  if (code === APOSTROPHE) return quotedEnd(formula, at, "'");
  return code === BRACE ? arrayEnd(formula, at) : errorEnd(formula, at);
}

/** A number that is neither the row of a range, nor the name of a sheet, nor one with an exponent. */
function isPlainNumber(formula: string, start: number, end: number): boolean {
  let dots = 0;
  for (let at = start; at < end; at += 1) {
    if (formula.charCodeAt(at) === DOT) dots += 1;
    else if ((kindAt(formula, at) & DIGIT) === 0) return false;
  }
  const isRow = formula.charCodeAt(end) === COLON || formula.charCodeAt(start - 1) === COLON;
  return dots <= 1 && end - start > dots && !isRow && formula.charCodeAt(end) !== EXCLAMATION;
}

function lettersEnd(formula: string, start: number): number {
  let end = start;
  while ((kindAt(formula, end) & LETTER) !== 0) end += 1;
  return end;
}

/** The column that letters stand for, counted from 1. */
function columnIn(formula: string, start: number, end: number): number {
  let column = 0;
  // The lowest five bits of a letter count it, small or capital.
  for (let at = start; at < end; at += 1) column = column * LETTERS + (formula.charCodeAt(at) & 31);
  return column;
}

/** The row that digits stand for, counted from 1; 0 where they are none, or begin with 0. */
function rowIn(formula: string, start: number, end: number): number {
  let row = 0;
  for (let at = start; at < end; at += 1) {
    if ((kindAt(formula, at) & DIGIT) === 0) return 0;
    row = row * 10 + formula.charCodeAt(at) - ZERO;
    if (row === 0) return 0;
  }
  return row;
}

const isBehind = (formula: string, at: number) =>
  at === formula.length || (kindAt(formula, at) & BEHIND) !== 0;

/** True for a word that touches no other piece but signs. */
const standsAlone = (formula: string, start: number, end: number) =>
  isBehind(formula, end) && (start === 0 || (kindAt(formula, start - 1) & BEFORE) !== 0);

/** True behind a name, a call or a sheet. */
function endsWord(formula: string, at: number): boolean {
  const next = formula.charCodeAt(at);
  return next === OPEN || next === EXCLAMATION || isBehind(formula, at);
}

/** Walks over formulas, one after the other. */
class Walk {
  private cells: number[] = [];
  private numbers: string[] = [];
  private spans: number[] = [];
  private form = "";
  private taken = 0;

  /** @returns Nothing for a formula that has to be read piece by piece. */
  of(formula: string): BareForm | undefined {
    this.cells = [];
    this.numbers = [];
    this.spans = [];
    this.form = "";
    this.taken = 0;
    for (let at = 0; at < formula.length; ) {
      const kind = kindAt(formula, at);
      if ((kind & WORD) !== 0) at = this.word(formula, at);
      else if (kind === 0) return undefined;
      else at = (kind & BEGINS) === 0 ? at + 1 : longerEnd(formula, at);
      if (at < 0) return undefined;
    }
    const { cells, numbers, spans } = this;
    return { form: this.form + formula.slice(this.taken), cells, numbers, spans };
  }

  /** @returns Where a word ends; -1 where that is not certain. */
  private word(formula: string, start: number): number {
    let end = start;
    let kinds = 0;
    for (let kind = WORD; (kind & WORD) !== 0; kind = kindAt(formula, ++end)) kinds |= kindAt(formula, end);
    const first = formula.charCodeAt(start);
    const isAlone = standsAlone(formula, start, end);
    if (first === DOT || (kindAt(formula, start) & DIGIT) !== 0)
      return isAlone && this.number(formula, start, end) ? end : -1;
    if (isAlone && end - start <= LONGEST_ADDRESS && this.address(formula, start, end)) return end;
    return (kinds & DOUBTFUL) === 0 && endsWord(formula, end) ? end : -1;
  }

  /** @returns False for a number that is not a plain one. */
  private number(formula: string, start: number, end: number): boolean {
    if (!isPlainNumber(formula, start, end)) return false;
    this.numbers.push(formula.slice(start, end));
    this.take(formula, start, end, NUMBER);
    return true;
  }

  /** @returns False for a word that is no address of a cell. */
  private address(formula: string, start: number, end: number): boolean {
    const isColumnFixed = formula.charCodeAt(start) === DOLLAR;
    const letters = isColumnFixed ? start + 1 : start;
    const behind = lettersEnd(formula, letters);
    const isRowFixed = formula.charCodeAt(behind) === DOLLAR;
    const column = columnIn(formula, letters, behind);
    const row = rowIn(formula, isRowFixed ? behind + 1 : behind, end);
    if (column < 1 || column > SHEET_COLUMNS || row < 1 || row > SHEET_ROWS) return false;
    const fixed = (isRowFixed ? ROW_FIXED : 0) + (isColumnFixed ? COLUMN_FIXED : 0);
    this.cells.push(row - 1, column - 1, fixed);
    this.take(formula, start, end, ADDRESS);
    return true;
  }

  private take(formula: string, start: number, end: number, sign: string): void {
    this.spans.push(start, end);
    this.form += formula.slice(this.taken, start) + sign;
    this.taken = end;
  }
}

const walk = new Walk();

/**
 * Takes addresses of cells and numbers out of a formula.
 *
 * @returns Nothing for a formula with brackets, unions, whole rows, exponents or other things beyond plain words.
 */
export const bareForm = (formula: string): BareForm | undefined => walk.of(formula);
