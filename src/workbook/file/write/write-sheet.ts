import { cellName, rectangleName } from "../../../formula/addresses";
import { fileForm } from "../../../formula/stored-form";
import { textLiteral } from "../../../formula/tokens";
import type {
  Band,
  CellContent,
  CellData,
  OfferedWords,
  SheetData,
  WordColor,
} from "../../model/workbook-data";
import { type CellXml, constantXml, EMPTY, resultXml } from "../cell-xml";
import { escapeXml } from "../package/xml";
import { columnWidth, rowPoints } from "../sizes";
import { wordFormula } from "../word-colors";
import { printXml } from "./print-xml";
import type { StylesWriter } from "./write-styles";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const LINKS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** CellValue of a cell as a file holds it. A formula that fills other cells is marked as a dynamic array. */
export function cellXmlOf(content: CellContent | undefined, prefix = ""): CellXml {
  if (content === undefined) return EMPTY;
  if (!("formula" in content)) return constantXml(content, prefix);
  const { formula, fills, result } = content;
  const text = escapeXml(fileForm(formula));
  const value = result === undefined ? EMPTY : resultXml(result, prefix);
  if (fills === undefined)
    return { attributes: value.attributes, xml: `<${prefix}f>${text}</${prefix}f>${value.xml}` };
  return {
    attributes: ` cm="1"${value.attributes}`,
    xml: `<${prefix}f t="array" ref="${rectangleName(fills)}">${text}</${prefix}f>${value.xml}`,
  };
}

function cellXml({ row, column, content, style }: CellData, styles: StylesWriter): string {
  const { attributes, xml } = cellXmlOf(content);
  const number = styles.styleOf(style);
  return `<c r="${cellName(row, column)}"${number === 0 ? "" : ` s="${number}"`}${attributes}>${xml}</c>`;
}

function rowXml(row: number, cells: readonly CellData[], band: Band | undefined, styles: StylesWriter) {
  const height = band?.size === undefined ? "" : ` ht="${rowPoints(band.size)}" customHeight="1"`;
  const hidden = band?.isHidden ? ' hidden="1"' : "";
  const inside = [...cells].sort((a, b) => a.column - b.column).map((cell) => cellXml(cell, styles));
  return `<row r="${row + 1}"${height}${hidden}>${inside.join("")}</row>`;
}

function rowsXml({ cells, rows }: SheetData, styles: StylesWriter): string {
  const byRow = new Map<number, CellData[]>([...rows.keys()].map((row) => [row, []]));
  for (const cell of cells) {
    const row = byRow.get(cell.row);
    if (row === undefined) byRow.set(cell.row, [cell]);
    else row.push(cell);
  }
  const ordered = [...byRow].sort(([a], [b]) => a - b);
  return ordered.map(([row, content]) => rowXml(row, content, rows.get(row), styles)).join("");
}

function columnsXml(columns: SheetData["columns"]): string {
  if (columns.size === 0) return "";
  const ordered = [...columns].sort(([a], [b]) => a - b);
  const entries = ordered.map(([column, { size, isHidden }]) => {
    const width = size === undefined ? ' width="9.140625"' : ` width="${columnWidth(size)}" customWidth="1"`;
    return `<col min="${column + 1}" max="${column + 1}"${width}${isHidden ? ' hidden="1"' : ""}/>`;
  });
  return `<cols>${entries.join("")}</cols>`;
}

function paneXml({ frozenRows, frozenColumns }: SheetData): string {
  if (frozenRows === 0 && frozenColumns === 0) return "";
  const split =
    (frozenColumns === 0 ? "" : ` xSplit="${frozenColumns}"`) +
    (frozenRows === 0 ? "" : ` ySplit="${frozenRows}"`);
  const corner = cellName(frozenRows, frozenColumns);
  const pane = frozenRows === 0 ? "topRight" : frozenColumns === 0 ? "bottomLeft" : "bottomRight";
  return `<pane${split} topLeftCell="${corner}" activePane="${pane}" state="frozen"/><selection pane="${pane}"/>`;
}

