import { applyEdits } from "../file/package/edits";
import type { LiveWorkbook } from "../file/read/live-workbook";
import { elementsAt } from "./sheet-elements";

const EMPTY_ITEM = "<si><t></t></si>";

/** Empties the shared texts that no cell of the workbook shows: those of sheets left out must not travel along. */
export function forgetUnusedTexts({ file, main, sheets }: LiveWorkbook): void {
  const part = main.sharedStrings;
  if (part === undefined || !file.has(part)) return;
  const used = new Set(
    sheets.flatMap(({ stored }) =>
      stored.rows.flatMap(({ cells }) =>
        cells.flatMap(({ type, raw }) => (type === "s" ? [Number(raw)] : [])),
      ),
    ),
  );
  const xml = file.text(part);
  const items = elementsAt(part, xml, 1).filter(({ name }) => name === "si");
  const edits = items.flatMap(({ start, end, tagEnd }, index) => {
    const prefix = /^<(\w+:)?/.exec(xml.slice(start, tagEnd))?.[1] ?? "";
    const text = EMPTY_ITEM.replace(/<(\/?)/g, `<$1${prefix}`);
    return used.has(index) ? [] : [{ start, end, text }];
  });
  if (edits.length > 0) file.setText(part, applyEdits(xml, edits));
}
