import { type Limit, relation } from "../relation";
import { type Outline, outlineOf, type Section } from "./section";
import { bevelFace, checkOutline } from "./section-checks";
import { segmentArea, segmentHeight } from "./segment";

const length = (label: string, min: number): Limit => ({ label, unit: "mm", min, max: null });

/** Areas of cross-sections. */
export const SECTION_AREA = relation({
  title: "Area of a blade's cross-section",
  source: "plane-geometry",
  locator: "trapezium, triangle, circular segment",
  evidence: "standard",
  inputs: {
    width: length("width", 0),
    thickness: length("thickness", 0),
    edge: length("edge thickness", 0),
  },
  output: { label: "area", unit: "mm²" },
  error: { size: null, unit: "mm²", kind: "exact for the outline described; the real grind is not" },
  note:
    "The small triangle of the final edge bevel is not counted (edge² ÷ 4 tan of the angle a side: " +
    "0.15 mm² for 0.4 mm at 15°). Edge at most the thickness, bevel height at most the width, a wheel's " +
    "radius at least half the bevel face, metal left in the hollow, no bulge beyond the thickness.",
});

/** Straight bevels of height `bevel` under flats of full thickness. */
function straight({ width, thickness, edge, bevel }: Outline): number {
  return thickness * (width - bevel) + (bevel * (thickness + edge)) / 2;
}

function hollow(outline: Outline): number {
  const face = bevelFace(outline);
  return straight(outline) - 2 * segmentArea(face, segmentHeight(outline.curve, face));
}

function convex(outline: Outline): number {
  return straight(outline) + 2 * segmentArea(bevelFace(outline), outline.curve);
}

function lenticular({ width, thickness, edge }: Outline): number {
  return width * edge + 2 * segmentArea(width, (thickness - edge) / 2);
}

function hexagonal({ width, thickness, edge, flat }: Outline): number {
  return thickness * flat + ((width - flat) * (thickness + edge)) / 2;
}

/**
 * Area of a settled section; the small triangle of the final edge bevel is not counted.
 *
 * @returns Area [mm²]
 * @throws InvalidValue for a section that no grinding can make.
 */
export function outlineArea(outline: Outline): number {
  checkOutline(outline);
  switch (outline.grind.word) {
    case "hollow":
      return hollow(outline);
    case "convex":
      return convex(outline);
    case "lenticular":
      return lenticular(outline);
    case "hexagonal":
      return hexagonal(outline);
    case "rectangle":
      return outline.width * outline.thickness;
    case "t-back":
      return outline.flat * outline.rib + straight(outline);
    default:
      return straight(outline);
  }
}

/**
 * Area of a cross-section.
 *
 * @param section - Lengths in mm; what is left out takes the default of its grind.
 * @returns Area [mm²]
 * @throws InvalidValue for a missing figure, one that does not belong, or an impossible section.
 */
export function sectionArea(section: Section): number {
  return outlineArea(outlineOf(section));
}
