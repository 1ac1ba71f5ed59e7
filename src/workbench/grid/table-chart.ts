import type { BandChart, BandPoint, WantedStretch } from "../../taskpane/charts/band-chart";
import { temperatureReading } from "../../taskpane/parts/reading";
import { type CurvePoint, curvePoints, type TableCurve } from "../../workbook/model/table-curves";

/** What a cell of the sheet shows. */
type TextAt = (row: number, column: number) => string;

/** A line without ends of its own is as wide as itself. */
function bandPoints(points: readonly CurvePoint[]): BandPoint[] {
  return points.flatMap(({ x, likely, low = likely, high = likely }) =>
    likely === undefined || low === undefined || high === undefined ? [] : [{ x, low, likely, high }],
  );
}

const firstOf = (points: readonly CurvePoint[], line: "range low" | "range high" | "aim") =>
  points.find((point) => point[line] !== undefined)?.[line];

function wantedStretch(points: readonly CurvePoint[]): WantedStretch | undefined {
  const [low, high, aim] = [
    firstOf(points, "range low"),
    firstOf(points, "range high"),
    firstOf(points, "aim"),
  ];
  const range = low === undefined || high === undefined ? "" : `range ${low} to ${high}`;
  const aimed = aim === undefined ? "" : `aim ${aim}`;
  const name = [range, aimed].filter((part) => part !== "").join(", ");
  return name === "" ? undefined : { low, high, aim, name };
}

/**
 * The chart of a table of the sheet, with the range asked for, the aim and the temper ordered; nothing where it has no
 * two points.
 *
 * @param height - Pixels of the place that it has.
 */
export function tableChart(curve: TableCurve, text: TextAt, height: number): BandChart | undefined {
  const rows = curvePoints(curve, text);
  const points = bandPoints(rows);
  if (points.length < 2) return undefined;
  const ordered = rows.find((point) => point.ordered !== undefined)?.x;
  const title = curve.title === undefined ? "" : text(curve.title.row, curve.title.column);
  return {
    title,
    description: "",
    points,
    xName: curve.x.name,
    yName: "HRC",
    wanted: wantedStretch(rows),
    here: ordered === undefined ? undefined : { at: ordered, text: `ordered ${temperatureReading(ordered)}` },
    height,
  };
}
