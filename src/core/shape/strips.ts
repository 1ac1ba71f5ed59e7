import type { Fuller } from "./fuller";
import type { Outline } from "./section";
import { bevelFace } from "./section-checks";
import { segmentArea, segmentHeight, segmentRadius } from "./segment";

/** Height of a face above the middle plane at a distance from the spine [mm]. */
type Face = (y: number) => number;

/** Both faces over a part of the width [mm]. */
export interface Strip {
  readonly from: number;
  readonly to: number;
  readonly top: Face;
  readonly bottom: Face;
  /** Between the faces, in closed form [mm²] */
  readonly area: number;
  /** False where a face is an arc: its slope may be vertical at an end. */
  readonly straight: boolean;
}

type Ends = readonly [from: number, to: number];

const mirrored = ([from, to]: Ends, top: Face, area: number, straight: boolean): Strip => ({
  from,
  to,
  top,
  bottom: (y) => -top(y),
  area,
  straight,
});

function line([from, to]: Ends, [start, end]: Ends): Face {
  const slope = to > from ? (end - start) / (to - from) : 0;
  return (y) => start + slope * (y - from);
}

/** Straight on both faces; thicknesses at the two ends. */
function wedge(ends: Ends, [start, end]: Ends): Strip {
  const area = ((ends[1] - ends[0]) * (start + end)) / 2;
  return mirrored(ends, line(ends, [start / 2, end / 2]), area, true);
}

const slab = (ends: Ends, thickness: number): Strip => wedge(ends, [thickness, thickness]);

/** An arc of the given radius whose centre lies at (y, height). */
function arc(radius: number, centreY: number, centreHeight: number, side: 1 | -1): Face {
  return (y) => centreHeight + side * Math.sqrt(Math.max(0, radius * radius - (y - centreY) ** 2));
}

/** A bevel hollowed by a wheel (`side` -1, the centre outside the blade) or bulging (`side` 1, the centre within). */
function arcBevel(outline: Outline, radius: number, rise: number, side: 1 | -1): Strip {
  // Where the blade ends in a point there is no face to grind: its end, as high as it is thick, is none.
  if (outline.bevel === 0) return straightBevel(outline);
  const { width, thickness, edge, bevel } = outline;
  const chord = bevelFace(outline);
  const toCentre = side * (rise - radius);
  const face = arc(
    radius,
    width - bevel / 2 + ((thickness - edge) / 2 / chord) * toCentre,
    (thickness + edge) / 4 + (bevel / chord) * toCentre,
    side,
  );
  // Where a blade is hardly wider than its face is high, near a point, a wheel takes all there is and no more.
  const area = Math.max(0, (bevel * (thickness + edge)) / 2 + side * 2 * segmentArea(chord, rise));
  return mirrored([width - bevel, width], face, area, false);
}

function straightBevel({ width, thickness, edge, bevel }: Outline): Strip {
  return wedge([width - bevel, width], [thickness, edge]);
}

/** A bevel under a flat of full thickness. */
function bevelled(outline: Outline, bevel: Strip): Strip[] {
  return [slab([0, outline.width - outline.bevel], outline.thickness), bevel];
}

function hollow(outline: Outline): Strip {
  return arcBevel(outline, outline.curve, segmentHeight(outline.curve, bevelFace(outline)), -1);
}

function convex(outline: Outline): Strip {
  const { curve: bulge } = outline;
  if (bulge === 0) return straightBevel(outline);
  return arcBevel(outline, segmentRadius(bevelFace(outline), bulge), bulge, 1);
}

function lenticular({ width, thickness, edge }: Outline): Strip[] {
  const rise = (thickness - edge) / 2;
  const middle = width / 2;
  if (rise <= 0) return [slab([0, width], thickness)];
  const radius = segmentRadius(width, rise);
  const face = arc(radius, middle, thickness / 2 - radius, 1);
  const half = middle * edge + segmentArea(width, rise);
  return [mirrored([0, middle], face, half, false), mirrored([middle, width], face, half, false)];
}

