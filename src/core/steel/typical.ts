import { type Bounds, type Composition, ELEMENTS, type Element } from "./composition";
import { encodedCarbon } from "./nominal-carbon";
import type { Grade } from "./steel";
import { usualCarbon } from "./usual-carbon";

/** Silicon of plain carbon steel whose standard sets no limit for it, mass %: common practice, no source. */
const ASSUMED_SILICON = 0.22;

/** Grades whose carbon limits span steels that harden and temper differently: the bare name fixes no carbon. */
const OPEN_GRADES: ReadonlySet<string> = new Set(["W1", "W2", "L2", "M2"]);

/** True where a grade does not fix its carbon: one limit only, or a span of several carbon classes. */
export function hasOpenCarbon({ designation, limits }: Grade): boolean {
  const { low = null, high = null } = limits.C ?? {};
  return low === null || high === null || OPEN_GRADES.has(designation);
}

/** Middle of a range without the dust of binary arithmetic. */
function middle(low: number, high: number): number {
  return Number(((low + high) / 2).toFixed(4));
}

/** Every steel is made with some silicon and manganese, so a maximum alone is no residual of these. */
const NEVER_RESIDUAL: ReadonlySet<Element> = new Set(["Si", "Mn"]);

/** True where half of a maximum stands for an element that the standard limits only upwards. */
export function isHalfMaximum(element: Element, { low, high }: Bounds): boolean {
  return NEVER_RESIDUAL.has(element) && low === null && high !== null;
}

function typicalOf({ low, high }: Bounds): number {
  if (low === null) return 0;
  return high === null ? low : middle(low, high);
}

function typicalCarbon(grade: Grade): number {
  if (hasOpenCarbon(grade)) return usualCarbon(grade.designation) ?? Number.NaN;
  return encodedCarbon(grade) ?? typicalOf(grade.limits.C ?? { low: null, high: null });
}

/** True where silicon is assumed, since the standard of a plain carbon steel leaves it out. */
export function hasAssumedSilicon({ family, limits }: Grade): boolean {
  return family === "plain carbon" && limits.Si === undefined;
}

/** Usual contents where the limits are so wide that their middle is sold by nobody [mass %]: common practice, no source. */
const USUAL_CONTENTS: Readonly<Record<string, Readonly<Partial<Record<Element, number>>>>> = {
  S5: { Mo: 0.45 },
};

function typicalElement(grade: Grade, element: Element): number {
  if (element === "C") return typicalCarbon(grade);
  if (element === "Si" && hasAssumedSilicon(grade)) return ASSUMED_SILICON;
  const usual = USUAL_CONTENTS[grade.designation]?.[element];
  if (usual !== undefined) return usual;
  const limits = grade.limits[element];
  if (limits === undefined) return 0;
  return isHalfMaximum(element, limits) ? middle(0, limits.high ?? 0) : typicalOf(limits);
}

/**
 * The composition that relations use for a grade, mass %: carbon as the designation encodes it, else
 * the middle of its limits; other elements the middle; a minimum alone as that minimum; a maximum
 * alone as 0, for silicon and manganese as half of it. Where the grade does not fix its carbon, what
 * it is usually sold with, else NaN.
 */
export function typicalComposition(grade: Grade): Composition {
  const entries = ELEMENTS.map((element) => [element, typicalElement(grade, element)]);
  return Object.fromEntries(entries) as Composition;
}
