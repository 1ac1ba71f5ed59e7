import { axis } from "./axis";
import type { BandPoint } from "./band-chart";
import { smoothArea, smoothPath } from "./smooth";
import { type Shape, type Size, shape } from "./svg";

/** Room for the line's width and for the dot. */
const ROOM = 4;

/** A curve with its band and one dot on it, without axes: small enough for a cell. */
export function smallCurve(
  points: readonly BandPoint[],
  at: number | undefined,
  { width, height }: Size,
): Shape {
  const [xs, ys] = [points.map(({ x }) => x), points.flatMap(({ low, high }) => [low, high])];
  const x = axis([Math.min(...xs), Math.max(...xs)], [ROOM, width - ROOM]);
  const y = axis([Math.min(...ys), Math.max(...ys)], [height - ROOM, ROOM]);
  const line = (of: (point: BandPoint) => number) =>
    points.map((point) => [x.pixels(point.x), y.pixels(of(point))] as const);
  const likely = line((point) => point.likely);
  const dot = at === undefined ? undefined : onLine(points, at);
  return shape(
    "g",
    {},
    shape("path", {
      d: smoothArea(
        line((point) => point.high),
        line((point) => point.low),
      ),
      class: "band",
    }),
    shape("path", { d: smoothPath(likely), class: "likely" }),
    ...(dot === undefined || at === undefined
      ? []
      : [shape("circle", { cx: x.pixels(at), cy: y.pixels(dot), r: 3, class: "own" })]),
  );
}

/** The likely figure at an x between two points, on the straight line between them; nothing outside. */
function onLine(points: readonly BandPoint[], at: number): number | undefined {
  const after = points.findIndex(({ x }) => x >= at);
  const [from, to] = [points[after - 1], points[after]];
  if (to === undefined) return undefined;
  if (from === undefined) return to.x === at ? to.likely : undefined;
  return from.likely + ((at - from.x) / (to.x - from.x)) * (to.likely - from.likely);
}
