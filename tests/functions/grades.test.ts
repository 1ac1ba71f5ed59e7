import { describe, expect, test } from "vitest";
import { Refusal } from "../../src/core/refusal";
import type { Cell } from "../../src/functions/cells";
import { answersOfGrades, gradeCounts, steelFunctions } from "./grade-counts";
import frozen from "./grade-counts.json";

function isSound(cell: Cell): boolean {
  if (cell instanceof Refusal) return cell.message.length >= 20 && cell.message.includes(" ");
  return typeof cell === "string" || (typeof cell === "number" && Number.isFinite(cell));
}

describe("every grade through every function that takes a steel", () => {
  test.each(steelFunctions.map((fn) => [fn.name, fn] as const))("%s: a value or a sentence", (name, fn) => {
    const unsound = answersOfGrades(fn).flatMap(([designation, cells]) =>
      cells.filter((cell) => !isSound(cell)).map((cell) => `${name} of ${designation}: ${String(cell)}`),
    );
    expect(unsound).toEqual([]);
  });

  test("as many grades have a value as were frozen", () => {
    expect(gradeCounts()).toEqual(frozen);
  });
});
