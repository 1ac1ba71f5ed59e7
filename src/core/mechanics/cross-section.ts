import type { Fuller } from "../shape/fuller";
import { gaussRule, type QuadratureRule } from "../shape/gauss";
import type { Outline } from "../shape/section";
import { bevelFace } from "../shape/section-checks";
import { segmentHeight, segmentRadius } from "../shape/segment";

/** What a cross-section is to a beam. Lengths in mm; bending is across the flat unless said. */
export interface SectionProperties {
  /** mm² */
  readonly area: number;
  /** About the axis through the centroid along the width: bending across the flat [mm⁴] */
  readonly secondMoment: number;
  /** About the axis through the centroid across the thickness: bending edgewise [mm⁴] */
  readonly edgewiseMoment: number;
  /** Distance from the neutral axis to the farthest fibre, bending across the flat [mm] */
  readonly extremeFibre: number;
}

/** Both faces over a part of the width: heights above the middle plane at a distance from the spine [mm]. */
interface Strip {
  readonly from: number;
  readonly to: number;
  readonly top: (y: number) => number;
  readonly bottom: (y: number) => number;
  /** False where a face is an arc: its slope may be vertical at an end. */
  readonly straight: boolean;
}

type Face = (y: number) => number;

const STRAIGHT_RULE = gaussRule(4);
const ARC_RULE = gaussRule(16);

const mirrored = (from: number, to: number, top: Face, straight: boolean): Strip => ({
  from,
  to,
  top,
  bottom: (y) => -top(y),
  straight,
});

function line(from: number, to: number, start: number, end: number): Face {
  const slope = to > from ? (end - start) / (to - from) : 0;
  return (y) => start + slope * (y - from);
}

/** Half thickness over an arc of the given radius whose centre lies at (y, height). */
function arc(radius: number, centreY: number, centreHeight: number, side: 1 | -1): Face {
  return (y) => centreHeight + side * Math.sqrt(Math.max(0, radius * radius - (y - centreY) ** 2));
}

/** A bevel hollowed by a wheel (`side` -1, the centre outside the blade) or bulging (`side` 1, the centre within). */
function curvedBevel(outline: Outline, radius: number, rise: number, side: 1 | -1): Face {
  const { width, thickness, edge, bevel } = outline;
  const face = bevelFace(outline);
  const toCentre = side * (rise - radius);
  const normalY = (thickness - edge) / 2 / face;
  const normalHeight = bevel / face;
  return arc(
    radius,
    width - bevel / 2 + normalY * toCentre,
    (thickness + edge) / 4 + normalHeight * toCentre,
    side,
  );
}

function bevelled(outline: Outline, bevelFaceOf: Face, straight: boolean): Strip[] {
  const { width, thickness, bevel } = outline;
  const shoulder = width - bevel;
  const strips = [mirrored(shoulder, width, bevelFaceOf, straight)];
  if (shoulder > 0) strips.unshift(mirrored(0, shoulder, () => thickness / 2, true));
  return strips;
}

function straightBevel({ width, thickness, edge, bevel }: Outline): Face {
  return line(width - bevel, width, thickness / 2, edge / 2);
}

function hollow(outline: Outline): Strip[] {
  const rise = segmentHeight(outline.curve, bevelFace(outline));
  return bevelled(outline, curvedBevel(outline, outline.curve, rise, -1), false);
}

function convex(outline: Outline): Strip[] {
  if (outline.curve === 0) return bevelled(outline, straightBevel(outline), true);
  const radius = segmentRadius(bevelFace(outline), outline.curve);
  return bevelled(outline, curvedBevel(outline, radius, outline.curve, 1), false);
}

function lenticular({ width, thickness, edge }: Outline): Strip[] {
  const rise = (thickness - edge) / 2;
  const middle = width / 2;
  if (rise <= 0) return [mirrored(0, width, () => thickness / 2, true)];
  const radius = segmentRadius(width, rise);
  const face = arc(radius, middle, thickness / 2 - radius, 1);
  return [mirrored(0, middle, face, false), mirrored(middle, width, face, false)];
}

function ridged({ width, thickness, edge, flat }: Outline): Strip[] {
  const rims = [(width - flat) / 2, (width + flat) / 2] as const;
  const [half, thin] = [thickness / 2, edge / 2];
  return [
    mirrored(0, rims[0], line(0, rims[0], thin, half), true),
    mirrored(rims[0], rims[1], () => half, true),
    mirrored(rims[1], width, line(rims[1], width, half, thin), true),
  ];
}

/** One face flat, the other bevelled: the middle plane is taken as the flat face. */
function chisel({ width, thickness, edge, bevel }: Outline): Strip[] {
  const shoulder = width - bevel;
  const flatFace = () => 0;
  return [
    { from: 0, to: shoulder, top: () => thickness, bottom: flatFace, straight: true },
    {
      from: shoulder,
      to: width,
      top: line(shoulder, width, thickness, edge),
      bottom: flatFace,
      straight: true,
    },
  ];
}

