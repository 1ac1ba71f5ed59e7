import { InvalidValue } from "../core/refusal";
import { optionalText, type Parameter, type TextOptions, text, textOrNothing } from "./parameters";

export interface ChoiceOptions<T extends string> {
  readonly label: string;
  readonly help: string;
  readonly words: readonly T[];
  /** Other words for a choice. */
  readonly aliases?: Readonly<Record<string, T>>;
}

function options<T extends string>({ label, help, words, aliases = {} }: ChoiceOptions<T>): TextOptions<T> {
  const accepts = words.map((word) => `"${word}"`).join(" or ");
  return {
    label,
    help,
    kind: label,
    accepts,
    words,
    find: (given) => {
      const folded = String(given)
        .trim()
        .toLowerCase()
        .replace(/[\s-]+/g, " ");
      const found =
        words.find((word) => word === folded) ??
        (Object.hasOwn(aliases, folded) ? aliases[folded] : undefined);
      if (found !== undefined) return found;
      throw new InvalidValue(`${label} "${given}" given; give ${accepts}`);
    },
  };
}

/** One of a few words, in any case; the first where left out. */
export function choice<T extends string>(given: ChoiceOptions<T>): Parameter<T> {
  return optionalText({ ...options(given), fallback: given.words[0] ?? "" });
}

/** One of a few words, or nothing where left out. */
export function choiceOrNothing<T extends string>(given: ChoiceOptions<T>): Parameter<T | undefined> {
  return textOrNothing(options(given));
}

/** One of a few words that has to be given. */
export function requiredChoice<T extends string>(given: ChoiceOptions<T>): Parameter<T> {
  return text(options(given));
}
