import { withSheetsRenamed } from "../../formula/references";
import { freeSheetName } from "../../formula/sheet-names";
import type { CellContent, SheetData, WorkbookData } from "./workbook-data";

/** Old and new name of each sheet that cannot keep its own. */
function renamings(sheets: readonly SheetData[]): ReadonlyMap<string, string> {
  const taken = new Set<string>();
  const changed = new Map<string, string>();
  for (const { name } of sheets) {
    const free = freeSheetName(name, taken);
    taken.add(free.toLowerCase());
    if (free !== name) changed.set(name.toLowerCase(), free);
  }
  return changed;
}

function withSheetNames(content: CellContent, changed: ReadonlyMap<string, string>): CellContent {
  return "formula" in content
    ? { ...content, formula: withSheetsRenamed(content.formula, changed) }
    : content;
}

function renamed(sheet: SheetData, changed: ReadonlyMap<string, string>): SheetData {
  return {
    ...sheet,
    name: changed.get(sheet.name.toLowerCase()) ?? sheet.name,
    cells: sheet.cells.map((cell) =>
      cell.content === undefined ? cell : { ...cell, content: withSheetNames(cell.content, changed) },
    ),
    offers: sheet.offers.map((offer) =>
      offer.range === undefined ? offer : { ...offer, range: withSheetsRenamed(offer.range, changed) },
    ),
  };
}

/** The workbook with names that Excel takes, and all that names its sheets pointing at them. */
export function withAllowedNames(workbook: WorkbookData): WorkbookData {
  const changed = renamings(workbook.sheets);
  if (changed.size === 0) return workbook;
  const names = Object.entries(workbook.names).map(([name, refers]) => [
    name,
    withSheetsRenamed(refers, changed),
  ]);
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
