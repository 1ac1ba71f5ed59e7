import { readCellName } from "../../../formula/addresses";
import { calculateFile } from "../../file/patch/calculation";
import { type CellRemark, leftAsTheyWere, writeResults } from "../../file/patch/recalculate";
import { SheetEditor } from "../../file/patch/sheet-editor";
import { type LiveSheet, type LiveWorkbook, readLiveWorkbook } from "../../file/read/live-workbook";
import { typedIn } from "../fixed-values";
import { type Values, valuesOf } from "../values";
import type { CellPair } from "./agreement";

/** A live workbook, calculated. */
export interface LiveSide {
  readonly workbook: LiveWorkbook;
  readonly values: Values;
  /** Formulas that kept the value of the file, with the reason. */
  readonly left: readonly CellRemark[];
}

/** Calculates a workbook file. @throws FileRefusal where it cannot be read. */
export async function calculatedSide(bytes: Uint8Array): Promise<LiveSide> {
  const live = readLiveWorkbook(bytes);
  const done = await calculateFile(live);
  writeResults(live, done);
  const workbook = readLiveWorkbook(live.file.save());
  return { workbook, values: valuesOf(workbook), left: leftAsTheyWere(done) };
}

function typeOver(sheet: LiveSheet, pairs: readonly CellPair[]): string {
  const editor = new SheetEditor(sheet.stored);
  for (const { cell, shared } of pairs) {
    const place = readCellName(cell);
    const stored = place && editor.cellAt(place.row, place.column);
    if (stored !== undefined)
      editor.replace(
        stored.start,
        stored.end,
        typedIn(stored, sheet.stored.xml, shared, sheet.stored.prefix),
      );
    else if (place !== undefined && shared !== undefined) editor.setValue(place.row, place.column, shared);
  }
  return editor.text();
}

/** The live workbook calculated with the copy's values typed over some of its cells, formulas included. */
export async function withCopyTypedIn(side: LiveSide, pairs: readonly CellPair[]): Promise<LiveSide> {
  const { file, sheets } = readLiveWorkbook(side.workbook.file.save());
  for (const sheet of sheets) {
    const own = pairs.filter((pair) => pair.sheet === sheet.listed.name);
    if (own.length > 0) file.setText(sheet.listed.part, typeOver(sheet, own));
  }
  return calculatedSide(file.save());
}
