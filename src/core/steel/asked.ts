import { InvalidValue } from "../refusal";
import { findSteel, steelOf } from "./find";
import type { Grade, Steel } from "./steel";

/** A steel as a program may ask for it: what `findSteel` gives, a grade of `listGrades`, or a designation. */
export type SteelAsked = Steel | Grade | string | number;

/**
 * The steel that is asked for.
 *
 * @throws what `findSteel` throws for a name; InvalidValue for what is no steel at all.
 */
export function steelAsked(given: SteelAsked): Steel {
  if (typeof given === "string" || typeof given === "number") return findSteel(given);
  if (typeof given === "object" && given !== null) {
    if ("composition" in given) return given;
    if ("designation" in given) return steelOf(given);
  }
  throw new InvalidValue(
    'no steel given: give a designation such as "1095", an analysis, or what findSteel answers',
  );
}
