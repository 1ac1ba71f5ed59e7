import { describe, expect, it } from "vitest";
import { type CalculatedWorkbook, calculateWorkbook } from "../../src/engine/calculate-workbook";
import { catalogue } from "../../src/functions/catalogue";
import type { Answer, Example } from "../../src/functions/declare";
import { exampleWorkbook } from "./example-workbook";

// Every expected value and its source stand in the declaration of the function.

const ANY_TEXT = "…";

function rowsOf({ gives }: Example): readonly (readonly Answer[])[] {
  if (!Array.isArray(gives)) return [[gives as Answer]];
  return Array.isArray(gives[0]) ? (gives as readonly (readonly Answer[])[]) : [gives as readonly Answer[]];
}

function shown(calculated: CalculatedWorkbook, sheet: string): unknown[][] {
  const size = calculated.spillAt(sheet, 0, 0) ?? { rows: 1, columns: 1 };
  return Array.from({ length: size.rows }, (_, row) =>
    Array.from({ length: size.columns }, (__, column) => {
      const cell = calculated.at(sheet, row, column);
      if (cell === undefined) return "no result";
      return "error" in cell ? `${cell.error}: ${cell.message}` : cell.value;
    }),
  );
}

function expectCell(actual: unknown, expected: Answer, within: number): void {
  if (expected === ANY_TEXT) {
    expect(actual).toBeTypeOf("string");
    expect(actual).not.toMatch(/^#/);
  } else if (typeof expected === "number") {
    expect(actual).toBeTypeOf("number");
    const rounding = 1e-12 * Math.max(1, Math.abs(expected));
    expect(Math.abs(Number(actual) - expected), `${actual} for ${expected}`).toBeLessThanOrEqual(
      within + rounding,
    );
  } else expect(actual).toBe(expected);
}

const { workbook, placed } = exampleWorkbook(catalogue);
const calculated = await calculateWorkbook(workbook);

describe("examples of the declarations, through the formula engine", () => {
  it("has a source for each", () => {
    expect(placed.filter(({ example }) => example.source.trim() === "").map(({ sheet }) => sheet)).toEqual(
      [],
    );
  });

  it.each(placed)("$formula", ({ sheet, example }) => {
    const actual = shown(calculated, sheet);
    const expected = rowsOf(example);
    expect(actual.map((row) => row.length)).toEqual(expected.map((row) => row.length));
    expected.forEach((row, r) => {
      row.forEach((cell, c) => {
        expectCell(actual[r]?.[c], cell, example.within ?? 0);
      });
    });
  });
});
