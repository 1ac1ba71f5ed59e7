/** A reference of a formula taken apart. */
export interface Reference {
  /** The sheet it names; `null` where it means the formula's own. */
  readonly sheet: string | null;
  /** An address such as `A2:B9`, or a name. */
  readonly place: string;
  readonly kind: "cells" | "whole rows or columns" | "name";
}

const CELLS = /^\$?[A-Z]{1,3}\$?[1-9]\d{0,6}(:\$?[A-Z]{1,3}\$?[1-9]\d{0,6})?$/i;
const WHOLE = /^(\$?[A-Z]{1,3}:\$?[A-Z]{1,3}|\$?[1-9]\d{0,6}:\$?[1-9]\d{0,6})$/i;
const NAME = /^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u;

/** The sheet and the rest of an address: `'Run plan'!D7` gives `Run plan` and `D7`. */
export function splitAddress(address: string): { sheet: string | null; place: string } {
  const cut = address.lastIndexOf("!");
  if (cut < 0) return { sheet: null, place: address };
  const sheet = address.slice(0, cut);
  const isQuoted = sheet.startsWith("'") && sheet.endsWith("'");
  return {
    sheet: isQuoted ? sheet.slice(1, -1).replaceAll("''", "'") : sheet,
    place: address.slice(cut + 1),
  };
}

/** Takes a reference apart; `null` for one into another workbook, over several sheets or into a table. */
export function readReference(text: string): Reference | null {
  const { sheet, place } = splitAddress(text.trim());
  if (sheet !== null && /[[\]:]/.test(sheet)) return null;
  if (CELLS.test(place)) return { sheet, place, kind: "cells" };
  if (WHOLE.test(place)) return { sheet, place, kind: "whole rows or columns" };
  return NAME.test(place) ? { sheet, place, kind: "name" } : null;
}

/** The name of a sheet as a formula writes it: in quotes unless it is one plain word that is no address. */
export function quotedSheet(name: string): string {
  const isPlain = /^[A-Za-z_]\w*$/.test(name) && !CELLS.test(name) && !/^R\d*C?\d*$|^C\d*$/i.test(name);
  return isPlain ? name : `'${name.replaceAll("'", "''")}'`;
}

/** A name that is not taken: the wanted one, else with the first free number behind it. */
export function freeName(wanted: string, taken: readonly string[]): string {
  const lower = taken.map((name) => name.toLowerCase());
  // A sheet's name has 31 characters at most and none of these seven.
  const base = wanted
    .replace(/[\\/?*[\]:]/g, " ")
    .trim()
    .slice(0, 27);
  let name = base;
  for (let number = 2; lower.includes(name.toLowerCase()); number += 1) name = `${base} ${number}`;
  return name;
}
