import { type BandChart, bandChart, framed } from "./band-chart";
import { figure, type Reader } from "./figure";
import { frameFor, TOP } from "./frame";
import { type Shape, shape } from "./svg";

/** Words for a point of a line that is read. */
export interface ReadingWords {
  /** What is read, for those who do not see it: "Tempering curve". */
  readonly name: string;
  /** The point begun at. */
  readonly start: number;
  /** Where the point lies: "200 °C (392 °F)". */
  readonly place: (at: number) => string;
  /** What is read there. */
  readonly told: (at: number) => string;
}

const NEAR = 1e-6;

/** The figures of every line at an x that it has a point for. */
function heightsAt({ points, beside }: BandChart, x: number): number[] {
  const lines = beside?.lines ?? [];
  const own = points.filter((point) => Math.abs(point.x - x) < NEAR).map(({ likely }) => likely);
  const others = lines.flatMap((line) =>
    line.points.filter((point) => Math.abs(point.x - x) < NEAR).map(({ y }) => y),
  );
  return [...own, ...others];
}

function marks(chart: BandChart, width: number, at: number): Shape[] {
  const { x, y, bottom } = frameFor(framed(chart), width);
  const point = chart.points[at];
  if (point === undefined) return [];
  const place = x.pixels(point.x);
  return [
    shape("line", { x1: place, x2: place, y1: TOP, y2: bottom, class: "reading" }),
    ...heightsAt(chart, point.x).map((height) =>
      shape("circle", { cx: place, cy: y.pixels(height), r: 4, class: "reading" }),
    ),
  ];
}

function nearest(chart: BandChart, width: number, pixels: number): number {
  const { x } = frameFor(framed(chart), width);
  const away = chart.points.map((point) => Math.abs(x.pixels(point.x) - pixels));
  return away.indexOf(Math.min(...away));
}

/** A chart whose line is read point by point, under the pointer or by keyboard: only figures that were worked out. */
export function readChart(chart: BandChart, caption: string, words: ReadingWords): HTMLElement {
  const reader: Reader = {
    ...words,
    count: chart.points.length,
    marks: (width, at) => marks(chart, width, at),
    nearest: (width, pixels) => nearest(chart, width, pixels),
  };
  return figure((width) => bandChart(chart, width), caption, reader);
}
