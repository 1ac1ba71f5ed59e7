import { BoundedMap } from "../core/bounded-map";
import { readCellName } from "./addresses";

/** Excel's limits of a sheet's name; `History` it keeps for itself. */
const LONGEST = 31;
const FORBIDDEN = /[:\\/?*[\]]|^'|'$/g;
const KEPT = "history";

/** The nearest name that Excel takes for a sheet. */
function allowedSheetName(name: string): string {
  const plain = name.replace(FORBIDDEN, " ").trim().slice(0, LONGEST).trim();
  if (plain === "") return "Sheet";
  return plain.toLowerCase() === KEPT ? `${plain} of lots` : plain;
}

/** The first of `Sheet 2`, `Sheet 3` ... that no sheet has yet; case does not tell sheets apart. */
export function numberedSheetName(wanted: string, taken: Iterable<string>, first: number): string {
  const known = new Set(Array.from(taken, (name) => name.toLowerCase()));
  for (let number = first; ; number += 1) {
    const end = ` ${number}`;
    const name = wanted.slice(0, LONGEST - end.length).trimEnd() + end;
    if (!known.has(name.toLowerCase())) return name;
  }
}

/** A name that a new sheet can have: the wanted one, else with the first free number behind it. */
export function freeSheetName(wanted: string, taken: Iterable<string>): string {
  const names = [...taken];
  const allowed = allowedSheetName(wanted);
  const isTaken = names.some((name) => name.toLowerCase() === allowed.toLowerCase());
  return isTaken ? numberedSheetName(allowed, names, 2) : allowed;
}

/** Words that a formula would take for something else: values, and addresses by row and column. */
const RESERVED = /^(?:true|false|R\d*C?\d*|C\d*)$/i;

/** The name of a sheet as a formula writes it: in quotes unless it is one plain word that is no address. */
export function quotedSheet(name: string): string {
  const isPlain = /^[A-Za-z_]\w*$/.test(name) && readCellName(name) === undefined && !RESERVED.test(name);
  return isPlain ? name : quoted(name);
}

const quoted = (name: string) => `'${name.replaceAll("'", "''")}'`;

/** What stands in front of a reference, taken apart. */
export interface SheetPrefix {
  /** The other workbook, by its number, or by path and name; `null` for the formula's own. */
  readonly workbook: string | null;
  /** First and last sheet; the same one where only one is named, empty where only a workbook is. */
  readonly first: string;
  readonly last: string;
}

function unquoted(prefix: string): string {
  const written = prefix.slice(0, -1);
  return written.startsWith("'") ? written.slice(1, -1).replaceAll("''", "'") : written;
}

/** A workbook names the same few sheets in thousands of formulas. */
const prefixes = new BoundedMap<string, SheetPrefix>(1000);

/** Reads a prefix with its exclamation mark: `'[2]Run plan'!`. */
export function readSheetPrefix(prefix: string): SheetPrefix {
  const known = prefixes.get(prefix);
  if (known !== undefined) return known;
  const read = prefixTakenApart(prefix);
  prefixes.set(prefix, read);
  return read;
}

function prefixTakenApart(prefix: string): SheetPrefix {
  const plain = unquoted(prefix);
  const end = plain.lastIndexOf("]") + 1;
  const workbook = end === 0 ? null : plain.slice(0, end);
  const [first = "", last = first] = plain.slice(end).split(":");
  return { workbook, first, last };
}

/** The sheet that a prefix names; `null` for another workbook or several sheets. */
export function sheetOfPrefix(prefix: string): string | null {
  const { workbook, first, last } = readSheetPrefix(prefix);
  return workbook === null && first === last ? first : null;
}

/** A prefix with other names for its sheets; an old name may hold what none may, such as a colon. */
export function renamedPrefix(prefix: string, nameOf: (sheet: string) => string | undefined): string {
  const other = nameOf(unquoted(prefix));
  if (other !== undefined) return `${quotedSheet(other)}!`;
  const { workbook, first, last } = readSheetPrefix(prefix);
  const [from, to] = [nameOf(first), nameOf(last)];
  if (workbook !== null || (from === undefined && to === undefined)) return prefix;
  return `${quoted(`${from ?? first}:${to ?? last}`)}!`;
}