function viewXml(sheet: SheetData, isFirst: boolean): string {
  const lines = sheet.hidesGridLines ? ' showGridLines="0"' : "";
  const chosen = isFirst ? ' tabSelected="1"' : "";
  const pane = paneXml(sheet);
  const view = `<sheetView${lines}${chosen} workbookViewId="0"`;
  return `<sheetViews>${pane === "" ? `${view}/>` : `${view}>${pane}</sheetView>`}</sheetViews>`;
}

const areaNames = (areas: OfferedWords["areas"]) => areas.map((area) => rectangleName(area)).join(" ");

function ruleXml({ areas, word, fill }: WordColor, priority: number, styles: StylesWriter): string {
  const [first] = areas;
  if (first === undefined) return "";
  return (
    `<cfRule type="expression" dxfId="${styles.ruleOf(fill)}" priority="${priority}">` +
    `<formula>${escapeXml(wordFormula(word, cellName(first.row, first.column)))}</formula></cfRule>`
  );
}

/** Rules of the same cells stand together; the first that fits gives the colour. */
function colorsXml(colors: readonly WordColor[], styles: StylesWriter): string {
  const byAreas = new Map<string, string[]>();
  colors.forEach((color, index) => {
    const areas = areaNames(color.areas);
    byAreas.set(areas, [...(byAreas.get(areas) ?? []), ruleXml(color, index + 1, styles)]);
  });
  return [...byAreas]
    .filter(([areas]) => areas !== "")
    .map(
      ([areas, rules]) => `<conditionalFormatting sqref="${areas}">${rules.join("")}</conditionalFormatting>`,
    )
    .join("");
}

/** Lists only offer: another word may be typed. */
function offersXml(offers: readonly OfferedWords[]): string {
  const entries = offers.flatMap(({ areas, words, range }) => {
    const listed = range ?? textLiteral((words ?? []).join(","));
    if (areas.length === 0 || listed === '""') return [];
    return [
      `<dataValidation type="list" allowBlank="1" showErrorMessage="0" sqref="${areaNames(areas)}">` +
        `<formula1>${escapeXml(listed)}</formula1></dataValidation>`,
    ];
  });
  if (entries.length === 0) return "";
  return `<dataValidations count="${entries.length}">${entries.join("")}</dataValidations>`;
}

function mergedXml(merged: SheetData["merged"]): string {
  if (merged.length === 0) return "";
  const entries = merged.map((area) => `<mergeCell ref="${rectangleName(area)}"/>`);
  return `<mergeCells count="${merged.length}">${entries.join("")}</mergeCells>`;
}

/** Widths, heights and the order of rows stay free where a sheet is protected (CT_SheetProtection, ECMA-376, 18.3.1.85). */
const PROTECTED =
  '<sheetProtection sheet="1" objects="1" scenarios="1" formatColumns="0" formatRows="0" sort="0" autoFilter="0"/>';

/** What a sheet has from the workbook it stands in. */
export interface SheetPlace {
  readonly isFirst: boolean;
  /** Title of the workbook. */
  readonly title: string | undefined;
  /** Ids of the links to the tables of the sheet. */
  readonly tables: readonly string[];
  /** Id of the link to the drawing of its charts. */
  readonly charts?: string | undefined;
  /** Id of the link to the drawing of its notes. */
  readonly notes?: string | undefined;
}

/** A worksheet part. */
export function sheetXml(
  sheet: SheetData,
  styles: StylesWriter,
  { isFirst, title, tables, charts, notes }: SheetPlace,
): string {
  const links = tables.map((id) => `<tablePart r:id="${id}"/>`).join("");
  return (
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${MAIN}" xmlns:r="${LINKS}">` +
    '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>' +
    viewXml(sheet, isFirst) +
    '<sheetFormatPr defaultRowHeight="15"/>' +
    columnsXml(sheet.columns) +
    `<sheetData>${rowsXml(sheet, styles)}</sheetData>` +
    (sheet.isProtected ? PROTECTED : "") +
    mergedXml(sheet.merged) +
    colorsXml(sheet.colors, styles) +
    offersXml(sheet.offers) +
    printXml(sheet, title) +
    (charts === undefined ? "" : `<drawing r:id="${charts}"/>`) +
    (notes === undefined ? "" : `<legacyDrawing r:id="${notes}"/>`) +
    (links === "" ? "" : `<tableParts count="${tables.length}">${links}</tableParts>`) +
    "</worksheet>"
  );
}
