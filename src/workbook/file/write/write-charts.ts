import { cellName, rectangleName } from "../../../formula/addresses";
import { quotedSheet } from "../../../formula/sheet-names";
import {
  type ContentAt,
  type CurveLine,
  contentsOf,
  curvePoints,
  curvesOf,
  type TableCurve,
  textsOf,
} from "../../model/table-curves";
import type { SheetData } from "../../model/workbook-data";
import { escapeXml } from "../package/xml";
import { HEAD, LINKS, type Link, linksXml, type Part } from "./package-parts";

const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/main";
const CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const PLACED = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";

/** Content types of the two kinds of part. */
export const CHART_PART = "application/vnd.openxmlformats-officedocument.drawingml.chart+xml";
export const DRAWING_PART = "application/vnd.openxmlformats-officedocument.drawing+xml";

/** Id of the link from a sheet to the drawing that holds its charts. */
export const CHARTS_DRAWING = "rIdCharts";

/** How a line of the chart is drawn: dashes tell the lines apart on a copy without colours too. */
interface Stroke {
  readonly color: string;
  /** Points. */
  readonly width: number;
  readonly dash: "solid" | "dash" | "sysDot" | "lgDash";
  readonly isSmooth: boolean;
}

const INK = "242424";
const EDGE: Stroke = { color: "767676", width: 1, dash: "sysDot", isSmooth: true };
const RANGE: Stroke = { color: "1F6B3A", width: 1.25, dash: "dash", isSmooth: false };

const STROKES: Readonly<Record<Exclude<CurveLine, "ordered">, Stroke>> = {
  low: EDGE,
  likely: { color: INK, width: 2, dash: "solid", isSmooth: true },
  high: EDGE,
  "range low": RANGE,
  "range high": RANGE,
  aim: { color: "9A3B00", width: 1.25, dash: "lgDash", isSmooth: false },
};

/** A point is 12,700 units of a drawing (ECMA-376 Part 1, 20.1.2.1). */
const UNITS_A_POINT = 12_700;

const solid = (color: string) => `<a:solidFill><a:srgbClr val="${color}"/></a:solidFill>`;
const lineXml = ({ color, width, dash }: Stroke) =>
  `<c:spPr><a:ln w="${Math.round(width * UNITS_A_POINT)}" cap="flat">${solid(color)}<a:prstDash val="${dash}"/><a:round/></a:ln></c:spPr>`;
const NO_MARKER = '<c:marker><c:symbol val="none"/></c:marker>';
const DOT =
  '<c:spPr><a:ln w="19050"><a:noFill/></a:ln></c:spPr><c:marker><c:symbol val="circle"/><c:size val="8"/>' +
  `<c:spPr>${solid(INK)}<a:ln w="9525">${solid(INK)}</a:ln></c:spPr></c:marker>`;

/** Letters of a chart: size in points. */
const letters = (points: number, isBold = false) =>
  `<a:defRPr sz="${points * 100}" b="${isBold ? 1 : 0}">${solid(INK)}</a:defRPr>`;
const textProperties = (points: number) =>
  `<c:txPr><a:bodyPr/><a:lstStyle/><a:p><a:pPr>${letters(points)}</a:pPr><a:endParaRPr lang="en-GB"/></a:p></c:txPr>`;

/** A cell or a stretch of a column, as a chart names it. */
class Places {
  constructor(private readonly sheet: string) {}

  cell(row: number, column: number): string {
    return escapeXml(`${quotedSheet(this.sheet)}!${cellName(row, column, "both")}`);
  }

  column({ first, last }: TableCurve, column: number): string {
    return `${this.cell(first, column)}:${cellName(last, column, "both")}`;
  }
}

/** Words that stand in a cell: they follow it. No figures are kept beside: a chart takes them from its cells. */
const wordsFrom = (cell: string) => `<c:tx><c:strRef><c:f>${cell}</c:f></c:strRef></c:tx>`;
const NO_OVERLAY = '<c:overlay val="0"/>';

