import { HIDDEN, replaceOutsideTexts } from "../../formula/mask";
import type { SheetModel, WorkbookModel } from "./sheet-model";

/** Excel's limits of a sheet's name; `History` it keeps for itself. */
const LONGEST = 31;
const FORBIDDEN = /[:\\/?*[\]]|^'|'$/g;
const KEPT = "history";

function allowedName(name: string): string {
  const plain = name.replace(FORBIDDEN, " ").trim().slice(0, LONGEST).trim();
  if (plain === "") return "Sheet";
  return plain.toLowerCase() === KEPT ? `${plain} of lots` : plain;
}

function freeName(wanted: string, taken: ReadonlySet<string>): string {
  let name = wanted;
  for (let number = 2; taken.has(name.toLowerCase()); number += 1) {
    const end = ` ${number}`;
    name = wanted.slice(0, LONGEST - end.length) + end;
  }
  return name;
}

/** Old and new name of each sheet that cannot keep its own. */
function renamings(sheets: readonly SheetModel[]): ReadonlyMap<string, string> {
  const taken = new Set<string>();
  const changed = new Map<string, string>();
  for (const { name } of sheets) {
    const free = freeName(allowedName(name), taken);
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

/** The workbook with names that Excel takes, and its formulas pointing at them. */
export function withAllowedNames(workbook: WorkbookModel): WorkbookModel {
  const changed = renamings(workbook.sheets);
  if (changed.size === 0) return workbook;
  const sheets = workbook.sheets.map((sheet) => ({
    ...sheet,
    name: changed.get(sheet.name.toLowerCase()) ?? sheet.name,
    rows: sheet.rows.map((row) =>
      row.map((cell) =>
        typeof cell?.content === "string" && cell.content.startsWith("=")
          ? { ...cell, content: withNames(cell.content, changed) }
          : cell,
      ),
    ),
  }));
  return { ...workbook, sheets };
}
