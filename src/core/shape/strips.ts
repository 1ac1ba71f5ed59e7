import type { Fuller } from "./fuller";
import type { GrindWord } from "./grinds";
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

/** Takes the strips of a section one after another, as figures: no more is made of them than the taker needs. */
interface StripTaker {
  /** Straight on both faces, from one thickness to another [mm]. */
  straight(from: number, to: number, start: number, end: number): void;
  /** Both faces arcs, mirrored; the area between them in closed form [mm²]. */
  curved(from: number, to: number, arc: Arc, area: number): void;
}

function slab(taker: StripTaker, from: number, to: number, thickness: number): void {
  taker.straight(from, to, thickness, thickness);
}

function bar(taker: StripTaker, { width, thickness }: Outline): void {
  slab(taker, 0, width, thickness);
}

function straightBevel(taker: StripTaker, { width, thickness, edge, bevel }: Outline): void {
  taker.straight(width - bevel, width, thickness, edge);
}

/** Where the blade ends in a point there is no face to grind: its end, as high as it is thick, is none. */
const isPoint = ({ bevel }: Outline) => bevel === 0;

/** A bevel hollowed by a wheel (`side` -1, the centre outside the blade) or bulging (`side` 1, the centre within). */
function arcBevel(taker: StripTaker, outline: Outline, radius: number, rise: number, side: 1 | -1): void {
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
  taker.curved(width - bevel, width, arc, area);
}

/** What stands at full thickness above a bevel. */
function aboveBevel(taker: StripTaker, { width, bevel, thickness }: Outline): void {
  slab(taker, 0, width - bevel, thickness);
}

function hollow(taker: StripTaker, outline: Outline): void {
  const { curve: radius } = outline;
  aboveBevel(taker, outline);
  if (isPoint(outline)) straightBevel(taker, outline);
  else arcBevel(taker, outline, radius, segmentHeight(radius, bevelFace(outline)), -1);
}

function convex(taker: StripTaker, outline: Outline): void {
  const { curve: bulge } = outline;
  aboveBevel(taker, outline);
  if (bulge === 0 || isPoint(outline)) straightBevel(taker, outline);
  else arcBevel(taker, outline, segmentRadius(bevelFace(outline), bulge), bulge, 1);
}

function bevelled(taker: StripTaker, outline: Outline): void {
  aboveBevel(taker, outline);
  straightBevel(taker, outline);
}

function twoArcs(taker: StripTaker, { width, thickness, edge }: Outline, rise: number): void {
  const middle = width / 2;
  const radius = segmentRadius(width, rise);
  const arc: Arc = { radius, centreY: middle, centreHeight: thickness / 2 - radius, side: 1 };
  const half = middle * edge + segmentArea(width, rise);
  taker.curved(0, middle, arc, half);
  taker.curved(middle, width, arc, half);
}

function lenticular(taker: StripTaker, outline: Outline): void {
  const rise = (outline.thickness - outline.edge) / 2;
  if (rise > 0) twoArcs(taker, outline, rise);
  else bar(taker, outline);
}

/** Two edges under a flat, or under a ridge where the flat has no width. */
function ridged(taker: StripTaker, { width, thickness, edge, flat }: Outline): void {
  const [first, second] = [(width - flat) / 2, (width + flat) / 2];
  taker.straight(0, first, edge, thickness);
  slab(taker, first, second, thickness);
  taker.straight(second, width, thickness, edge);
}

function ribbed(taker: StripTaker, outline: Outline): void {
  slab(taker, -outline.rib, 0, outline.flat);
  bevelled(taker, outline);
}

/** The one description of each grind, from spine to edge (or edge to edge). */
const STRIPS: Readonly<Record<GrindWord, (taker: StripTaker, outline: Outline) => void>> = {
  flat: bevelled,
  "part flat": bevelled,
  chisel: bevelled,
  hollow,
  convex,
  lenticular,
  diamond: ridged,
  hexagonal: ridged,
  rectangle: bar,
  "t-back": ribbed,
};

const wedgeArea = (from: number, to: number, start: number, end: number) => ((to - from) * (start + end)) / 2;

class AreaSum implements StripTaker {
  sum = 0;

  straight(from: number, to: number, start: number, end: number): void {
    this.sum += wedgeArea(from, to, start, end);
  }

  curved(_from: number, _to: number, _arc: Arc, area: number): void {
    this.sum += area;
  }
}

/**
 * Area of a cross-section, the small triangle of the final edge bevel not counted.
 *
 * @param outline - A section that `checkOutline` lets pass [mm]
 * @returns [mm²]
 */
export function areaOfStrips(outline: Outline): number {
  const area = new AreaSum();
  STRIPS[outline.grind.word](area, outline);
  return area.sum;
}

function line(from: number, to: number, start: number, end: number): Face {
  const slope = to > from ? (end - start) / (to - from) : 0;
  return (y) => start + slope * (y - from);
}

function arcFace({ radius, centreY, centreHeight, side }: Arc): Face {
  return (y) => centreHeight + side * Math.sqrt(Math.max(0, radius * radius - (y - centreY) ** 2));
}

class StripList implements StripTaker {
  readonly strips: Strip[] = [];

  straight(from: number, to: number, start: number, end: number): void {
    const top = line(from, to, start / 2, end / 2);
    const area = wedgeArea(from, to, start, end);
    this.strips.push({ from, to, top, bottom: (y) => -top(y), area, straight: true });
  }

  curved(from: number, to: number, arc: Arc, area: number): void {
    const top = arcFace(arc);
    this.strips.push({ from, to, top, bottom: (y) => -top(y), area, straight: false });
  }
}

/** One face flat, the other bevelled: the middle plane is taken as the flat face. */
function onFlatFace(strip: Strip): Strip {
  return { ...strip, top: (y) => 2 * strip.top(y), bottom: () => 0 };
}

/**
 * A cross-section from spine to edge (or edge to edge) as strips side by side, from which second moments and drawings
 * are made.
 *
 * @param outline - A section that `checkOutline` lets pass [mm]
 */
export function stripsOf(outline: Outline): readonly Strip[] {
  const list = new StripList();
  STRIPS[outline.grind.word](list, outline);
  return outline.grind.word === "chisel" ? list.strips.map(onFlatFace) : list.strips;
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
