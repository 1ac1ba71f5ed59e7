import { BoundedMap } from "./bounded-map";
import { NotAvailable } from "./refusal";
import { editDistance } from "./steel/name-suggestions";

/** One entry of a closed list of the trade's words: uses, grinds, quenches. */
export interface Worded {
  /** The word that the lists show. */
  readonly word: string;
  /** Other words that find the same entry. */
  readonly aliases: readonly string[];
  /** A word for several entries, such as "kitchen": it finds none of them, but says which to choose from. */
  readonly group?: string;
}

export interface WordListOptions {
  /** What the list holds, as a sentence calls it: "grind". */
  readonly noun: string;
  /** The worksheet function that lists every word. */
  readonly listedBy: string;
  /** Whether the list begins with the usual words: where nothing is spelt alike they are offered. */
  readonly startsWithUsual?: boolean;
  /** Words that a name may be given with and that tell nothing: the "knife" of "bread knife". */
  readonly fillers?: readonly string[];
}

/**
 * The entry that is asked for, by itself or by a word for it.
 *
 * @throws what the finder of the list throws for a word.
 */
export function wordAsked<T extends Worded>(given: T | string, find: (word: string) => T): T {
  return typeof given === "object" && given !== null ? given : find(given);
}

const SHOWN = 4;
const REMEMBERED = 2000;
/** Longer than any word of the trade: a whole page pasted by mistake is not compared with each of them. */
const LONGEST = 100;

/** Case, hyphens, brackets and repeated spaces do not tell words apart. */
function foldWord(given: string): string {
  return given
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

/** How unlike two folded names are: 0 for the same words in any order, 1 for nothing in common. */
function unlikeness(given: string, name: string): number {
  const names = name.split(" ");
  const each = given.split(" ").map((word) => {
    const distances = names.map((other) => editDistance(word, other) / Math.max(word.length, other.length));
    return Math.min(...distances);
  });
  return each.reduce((sum, distance) => sum + distance, 0) / each.length;
}

/** True where every word given begins a word of the name. */
function fits(given: string, name: string): boolean {
  const names = name.split(" ");
  return given.split(" ").every((word) => names.some((other) => other.startsWith(word)));
}

function quotedList(words: readonly string[]): string {
  return words.map((word) => `"${word}"`).join(", ");
}

type Names<T> = ReadonlyMap<string, T>;

function namesOf<T extends Worded>(entries: readonly T[]): Names<T> {
  const names = new Map<string, T>();
  for (const entry of entries)
    for (const name of [entry.word, ...entry.aliases]) names.set(foldWord(name), entry);
  return names;
}

function fitting<T>(names: Names<T>, folded: string): T[] {
  if (folded === "") return [];
  return [...new Set([...names].filter(([name]) => fits(folded, name)).map(([, entry]) => entry))];
}

/** Entries of a group that a given word names, those first that fit the other words too. */
function ofGroup<T extends Worded>(entries: readonly T[], folded: string): T[] {
  const given = folded.split(" ");
  const inGroup = entries.filter(({ group }) => group !== undefined && given.includes(group));
  const others = given.filter((word) => inGroup.every(({ group }) => word !== group)).join(" ");
  const alsoFits = new Set(fitting(namesOf(inGroup), others));
  return [...alsoFits, ...inGroup.filter((entry) => !alsoFits.has(entry))];
}

/** The name without the words that tell nothing; as it is where nothing else is left. */
function withoutFillers(folded: string, fillers: readonly string[]): string {
  const telling = folded.split(" ").filter((word) => !fillers.includes(word));
  return telling.length === 0 ? folded : telling.join(" ");
}

/** Words less alike than this have nothing to do with each other. */
const ALIKE = 0.4;

function nearest<T extends Worded>(names: Names<T>, folded: string, startsWithUsual: boolean): string[] {
  const all = [...names].map(([name, { word }]) => ({ word, distance: unlikeness(folded, name) }));
  const isNear = all.some(({ distance }) => distance <= ALIKE);
  const ranked = startsWithUsual && !isNear ? all : all.sort((a, b) => a.distance - b.distance);
  return [...new Set(ranked.map(({ word }) => word))].slice(0, SHOWN);
}

function ambiguous(given: string | number, words: readonly string[], noun: string): NotAvailable {
  const more = words.length > SHOWN ? " and others" : "";
  return new NotAvailable(
    `"${given}" fits more than one ${noun}: ${quotedList(words.slice(0, SHOWN))}${more}. Give one of them in full`,
  );
}

/**
 * Makes the finder of a closed word list. A word is found by its exact name or alias, or by the
 * beginnings of its words where only one entry fits; between several, and within a group, it never guesses.
 *
 * @returns A function that gives the entry, or throws NotAvailable naming the candidates or the
 *   nearest words.
 */
export function wordFinder<T extends Worded>(
  entries: readonly T[],
  { noun, listedBy, startsWithUsual = false, fillers = [] }: WordListOptions,
): (given: string | number) => T {
  const names = namesOf(entries);
  const search = (given: string | number): T => {
    if (String(given).length > LONGEST) {
      throw new NotAvailable(
        `"${String(given).slice(0, LONGEST / 2)}…" is not a known ${noun}; ${listedBy} lists them all`,
      );
    }
    const folded = foldWord(String(given));
    const named = names.get(folded);
    if (named !== undefined) return named;
    const telling = withoutFillers(folded, fillers);
    const ways = [fitting(names, folded), ofGroup(entries, folded), fitting(names, telling)];
    const candidates = ways.find((list) => list.length > 0) ?? [];
    const [only, ...others] = candidates;
    if (only === undefined) {
      const words = quotedList(nearest(names, telling, startsWithUsual));
      throw new NotAvailable(
        `"${given}" is not a known ${noun}. Nearest: ${words}; ${listedBy} lists them all`,
      );
    }
    if (others.length === 0) return only;
    throw ambiguous(
      given,
      candidates.map(({ word }) => word),
      noun,
    );
  };
  const found = new BoundedMap<string | number, T>(REMEMBERED);
  return (given) => {
    const known = found.get(given);
    if (known !== undefined) return known;
    const entry = search(given);
    found.set(given, entry);
    return entry;
  };
}
