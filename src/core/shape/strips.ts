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

/** An arc of the given radius whose centre lies at (y, height), `side` 1 above the centre. */
interface Arc {
  readonly radius: number;
  readonly centreY: number;
  readonly centreHeight: number;
  readonly side: 1 | -1;
}

/** A strip as figures: faces are made of it where they are asked for, most of the time its area is all that is. */
interface Part {
  /** Ends across the width [mm]. */
  readonly from: number;
  readonly to: number;
  /** Thickness at them, straight from one to the other where there is no arc [mm]. */
  readonly start: number;
  readonly end: number;
  /** Both faces, mirrored; `null` for straight ones. */
  readonly arc: Arc | null;
  /** Between the faces, in closed form [mm²] */
  readonly area: number;
}

/** Straight on both faces. */
function wedge(from: number, to: number, start: number, end: number): Part {
  return { from, to, start, end, arc: null, area: ((to - from) * (start + end)) / 2 };
}

function slab(from: number, to: number, thickness: number): Part {
  return wedge(from, to, thickness, thickness);
}

/** A bevel hollowed by a wheel (`side` -1, the centre outside the blade) or bulging (`side` 1, the centre within). */
function arcBevel(outline: Outline, radius: number, rise: number, side: 1 | -1): Part {
  // Where the blade ends in a point there is no face to grind: its end, as high as it is thick, is none.
  if (outline.bevel === 0) return straightBevel(outline);
  const { width, thickness, edge, bevel } = outline;
  const chord = bevelFace(outline);
  const toCentre = side * (rise - radius);
  const arc: Arc = {
    radius,
    centreY: width - bevel / 2 + ((thickness - edge) / 2 / chord) * toCentre,
    centreHeight: (thickness + edge) / 4 + (bevel / chord) * toCentre,
    side,
  };
  // Where a blade is hardly wider than its face is high, near a point, a wheel takes all there is and no more.
  const area = Math.max(0, (bevel * (thickness + edge)) / 2 + side * 2 * segmentArea(chord, rise));
  return { from: width - bevel, to: width, start: thickness, end: edge, arc, area };
}

function straightBevel({ width, thickness, edge, bevel }: Outline): Part {
  return wedge(width - bevel, width, thickness, edge);
}

/** A bevel under a flat of full thickness. */
function bevelled(outline: Outline, bevel: Part): Part[] {
  return [slab(0, outline.width - outline.bevel, outline.thickness), bevel];
}

function hollow(outline: Outline): Part {
  return arcBevel(outline, outline.curve, segmentHeight(outline.curve, bevelFace(outline)), -1);
}

function convex(outline: Outline): Part {
  const { curve: bulge } = outline;
  if (bulge === 0) return straightBevel(outline);
  return arcBevel(outline, segmentRadius(bevelFace(outline), bulge), bulge, 1);
}

function lenticular({ width, thickness, edge }: Outline): Part[] {
  const rise = (thickness - edge) / 2;
  const middle = width / 2;
  if (rise <= 0) return [slab(0, width, thickness)];
  const radius = segmentRadius(width, rise);
  const arc: Arc = { radius, centreY: middle, centreHeight: thickness / 2 - radius, side: 1 };
  const area = middle * edge + segmentArea(width, rise);
  return [
    { from: 0, to: middle, start: edge, end: thickness, arc, area },
    { from: middle, to: width, start: thickness, end: edge, arc, area },
  ];
}

/** Two edges under a flat, or under a ridge where the flat has no width. */
function ridged({ width, thickness, edge, flat }: Outline): Part[] {
  const [first, second] = [(width - flat) / 2, (width + flat) / 2];
  return [
    wedge(0, first, edge, thickness),
    slab(first, second, thickness),
    wedge(second, width, thickness, edge),
  ];
}

function partsOf(outline: Outline): readonly Part[] {
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
    case "rectangle":
      return [slab(0, outline.width, outline.thickness)];
    case "t-back":
      return [slab(-outline.rib, 0, outline.flat), ...bevelled(outline, straightBevel(outline))];
    default:
      return bevelled(outline, straightBevel(outline));
  }
}

/**
 * Area of a cross-section, the small triangle of the final edge bevel not counted.
 *
 * @param outline - A section that `checkOutline` lets pass [mm]
 * @returns [mm²]
 */
export function areaOfStrips(outline: Outline): number {
  let sum = 0;
  for (const { area } of partsOf(outline)) sum += area;
  return sum;
}

function line(from: number, to: number, start: number, end: number): Face {
  const slope = to > from ? (end - start) / (to - from) : 0;
  return (y) => start + slope * (y - from);
}

function arcFace({ radius, centreY, centreHeight, side }: Arc): Face {
  return (y) => centreHeight + side * Math.sqrt(Math.max(0, radius * radius - (y - centreY) ** 2));
}

function stripOf({ from, to, start, end, arc, area }: Part): Strip {
  const top = arc === null ? line(from, to, start / 2, end / 2) : arcFace(arc);
  return { from, to, top, bottom: (y) => -top(y), area, straight: arc === null };
}

/** One face flat, the other bevelled: the middle plane is taken as the flat face. */
function onFlatFace(strip: Strip): Strip {
  return { ...strip, top: (y) => 2 * strip.top(y), bottom: () => 0 };
}

/**
 * A cross-section from spine to edge (or edge to edge) as strips side by side. The parts of a grind are its one
 * description, from which areas, second moments and drawings are made.
 *
 * @param outline - A section that `checkOutline` lets pass [mm]
 */
export function stripsOf(outline: Outline): readonly Strip[] {
  const strips = partsOf(outline).map(stripOf);
  return outline.grind.word === "chisel" ? strips.map(onFlatFace) : strips;
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
  const chord = line(from, from + width, face(from), face(from + width));
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
