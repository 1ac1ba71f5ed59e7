import {
  cellName,
  columnLetters,
  columnOf,
  type Rectangle,
  readCellParts,
  rectangleBetween,
  rectangleName,
  SHEET_COLUMNS,
  SHEET_ROWS,
} from "./addresses";
import type { Token } from "./pieces";
import { readSheetPrefix, renamedPrefix, type SheetPrefix, sheetOfPrefix } from "./sheet-names";
import { rewritten, textOf, tokensOf } from "./tokens";

/** A reference of a formula taken apart. */
export interface Reference {
  /** The sheet it names; `null` where it means the formula's own. */
  readonly sheet: string | null;
  /** An address such as `A2:B9`, or a name. */
  readonly place: string;
  readonly kind: "cells" | "whole rows or columns" | "name";
}

/** The sheet and the rest of an address: `'Run plan'!D7` gives `Run plan` and `D7`. */
export function splitAddress(address: string): { sheet: string | null; place: string } {
  const [first] = tokensOf(address);
  if (first?.kind !== "sheet") return { sheet: null, place: address };
  return { sheet: sheetOfPrefix(first.text), place: address.slice(first.text.length) };
}

const KINDS: Readonly<Record<string, Reference["kind"]>> = {
  cell: "cells",
  "cell operator cell": "cells",
  columns: "whole rows or columns",
  rows: "whole rows or columns",
  name: "name",
};

/** Takes a reference apart; `null` for one into another workbook, over several sheets or into a table. */
export function readReference(text: string): Reference | null {
  const all = tokensOf(text.trim());
  const prefix = all[0]?.kind === "sheet" ? all[0].text : undefined;
  const tokens = prefix === undefined ? all : all.slice(1);
  const sheet = prefix === undefined ? null : sheetOfPrefix(prefix);
  if (prefix !== undefined && sheet === null) return null;
  const kind = KINDS[tokens.map((token) => token.kind).join(" ")];
  if (kind === undefined || (tokens.length === 3 && tokens[1]?.text !== ":")) return null;
  return { sheet, place: tokens.map((token) => token.text).join(""), kind };
}

/** A relative row or column that leaves the sheet comes in again at the other side, as in Excel. */
const moved = (place: number, isFixed: boolean, by: number, count: number) =>
  isFixed ? place : (((place + by) % count) + count) % count;

function movedCell(text: string, rows: number, columns: number): string {
  const parts = readCellParts(text);
  if (parts === undefined) return text;
  const { isRowFixed, isColumnFixed } = parts;
  const row = moved(parts.row, isRowFixed, rows, SHEET_ROWS);
  const column = moved(parts.column, isColumnFixed, columns, SHEET_COLUMNS);
  const fixed = isRowFixed ? (isColumnFixed ? "both" : "row") : isColumnFixed ? "column" : "none";
  return cellName(row, column, fixed);
}

/** The ends of whole rows or columns, each written by its number from 0; a fixed one stays. */
function movedEnds(
  text: string,
  by: number,
  count: number,
  read: (end: string) => number,
  write: (place: number) => string,
): string {
  const ends = text.split(":").map((end) => {
    const isFixed = end.startsWith("$");
    return `${isFixed ? "$" : ""}${write(moved(read(end.replace("$", "")), isFixed, by, count))}`;
  });
  return ends.join(":");
}

/**
 * The formula of a cell that shares it with another: references that are not fixed move along.
 *
 * @param rows - How far the cell stands below the one the formula is written for; negative for above.
 * @param columns - How far it stands to the right.
 */
export function shifted(formula: string, rows: number, columns: number): string {
  return rewritten(formula, ({ kind, text }) => {
    if (kind === "cell") return movedCell(text, rows, columns);
    if (kind === "columns") return movedEnds(text, columns, SHEET_COLUMNS, columnOf, columnLetters);
    if (kind !== "rows") return undefined;
    return movedEnds(
      text,
      rows,
      SHEET_ROWS,
      (end) => Number(end) - 1,
      (row) => String(row + 1),
    );
  });
}

/**
 * The formula with the rows that move along written as distances from its own: the same text for formulas that are
 * alike down a column. One that names whole rows is like no other.
 *
 * @param row - Row of the cell that holds the formula, counted from 0.
 */
export function downColumnForm(formula: string, row: number): string {
  return rewritten(formula, ({ kind, text }) => {
    if (kind === "rows") return `${text}[${row}]`;
    const parts = kind === "cell" ? readCellParts(text) : undefined;
    if (parts === undefined || parts.isRowFixed) return undefined;
    return `${parts.isColumnFixed ? "$" : ""}${parts.column}[${parts.row - row}]`;
  });
}

/** Cells on a sheet. */
export interface SheetArea {
  readonly sheet: string;
  readonly area: Rectangle;
}

/** Where the second end of a range stands whose first end is the piece at a place; it may name its sheet again. */
function rangeEnd(tokens: readonly Token[], at: number): number | undefined {
  if (tokens[at + 1]?.text !== ":") return undefined;
  const end = tokens[at + 2]?.kind === "sheet" ? at + 3 : at + 2;
  return tokens[end]?.kind === "cell" ? end : undefined;
}

