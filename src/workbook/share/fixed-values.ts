import type { CellValue } from "../../engine/cell-value";
import { contentOf } from "../file/cell-content";
import { constantXml } from "../file/cell-xml";
import { withAttribute } from "../file/package/xml";
import { SheetEditor } from "../file/patch/sheet-editor";
import type { LiveSheet, LiveWorkbook } from "../file/read/live-workbook";
import type { StoredCell } from "../file/read/stored-sheet";

/** The text of a cell with a value typed in, as if no formula had ever been there; an empty text leaves it empty. */
export function typedIn(
  cell: StoredCell,
  xml: string,
  content: CellValue | undefined,
  prefix: string,
): string {
  const tag = xml.slice(cell.start, cell.tagEnd);
  const isEmpty = content === undefined || ("value" in content && content.value === "");
  const filled = isEmpty ? undefined : constantXml(content, prefix);
  const open = (["t", "cm", "vm"] as const).reduce((text, name) => withAttribute(text, name, undefined), tag);
  const start = open.replace(/\s*\/?>$/, "");
  return filled === undefined ? `${start}/>` : `${start}${filled.attributes}>${filled.xml}</${prefix}c>`;
}

/** The text of a worksheet part with every formula replaced by its value. */
export function withFixedValues(live: LiveWorkbook, sheet: LiveSheet): string {
  const editor = new SheetEditor(sheet.stored);
  for (const { cells } of sheet.stored.rows) {
    for (const cell of cells) {
      // What a spill filled is kept in the form for results as well.
      if (cell.formula === undefined && cell.type !== "str" && !cell.isDynamic) continue;
      const content = contentOf(cell, live.strings, live.main.from1904);
      editor.replace(cell.start, cell.end, typedIn(cell, sheet.stored.xml, content, sheet.stored.prefix));
    }
  }
  return editor.text();
}
