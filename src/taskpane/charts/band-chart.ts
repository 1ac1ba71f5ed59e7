import { type Axis, axis, rounded } from "./axis";
import { hatching, label, labelBeside, type PictureText, picture, type Shape, shape } from "./svg";

export interface BandPoint {
  readonly x: number;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export interface AxisMark {
  readonly at: number;
  readonly text: string;
}

/** A stretch of x to be wary of. */
export interface WaryStretch {
  readonly from: number;
  readonly to: number;
  readonly name: string;
}

export interface BandChart extends PictureText {
  readonly points: readonly BandPoint[];
  /** Ends of the x axis; those of the points where left out. */
  readonly xSpan?: readonly [from: number, to: number];
  readonly xName: string;
  readonly yName: string;
  /** A second reading of each mark of the x axis, such as °F. */
  readonly xAlso?: (x: number) => string;
  /** Marks of the y axis where round values of y are not what is read there. */
  readonly yMarks?: readonly AxisMark[] | undefined;
  /** A second reading of y, named and marked on the right. */
  readonly yAlso?: string | undefined;
  readonly wary?: readonly WaryStretch[];
  /** Single published figures. */
  readonly dots?: readonly { readonly x: number; readonly y: number }[];
  /** The x that the smith typed. */
  readonly here?: AxisMark | undefined;
}

/** Room on both sides of a plot, so that drawings of the same x can stand exactly below it. */
export const PLOT_SIDE = 38;
const TOP = 22;
const PLOT_HEIGHT = 140;
const BOTTOM = TOP + PLOT_HEIGHT;
const LINE = 14;
/** Narrower than this, marks of two readings would run into one another. */
const PIXELS_A_MARK = 52;
const Y_MARKS = 6;

interface Frame {
  readonly x: Axis;
  readonly y: Axis;
  readonly left: number;
  readonly right: number;
}

function frameFor({ points, dots = [], xSpan }: BandChart, width: number): Frame {
  const xs = xSpan ?? points.map(({ x }) => x);
  const ys = [...points.flatMap(({ low, high }) => [low, high]), ...dots.map(({ y }) => y)];
  const [left, right] = [PLOT_SIDE, width - PLOT_SIDE];
  return {
    left,
    right,
    x: axis([Math.min(...xs), Math.max(...xs)], [left, right]),
    y: axis(rounded([Math.min(...ys), Math.max(...ys)], Y_MARKS), [BOTTOM, TOP]),
  };
}

function yAxis({ y, left, right }: Frame, { yMarks, yName, yAlso }: BandChart): Shape[] {
  const round = y.marks(Y_MARKS).map((at) => ({ at, text: String(at) }));
  const marks = (yMarks ?? round).filter(({ at }) => at >= y.from && at <= y.to);
  const also = yAlso === undefined ? [] : round;
  return [
    label(left - 5, TOP - 10, "end", yName),
    ...(yAlso === undefined ? [] : [label(right + 5, TOP - 10, "start", yAlso)]),
    ...marks.flatMap(({ at, text }) => [
      shape("line", { x1: left, x2: right, y1: y.pixels(at), y2: y.pixels(at), class: "grid" }),
      label(left - 5, y.pixels(at) + 4, "end", text),
    ]),
    ...also.map(({ at, text }) => label(right + 5, y.pixels(at) + 4, "start", text)),
  ];
}

function xAxis({ x, left, right }: Frame, { xName, xAlso }: BandChart): Shape[] {
  const count = Math.max(2, Math.floor((right - left) / PIXELS_A_MARK));
  const nameAt = BOTTOM + (xAlso === undefined ? 2 : 3) * LINE + 4;
  return [
    shape("line", { x1: left, x2: right, y1: BOTTOM, y2: BOTTOM, class: "axis" }),
    ...x.marks(count).flatMap((value) => [
      shape("line", {
        x1: x.pixels(value),
        x2: x.pixels(value),
        y1: BOTTOM,
        y2: BOTTOM + 4,
        class: "axis",
      }),
      label(x.pixels(value), BOTTOM + LINE + 2, "middle", String(value)),
      ...(xAlso === undefined ? [] : [label(x.pixels(value), BOTTOM + 2 * LINE + 2, "middle", xAlso(value))]),
    ]),
    label((left + right) / 2, nameAt, "middle", xName),
  ];
}

function waryParts({ x, left, right }: Frame, wary: readonly WaryStretch[]): Shape[] {
  const seen = wary
    .map((stretch) => ({ ...stretch, from: Math.max(x.from, stretch.from), to: Math.min(x.to, stretch.to) }))
    .filter(({ from, to }) => to > from);
  return seen.flatMap(({ from, to, name }, at) => {
    const { pattern, fill } = hatching("wary");
    const box = { x: x.pixels(from), y: TOP, width: x.pixels(to) - x.pixels(from), height: PLOT_HEIGHT };
    return [
      pattern,
      shape("rect", { ...box, fill, class: "wary" }),
      labelBeside(x.pixels(from), BOTTOM - 6 - at * LINE, name, [left, right]),
    ];
  });
}

function hereParts({ x, left, right }: Frame, here: AxisMark | undefined): Shape[] {
  if (here === undefined) return [];
  const at = x.pixels(here.at);
  if (at < left || at > right) return [];
  return [
    shape("line", { x1: at, x2: at, y1: TOP, y2: BOTTOM, class: "here" }),
    labelBeside(at, TOP + 12, here.text, [left, right]),
  ];
}

/** Points joined by straight lines. */
function joined({ x, y }: Frame, points: readonly { readonly x: number; readonly y: number }[]): string {
  return `M${points.map((at) => `${x.pixels(at.x).toFixed(2)},${y.pixels(at.y).toFixed(2)}`).join("L")}`;
}

function bandPath(frame: Frame, points: readonly BandPoint[]): Shape {
  const along = points.map(({ x, high }) => ({ x, y: high }));
  const back = points.map(({ x, low }) => ({ x, y: low })).reverse();
  return shape("path", { d: `${joined(frame, [...along, ...back])}Z`, class: "band" });
}

function likelyPath(frame: Frame, points: readonly BandPoint[]): Shape {
  const likely = points.map((point) => ({ x: point.x, y: point.likely }));
  return shape("path", { d: joined(frame, likely), class: "likely" });
}

/** A line with its band, axes named and marked. The caller puts a table of the same figures beside it. */
export function bandChart(chart: BandChart, width: number): Shape {
  const { points, wary = [], dots = [], here } = chart;
  const frame = frameFor(chart, width);
  const height = BOTTOM + (chart.xAlso === undefined ? 2 : 3) * LINE + 10;
  return picture(
    chart,
    { width, height },
    bandPath(frame, points),
    ...yAxis(frame, chart),
    ...xAxis(frame, chart),
    likelyPath(frame, points),
    ...waryParts(frame, wary),
    ...dots.map((dot) =>
      shape("circle", { cx: frame.x.pixels(dot.x), cy: frame.y.pixels(dot.y), r: 3, class: "dot" }),
    ),
    ...hereParts(frame, here),
  );
}
