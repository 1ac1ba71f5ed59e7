import { describe, expect, test } from "vitest";
import { Refusal } from "../../src/core/refusal";
import { allGrades } from "../../src/core/steel/grades";
import { catalogue } from "../../src/functions/catalogue";
import type { Cell } from "../../src/functions/cells";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import frozen from "./grade-counts.json";

type Counts = Readonly<Record<string, { readonly values: number; readonly sentences: number }>>;

const designations = allGrades().map(({ designation }) => designation);

function steelPosition(fn: WorksheetFunction): number {
  return Object.values(fn.parameters).findIndex(({ kind, takes }) => kind === "steel" && takes === "cell");
}

/** The arguments of a worked example that names a steel, the steel to be exchanged. */
function pattern(fn: WorksheetFunction): readonly unknown[] {
  const position = steelPosition(fn);
  const example = examplesOf(fn).find(
    ({ given }) => given[position] !== undefined && !Array.isArray(given[position]),
  );
  return example?.given ?? examplesOf(fn)[0]?.given ?? [];
}

function isSound(cell: Cell): boolean {
  if (cell instanceof Refusal) return cell.message.length >= 20 && cell.message.includes(" ");
  return typeof cell === "string" || (typeof cell === "number" && Number.isFinite(cell));
}

function callFor(fn: WorksheetFunction, designation: string) {
  const position = steelPosition(fn);
  const given = pattern(fn);
  const length = Math.max(given.length, position + 1);
  return Array.from({ length }, (_, index) => (index === position ? designation : given[index]));
}

const steelFunctions = catalogue.filter((fn) => steelPosition(fn) >= 0);

describe("every grade through every function that takes a steel", () => {
  test.each(steelFunctions.map((fn) => [fn.name, fn] as const))("%s", (name, fn) => {
    let sentences = 0;
    for (const designation of designations) {
      const cells = evaluate(fn, callFor(fn, designation)).flat();
      expect(
        cells.filter((cell) => !isSound(cell)),
        `${name} of ${designation}`,
      ).toEqual([]);
      if (cells.some((cell) => cell instanceof Refusal)) sentences += 1;
    }
    const counts = { values: designations.length - sentences, sentences };
    console.log(`${name}: ${counts.values} grades with a value, ${counts.sentences} with a sentence`);
    expect(counts).toEqual((frozen as Counts)[name]);
  });

  test("no function is missing from the frozen counts, and none is left over", () => {
    expect(Object.keys(frozen).sort()).toEqual(steelFunctions.map(({ name }) => name).sort());
  });
});
