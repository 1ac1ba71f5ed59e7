import type { Fuller } from "../shape/fuller";
import { gaussRule, type QuadratureRule } from "../shape/gauss";
import type { Outline } from "../shape/section";
import { type Profile, profileOf } from "../shape/strips";

/** What a cross-section is to a beam. Lengths in mm; bending is across the flat unless said. */
export interface SectionProperties {
  /** Of the section [mm²]. */
  readonly area: number;
  /** About the axis through the centroid along the width: bending across the flat [mm⁴]. */
  readonly secondMoment: number;
  /** About the axis through the centroid across the thickness: bending edgewise [mm⁴]. */
  readonly edgewiseMoment: number;
  /** Distance from the neutral axis to the farthest fibre, bending across the flat [mm]. */
  readonly extremeFibre: number;
}

const STRAIGHT_RULE = gaussRule(4);
const ARC_RULE = gaussRule(16);

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
function addStrip(sums: Sums, strip: Profile, { points, weights }: QuadratureRule): void {
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
 * @param outline - A section that `checkOutline` lets pass [mm]
 * @param fuller - One on each face; width and depth both 0 for none [mm]
 * @returns Area [mm²], second moments about the centroid [mm⁴], farthest fibre [mm]
 * Source: plane geometry; the parallel-axis theorem.
 */
export function sectionProperties(outline: Outline, fuller: Fuller): SectionProperties {
  const sums: Sums = { area: 0, lift: 0, across: 0, reach: 0, edgewise: 0, highest: 0, lowest: 0 };
  for (const strip of profileOf(outline, fuller))
    addStrip(sums, strip, strip.straight ? STRAIGHT_RULE : ARC_RULE);
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
