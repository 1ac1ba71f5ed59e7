import type { Fuller } from "../../core/shape/fuller";
import type { Outline } from "../../core/shape/section";
import { profileOf } from "../../core/shape/strips";
import type { Path } from "../charts/scale-drawing";

/** Points along the width of the section. */
const STEPS = 160;

/** Places along a strip from spine to edge, both ends among them, closer toward the ends of an arc. */
function placesOf(from: number, to: number, width: number): number[] {
  const count = Math.max(1, Math.round(((to - from) * STEPS) / width));
  return Array.from({ length: count + 1 }, (_, step) => from + ((to - from) * step) / count);
}

/**
 * A cross-section as a closed path, edge first: mm from the edge and mm below its middle line.
 *
 * @param outline - A section that STATIONS takes.
 * @param fuller - One on each face; width and depth 0 for none.
 */
export function sectionPath(outline: Outline, fuller: Fuller): Path {
  const { width, thickness, grind } = outline;
  // The flat face of a chisel grind is its reference plane: drawn, the blade stands on its middle line as others do.
  const middle = grind.word === "chisel" ? thickness / 2 : 0;
  const points = profileOf(outline, fuller).flatMap(({ from, to, top, bottom }) =>
    placesOf(from, to, width).map((y) => [width - y, middle - top(y), middle - bottom(y)] as const),
  );
  const edgeFirst = points.reverse();
  const upper = edgeFirst.map(([s, above]) => [s, above] as const);
  const lower = edgeFirst.map(([s, , below]) => [s, below] as const);
  return [...upper, ...lower.reverse()];
}
