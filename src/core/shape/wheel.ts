import { lengthText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { segmentHeight, segmentRadius } from "./segment";

/**
 * Depth of the hollow that a wheel grinds.
 *
 * @param diameter - Of the wheel [mm]
 * @param height - Of the ground face, edge to top [mm]
 * @returns Depth in its middle [mm]
 * @throws InvalidValue for a face wider than the wheel.
 * Error: exact for a wheel of circular section. Source: plane geometry.
 */
export function hollowDepth(diameter: number, height: number): number {
  if (height <= diameter) return segmentHeight(diameter / 2, height);
  throw new InvalidValue(
    `a wheel ${lengthText(diameter)} across cannot grind a hollow ${lengthText(height)} high: ` +
      `it must be at least ${lengthText(height)} across`,
  );
}

/**
 * Wheel that grinds a hollow of the depth asked.
 *
 * @param height - Of the ground face, edge to top [mm]
 * @param depth - In its middle [mm]
 * @returns Diameter [mm]
 * @throws InvalidValue for a hollow deeper than half its height.
 * Error: exact for a wheel of circular section. Source: plane geometry.
 */
export function wheelDiameter(height: number, depth: number): number {
  if (2 * depth <= height) return 2 * segmentRadius(height, depth);
  throw new InvalidValue(
    `a hollow ${lengthText(height)} high cannot be ${lengthText(depth)} deep: a wheel reaches at most ` +
      `half the height, ${lengthText(height / 2)}`,
  );
}

/**
 * Width of the fuller that a wheel or scraper of a radius leaves at a depth, on a flat face.
 *
 * @param radius - Of the tool [mm]
 * @param depth - Of the fuller [mm]
 * @returns Width, rim to rim [mm]
 * @throws InvalidValue for a fuller deeper than the radius.
 * Error: exact for a tool of circular section. Source: plane geometry.
 */
export function fullerWidth(radius: number, depth: number): number {
  if (depth <= radius) return 2 * Math.sqrt(depth * (2 * radius - depth));
  throw new InvalidValue(
    `fuller depth ${lengthText(depth)} is more than the radius of the tool, ${lengthText(radius)}`,
  );
}
