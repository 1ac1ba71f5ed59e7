import { lengthText, quantityText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { relation } from "../relation";

/** Angles, bevels and wheels. */
export const EDGE_GEOMETRY = relation({
  title: "Geometry of edges and wheels",
  source: "plane-geometry",
  locator: "right triangle of the edge bevel; arc over a chord",
  evidence: "standard",
  inputs: { angle: { label: "angle a side", unit: "°", min: 0, max: 45 } },
  output: { label: "length or angle", unit: "" },
  error: { size: 0, unit: "", kind: "exact for straight bevels and round wheels" },
  note: "Angles are per side; an edge sharpened at 15° a side is a 30° edge included.",
});

const RADIANS = Math.PI / 180;

/**
 * Height of the final edge bevel, across the width.
 *
 * @param edge - Thickness behind the edge bevel [mm]
 * @param angle - Per side, above 0, below 90 [°]
 * @returns Height [mm]
 * Limits: none are checked. Error and source: {@link EDGE_GEOMETRY}.
 */
export function edgeBevel(edge: number, angle: number): number {
  return edge / (2 * Math.tan(angle * RADIANS));
}

/**
 * Angle of an edge from what can be measured.
 *
 * @param edge - Thickness behind the edge bevel [mm]
 * @param face - Length of the bevel's face, shoulder to edge [mm]
 * @returns Angle per side [°]
 * @throws InvalidValue for a face shorter than half the thickness.
 * Error and source: {@link EDGE_GEOMETRY}.
 */
export function edgeAngle(edge: number, face: number): number {
  if (2 * face >= edge) return Math.asin(edge / (2 * face)) / RADIANS;
  throw new InvalidValue(
    `face ${lengthText(face)} is shorter than half the thickness behind the edge, ${lengthText(edge / 2)}: ` +
      "measure the face from shoulder to edge",
  );
}

/**
 * Included angle between the two faces of a full flat grind.
 *
 * @param width - Spine to edge [mm]
 * @param thickness - At the spine [mm]
 * @param edge - Behind the edge [mm]
 * @returns Included angle [°]
 * @throws InvalidValue for an edge thicker than the spine.
 * Error and source: {@link EDGE_GEOMETRY}.
 */
export function grindAngle(width: number, thickness: number, edge: number): number {
  if (edge <= thickness) return (2 * Math.atan((thickness - edge) / (2 * width))) / RADIANS;
  throw new InvalidValue(`edge ${lengthText(edge)} is thicker than the blade, ${lengthText(thickness)}`);
}

/** "was 15 meant?" for an angle over 45°, which is most likely the included one. */
export function askIfIncluded(angle: number): string {
  return angle <= 90
    ? `was the included angle meant? Then give half of it, ${quantityText(angle / 2, "°")} a side`
    : "give the angle of one side, up to 45°";
}
