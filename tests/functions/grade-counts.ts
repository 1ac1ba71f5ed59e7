import { Refusal } from "../../src/core/refusal";
import { allGrades } from "../../src/core/steel/grades";
import { SYSTEMS } from "../../src/core/steel/steel";
import table from "../../src/data/steel/grades.json";
import { catalogue } from "../../src/functions/catalogue";
import type { Cell } from "../../src/functions/cells";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";

/** How many grades a function answers, and how many it refuses with a sentence. */
export interface GradeCount {
  readonly values: number;
  readonly sentences: number;
}

const designations = allGrades().map(({ designation }) => designation);

function steelPosition(fn: WorksheetFunction): number {
  return Object.values(fn.parameters).findIndex(({ kind, takes }) => kind === "steel" && takes === "cell");
}

/** Functions that take a steel in a cell. */
export const steelFunctions = catalogue.filter((fn) => steelPosition(fn) >= 0);

/** The arguments of a worked example that names a steel, the steel to be exchanged. */
function pattern(fn: WorksheetFunction): readonly unknown[] {
  const position = steelPosition(fn);
  const example = examplesOf(fn).find(
    ({ given }) => given[position] !== undefined && !Array.isArray(given[position]),
  );
  return example?.given ?? examplesOf(fn)[0]?.given ?? [];
}

function callFor(fn: WorksheetFunction, designation: string) {
  const position = steelPosition(fn);
  const given = pattern(fn);
  const length = Math.max(given.length, position + 1);
  return Array.from({ length }, (_, index) => (index === position ? designation : given[index]));
}

const answers = new Map<string, readonly (readonly [string, Cell[]])[]>();

/** What a function says of every grade; asked once, since counts and soundness both need it. */
export function answersOfGrades(fn: WorksheetFunction): readonly (readonly [designation: string, Cell[]])[] {
  const known = answers.get(fn.name);
  if (known !== undefined) return known;
  const made = designations.map((name) => [name, evaluate(fn, callFor(fn, name)).flat()] as const);
  answers.set(fn.name, made);
  return made;
}

function countOf(fn: WorksheetFunction): GradeCount {
  const all = answersOfGrades(fn);
  const sentences = all.filter(([, cells]) => cells.some((cell) => cell instanceof Refusal)).length;
  return { values: all.length - sentences, sentences };
}

/** Rows of the grade table by system, and by the shape of their limit of carbon. */
function tableCounts(): Readonly<Record<string, number>> {
  const carbon = allGrades().map(({ limits }) => limits.C);
  const bySystem = SYSTEMS.map((system) => [
    `rows of ${system}`,
    table.rows.filter((row) => row[2] === system).length,
  ]);
  return {
    "rows of the grade table": table.rows.length,
    ...Object.fromEntries(bySystem),
    "carbon as a range": carbon.filter((bounds) => bounds?.low != null && bounds.high != null).length,
    "carbon as a maximum": carbon.filter((bounds) => bounds?.low === null).length,
    "carbon as a minimum": carbon.filter((bounds) => bounds?.high === null).length,
  };
}

/** What an added grade changes: counts of every function by the alphabet, then those of the table. */
export function gradeCounts(): Readonly<Record<string, GradeCount | number>> {
  const names = steelFunctions.map((fn) => [fn.name, countOf(fn)] as const);
  return { ...Object.fromEntries(names.sort(([a], [b]) => (a < b ? -1 : 1))), ...tableCounts() };
}
