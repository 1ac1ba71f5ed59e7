import {
  type ICellCustomRender,
  type Injector,
  InterceptorEffectEnum,
  LifecycleService,
  type Nullable,
  type Worksheet,
} from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { readRectangle } from "../../formula/addresses";
import { type BandPoint, bandChart } from "../../taskpane/charts/band-chart";
import { smallCurve } from "../../taskpane/charts/small-curve";
import { ask, cellText } from "../../taskpane/parts/ask";
import { LINE_HEADINGS } from "../../taskpane/parts/selected-line";
import { FIRST_ROW, HEADINGS } from "../../workbook/sheets/parts/table-sheet";
import { inks, paintShape } from "./paint-shape";

/** Words that stand in a cell whose place is taken by the picture of a table: they say so where no picture is drawn. */
const PICTURED = /^Curve of (\$?[A-Z]+\$?\d+:\$?[A-Z]+\$?\d+)$/;

/** Those words for a table, its headings included. */
export const picturedWords = (table: string) => `Curve of ${table}`;

/** Room that a picture takes, in cells of the usual size. */
export const PICTURE = { rows: 12, columns: 5 } as const;

const LINES = "Lines";
/** Left for the figure of the cell, above the curve. */
const FIGURE_PIXELS = 20;
/** Flatter than this, a curve says nothing. */
const LEAST_PIXELS = 14;

const text = (sheet: Worksheet, row: number, column: number) =>
  String(sheet.getCellRaw(row, column)?.v ?? "").trim();

interface Columns {
  readonly steel: number;
  readonly temper: number;
}

/** Where the steel and the temper of a line stand, by the headings; looked up anew where one has moved. */
class LineColumns {
  private readonly known = new WeakMap<Worksheet, Columns>();

  of(sheet: Worksheet): Columns {
    const found = this.known.get(sheet);
    const isThere = (column: number, name: string) => text(sheet, HEADINGS, column) === name;
    if (
      found !== undefined &&
      isThere(found.steel, LINE_HEADINGS.steel) &&
      isThere(found.temper, LINE_HEADINGS.temper)
    )
      return found;
    const headings = Array.from({ length: sheet.getColumnCount() }, (_, column) =>
      text(sheet, HEADINGS, column),
    );
    const made = {
      steel: headings.indexOf(LINE_HEADINGS.steel),
      temper: headings.indexOf(LINE_HEADINGS.temper),
    };
    this.known.set(sheet, made);
    return made;
  }
}

const curves = new Map<string, readonly BandPoint[]>();

function pointsOf(rows: readonly (readonly string[])[]): BandPoint[] {
  return rows.map((row) => {
    const [x = 0, low = 0, likely = 0, high = 0] = row.map(Number);
    return { x, low, likely, high };
  });
}

/** The tempering curve of a steel, worked out once; empty where it has none. */
function curveOf(steel: string): readonly BandPoint[] {
  const known = curves.get(steel);
  if (known !== undefined) return known;
  const { rows, refusal } = ask("TEMPER_CURVE", steel);
  const made = refusal === null ? pointsOf(rows.map((row) => row.map(cellText))) : [];
  curves.set(steel, made);
  return made;
}

/** The small curve at the foot of the cell of a line's temper, with a dot at that temper. */
function lineCurve(steel: string, temper: number): ICellCustomRender {
  return {
    drawWith(canvas, { primaryWithCoord: { startX, startY, endX, endY } }) {
      const size = { width: endX - startX - 2, height: endY - startY - FIGURE_PIXELS };
      if (size.height < LEAST_PIXELS) return;
      const points = curveOf(steel);
      if (points.length === 0) return;
      canvas.save();
      canvas.translate(startX + 1, startY + FIGURE_PIXELS);
      paintShape(canvas, smallCurve(points, temper, size));
      canvas.restore();
    },
  };
}

/** Points of a table whose headings name what is low, likely and high over its first column. */
function tablePoints(sheet: Worksheet, table: string): { points: BandPoint[]; xName: string } | undefined {
  const area = readRectangle(table);
  if (area === undefined) return undefined;
  const { row, column, lastRow, lastColumn } = area;
  const headings = Array.from({ length: lastColumn - column + 1 }, (_, at) => text(sheet, row, column + at));
  const places = ["low", "likely", "high"].map((name) =>
    headings.findIndex((heading) => heading.startsWith(name)),
  );
  if (places.includes(-1)) return undefined;
  const rows = Array.from({ length: lastRow - row }, (_, at) =>
    [0, ...places].map((place) => text(sheet, row + 1 + at, column + place)),
  );
  const filled = rows.filter((cells) => cells.every((cell) => cell !== "" && Number.isFinite(Number(cell))));
  return filled.length < 2 ? undefined : { points: pointsOf(filled), xName: headings[0] ?? "" };
}

/** The picture of a table in the cell whose words name it; it follows the cells of the table. */
function tablePicture(table: string): ICellCustomRender {
  return {
    drawWith(canvas, { primaryWithCoord, worksheet }) {
      const { startX, startY, endX, endY } = primaryWithCoord.mergeInfo ?? primaryWithCoord;
      const found = tablePoints(worksheet, table);
      if (found === undefined) return;
      const chart = { title: "", description: "", points: found.points, xName: found.xName, yName: "HRC" };
      canvas.save();
      canvas.translate(startX + 1, startY + 1);
      canvas.fillStyle = inks().paper;
      canvas.fillRect(0, 0, endX - startX - 2, endY - startY - 2);
      paintShape(canvas, bandChart(chart, endX - startX - 2));
      canvas.restore();
    },
  };
}

/** Draws the curve of each line in its row, and the picture of a table where a cell asks for it. */
export function drawCurves(injector: Injector): void {
  let isDrawing = false;
  injector.get(LifecycleService).lifecycle$.subscribe(() => {
    if (isDrawing || !injector.has(SheetInterceptorService)) return;
    isDrawing = true;
    begin(injector.get(SheetInterceptorService));
  });
}

/** The picture that a cell asks for by its words. */
function pictureAskedFor(words: string): ICellCustomRender | undefined {
  const [, table] = words.startsWith("Curve of ") ? (PICTURED.exec(words) ?? []) : [];
  return table === undefined ? undefined : tablePicture(table);
}

/** The curve of the line in whose row the temper of a cell stands. */
function curveBeside(sheet: Worksheet, row: number, column: number, temper: number, columns: LineColumns) {
  if (row < FIRST_ROW || sheet.getName() !== LINES) return undefined;
  const places = columns.of(sheet);
  const grade = column === places.temper && places.steel >= 0 ? text(sheet, row, places.steel) : "";
  return grade === "" ? undefined : lineCurve(grade, temper);
}

function begin(service: SheetInterceptorService): void {
  const columns = new LineColumns();
  service.intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    effect: InterceptorEffectEnum.Style,
    handler: (cell, { row, col, worksheet, rawData }, next) => {
      const value = (rawData as Nullable<{ v?: unknown }>)?.v;
      let render: ICellCustomRender | undefined;
      if (typeof value === "string") render = pictureAskedFor(value);
      else if (typeof value === "number") render = curveBeside(worksheet, row, col, value, columns);
      if (render === undefined) return next(cell);
      return next({ ...cell, customRender: [...(cell?.customRender ?? []), render] });
    },
  });
}
