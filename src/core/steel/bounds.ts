import { type SteelAsked, steelAsked } from "./asked";
import type { Bounds, Element } from "./composition";

const NONE: Bounds = { low: null, high: null };

/**
 * Limits of an element: those of the standard, or the figure of an analysis on both sides.
 *
 * @param steel - A grade or an analysis, or its name.
 * @param element - Its symbol.
 * @returns [mass %]; both null where nothing is specified or analysed.
 * Limits: nothing is refused. Error: none, as printed. Source: the standard of the grade, as STEEL names it.
 */
export function boundsOf(steel: SteelAsked, element: Element): Bounds {
  const { grade, composition, stated = [] } = steelAsked(steel);
  if (grade !== null) return grade.limits[element] ?? NONE;
  const figure = composition[element];
  return figure === 0 && !stated.includes(element) ? NONE : { low: figure, high: figure };
}
