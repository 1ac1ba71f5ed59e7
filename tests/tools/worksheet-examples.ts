import { expect, it } from "vitest";
import { Refusal } from "../../src/core/refusal";
import type { Example, WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";

/** Cells of a call, refusals written as "code sentence". */
export function answer(fn: WorksheetFunction, ...given: unknown[]): unknown[][] {
  return evaluate(fn, given).map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}

function expectedRows({ gives }: Example): unknown[][] {
  if (!Array.isArray(gives)) return [[gives]];
  return Array.isArray(gives[0]) ? (gives as unknown[][]) : [gives as unknown[]];
}

function expectCell(found: unknown, cell: unknown, within: number): void {
  if (cell === "…") expect(found).toEqual(expect.any(String));
  else if (typeof cell !== "number") expect(found).toBe(cell);
  else {
    expect(found).toEqual(expect.any(Number));
    expect(Math.abs((found as number) - cell)).toBeLessThanOrEqual(within + 1e-9);
  }
}

/** One test for each worked case in the declarations. */
export function testExamples(functions: Readonly<Record<string, WorksheetFunction>>): void {
  for (const fn of Object.values(functions)) {
    for (const example of examplesOf(fn)) {
      it(`${fn.name}(${JSON.stringify(example.given)})`, () => {
        const given = answer(fn, ...example.given);
        expectedRows(example).forEach((row, r) => {
          row.forEach((cell, c) => {
            expectCell(given[r]?.[c], cell, example.within ?? 0);
          });
        });
      });
    }
  }
}
