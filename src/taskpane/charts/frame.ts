import { type Axis, axis, rounded } from "./axis";
import { label, type Shape, shape } from "./svg";

export interface AxisMark {
  readonly at: number;
  readonly text: string;
}

/** A reading of the x axis with round marks of its own, such as °F. */
export interface XScale {
  readonly name: string;
  readonly of: (x: number) => number;
  readonly back: (figure: number) => number;
}

/** A stretch of the x axis that shows a colour of its own. */
export interface ColourStretch {
  readonly from: number;
  readonly to: number;
  readonly name: string;
}

/** What the frame of a chart is made of. */
export interface FrameOf {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  readonly xName: string;
  readonly yName: string;
  /** Readings of the x axis, one below the other; its own figures without a name where left out. */
  readonly xScales?: readonly XScale[] | undefined;
  /** Marks of the y axis where round values of y are not what is read there. */
  readonly yMarks?: readonly AxisMark[] | undefined;
  /** A second reading of y, named and marked on the right. */
  readonly yAlso?: string | undefined;
  /** Colours along the x axis. */
  readonly colours?: readonly ColourStretch[] | undefined;
  /** Names that stand right of the plot, at the ends of its lines. */
  readonly endNames?: readonly string[] | undefined;
  /** Pixels of the whole picture, where its place says so. */
  readonly height?: number | undefined;
}

export interface Frame {
  readonly x: Axis;
  readonly y: Axis;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  /** Of the picture. */
  readonly height: number;
}

/** Room on both sides of a plot, so that drawings of the same x can stand exactly below it. */
export const PLOT_SIDE = 38;
export const TOP = 22;
export const LINE = 14;
/** About the width of a letter of a name at the end of a line, pixels. */
const LETTER = 7;
const SHORTEST = 140;
const TALLEST = 230;
/** Height of a plot as a share of its width, between those. */
const SHAPE = 0.45;
/** Narrower than this, marks of two readings would run into one another. */
const PIXELS_A_MARK = 52;
const Y_MARKS = 6;
/** Height of the stretches of colour, and of the row that they stand in. */
const STRIP = 9;

const PLAIN: readonly XScale[] = [{ name: "", of: (x) => x, back: (figure) => figure }];

const span = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];

/** Where x and y of a chart lie in a picture of a width in pixels. */
export function frameFor(
  { xs, ys, xScales = PLAIN, colours = [], endNames = [], height }: FrameOf,
  width: number,
): Frame {
  const names = Math.max(0, ...endNames.map((name) => name.length)) * LETTER;
  const [left, right] = [PLOT_SIDE, width - Math.max(PLOT_SIDE, names + 8)];
  const below = (xScales.length + 1 + (colours.length === 0 ? 0 : 1)) * LINE + 10;
  const shape = TOP + Math.round(Math.min(TALLEST, Math.max(SHORTEST, SHAPE * width)));
  const bottom = height === undefined ? shape : Math.max(TOP + LINE, height - below);
  return {
    left,
    right,
    bottom,
    height: bottom + below,
    x: axis(span(xs), [left, right]),
    y: axis(rounded(span(ys), Y_MARKS), [bottom, TOP]),
  };
}

export function yAxis({ y, left, right }: Frame, { yMarks, yName, yAlso }: FrameOf): Shape[] {
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

/** Colours side by side below the plot; the first and the last are named, the others lie between in their order. */
function colourStrip({ x, left, right, bottom }: Frame, colours: readonly ColourStretch[]): Shape[] {
  const seen = colours
    .map((stretch) => ({ ...stretch, from: Math.max(x.from, stretch.from), to: Math.min(x.to, stretch.to) }))
    .filter(({ from, to }) => to > from);
  const [first, last] = [seen[0], seen.at(-1)];
  if (first === undefined || last === undefined) return [];
  const y = bottom + 3;
  return [
    ...seen.map(({ from, to, name }) =>
      shape(
        "rect",
        {
          x: x.pixels(from),
          y,
          width: x.pixels(to) - x.pixels(from),
          height: STRIP,
          class: `colour ${name.replaceAll(" ", "-")}`,
        },
        shape("title", {}, name),
      ),
    ),
    label(Math.max(left, x.pixels(first.from)) - 4, y + STRIP, "end", first.name),
    label(Math.min(right, x.pixels(last.to)) + 4, y + STRIP, "start", last.name),
  ];
}

function scaleRow({ x, left, right }: Frame, { name, of, back }: XScale, y: number): Shape[] {
  const own = axis([of(x.from), of(x.to)], [left, right]);
  const count = Math.max(2, Math.floor((right - left) / PIXELS_A_MARK));
  return [
    ...(name === "" ? [] : [label(2, y + LINE - 2, "start", name)]),
    ...own.marks(count).flatMap((figure) => {
      const at = x.pixels(back(figure));
      return [
        shape("line", { x1: at, x2: at, y1: y, y2: y + 3, class: "axis" }),
        label(at, y + LINE - 1, "middle", String(figure)),
      ];
    }),
  ];
}

/** The x axis: its colours, its readings each with round marks of its own, its name. */
export function xAxis(frame: Frame, { xName, xScales = PLAIN, colours = [] }: FrameOf): Shape[] {
  const { left, right, bottom } = frame;
  const first = bottom + (colours.length === 0 ? 0 : LINE);
  return [
    shape("line", { x1: left, x2: right, y1: bottom, y2: bottom, class: "axis" }),
    ...colourStrip(frame, colours),
    ...xScales.flatMap((scale, row) => scaleRow(frame, scale, first + row * LINE + (row === 0 ? 0 : 2))),
    label((left + right) / 2, first + (xScales.length + 1) * LINE + 4, "middle", xName),
  ];
}
