import { allGrades } from "./grades";
import { looseKey, tidy, tightKey } from "./normalize-name";
import { splitPrefix } from "./prefix";
import { byLook, bySound, isCyrillic, latinSpellings } from "./script";
import type { Grade, System } from "./steel";

type Index = ReadonlyMap<string, readonly Grade[]>;

/** Older lists print the high-alloy and high-speed names without hyphens: X40CrMoV51, HS652C. */
const PRINTED_CLOSED = /^(?:X|HS)\d/;
/** An EN number, which loses its final zeros when it is typed as a number: 1.251 for 1.2510. */
const EN_NUMBER = /^1-(\d{2,4})$/;

function keysOf(name: string): string[] {
  const tidied = tidy(name);
  const spellings = isCyrillic(tidied) ? latinSpellings(tidied) : [tidied];
  const closed = PRINTED_CLOSED.test(tidied) ? [looseKey(tidied)] : [];
  return [...spellings.map(tightKey), ...closed];
}

/** Suffix grades print the UNS number of the grade they are a class of: it names the whole, never one class. */
function ownsUns(grade: Grade): boolean {
  if (grade.uns === "") return false;
  const sharing = allGrades().filter(({ uns }) => uns === grade.uns);
  return sharing.every(({ designation }) => designation.startsWith(grade.designation));
}

function namesOf(grade: Grade): string[] {
  const { designation, aliases, uns, enNumber } = grade;
  const names = [designation, ...aliases, ownsUns(grade) ? uns : "", enNumber];
  return names.filter((name) => name !== "");
}

function buildIndex(): Index {
  const index = new Map<string, Grade[]>();
  for (const grade of allGrades()) {
    for (const key of new Set(namesOf(grade).flatMap(keysOf))) {
      const known = index.get(key);
      if (known === undefined) index.set(key, [grade]);
      else known.push(grade);
    }
  }
  return index;
}

let loaded: Index | undefined;

function index(): Index {
  loaded ??= buildIndex();
  return loaded;
}

/** Every folded name of the table with its grades, for tests and for the search of near names. */
export function nameIndex(): Index {
  return index();
}

function padded(key: string): string {
  const digits = EN_NUMBER.exec(key)?.[1];
  return digits === undefined ? key : `1-${digits.padEnd(4, "0")}`;
}

function byKeys(latin: string): readonly Grade[] {
  return index().get(padded(tightKey(latin))) ?? index().get(looseKey(latin)) ?? [];
}

/** Grades that a tidied name stands for, whatever alphabet it was typed in. */
function matches(tidied: string): readonly Grade[] {
  if (!isCyrillic(tidied)) return byKeys(tidied);
  return [...new Set([...byKeys(bySound(tidied)), ...byKeys(byLook(tidied))])];
}

function withoutCondition(tidied: string): string {
  return tidied.replace(/\s*\+[A-Z]{1,3}\d*$/, "");
}

function inSystems(grades: readonly Grade[], systems: readonly System[]): readonly Grade[] {
  return grades.filter(({ system }) => systems.includes(system));
}

/**
 * Grades of the table with this name: none, one, or several where systems share a name.
 *
 * @param name - Designation, alias, UNS or EN number. Case, spaces, hyphens, full-width characters,
 *   Cyrillic and Latin look-alikes and transliterations are folded; a system in front ("DIN", "JIS",
 *   "ГОСТ") binds the name to it; an EN delivery condition ("+QT") is dropped.
 */
export function gradesNamed(name: string): readonly Grade[] {
  const tidied = withoutCondition(tidy(name));
  const direct = matches(tidied);
  if (direct.length > 0) return direct;
  const prefixed = splitPrefix(tidied);
  return prefixed === undefined ? [] : inSystems(matches(prefixed.rest), prefixed.systems);
}