function stripsOf(outline: Outline): Strip[] {
  switch (outline.grind.word) {
    case "hollow":
      return hollow(outline);
    case "convex":
      return convex(outline);
    case "lenticular":
      return lenticular(outline);
    case "diamond":
    case "hexagonal":
      return ridged(outline);
    case "chisel":
      return chisel(outline);
    case "rectangle":
      return [mirrored(0, outline.width, () => outline.thickness / 2, true)];
    case "t-back":
      return [
        mirrored(-outline.rib, 0, () => outline.flat / 2, true),
        ...bevelled(outline, straightBevel(outline), true),
      ];
    default:
      return bevelled(outline, straightBevel(outline), true);
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
  const chord = line(from, from + width, face(from), face(from + width));
  const radius = segmentRadius(width, depth);
  const middle = from + width / 2;
  return (y) =>
    chord(y) - side * (Math.sqrt(Math.max(0, radius * radius - (y - middle) ** 2)) - (radius - depth));
}

function faceAt(strips: readonly Strip[], face: "top" | "bottom"): Face {
  return (y) => (strips.find(({ from, to }) => y >= from && y <= to) as Strip)[face](y);
}

/** The strips with one fuller on each face in the place of what stood there. */
function fullered(strips: readonly Strip[], outline: Outline, fuller: Fuller): Strip[] {
  const from = fullerStart(outline, fuller);
  const to = from + fuller.width;
  const middle = from + fuller.width / 2;
  const kept = strips.flatMap((strip) => [
    { ...strip, to: Math.min(strip.to, from) },
    { ...strip, from: Math.max(strip.from, to) },
  ]);
  const top = groove(faceAt(strips, "top"), from, fuller, 1);
  const bottom = groove(faceAt(strips, "bottom"), from, fuller, -1);
  return [
    ...kept,
    { from, to: middle, top, bottom, straight: false },
    { from: middle, to, top, bottom, straight: false },
  ].filter((strip) => strip.to > strip.from);
}

interface Sums {
  area: number;
  /** Area times height above the middle plane, and its square. */
  lift: number;
  across: number;
  /** Area times distance from the spine, and its square. */
  reach: number;
  edgewise: number;
  highest: number;
  lowest: number;
}

/** Adds what a sliver of the strip, `part` wide at `y`, is to the sums. */
function addSliver(sums: Sums, y: number, part: number, top: number, bottom: number): void {
  const thickness = top - bottom;
  const middle = (top + bottom) / 2;
  const area = part * thickness;
  sums.area += area;
  sums.lift += area * middle;
  sums.across += area * (middle * middle + (thickness * thickness) / 12);
  sums.reach += area * y;
  sums.edgewise += area * y * y;
}

function noteHeights(sums: Sums, top: number, bottom: number): void {
  sums.highest = Math.max(sums.highest, top);
  sums.lowest = Math.min(sums.lowest, bottom);
}

/** For an arc the points crowd toward both ends (y = 3s² - 2s³), where its slope may be vertical. */
function addStrip(sums: Sums, strip: Strip, { points, weights }: QuadratureRule): void {
  const { from, to, top, bottom, straight } = strip;
  const width = to - from;
  for (let index = 0; index < points.length; index += 1) {
    const s = points[index] as number;
    const share = straight ? s : s * s * (3 - 2 * s);
    const slope = straight ? 1 : 6 * s * (1 - s);
    const y = from + width * share;
    addSliver(sums, y, (weights[index] as number) * width * slope, top(y), bottom(y));
  }
  noteHeights(sums, top(from), bottom(from));
  noteHeights(sums, top(to), bottom(to));
}

/**
 * Area, second moments and farthest fibre of a blade's cross-section. Straight faces are exact; arcs are
 * integrated to about 1e-10 of the figure. A fuller lies in the middle of its face, on a full wedge along
 * the spine. The small triangle of the final edge bevel is not counted.
 *
 * @param outline - Section as settled and checked by `core/shape` [mm]
 * @param fuller - One on each face; width and depth both 0 for none [mm]
 * @returns Area [mm²], second moments about the centroid [mm⁴], farthest fibre [mm]
 * Source: plane geometry; the parallel-axis theorem.
 */
export function sectionProperties(outline: Outline, fuller: Fuller): SectionProperties {
  const plain = stripsOf(outline).filter(({ from, to }) => to > from);
  const strips = fuller.width > 0 && plain.length > 0 ? fullered(plain, outline, fuller) : plain;
  const sums: Sums = { area: 0, lift: 0, across: 0, reach: 0, edgewise: 0, highest: 0, lowest: 0 };
  for (const strip of strips) addStrip(sums, strip, strip.straight ? STRAIGHT_RULE : ARC_RULE);
  const { area, lift, across, reach, edgewise, highest, lowest } = sums;
  if (!(area > 0)) return { area: 0, secondMoment: 0, edgewiseMoment: 0, extremeFibre: 0 };
  const neutral = lift / area;
  return {
    area,
    secondMoment: across - lift * neutral,
    edgewiseMoment: edgewise - (reach * reach) / area,
    extremeFibre: Math.max(highest - neutral, neutral - lowest),
  };
}
