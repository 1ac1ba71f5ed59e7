import { holds } from "../../formula/addresses";
import { calledNames } from "../../formula/functions-called";
import type { Token } from "../../formula/pieces";
import { namesManySheets, namesOtherFile, readReference, referencesIn } from "../../formula/references";
import { readSheetPrefix } from "../../formula/sheet-names";
import { localNames } from "../../formula/stored-form";
import { textOf, tokensOf } from "../../formula/tokens";
import type { LiveFormula, LiveSheet, LiveWorkbook } from "../file/read/live-workbook";
import type { Layout } from "../file/read/read-layout";
import type { StoredCell } from "../file/read/stored-sheet";
import { type OutOfSight, reachesOutOfSight } from "./sight";

/** A sheet that is shared, with what of it is out of sight. */
export interface KeptSheet {
  readonly sheet: LiveSheet;
  readonly layout: Layout;
  readonly hidden: OutOfSight;
  /** Filled cells that cannot be read for their style. */
  readonly unread: readonly StoredCell[];
}

const hasNothingUnseen = ({ hidden: { rows, columns, merged }, unread }: KeptSheet) =>
  rows.size === 0 && columns.length === 0 && merged.length === 0 && unread.length === 0;

/** Functions that read whatever place a text or a number tells them: what they touch cannot be seen in the formula. */
const READS_ANYWHERE = new Set([
  "INDIRECT",
  "OFFSET",
  "GETPIVOTDATA",
  "HYPERLINK",
  "CELL",
  "INFO",
  "FORMULATEXT",
]);

/** Says of formulas whether all that they touch is shared: cells in sight, on sheets that are in the copy. */
export class KeptSheets {
  private readonly bySheet: ReadonlyMap<string, KeptSheet>;
  private readonly names: ReadonlyMap<string, readonly string[]>;
  private readonly tables: ReadonlyMap<string, string>;
  private readonly isWhole: boolean;
  private readonly leftOut: readonly string[];

  constructor(
    live: LiveWorkbook,
    readonly kept: readonly KeptSheet[],
  ) {
    this.bySheet = new Map(kept.map((entry) => [entry.sheet.listed.name.toUpperCase(), entry]));
    this.tables = new Map(live.tables.map(({ name, sheet }) => [name.toUpperCase(), sheet]));
    this.leftOut = live.main.listed.filter((name) => !this.bySheet.has(name.toUpperCase()));
    this.isWhole = this.leftOut.length === 0 && kept.every(hasNothingUnseen);
    const names = new Map<string, string[]>();
    for (const { name, formula } of live.main.names) {
      const key = name.toUpperCase();
      names.set(key, [...(names.get(key) ?? []), formula]);
    }
    this.names = names;
  }

  /** True where a formula may go along: nothing it names or reads stays behind. */
  mayTravel({ typed, stored, sheet }: LiveFormula): boolean {
    return this.touchesKeptOnly(typed, sheet, localNames(stored));
  }

  private touchesKeptOnly(formula: string, sheet: string, locals: ReadonlySet<string>): boolean {
    if (namesOtherFile(formula) || namesManySheets(formula)) return false;
    if (!this.isWhole && calledNames(formula).some((name) => READS_ANYWHERE.has(name))) return false;
    return this.areNamedKept(formula, sheet, locals) && this.areCellsInSight(formula, sheet);
  }

  private areCellsInSight(formula: string, own: string): boolean {
    return referencesIn(formula, own).every(({ sheet, area }) => {
      const entry = this.bySheet.get(sheet.toUpperCase());
      const isUnread = entry?.unread.some(({ row, column }) => holds(area, row, column)) ?? true;
      return entry !== undefined && !isUnread && !reachesOutOfSight(entry.hidden, area);
    });
  }

  /** Sheets, names, tables, whole rows and columns, and texts in which a sheet left out is named. */
  private areNamedKept(formula: string, own: string, locals: ReadonlySet<string>): boolean {
    const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
    return tokens.every((token, at) => {
      const before = tokens[at - 1];
      const sheet = before?.kind === "sheet" ? readSheetPrefix(before.text).first : own;
      return this.isKept(token, sheet, (name) => this.isNameKept(name, own, locals));
    });
  }

  /** @param sheet - The one that the piece belongs to. */
  private isKept({ kind, text }: Token, sheet: string, isNameKept: (name: string) => boolean): boolean {
    switch (kind) {
      case "sheet":
        return this.bySheet.has(readSheetPrefix(text).first.toUpperCase());
      case "text":
        return !this.namesLeftOut(textOf(text));
      case "columns":
      case "rows":
      case "brackets":
        return this.isInSight(sheet);
      case "call":
        return !this.names.has(text.toUpperCase());
      case "name":
        return isNameKept(text.toUpperCase());
      default:
        return true;
    }
  }

  private isInSight(sheet: string): boolean {
    const entry = this.bySheet.get(sheet.toUpperCase());
    return entry !== undefined && hasNothingUnseen(entry);
  }

  private namesLeftOut(text: string): boolean {
    const words = text.toLowerCase();
    return this.leftOut.some((name) => words.includes(name.toLowerCase()));
  }

  /** A name may go along where it stands for cells that do; one that holds a figure or a text keeps that to itself. */
  private isNameKept(name: string, sheet: string, locals: ReadonlySet<string>): boolean {
    if (locals.has(name)) return true;
    const table = this.tables.get(name);
    if (table !== undefined) return this.isInSight(table);
    const meanings = this.names.get(name);
    // A name that nothing defines says nothing: TRUE and the like are read as names.
    if (meanings === undefined) return /^(?:TRUE|FALSE)$/.test(name);
    return meanings.every(
      (meaning) => standsForCells(meaning) && this.touchesKeptOnly(meaning, sheet, locals),
    );
  }
}

/** True for the address of a cell or a range on a sheet that is named. */
function standsForCells(meaning: string): boolean {
  const reference = readReference(meaning);
  return reference?.kind === "cells" && reference.sheet !== null;
}
