import type { Composition } from "./composition";
import type { Family } from "./steel";

/**
 * Lowest content at which an element makes a steel an alloy steel, mass %: EN 10020 table 1, from memory.
 */
const ALLOYED_FROM: Readonly<Partial<Record<keyof Composition, number>>> = {
  Mn: 1.65,
  Si: 0.6,
  Cr: 0.3,
  Ni: 0.3,
  Mo: 0.08,
  V: 0.1,
  W: 0.3,
  Co: 0.3,
  Cu: 0.4,
  Al: 0.3,
};

/** ISO 4957, from memory: at least two of W, Mo and V, 7 % together, 3 to 6 % Cr, 0.60 % C or more. */
function isHighSpeed({ C, Cr, W, Mo, V }: Composition): boolean {
  const present = [W, Mo, V].filter((content) => content > 0.5).length;
  return present >= 2 && W + Mo + V >= 7 && Cr >= 3 && Cr <= 6 && C >= 0.6;
}

/** EN 10020: at least 10.5 % Cr and at most 1.2 % C. */
function isStainless({ C, Cr }: Composition): boolean {
  return Cr >= 10.5 && C <= 1.2;
}

function stainlessKind({ C, Cr, Ni }: Composition): Family {
  if (Ni >= 6) return "austenitic stainless";
  return Cr >= 16 && C < 0.12 && Ni < 1 ? "ferritic stainless" : "martensitic stainless";
}

function isAlloyed(composition: Composition): boolean {
  return Object.entries(ALLOYED_FROM).some(
    ([element, from]) => composition[element as keyof Composition] >= from,
  );
}

/** The family that an analysis belongs to; chromium tool steels split at 0.50 % C into hot and cold work. */
export function familyOf(composition: Composition): Family {
  if (isHighSpeed(composition)) return "high speed";
  if (isStainless(composition)) return stainlessKind(composition);
  if (composition.Cr >= 3) return composition.C < 0.5 ? "hot work" : "cold work";
  return isAlloyed(composition) ? "low alloy" : "plain carbon";
}
