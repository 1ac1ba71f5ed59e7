import type { Bounds, Element } from "./composition";
import type { Steel } from "./steel";

const NONE: Bounds = { low: null, high: null };

/**
 * Limits of an element, mass %: those of the standard, or the figure of an analysis on both sides.
 * Both null where nothing is specified or analysed.
 */
export function boundsOf({ grade, composition }: Steel, element: Element): Bounds {
  if (grade !== null) return grade.limits[element] ?? NONE;
  const figure = composition[element];
  return figure === 0 ? NONE : { low: figure, high: figure };
}
