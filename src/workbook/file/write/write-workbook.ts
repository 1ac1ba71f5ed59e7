import { zipSync } from "fflate";
import { rectangleName } from "../../../formula/addresses";
import { fileForm } from "../../../formula/file-form";
import { calculatedWorkbook } from "../../model/calculated-workbook";
import { withListSheet } from "../../model/list-sheet";
import type { SheetData, WorkbookData } from "../../model/workbook-data";
import { escapeXml } from "../package/xml";
import { METADATA } from "./dynamic-arrays";
import { sheetXml } from "./write-sheet";
import { StylesWriter } from "./write-styles";

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const LINKS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml.";

interface Link {
  readonly id: string;
  readonly kind: string;
  readonly target: string;
}

function linksXml(links: readonly Link[]): string {
  const entries = links.map(
    ({ id, kind, target }) => `<Relationship Id="${id}" Type="${LINKS}/${kind}" Target="${target}"/>`,
  );
  return `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${entries.join("")}</Relationships>`;
}

function namesXml(names: WorkbookData["names"]): string {
  const entries = Object.entries(names).map(
    ([name, refers]) =>
      `<definedName name="${escapeXml(name)}">${escapeXml(fileForm(refers.replace(/^=/, "")))}</definedName>`,
  );
  return entries.length === 0 ? "" : `<definedNames>${entries.join("")}</definedNames>`;
}

function workbookXml({ sheets, names }: WorkbookData): string {
  const listed = sheets.map(({ name, isHidden }, index) => {
    const state = isHidden ? ' state="hidden"' : "";
    return `<sheet name="${escapeXml(name)}" sheetId="${index + 1}"${state} r:id="rId${index + 1}"/>`;
  });
  return (
    `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${LINKS}"><bookViews><workbookView/></bookViews>` +
    `<sheets>${listed.join("")}</sheets>${namesXml(names)}</workbook>`
  );
}

function tableXml(table: WorkbookData["tables"][number], id: number): string {
  const { name, row, column, rows, headings } = table;
  const area = { row, column, lastRow: row + rows - 1, lastColumn: column + headings.length - 1 };
  const columns = headings.map((heading, at) => `<tableColumn id="${at + 1}" name="${escapeXml(heading)}"/>`);
  return (
    `${HEAD}<table xmlns="${MAIN}" id="${id}" name="${escapeXml(name)}" displayName="${escapeXml(name)}" ` +
    `ref="${rectangleName(area)}" totalsRowShown="0"><autoFilter ref="${rectangleName(area)}"/>` +
    `<tableColumns count="${columns.length}">${columns.join("")}</tableColumns>` +
    '<tableStyleInfo name="TableStyleLight1" showFirstColumn="0" showLastColumn="0" showRowStripes="0" showColumnStripes="0"/></table>'
  );
}

const sheetPart = (position: number) => `xl/worksheets/sheet${position + 1}.xml`;
const tablePart = (id: number) => `xl/tables/table${id}.xml`;

function contentTypes(parts: readonly (readonly [part: string, type: string])[]): string {
  const entries = parts.map(
    ([part, type]) => `<Override PartName="/${part}" ContentType="${TYPES}${type}+xml"/>`,
  );
  return (
    `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ` +
    'ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
    `<Default Extension="xml" ContentType="application/xml"/>${entries.join("")}</Types>`
  );
}

/** The parts of one sheet and its tables. Ids of tables count through the workbook. */
function sheetParts(book: WorkbookData, sheet: SheetData, position: number, styles: StylesWriter) {
  const own = book.tables.flatMap((table, index) =>
    table.sheet === sheet.name ? [{ table, id: index + 1, link: `rId${index + 1}` }] : [],
  );
  const xml = sheetXml(sheet, styles, { isFirst: position === 0, tables: own.map(({ link }) => link) });
  const links = own.map(({ id, link }) => ({ id: link, kind: "table", target: `/${tablePart(id)}` }));
  const parts: [string, string][] = [[sheetPart(position), xml]];
  if (links.length > 0) parts.push([`xl/worksheets/_rels/sheet${position + 1}.xml.rels`, linksXml(links)]);
  for (const { table, id } of own) parts.push([tablePart(id), tableXml(table, id)]);
  return parts;
}

function packed(parts: readonly (readonly [string, string])[]): Uint8Array {
  const encoder = new TextEncoder();
  const files = Object.fromEntries(parts.map(([name, text]) => [name, encoder.encode(text)]));
  // Noon of the earliest day a zip can hold, in any time zone: the file does not depend on the clock.
  return zipSync(files, { mtime: new Date(1980, 0, 2, 12), level: 6 });
}

/** Writes a workbook file anew, every formula with its value. */
export async function writeWorkbook(given: WorkbookData): Promise<Uint8Array> {
  const book = withListSheet(await calculatedWorkbook(given));
  const styles = new StylesWriter();
  const sheets = book.sheets.flatMap((sheet, position) => sheetParts(book, sheet, position, styles));
  const main: Link[] = [
    ...book.sheets.map((_, position) => ({
      id: `rId${position + 1}`,
      kind: "worksheet",
      target: `/${sheetPart(position)}`,
    })),
    { id: "rIdStyles", kind: "styles", target: "/xl/styles.xml" },
    { id: "rIdMetadata", kind: "sheetMetadata", target: "/xl/metadata.xml" },
  ];
  const types: (readonly [string, string])[] = [
    ["xl/workbook.xml", "sheet.main"],
    ["xl/styles.xml", "styles"],
    ["xl/metadata.xml", "sheetMetadata"],
    ...book.sheets.map((_, position) => [sheetPart(position), "worksheet"] as const),
    ...book.tables.map((_, index) => [tablePart(index + 1), "table"] as const),
  ];
  const office = { id: "rId1", kind: "officeDocument", target: "/xl/workbook.xml" };
  return packed([
    ["[Content_Types].xml", contentTypes(types)],
    ["_rels/.rels", linksXml([office])],
    ["xl/workbook.xml", workbookXml(book)],
    ["xl/_rels/workbook.xml.rels", linksXml(main)],
    ["xl/styles.xml", styles.text()],
    ["xl/metadata.xml", METADATA],
    ...sheets,
  ]);
}
