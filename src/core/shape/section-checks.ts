import { lengthText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import type { GrindWord } from "./grinds";
import type { Outline } from "./section";
import { segmentHeight } from "./segment";

/** Lengths that differ by less than this share are equal: typed figures meet exactly at a grind's limit. */
const ROUNDING = 1e-9;

const exceeds = (value: number, limit: number) => value > limit * (1 + ROUNDING);

/** Length of a bevel's face [mm]. */
export function bevelFace({ bevel, thickness, edge }: Outline): number {
  return Math.hypot(bevel, (thickness - edge) / 2);
}

/**
 * Metal left at the thinnest place of a hollow, both sides together [mm]. That place is where the
 * wheel's arc runs parallel to the middle plane of the blade.
 */
function hollowWeb(outline: Outline): number {
  const { thickness, edge, bevel, curve: radius } = outline;
  const face = bevelFace(outline);
  const fromMiddle = (radius * (thickness - edge)) / (2 * face);
  if (fromMiddle >= face / 2) return edge;
  const depth = segmentHeight(radius, face) - segmentHeight(radius, 2 * fromMiddle);
  const flat = (thickness + edge) / 2 - ((thickness - edge) * fromMiddle) / face;
  return flat - (2 * depth * bevel) / face;
}

/** Largest bulge that leaves the blade no thicker than its own thickness [mm]. */
function largestBulge(outline: Outline): number {
  const rise = outline.thickness - outline.edge;
  const face = bevelFace(outline);
  return rise <= 0 ? 0 : segmentHeight((face * face) / rise, face);
}

function checkHollow(outline: Outline): void {
  const { curve: radius, edge } = outline;
  const face = bevelFace(outline);
  if (exceeds(face / 2, radius)) {
    throw new InvalidValue(
      `a wheel of radius ${lengthText(radius)} cannot hollow a bevel face ${lengthText(face)} wide: ` +
        `the radius must be at least half of it, ${lengthText(face / 2)}`,
    );
  }
  if (hollowWeb(outline) < -ROUNDING || (edge > 0 && hollowWeb(outline) <= 0)) {
    throw new InvalidValue(
      `a wheel of radius ${lengthText(radius)} would grind through: no metal is left in the hollow. ` +
        "Give a larger wheel, a lower bevel or a thicker edge",
    );
  }
}

function checkConvex(outline: Outline): void {
  const largest = largestBulge(outline);
  if (!exceeds(outline.curve, largest)) return;
  throw new InvalidValue(
    `a bulge of ${lengthText(outline.curve)} would make the blade thicker than its ` +
      `${lengthText(outline.thickness)}: at most ${lengthText(largest)} fits`,
  );
}

function checkLenticular({ width, thickness, edge }: Outline): void {
  if (!exceeds(thickness - edge, width)) return;
  throw new InvalidValue(
    `a lenticular section ${lengthText(thickness)} thick cannot be only ${lengthText(width)} wide: ` +
      "the width must be at least the thickness",
  );
}

function checkHexagonal({ flat, width }: Outline): void {
  if (!exceeds(flat, width)) return;
  throw new InvalidValue(`flat ${lengthText(flat)} is wider than the blade, ${lengthText(width)}`);
}

function checkTee({ flat, thickness }: Outline): void {
  if (!exceeds(thickness, flat)) return;
  throw new InvalidValue(
    `rib width ${lengthText(flat)} is less than the thickness of the body, ${lengthText(thickness)}: ` +
      "a rib stands out on both sides",
  );
}

const GRIND_CHECKS: Readonly<Partial<Record<GrindWord, (outline: Outline) => void>>> = {
  hollow: checkHollow,
  convex: checkConvex,
  lenticular: checkLenticular,
  hexagonal: checkHexagonal,
  "t-back": checkTee,
};

/**
 * Refuses a section that no grinding can make.
 *
 * @throws InvalidValue saying which figure does not fit and what would.
 */
export function checkOutline(outline: Outline): void {
  const { width, thickness, edge, bevel } = outline;
  if (exceeds(edge, thickness)) {
    throw new InvalidValue(
      `edge ${lengthText(edge)} is thicker than the blade, ${lengthText(thickness)}: ` +
        "the thickness behind the edge is at most the thickness",
    );
  }
  if (exceeds(bevel, width)) {
    throw new InvalidValue(`bevel height ${lengthText(bevel)} is more than the width, ${lengthText(width)}`);
  }
  if (width > 0) GRIND_CHECKS[outline.grind.word]?.(outline);
}
