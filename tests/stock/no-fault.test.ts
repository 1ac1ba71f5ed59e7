import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { WorksheetFunction } from "../../src/functions/declare";
import * as money from "../../src/functions/money";
import * as run from "../../src/functions/run";
import * as shape from "../../src/functions/shape";
import * as stock from "../../src/functions/stock";
import { answer } from "./call";

const functions: readonly WorksheetFunction[] = [shape, stock, run, money].flatMap((topic) =>
  Object.values<WorksheetFunction>(topic),
);

const words = [
  "",
  "flat",
  "lenticular",
  "diamond",
  "1075",
  "unit",
  "total",
  "1-1/4 in",
  "10 ga",
  "845",
  "95 %",
  "x",
];
const cell = fc.oneof(
  fc.constantFrom<unknown>(null, 0, 1, -1, 0.5, 2, 20, 60, 845, 3000, 1e9, 1e300, -1e-9, 5e-324, true, {
    type: "Error",
    basicValue: "#N/A",
  }),
  fc.double({ min: 0, max: 1000, noNaN: true }),
  fc.integer({ min: 0, max: 50 }),
  fc.constantFrom(...words),
);
const argument = fc.oneof(cell, fc.array(fc.tuple(cell), { minLength: 1, maxLength: 4 }));

describe("whatever is typed, the answer is a figure, a text or a sentence of the trade", () => {
  test.each(functions.map((fn) => [fn.name, fn] as const))("%s", (_, fn) => {
    const count = Object.keys(fn.parameters).length;
    fc.assert(
      fc.property(fc.array(argument, { minLength: Math.min(1, count), maxLength: count }), (given) => {
        for (const row of answer(fn, ...given)) {
          for (const found of row) {
            expect(["number", "string"]).toContain(typeof found);
            expect(String(found)).not.toMatch(/fault in the add-in|NaN|Infinity|undefined/);
          }
        }
      }),
      { numRuns: 150 },
    );
  });
});