function seriesXml(curve: TableCurve, at: number, places: Places): string {
  const found = curve.lines[at];
  if (found === undefined) return "";
  const { line, column } = found;
  const stroke = line === "ordered" ? undefined : STROKES[line];
  return (
    `<c:ser><c:idx val="${at}"/><c:order val="${at}"/>${wordsFrom(places.cell(curve.headings, column))}` +
    (stroke === undefined ? DOT : lineXml(stroke) + NO_MARKER) +
    `<c:xVal><c:numRef><c:f>${places.column(curve, curve.x.column)}</c:f></c:numRef></c:xVal>` +
    `<c:yVal><c:numRef><c:f>${places.column(curve, column)}</c:f></c:numRef></c:yVal>` +
    `<c:smooth val="${stroke?.isSmooth ? 1 : 0}"/></c:ser>`
  );
}

const AXES = { x: 100_001, y: 100_002 } as const;
/** Ends of the axes: lower figures than the first are blank rows, which a chart draws as 0. */
const LOWEST_C = 100;
const HRC = { low: 30, high: 70, step: 5 } as const;
const STEP_C = 50;

const ticks = '<c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/>';
const axisLine = `<c:spPr><a:ln w="9525">${solid("767676")}</a:ln></c:spPr>`;
const gridLines = `<c:majorGridlines><c:spPr><a:ln w="6350">${solid("D9D9D9")}</a:ln></c:spPr></c:majorGridlines>`;

interface AxisOf {
  readonly id: number;
  readonly across: number;
  readonly side: "b" | "l";
  readonly scaling: string;
  readonly title: string;
  readonly step: number;
}

const axisXml = ({ id, across, side, scaling, title, step }: AxisOf) =>
  `<c:valAx><c:axId val="${id}"/><c:scaling><c:orientation val="minMax"/>${scaling}</c:scaling><c:delete val="0"/>` +
  `<c:axPos val="${side}"/>${gridLines}<c:title>${title}${NO_OVERLAY}</c:title>` +
  `<c:numFmt formatCode="0" sourceLinked="0"/>${ticks}${axisLine}${textProperties(9)}` +
  `<c:crossAx val="${across}"/><c:crosses val="min"/><c:crossBetween val="midCat"/><c:majorUnit val="${step}"/></c:valAx>`;

const literal = (words: string) =>
  `<c:tx><c:rich><a:bodyPr/><a:lstStyle/><a:p><a:pPr>${letters(9)}</a:pPr><a:r><a:rPr lang="en-GB" sz="900" b="0"/><a:t>${escapeXml(words)}</a:t></a:r></a:p></c:rich></c:tx>`;

/** The hardness axis reaches further down where a figure of the table asks for it. */
function lowestHrc(curve: TableCurve, contentAt: ContentAt): number {
  const figures = curvePoints(curve, textsOf(contentAt)).flatMap(({ x: _, ...lines }) =>
    Object.values(lines),
  );
  const least = Math.min(HRC.low, ...figures.filter((figure) => figure > 0));
  return Math.floor(least / HRC.step) * HRC.step;
}

/**
 * A chart part (ECMA-376 Part 1, 21.2): smooth lines over one axis of tempers, each named by its heading.
 *
 * @param sheet - Name of the sheet that the table stands on.
 * @param contentAt - What a cell of it holds.
 */
