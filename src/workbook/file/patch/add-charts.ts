import { type ContentAt, contentsOf, curvesOf, isPicture, type TableCurve } from "../../model/table-curves";
import type { CellData, SheetData } from "../../model/workbook-data";
import { contentOf } from "../cell-content";
import { declarePart } from "../package/content-types";
import type { Package } from "../package/package";
import { addRelationship, relationshipsOf } from "../package/relationships";
import { walkXml } from "../package/xml";
import { type LiveSheet, type LiveWorkbook, readLiveWorkbook } from "../read/live-workbook";
import { readLayout } from "../read/read-layout";
import { LINKS } from "../write/package-parts";
import { anchorXml, CHART_PART, chartXml, DRAWING_PART, drawingXml } from "../write/write-charts";

/** What may stand behind the drawing of a worksheet (CT_Worksheet, ECMA-376 Part 1, 18.3.1.99). */
const BEHIND_DRAWING = new Set([
  "legacyDrawing",
  "legacyDrawingHF",
  "drawingHF",
  "picture",
  "oleObjects",
  "controls",
  "webPublishItems",
  "tableParts",
  "extLst",
]);

/** The strict form of the format has other namespaces: no chart is added to such a file. */
const STRICT = "http://purl.oclc.org/ooxml/";

const asksForPicture = ({ content }: CellData) =>
  content !== undefined && "value" in content && isPicture(String(content.value));

/** Where the drawing of a worksheet part belongs. */
function drawingPlace(name: string, xml: string): number {
  let depth = 0;
  let place: number | undefined;
  walkXml(name, xml, {
    open({ name: element, start }) {
      if (depth === 1 && BEHIND_DRAWING.has(element)) place ??= start;
      depth += 1;
    },
    close() {
      depth -= 1;
    },
  });
  return place ?? xml.lastIndexOf("</");
}

function freePart(file: Package, of: (number: number) => string): string {
  let number = 1;
  while (file.has(of(number))) number += 1;
  return of(number);
}

/** The drawing of a sheet; an empty one is made where it has none. */
function drawingOf(file: Package, { listed, stored }: LiveSheet): string {
  const known = relationshipsOf(file, listed.part).find(({ kind }) => kind === "drawing")?.part;
  if (known !== undefined) return known;
  const part = freePart(file, (number) => `xl/drawings/drawing${number}.xml`);
  file.setText(part, drawingXml([]));
  declarePart(file, part, DRAWING_PART);
  const id = addRelationship(file, listed.part, "drawing", part);
  const xml = file.text(listed.part);
  const place = drawingPlace(listed.part, xml);
  const element = `<${stored.prefix}drawing xmlns:r="${LINKS}" r:id="${id}"/>`;
  file.setText(listed.part, xml.slice(0, place) + element + xml.slice(place));
  return part;
}

function addChart(
  file: Package,
  drawing: string,
  curve: TableCurve,
  sheet: { readonly name: string; readonly contentAt: ContentAt },
): void {
  const part = freePart(file, (number) => `xl/charts/chart${number}.xml`);
  file.setText(part, chartXml(curve, sheet.name, sheet.contentAt));
  declarePart(file, part, CHART_PART);
  const id = addRelationship(file, drawing, "chart", part);
  const xml = file.text(drawing);
  const end = xml.lastIndexOf("</");
  const count = (xml.match(/twoCellAnchor\b/g) ?? []).length;
  file.setText(drawing, xml.slice(0, end) + anchorXml(curve, { id, number: count + 1000 }) + xml.slice(end));
}

function sheetData({ strings, main }: LiveWorkbook, { listed, stored }: LiveSheet): SheetData {
  const cells = stored.rows.flatMap(({ cells: own }) =>
    own.flatMap((cell) => {
      const content = contentOf(cell, strings, main.from1904);
      return content === undefined ? [] : [{ row: cell.row, column: cell.column, content }];
    }),
  );
  const { columns, rows, merged } = readLayout(listed.part, stored, []);
  return {
    name: listed.name,
    isHidden: listed.isHidden,
    cells,
    columns,
    rows,
    merged,
    frozenRows: 0,
    frozenColumns: 0,
    offers: [],
    colors: [],
  };
}

/** Adds the charts that some cells of a sheet ask for. */
function addTo({ file }: LiveWorkbook, sheet: LiveSheet, data: SheetData, asking: readonly CellData[]): void {
  const isAsked = ({ place }: TableCurve) =>
    asking.some(({ row, column }) => row === place.row && column === place.column);
  const placed = { name: data.name, contentAt: contentsOf(data) };
  for (const curve of curvesOf(data).filter(isAsked)) addChart(file, drawingOf(file, sheet), curve, placed);
}

/**
 * Adds a chart for every changed cell whose words ask for the picture of a table; charts that are in the file stay as
 * they are.
 *
 * @param changes - Cells that became others, by name of the sheet.
 */
export function withCharts(bytes: Uint8Array, changes: ReadonlyMap<string, readonly CellData[]>): Uint8Array {
  const asking = new Map([...changes].map(([name, cells]) => [name, cells.filter(asksForPicture)]));
  if ([...asking.values()].every((cells) => cells.length === 0)) return bytes;
  const live = readLiveWorkbook(bytes);
  if (live.file.text(live.main.name).includes(STRICT)) return bytes;
  for (const sheet of live.sheets) {
    const cells = asking.get(sheet.listed.name) ?? [];
    if (cells.length > 0) addTo(live, sheet, sheetData(live, sheet), cells);
  }
  return live.file.save();
}
