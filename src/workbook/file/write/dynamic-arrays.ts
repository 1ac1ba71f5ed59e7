import { declarePart } from "../package/content-types";
import { applyEdits, type Edit } from "../package/edits";
import type { Package } from "../package/package";
import { addRelationship } from "../package/relationships";
import { walkXml, withAttribute } from "../package/xml";

const PART = "xl/metadata.xml";
export const METADATA_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheetMetadata+xml";

/** One kind of cell metadata: a formula that may fill several cells (MS-XLSX 2.4.51, XLDAPR). */
export const METADATA =
  '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n' +
  '<metadata xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" ' +
  'xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray">' +
  '<metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" ' +
  'pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" ' +
  'coerce="1" cellMeta="1"/></metadataTypes>' +
  '<futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}">' +
  '<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata>' +
  '<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>';

function marked(part: string, xml: string, cells: ReadonlySet<string>): string {
  const edits: Edit[] = [];
  walkXml(part, xml, {
    open({ name, attributes, start, end }) {
      if (name !== "c" || !cells.has(attributes.r ?? "")) return;
      edits.push({ start, end, text: withAttribute(xml.slice(start, end), "cm", "1") });
    },
  });
  return applyEdits(xml, edits);
}

/**
 * Marks array formulas as dynamic ones: without the mark a spreadsheet shows them in the braces of old.
 *
 * @param anchors - Part of each worksheet with the addresses of its spilling formulas.
 */
export function markDynamic(
  file: Package,
  main: string,
  anchors: ReadonlyMap<string, readonly string[]>,
): void {
  const filled = [...anchors].filter(([, cells]) => cells.length > 0);
  if (filled.length === 0) return;
  for (const [part, cells] of filled) file.setText(part, marked(part, file.text(part), new Set(cells)));
  file.setText(PART, METADATA);
  declarePart(file, PART, METADATA_TYPE);
  addRelationship(file, main, "sheetMetadata", PART);
}
