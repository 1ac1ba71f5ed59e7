import { InvalidValue } from "../../core/refusal";
import { optionalText, type Parameter } from "../parameters";

/** Reads one of a few words, in any case. */
function oneOf<T extends string>(words: readonly T[], given: string | number): T {
  const found = words.find((word) => word === String(given).trim().toLowerCase());
  if (found !== undefined) return found;
  throw new InvalidValue(`bound "${given}" given; give ${words.join(", ")}`);
}

/** Which figure of a range is wanted; the first word is the default. */
export function bound<T extends string>(help: string, words: readonly [T, ...T[]]): Parameter<T> {
  return optionalText({
    label: "bound",
    kind: "bound",
    help,
    accepts: words.map((word) => `"${word}"`).join(", "),
    words,
    fallback: words[0],
    find: (given) => oneOf(words, given),
  });
}
