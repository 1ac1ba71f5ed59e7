import { quotedSheet } from "../../../formula/sheet-names";
import { applyEdits, type Edit } from "../package/edits";
import { escapeXml } from "../package/xml";
import type { LiveWorkbook } from "../read/live-workbook";
import type { DefinedName } from "../read/workbook-part";
import type { Calculation } from "./calculation";
import { isWorkedArea, PRINT_AREA, WORKED_AREA } from "./print-area-names";

/** The last column of an area that ends in so many rows of it. */
const COLUMNS = /^.*!\$A\$1:INDEX\(.*?!\$([A-Z]+)\$1:/;

function fixedArea(live: LiveWorkbook, { formula, sheet }: DefinedName, rows: number): string | undefined {
  const column = COLUMNS.exec(formula)?.[1];
  const name = live.main.listed[sheet ?? -1];
  return column === undefined || name === undefined
    ? undefined
    : `${quotedSheet(name)}!$A$1:$${column}$${rows}`;
}

/**
 * Writes out print areas that a formula works out: programs other than Excel print everything where they meet one.
 * The formula stays beside it under another name.
 *
 * @returns How many areas are others than before.
 */
export function writePrintAreas({ file, main, ...live }: LiveWorkbook, done: Calculation): number {
  const xml = file.text(main.name);
  const whole = { file, main, ...live };
  let changed = 0;
  const edits = main.names.flatMap((name, place): Edit[] => {
    const rows = done.printedRows.get(place);
    if (rows === undefined || !isWorkedArea(name)) return [];
    const area = fixedArea(whole, name, rows);
    const written = main.names.find((each) => each.name === PRINT_AREA && each.sheet === name.sheet);
    if (area === undefined || written === undefined || written.formula === area) return [];
    changed += 1;
    const open = xml.indexOf(">", written.start) + 1;
    const close = xml.lastIndexOf("</", written.end - 1);
    const text = escapeXml(area);
    if (name.name === WORKED_AREA) return [{ start: open, end: close, text }];
    const beside = xml
      .slice(name.start, name.end)
      .replace(PRINT_AREA, WORKED_AREA)
      .replace(/ localSheetId=/, ' hidden="1" localSheetId=');
    return [
      { start: open, end: close, text },
      { start: written.end, end: written.end, text: beside },
    ];
  });
  if (edits.length > 0) file.setText(main.name, applyEdits(xml, edits));
  return changed;
}
