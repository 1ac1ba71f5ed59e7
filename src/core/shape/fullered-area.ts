import { lengthText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { crownHeight, fullerArea } from "./fuller";
import type { Grind, GrindWord } from "./grinds";
import { type Outline, outlineOf } from "./section";
import { outlineArea } from "./section-area";
import { segmentArea, segmentHeight, segmentRadius } from "./segment";

/** From where the depth of a fuller is measured: a straight edge over its rims, or the face that was there. */
export const FULLER_DATUMS = ["chord", "crown"] as const;

export type FullerDatum = (typeof FULLER_DATUMS)[number];

/** A section with equal fullers. Lengths in mm. */
export interface FulleredSection {
  readonly grind: Grind;
  /** Edge to edge, above 0 [mm]. */
  readonly width: number;
  /** In the middle, above 0 [mm]. */
  readonly thickness: number;
  /** Of each fuller, rim to rim, above 0 [mm]. */
  readonly fullerWidth: number;
  /** Of each fuller, from `datum`, above 0 [mm]. */
  readonly fullerDepth: number;
  /** Fullers on one side, 1 to 5 [-]. */
  readonly aSide: number;
  /** Sides that are fullered, 1 or 2 [-]. */
  readonly sides: number;
  /** What the depth is measured from. */
  readonly datum: FullerDatum;
}

const ALLOWED: readonly GrindWord[] = ["flat", "rectangle", "lenticular", "diamond"];

function chordDepth(outline: Outline, { fullerWidth, fullerDepth, datum }: FulleredSection): number {
  if (datum === "chord") return fullerDepth;
  const crown = crownHeight(outline, fullerWidth);
  if (fullerDepth > crown) return fullerDepth - crown;
  throw new InvalidValue(
    `fuller depth ${lengthText(fullerDepth)} from the crown does not reach below it: a fuller ` +
      `${lengthText(fullerWidth)} wide takes ${lengthText(crown)} of crown alone`,
  );
}

/** Thickness of the blade under the fuller farthest from the middle line or, on a wedge, from the spine [mm]. */
function outerThickness(
  { grind, width, thickness }: Outline,
  { fullerWidth, aSide }: FulleredSection,
): number {
  const outerRim = (aSide * fullerWidth) / 2;
  switch (grind.word) {
    case "lenticular":
      return thickness - 2 * segmentHeight(segmentRadius(width, thickness / 2), 2 * outerRim);
    case "diamond":
      return thickness * (1 - (2 * outerRim - fullerWidth) / width);
    case "flat":
      return thickness * (1 - ((aSide - 0.5) * fullerWidth) / width);
    default:
      return thickness;
  }
}

/** Several fullers beside one another: what only they can get wrong. */
function checkRow(outline: Outline, depth: number, section: FulleredSection): void {
  const { aSide, fullerWidth, width } = section;
  if (aSide * fullerWidth > width) {
    throw new InvalidValue(
      `${aSide} fullers of ${lengthText(fullerWidth)} do not fit side by side on ${lengthText(width)}`,
    );
  }
  if (outerThickness(outline, section) > section.sides * depth) return;
  throw new InvalidValue(
    `the outer fullers, ${lengthText(depth)} deep, cut through: the blade is thinner there than in the middle`,
  );
}

/** On a ridge the fuller in the middle takes the crown; those beside it lie on flat faces. */
function besideRidge({ grind }: Outline, aSide: number): number {
  if (grind.word !== "diamond") return 0;
  return aSide % 2 === 0 ? aSide : aSide - 1;
}

/**
 * Area of a section with fullers, the crown above their chords counted.
 *
 * @param section - Flat, rectangle, lenticular or diamond. Lengths [mm]
 * @returns Area [mm²]
 * @throws InvalidValue for another grind, or a fuller that does not fit or cuts through.
 * Error and source: {@link SECTION_AREA}, {@link FULLER}.
 */
export function fulleredArea(section: FulleredSection): number {
  const { grind, width, thickness, fullerWidth, aSide, sides } = section;
  if (!ALLOWED.includes(grind.word)) {
    throw new InvalidValue(
      `grind "${grind.word}" given; give ${ALLOWED.join(", ")}. For other grinds use STATIONS`,
    );
  }
  const outline = outlineOf({ grind, width, thickness });
  const depth = chordDepth(outline, section);
  const withCrown = fullerArea(outline, { width: fullerWidth, depth });
  if (aSide > 1) checkRow(outline, depth, section);
  const onFlat = besideRidge(outline, aSide);
  const aSideArea = (aSide - onFlat) * withCrown + onFlat * segmentArea(fullerWidth, depth);
  return outlineArea(outline) - sides * aSideArea;
}
