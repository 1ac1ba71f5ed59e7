import { rectangleName } from "../../../formula/addresses";
import { fileForm } from "../../../formula/stored-form";
import { calculatedWorkbook } from "../../model/calculated-workbook";
import { withListsSheet } from "../../model/lists-sheet";
import { withFittedRows } from "../../model/row-heights";
import { withAllowedNames } from "../../model/sheet-names";
import type { SheetData, WorkbookData } from "../../model/workbook-data";
import { escapeXml } from "../package/xml";
import { METADATA } from "./dynamic-arrays";
import { encoded, HEAD, LINKS, type Link, linksXml, MAIN, type Part, packed } from "./package-parts";
import { printNamesXml } from "./print-xml";
import { CHARTS_DRAWING, chartsOf } from "./write-charts";
import { NOTES_DRAWING, notesLinks, notesOf, notesParts } from "./write-notes";
import { sheetXml } from "./write-sheet";
import { StylesWriter } from "./write-styles";

function namesXml({ names, sheets }: WorkbookData): string {
  const own = Object.entries(names).map(
    ([name, refers]) =>
      `<definedName name="${escapeXml(name)}">${escapeXml(fileForm(refers.replace(/^=/, "")))}</definedName>`,
  );
  const entries = [...own, ...sheets.map(printNamesXml)].join("");
  return entries === "" ? "" : `<definedNames>${entries}</definedNames>`;
}

/**
 * A file that names an older calculation engine is calculated anew when Excel opens it, and then shows #NAME? to
 * whoever has no add-in. The number is that of Excel 2019 and later (from memory).
 */
const ENGINE = 191029;

function workbookXml(workbook: WorkbookData): string {
  const listed = workbook.sheets.map(({ name, isHidden }, index) => {
    const state = isHidden ? ' state="hidden"' : "";
    return `<sheet name="${escapeXml(name)}" sheetId="${index + 1}"${state} r:id="rId${index + 1}"/>`;
  });
  return (
    `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${LINKS}">${workbook.from1904 ? '<workbookPr date1904="1"/>' : ""}<bookViews><workbookView/></bookViews>` +
    `<sheets>${listed.join("")}</sheets>${namesXml(workbook)}<calcPr calcId="${ENGINE}"/></workbook>`
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

const sheetPart = (position: number) => `worksheets/sheet${position + 1}.xml`;
const tablePart = (id: number) => `tables/table${id}.xml`;

/** The parts of one sheet and its tables. Ids of tables count through the workbook. */
function sheetParts(
  workbook: WorkbookData,
  sheet: SheetData,
  position: number,
  styles: StylesWriter,
): Part[] {
  const own = workbook.tables.flatMap((table, index) =>
    table.sheet === sheet.name ? [{ table, id: index + 1, link: `rId${index + 1}` }] : [],
  );
  const notes = notesOf(sheet);
  const charts = chartsOf(sheet, position);
  const xml = sheetXml(sheet, styles, {
    isFirst: position === 0,
    title: workbook.title,
    tables: own.map(({ link }) => link),
    charts: charts.parts.length === 0 ? undefined : CHARTS_DRAWING,
    notes: notes.length === 0 ? undefined : NOTES_DRAWING,
  });
  const links = [
    ...own.map(({ id, link }) => ({ id: link, kind: "table", target: `../${tablePart(id)}` })),
    ...charts.links,
    ...notesLinks(notes, position),
  ];
  const linked = { name: `xl/worksheets/_rels/sheet${position + 1}.xml.rels`, xml: linksXml(links) };
  return [
    { name: `xl/${sheetPart(position)}`, type: "spreadsheetml.worksheet", xml },
    ...(links.length === 0 ? [] : [linked]),
    ...own.map(({ table, id }) => ({
      name: `xl/${tablePart(id)}`,
      type: "spreadsheetml.table",
      xml: tableXml(table, id),
    })),
    ...charts.parts,
    ...notesParts(notes, position),
  ];
}

function mainLinks({ sheets }: WorkbookData): Link[] {
  const listed = sheets.map((_, position) => ({
    id: `rId${position + 1}`,
    kind: "worksheet",
    target: sheetPart(position),
  }));
  return [
    ...listed,
    { id: "rIdStyles", kind: "styles", target: "styles.xml" },
    { id: "rIdMetadata", kind: "sheetMetadata", target: "metadata.xml" },
  ];
}

/**
 * Writes a workbook file anew: every formula in the form that Excel finds our functions by, with its value; formulas
 * that fill several cells marked as such; styles, lists, status colours, frozen heads, tables, and a print set-up one
 * page wide. The same workbook gives the same bytes. A sheet whose name Excel does not take gets another, and the
 * formulas follow.
 *
 * @param fitsRows - Whether rows without a height get the one that their texts need.
 */
export async function writeWorkbook(
  given: WorkbookData,
  { fitsRows = false }: { readonly fitsRows?: boolean } = {},
): Promise<Uint8Array> {
  const calculated = await calculatedWorkbook(withListsSheet(withAllowedNames(given)));
  const workbook = fitsRows ? withFittedRows(calculated) : calculated;
  const styles = new StylesWriter();
  const sheets = workbook.sheets.flatMap((sheet, position) =>
    sheetParts(workbook, sheet, position, styles).map(encoded),
  );
  const main: Part[] = [
    { name: "xl/workbook.xml", type: "spreadsheetml.sheet.main", xml: workbookXml(workbook) },
    { name: "xl/_rels/workbook.xml.rels", xml: linksXml(mainLinks(workbook)) },
    { name: "xl/styles.xml", type: "spreadsheetml.styles", xml: styles.text() },
    { name: "xl/metadata.xml", type: "spreadsheetml.sheetMetadata", xml: METADATA },
  ];
  return packed([...main.map(encoded), ...sheets], workbook.title ?? "");
}
