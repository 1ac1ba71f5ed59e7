import { declarePart } from "../package/content-types";
import { addRelationship } from "../package/relationships";
import { escapeXml, walkXml } from "../package/xml";
import type { LiveWorkbook } from "../read/live-workbook";

const TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const STRICT_MAIN = "http://purl.oclc.org/ooxml/spreadsheetml/main";

/** How the main part lists its sheets. */
interface SheetList {
  /** The tag of the last one. */
  tag: string;
  /** Where a further one goes. */
  end: number;
  highest: number;
}

function listIn(name: string, xml: string): SheetList {
  const list: SheetList = { tag: "", end: 0, highest: 0 };
  walkXml(name, xml, {
    open({ name: element, attributes, start, end }) {
      if (element !== "sheet") return;
      list.tag = xml.slice(start, end);
      list.highest = Math.max(list.highest, Number(attributes.sheetId ?? 0));
    },
    close(element, start) {
      if (element === "sheets") list.end = start;
    },
  });
  return list;
}

/**
 * Adds an empty sheet behind all others.
 *
 * @param widths - Of its columns, in characters.
 */
export function addSheet({ file, main }: LiveWorkbook, name: string, widths: readonly number[]): void {
  let number = main.listed.length + 1;
  while (file.has(`xl/worksheets/sheet${number}.xml`)) number += 1;
  const part = `xl/worksheets/sheet${number}.xml`;
  const columns = widths.map(
    (width, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`,
  );
  const namespace = file.text(main.name).includes(STRICT_MAIN) ? STRICT_MAIN : MAIN;
  file.setText(
    part,
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${namespace}"><cols>${columns.join("")}</cols><sheetData/></worksheet>`,
  );
  declarePart(file, part, TYPE);
  const id = addRelationship(file, main.name, "worksheet", part);
  const xml = file.text(main.name);
  const { tag, end, highest } = listIn(main.name, xml);
  const element = /^<((?:\w+:)?sheet)\b/.exec(tag)?.[1] ?? "sheet";
  const link = /\s(\w+:id)\s*=/.exec(tag)?.[1] ?? "r:id";
  const entry = `<${element} name="${escapeXml(name)}" sheetId="${highest + 1}" ${link}="${id}"/>`;
  file.setText(main.name, xml.slice(0, end) + entry + xml.slice(end));
}
