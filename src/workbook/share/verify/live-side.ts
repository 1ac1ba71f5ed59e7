import type { CellValue } from "../../../engine/cell-value";
import { readCellName } from "../../../formula/addresses";
import { constantXml } from "../../file/cell-xml";
import { withAttribute } from "../../file/package/xml";
import { type CellRemark, leftAsTheyWere } from "../../file/patch/recalculate";
import { SheetEditor } from "../../file/patch/sheet-editor";
import { WorkbookFile } from "../../file/patch/workbook-file";
import { type LiveSheet, type LiveWorkbook, readLiveWorkbook } from "../../file/read/live-workbook";
import type { StoredCell } from "../../file/read/stored-sheet";
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
  const { done, current } = await WorkbookFile.of(bytes).calculated();
  return { workbook: current, values: valuesOf(current), left: leftAsTheyWere(done) };
}

/** The text of a cell with a value typed in, as if no formula had ever been there; an empty text leaves it empty. */
function typedIn(cell: StoredCell, xml: string, content: CellValue | undefined, prefix: string): string {
  const tag = xml.slice(cell.start, cell.tagEnd);
  const isEmpty = content === undefined || ("value" in content && content.value === "");
  const filled = isEmpty ? undefined : constantXml(content, prefix);
  const open = (["t", "cm", "vm"] as const).reduce((text, name) => withAttribute(text, name, undefined), tag);
  const start = open.replace(/\s*\/?>$/, "");
  return filled === undefined ? `${start}/>` : `${start}${filled.attributes}>${filled.xml}</${prefix}c>`;
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
