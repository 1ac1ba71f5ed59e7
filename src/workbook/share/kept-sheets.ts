import type { Rectangle } from "../../formula/addresses";
import { calledNames } from "../../formula/functions-called";
import { namesManySheets, namesOtherFile, referencesIn } from "../../formula/references";
import { readSheetPrefix } from "../../formula/sheet-names";
import { localNames } from "../../formula/stored-form";
import { textOf, tokensOf } from "../../formula/tokens";
import type { LiveFormula, LiveSheet, LiveWorkbook } from "../file/read/live-workbook";
import type { Layout } from "../file/read/read-layout";

/** The rows and columns of a sheet that nobody sees: what stands there does not travel. */
export interface HiddenBands {
  readonly rows: ReadonlySet<number>;
  readonly columns: readonly (readonly [first: number, last: number])[];
}

/** The hidden rows and columns of a sheet; a height of 0 hides as well. */
export function hiddenBands({ rows, hiddenColumns }: Layout): HiddenBands {
  const hidden = [...rows].filter(([, { isHidden, size }]) => isHidden || size === 0);
  return { rows: new Set(hidden.map(([row]) => row)), columns: hiddenColumns };
}

/** True for a cell that stands in a hidden row or column. */
export function isOutOfSight({ rows, columns }: HiddenBands, row: number, column: number): boolean {
  return rows.has(row) || columns.some(([first, last]) => column >= first && column <= last);
}

function meetsHidden({ rows, columns }: HiddenBands, area: Rectangle): boolean {
  const hasRow = [...rows].some((row) => row >= area.row && row <= area.lastRow);
  return hasRow || columns.some(([first, last]) => first <= area.lastColumn && last >= area.column);
}

/** A sheet that is shared, with what of it is out of sight. */
export interface KeptSheet {
  readonly sheet: LiveSheet;
  readonly layout: Layout;
  readonly hidden: HiddenBands;
}

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
    const hasHidden = kept.some(({ hidden: { rows, columns } }) => rows.size > 0 || columns.length > 0);
    this.isWhole = this.leftOut.length === 0 && !hasHidden;
    const names = new Map<string, string[]>();
    for (const { name, formula } of live.main.names) {
      const key = name.toUpperCase();
      names.set(key, [...(names.get(key) ?? []), formula]);
    }
    this.names = names;
  }

  /** True where a formula may go along: nothing it names or reads stays behind. */
  mayTravel({ typed, stored, sheet }: LiveFormula): boolean {
    return this.touchesKeptOnly(typed, sheet, localNames(stored), new Set());
  }

  private touchesKeptOnly(
    formula: string,
    sheet: string,
    locals: ReadonlySet<string>,
    seen: Set<string>,
  ): boolean {
    if (namesOtherFile(formula) || namesManySheets(formula)) return false;
    if (!this.isWhole && calledNames(formula).some((name) => READS_ANYWHERE.has(name))) return false;
    return this.areNamedKept(formula, sheet, locals, seen) && this.areCellsInSight(formula, sheet);
  }

  private areCellsInSight(formula: string, own: string): boolean {
    return referencesIn(formula, own).every(({ sheet, area }) => {
      const entry = this.bySheet.get(sheet.toUpperCase());
      return entry !== undefined && !meetsHidden(entry.hidden, area);
    });
  }

  /** Sheets, names, tables, whole rows and columns, and texts in which a sheet left out is named. */
  private areNamedKept(
    formula: string,
    own: string,
    locals: ReadonlySet<string>,
    seen: Set<string>,
  ): boolean {
    let sheet = own;
    return tokensOf(formula).every(({ kind, text }) => {
      if (kind === "sheet") {
        sheet = readSheetPrefix(text).first;
        return this.bySheet.has(sheet.toUpperCase());
      }
      const said = sheet;
      if (kind !== "space") sheet = own;
      if (kind === "text") return !this.namesLeftOut(textOf(text));
      if (kind === "columns" || kind === "rows" || kind === "brackets") return this.isInSight(said);
      if (kind === "call") return !this.names.has(text.toUpperCase());
      if (kind === "name") return this.isNameKept(text.toUpperCase(), own, locals, seen);
      return true;
    });
  }

  private isInSight(sheet: string): boolean {
    const hidden = this.bySheet.get(sheet.toUpperCase())?.hidden;
    return hidden !== undefined && hidden.rows.size === 0 && hidden.columns.length === 0;
  }

  private namesLeftOut(text: string): boolean {
    const words = text.toLowerCase();
    return this.leftOut.some((name) => words.includes(name.toLowerCase()));
  }

  /** A name may go along where it stands for cells that do; one that holds a figure or a text keeps that to itself. */
  private isNameKept(name: string, sheet: string, locals: ReadonlySet<string>, seen: Set<string>): boolean {
    if (locals.has(name)) return true;
    const table = this.tables.get(name);
    if (table !== undefined) return this.isInSight(table);
    const meanings = this.names.get(name);
    // A name that nothing defines says nothing: TRUE and the like are read as names.
    if (meanings === undefined) return /^(?:TRUE|FALSE)$/.test(name);
    if (seen.has(name) || seen.size > 50) return false;
    const within = new Set([...seen, name]);
    return meanings.every((meaning) => {
      const standsForCells =
        /^(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/u.test(meaning);
      return standsForCells && this.touchesKeptOnly(meaning, sheet, locals, within);
    });
  }
}
