import { HIDDEN, replaceOutsideTexts } from "../../formula/mask";
import { freeName } from "../../formula/sheet-reference";
import type { CellContent, SheetData, WorkbookData } from "./workbook-data";

/** Excel's limits of a sheet's name; `History` it keeps for itself. */
const LONGEST = 31;
const FORBIDDEN = /[:\\/?*[\]]|^'|'$/g;
const KEPT = "history";

function allowedName(name: string): string {
  const plain = name.replace(FORBIDDEN, " ").trim().slice(0, LONGEST).trim();
  if (plain === "") return "Sheet";
  return plain.toLowerCase() === KEPT ? `${plain} of lots` : plain;
}

/** Old and new name of each sheet that cannot keep its own. */
function renamings(sheets: readonly SheetData[]): ReadonlyMap<string, string> {
  const taken = new Set<string>();
  const changed = new Map<string, string>();
  for (const { name } of sheets) {
    const allowed = allowedName(name);
    const free = taken.has(allowed.toLowerCase()) ? freeName(allowed, [...taken]) : allowed;
    taken.add(free.toLowerCase());
    if (free !== name) changed.set(name.toLowerCase(), free);
  }
  return changed;
}

const SHEET = new RegExp(`(?:${HIDDEN}+|[\\p{L}_][\\p{L}\\p{N}_.]*)!`, "gu");

function withNames(formula: string, changed: ReadonlyMap<string, string>): string {
  return replaceOutsideTexts(formula, SHEET, (_, original) => {
    const name = original
      .slice(0, -1)
      .replace(/^'(.*)'$/s, "$1")
      .replaceAll("''", "'");
    const other = changed.get(name.toLowerCase());
    return other === undefined ? original : `'${other.replaceAll("'", "''")}'!`;
  });
}

function withSheetNames(content: CellContent, changed: ReadonlyMap<string, string>): CellContent {
  return "formula" in content ? { ...content, formula: withNames(content.formula, changed) } : content;
}

function renamed(sheet: SheetData, changed: ReadonlyMap<string, string>): SheetData {
  return {
    ...sheet,
    name: changed.get(sheet.name.toLowerCase()) ?? sheet.name,
    cells: sheet.cells.map((cell) =>
      cell.content === undefined ? cell : { ...cell, content: withSheetNames(cell.content, changed) },
    ),
    offers: sheet.offers.map((offer) =>
      offer.range === undefined ? offer : { ...offer, range: withNames(offer.range, changed) },
    ),
  };
}

/** The workbook with names that Excel takes, and all that names its sheets pointing at them. */
export function withAllowedNames(workbook: WorkbookData): WorkbookData {
  const changed = renamings(workbook.sheets);
  if (changed.size === 0) return workbook;
  const names = Object.entries(workbook.names).map(([name, refers]) => [name, withNames(refers, changed)]);
  return {
    ...workbook,
    sheets: workbook.sheets.map((sheet) => renamed(sheet, changed)),
    names: Object.fromEntries(names),
    tables: workbook.tables.map((table) => ({
      ...table,
      sheet: changed.get(table.sheet.toLowerCase()) ?? table.sheet,
    })),
  };
}
