import { lengthText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { type Limit, relation } from "../relation";
import type { Outline } from "./section";
import { bevelFace } from "./section-checks";
import { segmentArea, segmentHeight, segmentRadius } from "./segment";

const length = (label: string, min: number): Limit => ({ label, unit: "mm", min, max: null });

/** Fullers of circular section. */
export const FULLER = relation({
  title: "Metal that a fuller removes",
  source: "plane-geometry",
  locator: "circular segment below the chord, and the crown of the face above it",
  evidence: "standard",
  inputs: { width: length("fuller width", 0), depth: length("fuller depth", 0) },
  output: { label: "area", unit: "mm²" },
  error: {
    size: 0,
    unit: "mm²",
    kind: "exact for a groove of circular section along the middle of the face",
  },
  note: "Depth is measured from the chord that joins the two rims.",
});

/** A groove of circular section along a face. Lengths in mm. */
export interface Fuller {
  /** Rim to rim, above 0 [mm]. */
  readonly width: number;
  /** Below the chord that joins the two rims, not below the crown that was ground away, above 0 [mm]. */
  readonly depth: number;
}

/** Metal of the face above the chord of a fuller: it goes too. */
interface Crown {
  readonly area: number;
  readonly height: number;
}

const FLAT_FACE: Crown = { area: 0, height: 0 };

function arcCrown(radius: number, chord: number): Crown {
  const height = segmentHeight(radius, chord);
  return { area: segmentArea(chord, height), height };
}

function lenticularCrown({ width, thickness, edge }: Outline, chord: number): Crown {
  const rise = (thickness - edge) / 2;
  return rise > 0 ? arcCrown(segmentRadius(width, rise), chord) : FLAT_FACE;
}

/** Over a ridge (`flat` 0) or a flat with sloping sides, a fuller on the middle line. */
function ridgeCrown({ width, thickness, edge, flat }: Outline, chord: number): Crown {
  if (chord <= flat) return FLAT_FACE;
  const height = ((chord - flat) * (thickness - edge)) / (2 * (width - flat));
  return { area: ((flat + chord) / 2) * height, height };
}

function convexCrown(outline: Outline, chord: number): Crown {
  const face = bevelFace(outline);
  return outline.curve > 0 ? arcCrown(segmentRadius(face, outline.curve), chord) : FLAT_FACE;
}

/** The part of a face, across the width, on which a fuller can lie [mm]. */
function widthForFullers(outline: Outline): number {
  const { grind, width, bevel } = outline;
  const isWhole = bevel >= width && grind.word !== "hollow";
  return isWhole ? width : width - bevel;
}

/** The face on which the fuller lies is the flat above a part bevel, else the whole face. */
function crownOf(outline: Outline, chord: number): Crown {
  switch (outline.grind.word) {
    case "lenticular":
      return lenticularCrown(outline, chord);
    case "diamond":
    case "hexagonal":
      return ridgeCrown(outline, chord);
    case "convex":
      return outline.bevel < outline.width ? FLAT_FACE : convexCrown(outline, chord);
    default:
      return FLAT_FACE;
  }
}

/** Height of the face above the chord of a fuller on the middle line [mm]. */
export function crownHeight(outline: Outline, chord: number): number {
  return crownOf(outline, chord).height;
}

/** Half thickness under the middle of the fuller, taken as near the spine as it fits [mm]. */
function halfThickness({ grind, width, thickness, edge }: Outline, chord: number): number {
  const slope = grind.word === "flat" ? (thickness - edge) / width : 0;
  return (thickness - (slope * chord) / 2) / 2;
}

function checkFuller(outline: Outline, { width, depth }: Fuller, crown: Crown): void {
  const space = widthForFullers(outline);
  if (width > space) {
    throw new InvalidValue(
      `fuller width ${lengthText(width)} does not fit: the ${outline.grind.word} face leaves ` +
        `${lengthText(space)} for it`,
    );
  }
  if (depth > width / 2) {
    throw new InvalidValue(
      `fuller depth ${lengthText(depth)} is more than half its width, ${lengthText(width / 2)}`,
    );
  }
  const left = 2 * (halfThickness(outline, width) - crown.height - depth);
  if (left > 0) return;
  throw new InvalidValue(
    `fullers ${lengthText(depth)} deep on both sides meet: the blade is only ` +
      `${lengthText(outline.thickness)} thick there`,
  );
}

/**
 * Metal that one fuller takes from one face, the crown above its chord counted.
 *
 * @param outline - The section before fullering.
 * @param fuller - Width and depth; both 0 is no fuller.
 * @returns Area to subtract [mm²]
 * @throws InvalidValue where the fuller does not fit the face or meets the one opposite.
 */
export function fullerArea(outline: Outline, fuller: Fuller): number {
  if (fuller.width === 0 && fuller.depth === 0) return 0;
  if (fuller.width === 0 || fuller.depth === 0) {
    throw new InvalidValue("a fuller needs both a width and a depth in mm, or neither");
  }
  const crown = crownOf(outline, fuller.width);
  checkFuller(outline, fuller, crown);
  return segmentArea(fuller.width, fuller.depth) + crown.area;
}
