import { bandChart } from "../../taskpane/charts/band-chart";
import { elementOf } from "../../taskpane/charts/figure";
import type { CellStyle } from "../../workbook/model/workbook-data";
import type { PrintedCell, PrintedPage, PrintedPicture, PrintedRow, PrintedSheet } from "./printed-pages";

/** Pixels that a border of a kind is wide. */
const THICKNESS: Readonly<Record<string, string>> = {
  thin: "1px solid",
  hair: "1px dotted",
  dotted: "1px dotted",
  dashed: "1px dashed",
  double: "3px double",
  medium: "2px solid",
  mediumDashed: "2px dashed",
  thick: "3px solid",
};

function bordersOf(edges: CellStyle["edges"]): string {
  return Object.entries(edges ?? {})
    .map(([side, { kind, color }]) => `border-${side}:${THICKNESS[kind] ?? "1px solid"} ${color}`)
    .join(";");
}

/** Steps of indent in pixels, as spreadsheets draw them. */
const INDENT = 9;
const INSET = 3;

function lettersOf({ font, size, bold, italic, underline, strike, color }: CellStyle): string[] {
  const lines = [underline && "underline", strike && "line-through"].filter(Boolean).join(" ");
  return [
    font === undefined
      ? ""
      : `font-family:"${font.replace(/["\\;]/g, "")}",Arial,"Liberation Sans",sans-serif`,
    size === undefined ? "" : `font-size:${size}pt`,
    bold ? "font-weight:bold" : "",
    italic ? "font-style:italic" : "",
    lines === "" ? "" : `text-decoration:${lines}`,
    color === undefined ? "" : `color:${color}`,
  ];
}

/** Figures stand right, words left, unless the style says otherwise. */
function placeOf({ text, style }: PrintedCell): string[] {
  const across = style.horizontal ?? (/^-?[\d.,]+ ?%?$/.test(text) ? "right" : "left");
  const room = INSET + (style.indent ?? 0) * INDENT;
  return [
    `text-align:${across}`,
    `padding:0 ${across === "right" ? room : INSET}px 0 ${across === "left" ? room : INSET}px`,
    `vertical-align:${style.vertical === "center" ? "middle" : (style.vertical ?? "bottom")}`,
  ];
}

function cssOf(printed: PrintedCell): string {
  const { style, runsOver } = printed;
  const breaks = style.wraps === true;
  return [
    ...lettersOf(style),
    style.fill === undefined ? "" : `background:${style.fill}`,
    bordersOf(style.edges),
    ...placeOf(printed),
    `white-space:${breaks ? "pre-wrap" : "pre"}`,
    breaks || runsOver ? "" : "overflow:hidden",
  ]
    .filter((part) => part !== "")
    .join(";");
}

/** A drawing in the colours of paper, whatever those of the page are. */
function pictureOf({ chart, width }: PrintedPicture): HTMLElement {
  const place = document.createElement("div");
  place.className = "pane sheet-picture";
  place.dataset.theme = "light";
  if (chart === undefined) return place;
  const title = document.createElement("strong");
  title.textContent = chart.title;
  place.append(title, elementOf(bandChart(chart, width)));
  return place;
}

function cellOf(printed: PrintedCell): HTMLTableCellElement {
  const cell = document.createElement("td");
  cell.style.cssText = cssOf(printed);
  if (printed.across > 1) cell.colSpan = printed.across;
  if (printed.down > 1) cell.rowSpan = printed.down;
  if (printed.picture === undefined) cell.textContent = printed.text;
  else cell.append(pictureOf(printed.picture));
  return cell;
}

function rowsInto(place: HTMLTableSectionElement, rows: readonly PrintedRow[]): void {
  for (const { height, cells } of rows) {
    const row = place.insertRow();
    row.style.height = `${height}px`;
    row.append(...cells.map(cellOf));
  }
}

/** One page of a sheet as a table as wide as its columns. */
export function pageTable({ widths, head }: PrintedSheet, { rows }: PrintedPage): HTMLTableElement {
  const table = document.createElement("table");
  table.style.width = `${widths.reduce((sum, width) => sum + width, 0)}px`;
  const columns = document.createElement("colgroup");
  columns.append(
    ...widths.map((width) => {
      const column = document.createElement("col");
      column.style.width = `${width}px`;
      return column;
    }),
  );
  table.append(columns);
  if (head.length > 0) rowsInto(table.createTHead(), head);
  rowsInto(table.createTBody(), rows);
  return table;
}