export function chartXml(curve: TableCurve, sheet: string, contentAt: ContentAt): string {
  const places = new Places(sheet);
  const { title } = curve;
  const held = title && contentAt(title.row, title.column);
  // A title that follows a cell would stand in LibreOffice as it was once: only fixed words become one.
  const words = held !== undefined && "value" in held ? String(held.value) : "";
  const head =
    words === ""
      ? '<c:autoTitleDeleted val="1"/>'
      : `<c:title>${literal(words)}${NO_OVERLAY}</c:title><c:autoTitleDeleted val="0"/>`;
  const series = curve.lines.map((_, at) => seriesXml(curve, at, places)).join("");
  const x = axisXml({
    id: AXES.x,
    across: AXES.y,
    side: "b",
    scaling: `<c:min val="${LOWEST_C}"/>`,
    title: literal(curve.x.name),
    step: STEP_C,
  });
  const y = axisXml({
    id: AXES.y,
    across: AXES.x,
    side: "l",
    scaling: `<c:max val="${HRC.high}"/><c:min val="${lowestHrc(curve, contentAt)}"/>`,
    title: literal("HRC"),
    step: HRC.step,
  });
  return (
    `${HEAD}<c:chartSpace xmlns:c="${CHART}" xmlns:a="${DRAWING}" xmlns:r="${LINKS}"><c:roundedCorners val="0"/>` +
    `<c:chart>${head}<c:plotArea><c:layout/>` +
    `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${series}` +
    `<c:axId val="${AXES.x}"/><c:axId val="${AXES.y}"/></c:scatterChart>${x}${y}</c:plotArea>` +
    `<c:legend><c:legendPos val="r"/>${NO_OVERLAY}${textProperties(9)}</c:legend>` +
    '<c:plotVisOnly val="0"/><c:dispBlanksAs val="gap"/></c:chart>' +
    `<c:spPr>${solid("FFFFFF")}<a:ln w="9525">${solid("BFBFBF")}</a:ln></c:spPr></c:chartSpace>`
  );
}

const corner = (name: string, row: number, column: number) =>
  `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;

/** A chart in its place on the sheet; its name are the words of the cell that asks for it. */
export function anchorXml(
  { words, place, headings, first, last, x, lines }: TableCurve,
  { id, number }: { readonly id: string; readonly number: number },
): string {
  const { row, column, lastRow, lastColumn } = place;
  const table = {
    row: headings,
    column: x.column,
    lastRow: last,
    lastColumn: lines.at(-1)?.column ?? x.column,
  };
  const told = `Hardness over temper, drawn from the cells ${rectangleName(table)}: ${last - first + 1} tempers`;
  return (
    `<xdr:twoCellAnchor xmlns:xdr="${PLACED}" xmlns:a="${DRAWING}" xmlns:r="${LINKS}" editAs="oneCell">${corner("from", row, column)}${corner("to", lastRow + 1, lastColumn + 1)}` +
    `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${number}" name="${escapeXml(words)}" descr="${escapeXml(told)}"/>` +
    '<xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>' +
    `<a:graphic><a:graphicData uri="${CHART}"><c:chart xmlns:c="${CHART}" r:id="${id}"/></a:graphicData></a:graphic>` +
    "</xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>"
  );
}

export const drawingXml = (curves: readonly TableCurve[]) =>
  `${HEAD}<xdr:wsDr xmlns:xdr="${PLACED}" xmlns:a="${DRAWING}" xmlns:r="${LINKS}">${curves.map((curve, at) => anchorXml(curve, { id: `rId${at + 1}`, number: at + 2 })).join("")}</xdr:wsDr>`;

const drawingName = (position: number) => `drawings/drawing${position + 1}.xml`;
const chartName = (position: number, at: number) => `charts/chart${position + 1}_${at + 1}.xml`;

/** The charts of a sheet as parts of the file, with the link that the sheet has to them. */
export function chartsOf(sheet: SheetData, position: number): { links: Link[]; parts: Part[] } {
  const curves = curvesOf(sheet);
  if (curves.length === 0) return { links: [], parts: [] };
  const contentAt = contentsOf(sheet);
  const drawing = drawingName(position);
  const links = curves.map((_, at) => ({
    id: `rId${at + 1}`,
    kind: "chart",
    target: `../${chartName(position, at)}`,
  }));
  return {
    links: [{ id: CHARTS_DRAWING, kind: "drawing", target: `../${drawing}` }],
    parts: [
      { name: `xl/${drawing}`, type: "drawing", xml: drawingXml(curves) },
      { name: `xl/drawings/_rels/drawing${position + 1}.xml.rels`, xml: linksXml(links) },
      ...curves.map((curve, at) => ({
        name: `xl/${chartName(position, at)}`,
        type: "drawingml.chart",
        xml: chartXml(curve, sheet.name, contentAt),
      })),
    ],
  };
}
