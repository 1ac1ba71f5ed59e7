import { NotAvailable } from "../refusal";
import { allGrades } from "./grades";
import { looseKey, tidy } from "./normalize-name";
import { byLook, bySound } from "./script";
import { FAMILIES, type Family, type Grade, SYSTEMS, type System } from "./steel";

function chosen<T extends string>(known: readonly T[], given: string, noun: string): readonly T[] {
  const wanted = given.trim().toUpperCase();
  const exact = known.filter((each) => each.toUpperCase() === wanted);
  const found = exact.length > 0 ? exact : known.filter((each) => each.toUpperCase().includes(wanted));
  if (found.length > 0) return found;
  throw new NotAvailable(`no ${noun} is called "${given}"; there are: ${known.join(", ")}`);
}

/** Families whose name holds the text: "stainless" gives three. Throws NotAvailable listing them where none does. */
export function familiesNamed(given: string): readonly Family[] {
  return chosen(FAMILIES, given, "family of steels");
}

/** Systems whose name holds the text: "AISI" gives three. Throws NotAvailable listing them where none does. */
export function systemsNamed(given: string): readonly System[] {
  return chosen(SYSTEMS, given, "system of designations");
}

/** What a list of grades is narrowed by; nothing given narrows nothing. */
export interface GradeFilter {
  /** Kinds of steel to keep. */
  readonly families?: readonly Family[] | undefined;
  /** Standards' systems to keep. */
  readonly systems?: readonly System[] | undefined;
  /** Part of a designation, alias, UNS or EN number, folded as names are. */
  readonly contains?: string | undefined;
}

function namesOf({ designation, aliases, uns, enNumber }: Grade): string {
  const names = [designation, ...aliases, uns, enNumber].map(tidy);
  return names.flatMap((name) => [name, byLook(name), bySound(name)].map(looseKey)).join("\n");
}

function matcher({ families, systems, contains }: GradeFilter): (grade: Grade) => boolean {
  const part = contains === undefined ? "" : looseKey(tidy(contains));
  return (grade) =>
    (families?.includes(grade.family) ?? true) &&
    (systems?.includes(grade.system) ?? true) &&
    namesOf(grade).includes(part);
}

/**
 * Grades of the table in its order.
 *
 * @throws NotAvailable where the filter leaves none.
 */
export function listGrades(filter: GradeFilter = {}): readonly Grade[] {
  const grades = allGrades().filter(matcher(filter));
  if (grades.length > 0) return grades;
  const { families, systems, contains } = filter;
  const asked = [families?.join(" or "), systems?.join(" or "), contains && `"${contains}" in the name`];
  throw new NotAvailable(`no grade of the table has: ${asked.filter((part) => part).join(", ")}`);
}
