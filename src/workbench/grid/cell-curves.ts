import {
  type ICellCustomRender,
  type Injector,
  InterceptorEffectEnum,
  LifecycleService,
  type Nullable,
  type Worksheet,
} from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { type BandPoint, bandChart } from "../../taskpane/charts/band-chart";
import { smallCurve } from "../../taskpane/charts/small-curve";
import { ask, cellText } from "../../taskpane/parts/ask";
import { LINE_HEADINGS } from "../../taskpane/parts/selected-line";
import { curveAskedFor, isPicture, PICTURE } from "../../workbook/model/table-curves";
import { FIRST_ROW, HEADINGS } from "../../workbook/sheets/parts/table-sheet";
import { inks, paintShape } from "./paint-shape";
import { tableChart } from "./table-chart";

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

/** The picture of a table in the cell whose words name it; it follows the cells of the table. */
function tablePicture(words: string): ICellCustomRender {
  return {
    drawWith(canvas, { row, col, primaryWithCoord, worksheet }) {
      const { startX, startY, endX, endY } = primaryWithCoord.mergeInfo ?? primaryWithCoord;
      const shown = (atRow: number, atColumn: number) => text(worksheet, atRow, atColumn);
      const { endRow, endColumn } = worksheet.getMergedCell(row, col) ?? {
        endRow: row + PICTURE.rows - 1,
        endColumn: col + PICTURE.columns - 1,
      };
      const place = { row, column: col, lastRow: endRow, lastColumn: endColumn };
      const curve = curveAskedFor(words, place, shown);
      const [width, height] = [endX - startX - 2, endY - startY - 2];
      const chart = curve && tableChart(curve, shown, height);
      canvas.save();
      canvas.translate(startX + 1, startY + 1);
      canvas.fillStyle = inks().paper;
      canvas.fillRect(0, 0, width, height);
      if (chart !== undefined) paintShape(canvas, bandChart(chart, width));
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
      if (typeof value === "string") render = isPicture(value) ? tablePicture(value) : undefined;
      else if (typeof value === "number") render = curveBeside(worksheet, row, col, value, columns);
      if (render === undefined) return next(cell);
      return next({ ...cell, customRender: [...(cell?.customRender ?? []), render] });
    },
  });
}
