import type { Fuller } from "../../core/shape/fuller";
import type { Grind } from "../../core/shape/grinds";
import type { Path } from "../charts/scale-drawing";

/** A cross-section to be drawn, mm. */
export interface Outline {
  readonly grind: Grind;
  readonly width: number;
  readonly thickness: number;
  readonly edge: number;
  /** Height of the bevel; the width where the whole face is one. */
  readonly bevel: number;
  /** Wheel radius of a hollow grind, height of the bulge of a convex one. */
  readonly curve: number;
}

/** Half the thickness at a distance from the edge, mm. */
type Half = (fromEdge: number) => number;

const STEPS = 160;

/** Height of an arc over its chord, `along` from the chord's start; 0 outside it. */
function arcOver(chord: number, height: number): (along: number) => number {
  if (height <= 0 || chord <= 0) return () => 0;
  const radius = (chord * chord) / (8 * height) + height / 2;
  return (along) => {
    const fromMiddle = along - chord / 2;
    if (Math.abs(fromMiddle) >= chord / 2) return 0;
    return Math.sqrt(radius * radius - fromMiddle * fromMiddle) - (radius - height);
  };
}

/** Height of an arc of a radius over its chord. */
function arcHeight(radius: number, chord: number): number {
  return radius - Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
}

/** Length of a bevel's face. */
const bevelFace = ({ bevel, thickness, edge }: Outline) => Math.hypot(bevel, (thickness - edge) / 2);

/** Straight from edge to full thickness over a height, full thickness above it. */
function straight({ thickness, edge }: Outline, height: number): Half {
  return (s) => (s >= height ? thickness / 2 : (edge + (s / height) * (thickness - edge)) / 2);
}

/** A bevel whose face bulges (`sign` 1) or is hollow (-1) by an arc over the face. */
function arched(outline: Outline, height: number, sign: 1 | -1): Half {
  const face = bevelFace(outline);
  const flat = straight(outline, outline.bevel);
  const arc = arcOver(face, height);
  const slant = face / outline.bevel;
  // The arc stands square to the slanted face; across the blade it is longer by the slant.
  return (s) => (s >= outline.bevel ? outline.thickness / 2 : flat(s) + sign * slant * arc(s * slant));
}

/** The same toward both edges. */
function twoEdged({ width }: Outline, toMiddle: Half): Half {
  return (s) => toMiddle(Math.min(s, width - s));
}

function halfThickness(outline: Outline): Half {
  const { grind, width, thickness, edge, curve } = outline;
  switch (grind.word) {
    case "rectangle":
      return () => thickness / 2;
    case "diamond":
      return twoEdged(outline, straight(outline, width / 2));
    case "lenticular": {
      const arc = arcOver(width, (thickness - edge) / 2);
      return (s) => edge / 2 + arc(s);
    }
    case "hollow":
      return arched(outline, arcHeight(curve, bevelFace(outline)), -1);
    case "convex":
      return arched(outline, curve, 1);
    default:
      return straight(outline, outline.bevel);
  }
}

/** Middle of a fuller, from the edge: on the middle line, on the flat above a bevel, on a wedge near the spine. */
function fullerMiddle({ grind, width, bevel }: Outline, fuller: Fuller): number {
  if (grind.word === "flat") return width - fuller.width / 2;
  return bevel < width ? (bevel + width) / 2 : width / 2;
}

/** What a fuller leaves of a face: the chord over its rims less the arc of its bottom. */
function fullered(half: Half, outline: Outline, fuller: Fuller): Half {
  if (fuller.width === 0) return half;
  const from = fullerMiddle(outline, fuller) - fuller.width / 2;
  const [start, end] = [half(from), half(from + fuller.width)];
  const arc = arcOver(fuller.width, fuller.depth);
  return (s) => {
    const along = s - from;
    if (along <= 0 || along >= fuller.width) return half(s);
    return start + (along / fuller.width) * (end - start) - arc(along);
  };
}

/**
 * A cross-section as a closed path, edge first: mm from the edge and mm from the middle plane.
 *
 * @param outline - A section that STATIONS takes: neither hexagonal nor t-back.
 * @param fuller - One on each face; width and depth 0 for none.
 */
export function sectionPath(outline: Outline, fuller: Fuller): Path {
  const { grind, width, thickness } = outline;
  const half = fullered(halfThickness(outline), outline, fuller);
  const places = Array.from({ length: STEPS + 1 }, (_, step) => (step * width) / STEPS);
  const face = places.map((s) => [s, half(s)] as const);
  // A chisel grind has its bevel on one face alone: what the other keeps is added to the bevelled one.
  const plain = halfThickness(outline);
  const isChisel = grind.word === "chisel";
  const top = face.map(([s, y]) => [s, isChisel ? thickness / 2 - plain(s) - y : -y] as const);
  const bottom = face.map(([s, y]) => [s, isChisel ? thickness / 2 - plain(s) + y : y] as const);
  return [...top, ...bottom.reverse()];
}
