import { hatching, label, labelBeside, type PictureText, picture, type Shape, shape } from "./svg";

/** Points of a closed outline, mm: along the picture and across it, downwards. */
export type Path = readonly (readonly [along: number, across: number])[];

/** A place along the outline, mm, with its words. */
export interface Place {
  readonly at: number;
  readonly name: string;
  /** Dashed: a limit rather than the place itself. */
  readonly isLimit?: boolean;
}

/** A point of the drawing, mm, with lines of words beside it. */
export interface Spot {
  readonly at: readonly [along: number, across: number];
  readonly words: readonly string[];
}

export interface ScaleDrawing extends PictureText {
  readonly outline: Path;
  /** The same thing before, dashed. */
  readonly before?: Path;
  readonly spots?: readonly Spot[];
  /** Most pixels across; 200 where left out. */
  readonly tallest?: number;
  /** A part of it to be hatched. */
  readonly hatched?: Path | undefined;
  readonly places?: readonly Place[];
  /** Room left and right of the outline in pixels. */
  readonly side?: number;
}

const TALLEST = 200;
const TOP = 8;
const LINE = 15;

interface Bounds {
  readonly from: number;
  readonly size: number;
}

function bounds(values: readonly number[]): Bounds {
  const from = Math.min(...values);
  return { from, size: Math.max(...values) - from };
}

/** A round length for a scale bar: up to a third of the picture. */
function barLength(along: number): number {
  const third = along / 3;
  const power = 10 ** Math.floor(Math.log10(third));
  return [5, 2, 1].map((step) => step * power).find((length) => length <= third) ?? power;
}

/** From mm to pixels, the same scale both ways. */
interface Scale {
  readonly pixelsAMm: number;
  readonly x: (mm: number) => number;
  readonly y: (mm: number) => number;
  readonly bottom: number;
}

function scaleFor(
  { outline, before = [], places = [], side = 8, tallest = TALLEST }: ScaleDrawing,
  width: number,
): Scale & { along: Bounds } {
  const corners = [...outline, ...before];
  const along = bounds([...corners.map(([x]) => x), ...places.map(({ at }) => at)]);
  const across = bounds(corners.map(([, y]) => y));
  const pixelsAMm = Math.min((width - 2 * side) / along.size, tallest / across.size);
  return {
    along,
    pixelsAMm,
    x: (mm) => side + (mm - along.from) * pixelsAMm,
    y: (mm) => TOP + (mm - across.from) * pixelsAMm,
    bottom: TOP + across.size * pixelsAMm,
  };
}

const drawn = (path: Path, { x, y }: Scale) =>
  path.map(([along, across]) => `${x(along).toFixed(2)},${y(across).toFixed(2)}`).join(" ");

function hatchedPart(path: Path | undefined, scale: Scale): Shape[] {
  if (path === undefined) return [];
  const { pattern, fill } = hatching("hard");
  return [pattern, shape("polygon", { points: drawn(path, scale), fill, class: "hard" })];
}

/** One place a line of words, from right to left, so that no line runs through words that stand right of theirs. */
function placeMarks(places: readonly Place[], scale: Scale, width: number): Shape[] {
  const ordered = [...places].sort((one, other) => other.at - one.at);
  const rows = ordered.map((place, index) => ({
    ...place,
    x: scale.x(place.at),
    y: scale.bottom + LINE * (index + 1),
  }));
  return [
    ...rows.map(({ x, y, isLimit = false }) =>
      shape("line", { x1: x, x2: x, y1: 1, y2: y, class: isLimit ? "limit" : "place" }),
    ),
    ...rows.map(({ x, y, name }) => labelBeside(x, y, name, [0, width])),
  ];
}

/** Dots with their words, the first line beside the dot. */
function spotMarks(spots: readonly Spot[], scale: Scale, width: number): Shape[] {
  return spots.flatMap(({ at: [along, across], words }) => {
    const [x, y] = [scale.x(along), scale.y(across)];
    const lines = words.map((text, line) => labelBeside(x + 2, y + LINE * line + 5, text, [0, width]));
    return [shape("circle", { cx: x, cy: y, r: 4, class: "dot" }), ...lines];
  });
}

function scaleBar({ x, pixelsAMm }: Scale, { from, size }: Bounds, top: number): Shape[] {
  const bar = barLength(size);
  const [left, right] = [x(from), x(from) + bar * pixelsAMm];
  return [
    shape("path", {
      d: `M${left},${top - 4}V${top + 4}M${left},${top}H${right}M${right},${top - 4}V${top + 4}`,
      class: "axis",
    }),
    label(right + 6, top + 4, "start", `${bar} mm`),
  ];
}

/** An outline drawn to scale, the same scale both ways, with a bar that says how long it is. */
export function scaleDrawing(drawing: ScaleDrawing, width: number): Shape {
  const { outline, before, hatched, places = [], spots = [] } = drawing;
  const scale = scaleFor(drawing, width);
  const barTop = scale.bottom + LINE * places.length + 16;
  return picture(
    drawing,
    { width, height: Math.ceil(barTop + 10) },
    ...(before === undefined ? [] : [shape("polygon", { points: drawn(before, scale), class: "before" })]),
    shape("polygon", { points: drawn(outline, scale), class: "metal" }),
    ...hatchedPart(hatched, scale),
    ...placeMarks(places, scale, width),
    ...spotMarks(spots, scale, width),
    ...scaleBar(scale, scale.along, barTop),
  );
}