/** The cells and ranges that a formula names by address. Whole rows, whole columns, names and tables are left out. */
export function referencesIn(formula: string, sheet: string): SheetArea[] {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const found: SheetArea[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const [before, first] = [tokens[at - 1], tokens[at]];
    if (first?.kind !== "cell") continue;
    const end = rangeEnd(tokens, at) ?? at;
    const area = rectangleBetween(first.text, tokens[end]?.text ?? "");
    const named = before?.kind === "sheet" ? sheetOfPrefix(before.text) : sheet;
    if (area !== undefined && named !== null) found.push({ sheet: named, area });
    at = end;
  }
  return found;
}

/** The first cell that a formula names alone, without sheet and without range; dollar signs left out. */
export function loneCell(formula: string): string | undefined {
  const tokens = tokensOf(formula);
  const found = tokens.find(
    ({ kind }, at) =>
      kind === "cell" &&
      tokens[at - 1]?.kind !== "sheet" &&
      tokens[at - 1]?.text !== ":" &&
      tokens[at + 1]?.text !== ":",
  );
  return found?.text.replaceAll("$", "");
}

/** Names that a formula refers to: names of the workbook and tables, and those it gives itself. */
export function namesIn(formula: string): string[] {
  const named = tokensOf(formula).filter(({ kind }) => kind === "name" || kind === "call");
  return named.map(({ text }) => text);
}

/** Whether one of the prefixes in a formula is such; no list of them is made, since every formula of a file is asked. */
const namesSome = (formula: string, isSuch: (prefix: SheetPrefix) => boolean): boolean =>
  tokensOf(formula).some(({ kind, text }) => kind === "sheet" && isSuch(readSheetPrefix(text)));

/** True where a formula reads another workbook. */
export function namesOtherFile(formula: string): boolean {
  return namesSome(formula, ({ workbook }) => workbook !== null);
}

/** True where a formula reads through several sheets at once. */
export function namesManySheets(formula: string): boolean {
  return namesSome(formula, ({ first, last }) => first !== last);
}

/** Tells whether a formula names one of these sheets, also inside a text that may be read as a reference. */
export function mentionsOf(sheets: readonly string[]): (formula: string) => boolean {
  const wanted = new Set(sheets.map((name) => name.toLowerCase()));
  const mentions = (formula: string): boolean =>
    tokensOf(formula).some(({ kind, text }) => {
      if (kind === "text") return text.includes("!") && mentions(textOf(text));
      if (kind !== "sheet") return false;
      const { first, last } = readSheetPrefix(text);
      return wanted.has(first.toLowerCase()) || wanted.has(last.toLowerCase());
    });
  return mentions;
}

/** The formula with other names for sheets. @param changed - New names by the old ones in small letters. */
export function withSheetsRenamed(formula: string, changed: ReadonlyMap<string, string>): string {
  return rewritten(formula, ({ kind, text }) =>
    kind === "sheet" ? renamedPrefix(text, (sheet) => changed.get(sheet.toLowerCase())) : undefined,
  );
}

/** The file's form of `X#`, the cells that the formula of X fills. */
export const SPILL_OF = "ANCHORARRAY";

const MENTIONS_SPILLS = new RegExp(SPILL_OF, "i");

/** A look at the letters alone, before a formula is taken apart: hardly any reads what another one fills. */
const mayReadSpills = (formula: string) => MENTIONS_SPILLS.test(formula);

const isSpillOf = ({ kind, text }: Token) =>
  kind === "call" && text.toUpperCase().replace("_XLFN.", "") === SPILL_OF;

/** True where a formula reads the cells that another one fills. */
export const readsSpills = (formula: string): boolean =>
  mayReadSpills(formula) && tokensOf(formula).some(isSpillOf);

/**
 * Replaces every `ANCHORARRAY(X)`, the file's form of `X#`, by the cells that X fills now.
 *
 * @param filled - Cells filled by the formula of a cell; `undefined` where it fills none but its own.
 */
export function withSpillsNamed(
  formula: string,
  sheet: string,
  filled: (anchor: SheetArea) => Rectangle | undefined,
): string {
  if (!mayReadSpills(formula)) return formula;
  const tokens = tokensOf(formula);
  const pieces: string[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const token = tokens[at];
    const end = token && isSpillOf(token) ? closeOf(tokens, at) : undefined;
    if (end === undefined) {
      pieces.push(token?.text ?? "");
      continue;
    }
    const inside = tokens.slice(at + 2, end);
    pieces.push(spillName(inside, sheet, filled));
    at = end;
  }
  return pieces.join("");
}

/** Where a call that holds no further brackets closes. */
function closeOf(tokens: readonly Token[], call: number): number | undefined {
  const end = tokens.findIndex(({ kind }, at) => at > call + 1 && (kind === "close" || kind === "open"));
  return tokens[call + 1]?.kind === "open" && tokens[end]?.kind === "close" ? end : undefined;
}

function spillName(
  inside: readonly Token[],
  sheet: string,
  filled: (anchor: SheetArea) => Rectangle | undefined,
): string {
  const written = inside.map(({ text }) => text).join("");
  const [anchor] = referencesIn(written, sheet);
  const area = anchor && filled(anchor);
  if (area === undefined) return written;
  const prefix = inside.find(({ kind }) => kind === "sheet")?.text ?? "";
  return prefix + rectangleName(area);
}
