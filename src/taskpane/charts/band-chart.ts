import {
  type AxisMark,
  type ColourStretch,
  type Frame,
  type FrameOf,
  frameFor,
  LINE,
  TOP,
  type XScale,
  xAxis,
  yAxis,
} from "./frame";
import { smoothArea, smoothPath } from "./smooth";
import { hatching, label, labelBeside, type PictureText, picture, type Shape, shape } from "./svg";

export interface BandPoint {
  readonly x: number;
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

export interface Dot {
  readonly x: number;
  readonly y: number;
}

/** A stretch of x to be wary of. */
export interface WaryStretch {
  readonly from: number;
  readonly to: number;
  readonly name: string;
}

/** A stretch of y that is wanted, with the figure aimed at in it. */
export interface WantedStretch {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  readonly aim?: number | undefined;
  readonly name: string;
}

/** Another line on the same axes, its name at its end. */
export interface NamedLine {
  readonly name: string;
  readonly points: readonly Dot[];
}

export interface BandChart extends PictureText {
  readonly points: readonly BandPoint[];
  /** Ends of the x axis; those of the lines where left out. */
  readonly xSpan?: readonly [from: number, to: number];
  readonly xName: string;
  readonly yName: string;
  readonly xScales?: readonly XScale[] | undefined;
  readonly yMarks?: readonly AxisMark[] | undefined;
  readonly yAlso?: string | undefined;
  /** Pixels of the whole picture, where its place says so. */
  readonly height?: number | undefined;
  readonly colours?: readonly ColourStretch[] | undefined;
  readonly wary?: readonly WaryStretch[];
  readonly wanted?: WantedStretch | undefined;
  /** Lines beside the first, which then carries this name at its end. */
  readonly beside?: { readonly name: string; readonly lines: readonly NamedLine[] } | undefined;
  /** Single published figures. */
  readonly dots?: readonly Dot[];
  /** Readings of one's own. */
  readonly own?: readonly Dot[];
  /** The x that the smith typed. */
  readonly here?: AxisMark | undefined;
}

/** What of a chart its axes depend on. */
export function framed(chart: BandChart): FrameOf {
  const { points, dots = [], own = [], xSpan, wanted, beside } = chart;
  const lines = beside?.lines.flatMap((line) => line.points) ?? [];
  const stretch = [wanted?.low, wanted?.high, wanted?.aim].filter((y) => y !== undefined);
  return {
    ...chart,
    xs: xSpan ?? [...points, ...lines].map(({ x }) => x),
    ys: [
      ...points.flatMap(({ low, high }) => [low, high]),
      ...[...dots, ...own, ...lines].map(({ y }) => y),
      ...stretch,
    ],
    endNames: beside === undefined ? [] : [beside.name, ...beside.lines.map(({ name }) => name)],
  };
}

function waryParts({ x, left, right, bottom }: Frame, wary: readonly WaryStretch[]): Shape[] {
  const seen = wary
    .map((stretch) => ({ ...stretch, from: Math.max(x.from, stretch.from), to: Math.min(x.to, stretch.to) }))
    .filter(({ from, to }) => to > from);
  return seen.flatMap(({ from, to, name }, at) => {
    const { pattern, fill } = hatching("wary");
    const box = { x: x.pixels(from), y: TOP, width: x.pixels(to) - x.pixels(from), height: bottom - TOP };
    return [
      pattern,
      shape("rect", { ...box, fill, class: "wary" }),
      labelBeside(x.pixels(from), bottom - 6 - at * LINE, name, [left, right]),
    ];
  });
}

function hereParts({ x, left, right, bottom }: Frame, here: AxisMark | undefined): Shape[] {
  if (here === undefined) return [];
  const at = x.pixels(here.at);
  if (at < left || at > right) return [];
  return [
    shape("line", { x1: at, x2: at, y1: TOP, y2: bottom, class: "here" }),
    labelBeside(at, TOP + 12, here.text, [left, right]),
  ];
}

/** The wanted stretch from side to side, its name at the right end, where a falling line has left it. */
function wantedParts({ y, left, right }: Frame, wanted: WantedStretch | undefined): Shape[] {
  if (wanted === undefined) return [];
  const { low, high, aim, name } = wanted;
  const top = y.pixels(high ?? aim ?? y.to);
  const stripe =
    low === undefined || high === undefined
      ? []
      : [
          shape("rect", {
            x: left,
            y: top,
            width: right - left,
            height: y.pixels(low) - top,
            class: "wanted",
          }),
        ];
  const at = aim === undefined ? undefined : y.pixels(aim);
  return [
    ...stripe,
    ...(at === undefined ? [] : [shape("line", { x1: left, x2: right, y1: at, y2: at, class: "aim" })]),
    label(right - 3, Math.max(TOP + 10, top - 3), "end", name),
  ];
}

const placed = ({ x, y }: Frame, points: readonly Dot[]) =>
  points.map((at) => [x.pixels(at.x), y.pixels(at.y)] as const);

function bandPath(frame: Frame, points: readonly BandPoint[]): Shape {
  const upper = placed(
    frame,
    points.map(({ x, high }) => ({ x, y: high })),
  );
  const lower = placed(
    frame,
    points.map(({ x, low }) => ({ x, y: low })),
  );
  return shape("path", { d: smoothArea(upper, lower), class: "band" });
}

const likelyLine = (points: readonly BandPoint[]) => points.map(({ x, likely }) => ({ x, y: likely }));

const linePath = (frame: Frame, points: readonly Dot[], kind: string) =>
  shape("path", { d: smoothPath(placed(frame, points)), class: kind });

/** Heights for names at the ends of lines, a row apart from one another, in the order of the lines' ends. */
function nameHeights(ends: readonly number[], [top, bottom]: readonly [number, number]): number[] {
  const order = ends.map((_, at) => at).sort((one, other) => (ends[one] ?? 0) - (ends[other] ?? 0));
  const heights = [...ends];
  let free = top;
  for (const at of order) {
    heights[at] = Math.max(free, ends[at] ?? 0);
    free = (heights[at] ?? 0) + LINE;
  }
  let most = bottom;
  for (const at of order.reverse()) {
    heights[at] = Math.min(most, heights[at] ?? 0);
    most = (heights[at] ?? 0) - LINE;
  }
  return heights;
}

/** Lines beside the first, each with a dash of its own, and the names of all at their ends. */
function besideParts(frame: Frame, { points, beside }: BandChart): Shape[] {
  if (beside === undefined) return [];
  const { x, y, bottom } = frame;
  const all = [{ name: beside.name, points: likelyLine(points) }, ...beside.lines];
  const ends = all.map((line) => line.points.at(-1) ?? { x: x.to, y: y.from });
  const heights = nameHeights(
    ends.map((end) => y.pixels(end.y) + 4),
    [TOP + 4, bottom],
  );
  return [
    ...beside.lines.map((line, at) => linePath(frame, line.points, `beside dash-${at + 1}`)),
    ...all.map(({ name }, at) =>
      label(x.pixels(ends[at]?.x ?? x.to) + 5, heights[at] ?? bottom, "start", name),
    ),
  ];
}

const dotParts = (frame: Frame, dots: readonly Dot[], kind: string) =>
  placed(frame, dots).map(([cx, cy]) => shape("circle", { cx, cy, r: 3, class: kind }));

/** A line with its band, axes named and marked. The caller puts a table of the same figures beside it. */
export function bandChart(chart: BandChart, width: number): Shape {
  const { points, wary = [], dots = [], own = [], here } = chart;
  const of = framed(chart);
  const frame = frameFor(of, width);
  return picture(
    chart,
    { width, height: frame.height },
    bandPath(frame, points),
    ...yAxis(frame, of),
    ...xAxis(frame, of),
    ...wantedParts(frame, chart.wanted),
    linePath(frame, likelyLine(points), "likely"),
    ...waryParts(frame, wary),
    ...besideParts(frame, chart),
    ...dotParts(frame, dots, "dot"),
    ...dotParts(frame, own, "own"),
    ...hereParts(frame, here),
  );
}