/** Two edges under a flat, or under a ridge where the flat has no width. */
function ridged({ width, thickness, edge, flat }: Outline): Strip[] {
  const [first, second] = [(width - flat) / 2, (width + flat) / 2];
  return [
    wedge([0, first], [edge, thickness]),
    slab([first, second], thickness),
    wedge([second, width], [thickness, edge]),
  ];
}

/** One face flat, the other bevelled: the middle plane is taken as the flat face. */
function chisel(outline: Outline): Strip[] {
  return bevelled(outline, straightBevel(outline)).map((strip) => ({
    ...strip,
    top: (y) => 2 * strip.top(y),
    bottom: () => 0,
  }));
}

/**
 * A cross-section from spine to edge (or edge to edge) as strips side by side: the one description of each grind
 * from which areas, second moments and drawings are made.
 *
 * @param outline - A section that `checkOutline` lets pass [mm]
 */
export function stripsOf(outline: Outline): readonly Strip[] {
  switch (outline.grind.word) {
    case "hollow":
      return bevelled(outline, hollow(outline));
    case "convex":
      return bevelled(outline, convex(outline));
    case "lenticular":
      return lenticular(outline);
    case "diamond":
    case "hexagonal":
      return ridged(outline);
    case "chisel":
      return chisel(outline);
    case "rectangle":
      return [slab([0, outline.width], outline.thickness)];
    case "t-back":
      return [slab([-outline.rib, 0], outline.flat), ...bevelled(outline, straightBevel(outline))];
    default:
      return bevelled(outline, straightBevel(outline));
  }
}

/** Distance from the spine at which a fuller begins: in the middle of its face, on a wedge along the spine [mm]. */
function fullerStart({ grind, width, bevel }: Outline, fuller: Fuller): number {
  const alongSpine = (grind.word === "flat" || grind.word === "chisel") && bevel >= width;
  if (alongSpine) return 0;
  const partBevel = grind.bevel !== "" && bevel < width;
  return ((partBevel ? width - bevel : width) - fuller.width) / 2;
}

/** A groove of circular section below the chord that joins its rims; `side` 1 for the upper face. */
function groove(face: Face, from: number, { width, depth }: Fuller, side: 1 | -1): Face {
  const chord = line([from, from + width], [face(from), face(from + width)]);
  const radius = segmentRadius(width, depth);
  const middle = from + width / 2;
  return (y) =>
    chord(y) - side * (Math.sqrt(Math.max(0, radius * radius - (y - middle) ** 2)) - (radius - depth));
}

function faceAt(strips: readonly Strip[], face: "top" | "bottom"): Face {
  return (y) => (strips.find(({ from, to }) => y >= from && y <= to) as Strip)[face](y);
}

/** Strips whose faces alone count: what a fuller removes is known in closed form by `fullerArea`. */
export type Profile = Omit<Strip, "area">;

/**
 * The strips of a section from spine to edge, with one fuller on each face in the place of what stood there.
 *
 * @param outline - A section that `checkOutline` lets pass [mm]
 * @param fuller - One that `fullerArea` lets pass; width and depth both 0 for none [mm]
 */
export function profileOf(outline: Outline, fuller: Fuller): readonly Profile[] {
  const strips = stripsOf(outline).filter(({ from, to }) => to > from);
  if (fuller.width === 0 || strips.length === 0) return strips;
  const from = fullerStart(outline, fuller);
  const to = from + fuller.width;
  const middle = from + fuller.width / 2;
  const before = strips.map((strip): Profile => ({ ...strip, to: Math.min(strip.to, from) }));
  const after = strips.map((strip): Profile => ({ ...strip, from: Math.max(strip.from, to) }));
  const top = groove(faceAt(strips, "top"), from, fuller, 1);
  const bottom = groove(faceAt(strips, "bottom"), from, fuller, -1);
  return [
    ...before,
    { from, to: middle, top, bottom, straight: false },
    { from: middle, to, top, bottom, straight: false },
    ...after,
  ].filter((strip) => strip.to > strip.from);
}
