import { expect, test } from "vitest";
import { Refusal } from "../../src/core/refusal";
import type { Example, WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";

/** Answers a call; refusals are written as "code sentence". */
export function answer(fn: WorksheetFunction, ...given: unknown[]) {
  return evaluate(fn, given).map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}

/** The first cell of an answer: the value of a scalar function, or the sentence of a refusal. */
export function first(fn: WorksheetFunction, ...given: unknown[]) {
  return answer(fn, ...given)[0]?.[0];
}

function expectedRows({ gives }: Example): unknown[][] {
  if (!Array.isArray(gives)) return [[gives]];
  return Array.isArray(gives[0]) ? (gives as unknown[][]) : [gives as unknown[]];
}

function expectCell(found: unknown, wanted: unknown, within: number): void {
  if (wanted === "…") expect(found).toEqual(expect.any(String));
  else if (typeof wanted === "number") {
    expect(found).toEqual(expect.any(Number));
    expect(Math.abs((found as number) - wanted)).toBeLessThanOrEqual(within);
  } else expect(found).toBe(wanted);
}

/** Runs the worked cases of declarations, each against the source it names. */
export function testExamples(declared: Readonly<Record<string, WorksheetFunction>>): void {
  const cases = Object.values(declared).flatMap((fn) =>
    examplesOf(fn).map((example) => ({ fn, example, title: `${fn.name}(${JSON.stringify(example.given)})` })),
  );
  test.each(cases)("$title", ({ fn, example }) => {
    const found = answer(fn, ...example.given);
    const wanted = expectedRows(example);
    expect(found.length).toBe(wanted.length);
    wanted.forEach((row, r) => {
      expect(found[r]?.length).toBe(row.length);
      row.forEach((cell, c) => {
        expectCell(found[r]?.[c], cell, example.within ?? 1e-9);
      });
    });
  });
}
