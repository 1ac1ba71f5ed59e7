import { cellName } from "../../formula/addresses";
import { calledNames, callsOurs, ownName } from "../../formula/functions-called";
import { ownNamesTyped } from "../../formula/own-names";
import { quotedSheet } from "../../formula/sheet-names";
import { functionNamed } from "../../functions/catalogue";
import type { FormulaChange, FormulaPart, HostPort, Work } from "../../host/port";

/** A cell with one of our formulas that does not work as it stands. */
export interface Broken extends FormulaChange {
  /** With its sheet: `Plan!D7`. */
  readonly address: string;
  readonly why: string;
  /** False where entering it anew cannot help. */
  readonly canBeMended: boolean;
}

type Fault = Pick<Broken, "why" | "canBeMended">;

/** What a look through the workbook found. */
export interface Findings {
  /** Cells with one of our formulas that were looked at. */
  readonly ours: number;
  readonly broken: readonly Broken[];
  /** Protected sheets that hold a broken one. */
  readonly protectedSheets: readonly string[];
  /** False where it was stopped on the way. */
  readonly isComplete: boolean;
}

/** True for a name in our namespace that this version does not have. */
function isUnknown(called: string): boolean {
  const own = ownName(called);
  return own !== undefined && functionNamed(own) === undefined;
}

/** Why a formula of ours is broken and what cannot be mended about it; `null` for one that works. */
function faultIn(formula: string, isUnknownName: boolean, isProtected: boolean): Fault | null {
  const typed = ownNamesTyped(formula);
  const isMisspelt = typed.toUpperCase() !== formula.toUpperCase();
  if (!isUnknownName && !isMisspelt) return null;
  if (isProtected) return { why: "the sheet is protected", canBeMended: false };
  const unknown = calledNames(typed).filter(isUnknown);
  if (unknown.length > 0) return { why: `no function is called ${unknown.join(", ")}`, canBeMended: false };
  return { why: isMisspelt ? "a name with a broken prefix" : "shows #NAME?", canBeMended: true };
}

/** The cells of a part that hold one of our formulas. */
function* ourCells(part: FormulaPart) {
  for (const [down, formulas] of part.formulas.entries()) {
    for (const [across, formula] of formulas.entries()) {
      if (!formula.startsWith("=") || !callsOurs(formula)) continue;
      const place = { sheet: part.sheet, row: part.row + down, column: part.column + across };
      yield { ...place, formula, isUnknownName: part.unknownNames[down]?.[across] ?? false };
    }
  }
}

function brokenIn(part: FormulaPart): { ours: number; broken: Broken[] } {
  const cells = [...ourCells(part)];
  const broken = cells.flatMap(({ sheet, row, column, formula, isUnknownName }) => {
    const fault = faultIn(formula, isUnknownName, part.isProtected);
    const address = `${quotedSheet(sheet)}!${cellName(row, column)}`;
    return fault === null ? [] : [{ sheet, row, column, formula: ownNamesTyped(formula), address, ...fault }];
  });
  return { ours: cells.length, broken };
}

/** Looks through every formula of the workbook for broken ones of ours; changes nothing. */
export async function findBroken(port: HostPort, work: Work): Promise<Findings> {
  const broken: Broken[] = [];
  let ours = 0;
  for await (const part of port.formulas()) {
    if (work.signal.aborted) return { ours, broken, protectedSheets: guarded(broken), isComplete: false };
    const found = brokenIn(part);
    ours += found.ours;
    broken.push(...found.broken);
    work.progress(part.done);
  }
  return { ours, broken, protectedSheets: guarded(broken), isComplete: true };
}

function guarded(broken: readonly Broken[]): string[] {
  return [...new Set(broken.filter(({ why }) => why === "the sheet is protected").map(({ sheet }) => sheet))];
}
