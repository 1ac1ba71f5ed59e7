import { isPicture } from "../../model/table-curves";
import type { CellData } from "../../model/workbook-data";
import { removeParts } from "../package/content-types";
import { applyEdits } from "../package/edits";
import type { Package } from "../package/package";
import { relationshipsOf, relationshipsPart, removeRelationships } from "../package/relationships";
import { type OpenTag, walkXml } from "../package/xml";
import type { LiveWorkbook } from "../read/live-workbook";

/** A chart in a drawing part: the cell that it begins in, its name and its link (CT_TwoCellAnchor, ECMA-376 Part 1, 20.5.2.33). */
interface PlacedChart {
  readonly row: number;
  readonly column: number;
  readonly name: string;
  readonly link: string;
  readonly start: number;
  readonly end: number;
}

const ANCHOR = "twoCellAnchor";

class ChartReader {
  readonly found: PlacedChart[] = [];
  private chart = { row: "", col: "", name: "", link: "", start: 0 };
  private inFrom = false;
  private reading: "row" | "col" | undefined;

  open({ name, attributes, start }: OpenTag): void {
    if (name === ANCHOR) this.chart = { row: "", col: "", name: "", link: "", start };
    if (name === "from") this.inFrom = true;
    if (this.inFrom && (name === "row" || name === "col")) this.reading = name;
    if (name === "cNvPr") this.chart.name ||= attributes.name ?? "";
    if (name === "chart") this.chart.link = attributes["r:id"] ?? "";
  }

  text(text: string): void {
    if (this.reading !== undefined) this.chart[this.reading] += text;
  }

  close(element: string, _start: number, end: number): void {
    this.reading = undefined;
    if (element === "from") this.inFrom = false;
    if (element !== ANCHOR) return;
    const { row, col, name, link, start } = this.chart;
    this.found.push({ row: Number(row), column: Number(col), name, link, start, end });
  }
}

function chartsIn(file: Package, drawing: string): readonly PlacedChart[] {
  const reader = new ChartReader();
  walkXml(drawing, file.text(drawing), {
    open: (tag) => reader.open(tag),
    text: (text) => reader.text(text),
    close: (name, start, end) => reader.close(name, start, end),
  });
  return reader.found;
}

/** Parts of a chart that no other part has a use for: its own, and those that a program wrote beside it. */
function partsOf(file: Package, chart: string): string[] {
  const beside = relationshipsOf(file, chart).flatMap(({ kind, part }) =>
    part !== undefined && kind.startsWith("chart") ? [part] : [],
  );
  return [chart, relationshipsPart(chart), ...beside];
}

function removeFrom(file: Package, drawing: string, cells: readonly CellData[]): void {
  const isGone = ({ row, column, name }: PlacedChart) =>
    isPicture(name) && cells.some((cell) => cell.row === row && cell.column === column);
  const gone = chartsIn(file, drawing).filter(isGone);
  if (gone.length === 0) return;
  const links = new Set(gone.map(({ link }) => link));
  const relationships = relationshipsOf(file, drawing).filter(({ id }) => links.has(id));
  const parts = relationships.flatMap(({ part }) => (part === undefined ? [] : partsOf(file, part)));
  file.setText(
    drawing,
    applyEdits(
      file.text(drawing),
      gone.map(({ start, end }) => ({ start, end, text: "" })),
    ),
  );
  removeRelationships(file, drawing, relationships);
  removeParts(file, parts);
}

/**
 * Takes out the charts of cells that became others. A chart that was drawn for the words of a cell has those words for
 * a name and begins in that cell; any other stays.
 */
export function removeCharts(
  { file, sheets }: LiveWorkbook,
  changes: ReadonlyMap<string, readonly CellData[]>,
): void {
  for (const { listed } of sheets) {
    const cells = changes.get(listed.name) ?? [];
    if (cells.length === 0) continue;
    for (const { kind, part } of relationshipsOf(file, listed.part))
      if (kind === "drawing" && part !== undefined) removeFrom(file, part, cells);
  }
}
