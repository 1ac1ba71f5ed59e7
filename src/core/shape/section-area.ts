import { type Limit, relation } from "../relation";
import { type Outline, outlineOf, type Section } from "./section";
import { checkOutline } from "./section-checks";
import { areaOfStrips } from "./strips";

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

/**
 * Area of a section whose figures are all given; the small triangle of the final edge bevel is not counted.
 *
 * @param outline - Lengths [mm]
 * @returns Area [mm²], exact for the outline described ({@link SECTION_AREA})
 * @throws InvalidValue for a section that no grinding can make.
 */
export function outlineArea(outline: Outline): number {
  checkOutline(outline);
  return areaOfStrips(outline);
}

/**
 * Area of a cross-section.
 *
 * @param section - Lengths [mm]; what is left out takes the default of its grind.
 * @returns Area [mm²]
 * @throws InvalidValue for a missing figure, one that does not belong, or an impossible section.
 * Error and source: {@link SECTION_AREA}.
 */
export function sectionArea(section: Section): number {
  return outlineArea(outlineOf(section));
}
