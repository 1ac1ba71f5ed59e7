import { BoundedMap } from "../bounded-map";
import { attempt, InvalidValue, NotAvailable, Refusal } from "../refusal";
import { looksLikeAnalysis, parseAnalysis } from "./analysis";
import { decodedCarbon } from "./decode/decoded-carbon";
import { nearestDesignations } from "./name-suggestions";
import { gradesNamed } from "./names";
import { nickname } from "./nicknames";
import type { Grade, Steel } from "./steel";
import { typicalComposition } from "./typical";

const LONGEST_TEXT = 400;
const HOW = '"C 0.95 Mn 0.40 Si 0.22"';

const steels = new WeakMap<Grade, Steel>();

/** The steel that stands for a grade of the table; the same object each time. */
export function steelOf(grade: Grade): Steel {
  const known = steels.get(grade);
  if (known !== undefined) return known;
  const { designation, family } = grade;
  const steel: Steel = { name: designation, grade, family, composition: typicalComposition(grade) };
  steels.set(grade, steel);
  return steel;
}

function unknown(name: string): never {
  const often = nickname(name);
  if (often !== undefined) {
    throw new NotAvailable(
      `"${name}" is no grade but a name of the trade, often ${often}: unknown steel, test a coupon before you rely on it`,
    );
  }
  const near = nearestDesignations(name);
  const hint =
    near.length === 0
      ? "nothing in the grade table is spelt like it"
      : `nearest designations: ${near.join(", ")} (spelt alike, not the same steel)`;
  const told = decodedCarbon(name);
  const decoded = told === null ? "" : `; its name alone says C ${told} (DECODE)`;
  throw new NotAvailable(
    `"${name}" is not in the grade table; ${hint}${decoded}. Or give an analysis in mass %: ${HOW}`,
  );
}

function ambiguous(name: string, grades: readonly Grade[]): never {
  const which = grades.map(({ designation, standard }) => `${designation} (${standard})`).join(" and of ");
  const ways = grades.map(({ designation }) => `"${designation}"`).join(" or ");
  throw new NotAvailable(`"${name}" is the name of ${which}: write ${ways}`);
}

function gradeNamed(name: string): Grade | undefined {
  const grades = gradesNamed(name);
  if (grades.length > 1) ambiguous(name, grades);
  return grades[0];
}

/** The word people add to a designation, and the EN number written without its point: 12842 for 1.2842. */
const WITH_WORD = /^(.+?)\s+steel$/i;
const WITHOUT_POINT = /^1(\d{4})$/;
const ZERO_FOR_O = /^0(?=\d{1,2}$)/;

function looselyNamed(name: string): Grade | undefined {
  const bare = WITH_WORD.exec(name)?.[1] ?? name;
  const number = WITHOUT_POINT.exec(bare)?.[1];
  return bare === name && number === undefined
    ? undefined
    : gradeNamed(number === undefined ? bare : `1.${number}`);
}

function refuseZero(name: string): void {
  const meant = name.replace(ZERO_FOR_O, "O");
  if (meant === name || gradesNamed(meant).length === 0) return;
  throw new NotAvailable(`"${name}" begins with a zero: write "${meant}" with the letter O`);
}

function fromText(text: string): Steel {
  const name = text.trim();
  if (name === "")
    throw new InvalidValue(
      'no steel given: put the grade in quotes ("O1") or point at the cell that holds it',
    );
  if (name.length > LONGEST_TEXT)
    throw new InvalidValue(
      `a text of ${name.length} characters is not a steel: give a designation, or ${HOW}`,
    );
  refuseZero(name);
  const grade = gradeNamed(name) ?? looselyNamed(name);
  if (grade !== undefined) return steelOf(grade);
  return looksLikeAnalysis(name) ? parseAnalysis(name) : unknown(name);
}

/** A designation typed as a number: 1095, or an EN number that may have lost its final zeros, 1.251. */
function fromNumber(given: number): Steel {
  const name = String(given);
  const isEnNumber = given > 1 && given < 2;
  const isDesignation = Number.isInteger(given) && given >= 10;
  if (!isEnNumber && !isDesignation)
    throw new InvalidValue(
      `${name} is not a steel: give a designation such as 1095, an EN number, or ${HOW}`,
    );
  return fromText(name);
}

function resolve(given: string | number): Steel | Refusal {
  return attempt(() => (typeof given === "number" ? fromNumber(given) : fromText(given)));
}

/** Answers already given, refusals included: a column of 100,000 rows repeats a few names. */
const answers = new BoundedMap<string | number, Steel | Refusal>(5000);

/**
 * The steel that a cell names.
 *
 * @param given - Designation, alias, UNS or EN number, as text or number, or an analysis [mass %]
 * @returns A grade of the table or an analysis.
 * @throws NotAvailable for a name that is not in the table, with the nearest designations, or that
 *   several grades share; InvalidValue for an empty text or a malformed analysis.
 * Error: none, as printed. Source: the standard of the grade, as STEEL names it.
 */
export function findSteel(given: string | number): Steel {
  let answer = answers.get(given);
  if (answer === undefined) {
    answer = resolve(given);
    answers.set(given, answer);
  }
  if (answer instanceof Refusal) throw answer;
  return answer;
}
