import { holds, placeOf, type Rectangle, readCellName, readRectangle } from "../../../formula/addresses";
import { nameOf } from "../../file/patch/sheet-editor";
import type { LiveFormula, LiveSheet, LiveWorkbook } from "../../file/read/live-workbook";
import { noteTexts } from "./note-texts";

/** A cell of the live workbook with the formula that gives its value and the note on that formula in the copy. */
export interface Owner {
  readonly formula: LiveFormula;
  readonly note: string | undefined;
}

const FILLED = /^filled ([A-Z]+\d+:[A-Z]+\d+)$/m;

/** The formulas of a sheet: by their own cell, and those that fill several cells by what they fill or filled. */
interface SheetOwners {
  readonly byPlace: ReadonlyMap<number, Owner>;
  readonly wide: readonly { readonly area: Rectangle; readonly owner: Owner }[];
}

const isWide = ({ row, column, lastRow, lastColumn }: Rectangle) => lastRow > row || lastColumn > column;

function ownersOn(sheet: LiveSheet, notes: ReadonlyMap<string, string>): SheetOwners {
  const owners = [...sheet.formulas].map(([place, formula]) => {
    const note = notes.get(nameOf(formula.cell));
    const before = readRectangle(FILLED.exec(note ?? "")?.[1]);
    const areas = before === undefined ? [formula.area] : [formula.area, before];
    return { place, owner: { formula, note }, areas: areas.filter(isWide) };
  });
  return {
    byPlace: new Map(owners.map(({ place, owner }) => [place, owner])),
    wide: owners.flatMap(({ owner, areas }) => areas.map((area) => ({ area, owner }))),
  };
}

/**
 * Finds the formula behind a cell: one that fills it in the live workbook, or filled it when the copy was made.
 *
 * @param live - Calculated.
 */
export function ownersIn(
  live: LiveWorkbook,
  copy: LiveWorkbook,
): (sheet: string, cell: string) => Owner | undefined {
  const parts = new Map(copy.main.sheets.map(({ name, part }) => [name, part]));
  const owners = new Map(
    live.sheets.map((sheet) => {
      const part = parts.get(sheet.listed.name);
      const notes = part === undefined ? new Map<string, string>() : noteTexts(copy.file, part);
      return [sheet.listed.name, ownersOn(sheet, notes)] as const;
    }),
  );
  return (sheet, cell) => {
    const place = readCellName(cell);
    const found = owners.get(sheet);
    if (place === undefined || found === undefined) return undefined;
    const { row, column } = place;
    return (
      found.byPlace.get(placeOf(row, column)) ??
      found.wide.find(({ area }) => holds(area, row, column))?.owner
    );
  };
}
