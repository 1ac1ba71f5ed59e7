import { holds, type Rectangle } from "../../formula/addresses";
import type { BandChart } from "../../taskpane/charts/band-chart";
import { columnsByPage } from "../../workbook/model/page-size";
import { curveAskedFor, isPicture, pictureAt } from "../../workbook/model/table-curves";
import type { CellStyle, SheetData } from "../../workbook/model/workbook-data";
import { pagesOf } from "../../workbook/share/paper-pages";
import { subjectPlace } from "../../workbook/sheets/parts/doc-rows";
import { tableChart } from "../grid/table-chart";

/** What a cell shows; empty for one that shows nothing. */
export type ShownText = (row: number, column: number) => string;

/** A curve with the width that it has, in pixels. */
export interface PrintedPicture {
  readonly chart: BandChart | undefined;
  readonly width: number;
}

/** A cell as it is printed. */
export interface PrintedCell {
  readonly text: string;
  readonly style: CellStyle;
  /** Columns and rows that it covers. */
  readonly across: number;
  readonly down: number;
  /** Text may run over the empty cells beside it. */
  readonly runsOver: boolean;
  /** What is drawn in the place of the text. */
  readonly picture?: PrintedPicture;
}

export interface PrintedRow {
  readonly row: number;
  /** Pixels at least. */
  readonly height: number;
  readonly cells: readonly PrintedCell[];
}

/** What stands on a stretch of paper that begins on a page of its own. */
export interface PrintedPage {
  readonly rows: readonly PrintedRow[];
}

export interface PrintedSheet {
  /** Pixels, of the columns that are printed. */
  readonly widths: readonly number[];
  /** Rows that stand again on every page. */
  readonly head: readonly PrintedRow[];
  readonly pages: readonly PrintedPage[];
}

const USUAL_WIDTH = 64;
const USUAL_HEIGHT = 19;
/** Pixels that the title of a picture takes of its place. */
const TITLE_ROOM = 20;

/** Lays one sheet out for paper. */
class Layout {
  private readonly styles = new Map<string, CellStyle>();
  readonly columns: readonly number[];

  constructor(
    private readonly sheet: SheetData,
    private readonly shown: ShownText,
    columns: readonly number[] | undefined,
  ) {
    for (const { row, column, style } of sheet.cells)
      if (style !== undefined) this.styles.set(`${row} ${column}`, style);
    const all = this.range(this.lastColumn + 1).filter((at) => sheet.columns.get(at)?.isHidden !== true);
    this.columns = columns === undefined ? all : all.filter((at) => columns.includes(at));
  }

  private range = (count: number) => Array.from({ length: count }, (_, at) => at);

  /** Cells that only have a style behind the last text are not printed. */
  private get lastColumn(): number {
    const { print, cells } = this.sheet;
    if (print?.printed !== undefined) return print.printed.columns - 1;
    if (print?.area !== undefined) return print.area.lastColumn;
    const filled = cells.filter(({ content }) => content !== undefined);
    return filled.reduce((most, { column }) => Math.max(most, column), 0);
  }

  get lastRow(): number {
    return this.sheet.cells.reduce(
      (most, { row, content }) => (content === undefined ? most : Math.max(most, row)),
      0,
    );
  }

  row(row: number): PrintedRow[] {
    const band = this.sheet.rows.get(row);
    if (band?.isHidden) return [];
    const cells = this.columns.flatMap((column, at) => this.cell(row, column, at));
    return [{ row, height: band?.size ?? USUAL_HEIGHT, cells }];
  }

  private cell(row: number, column: number, at: number): PrintedCell[] {
    const merged = this.sheet.merged.find((area) => holds(area, row, column));
    if (merged !== undefined && (merged.row !== row || merged.column !== column)) return [];
    const text = this.shown(row, column);
    const next = this.columns[at + 1];
    return [
      {
        text,
        style: this.styleAt(row, column, text),
        across: merged === undefined ? 1 : this.across(merged),
        down: merged === undefined ? 1 : merged.lastRow - merged.row + 1,
        runsOver: next === undefined || this.shown(row, next) === "",
        ...(isPicture(text) && { picture: this.picture(text, pictureAt(this.sheet, { row, column })) }),
      },
    ];
  }

  /** How many of the columns that are printed a merged cell covers. */
  private across({ column, lastColumn }: Rectangle): number {
    return this.columns.filter((at) => at >= column && at <= lastColumn).length;
  }

  private picture(words: string, place: Rectangle): PrintedPicture {
    const { rows, columns } = this.sheet;
    const sum = (from: number, to: number, size: (at: number) => number) =>
      this.range(to - from + 1).reduce((all, at) => all + size(from + at), 0);
    const width = sum(place.column, place.lastColumn, (at) => columns.get(at)?.size ?? USUAL_WIDTH);
    const height = sum(place.row, place.lastRow, (at) => rows.get(at)?.size ?? USUAL_HEIGHT);
    const curve = curveAskedFor(words, place, this.shown);
    return { chart: curve && tableChart(curve, this.shown, height - TITLE_ROOM), width };
  }

  /** A word that takes a colour takes it on paper too. */
  private styleAt(row: number, column: number, text: string): CellStyle {
    const own = this.styles.get(`${row} ${column}`) ?? {};
    const color = this.sheet.colors.find(
      ({ areas, word }) => text.includes(word) && areas.some((area) => holds(area, row, column)),
    );
    return color === undefined ? own : { ...own, fill: color.fill };
  }
}

const hasText = ({ cells }: PrintedRow) => cells.some(({ text }) => text !== "");

/** Rows at the end that show nothing are left off, as are pages of a paper without a subject. */
function pageRows(sheet: SheetData, layout: Layout, shown: ShownText): PrintedPage[] {
  const isPaper = sheet.print?.isPaper === true && (sheet.print.breaksAfter?.length ?? 0) > 0;
  const repeated = sheet.print?.repeatedRows?.[1] ?? -1;
  return pagesOf(sheet).flatMap(({ first, last }, at): PrintedPage[] => {
    const subject = subjectPlace(first);
    if (isPaper && at > 0 && shown(subject.row, subject.column) === "") return [];
    const from = at === 0 ? Math.max(first, sheet.print?.repeatedRows?.[0] ?? 0) : first;
    const rows = Array.from({ length: last - from + 1 }, (_, place) => from + place)
      .filter((row) => row > repeated || row < (sheet.print?.repeatedRows?.[0] ?? 0))
      .flatMap((row) => layout.row(row));
    const end = rows.map(hasText).lastIndexOf(true);
    return end < 0 ? [] : [{ rows: rows.slice(0, end + 1) }];
  });
}

/** A sheet as it goes to paper, in as many parts as stand beside each other. @param shown - What its cells show. */
export function printedParts(sheet: SheetData, shown: ShownText): PrintedSheet[] {
  const parts = columnsByPage(sheet);
  return parts.length === 1
    ? [printedSheet(sheet, shown)]
    : parts.map((columns) => printedSheet(sheet, shown, columns));
}

/** A sheet as it goes to paper. @param columns - Those that stand on its pages; all of them unless given. */
export function printedSheet(sheet: SheetData, shown: ShownText, columns?: readonly number[]): PrintedSheet {
  const layout = new Layout(sheet, shown, columns);
  const [first, last] = sheet.print?.repeatedRows ?? [0, -1];
  const head = Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => first + at);
  return {
    widths: layout.columns.map((column) => sheet.columns.get(column)?.size ?? USUAL_WIDTH),
    head: head.flatMap((row) => layout.row(row)),
    pages: pageRows(sheet, layout, shown),
  };
}
