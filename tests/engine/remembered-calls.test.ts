import { describe, expect, it } from "vitest";
import { InvalidValue, NotAvailable } from "../../src/core/refusal";
import { Calculator } from "../../src/engine/calculation/calculator";
import { RememberedCalls } from "../../src/engine/remembered-calls";
import { tableFunction } from "../../src/functions/declare";
import { number } from "../../src/functions/parameters";

/** Asks each question twice; how often it was worked out. */
function worked(questions: readonly (readonly unknown[])[]): number {
  const remembered = new RememberedCalls();
  let count = 0;
  for (const given of [...questions, ...questions]) {
    remembered.answer(given, () => {
      count += 1;
      return [[count]];
    });
  }
  return count;
}

describe("calls that were answered before", () => {
  it("values that differ in kind or shape are other questions", () => {
    const questions = [
      [1],
      ["1"],
      [true],
      [null],
      [],
      [[[1, 2]]],
      [[[1], [2]]],
      [[[12]]],
      [[[1]], 2],
      [1, 2],
      ['1;"2'],
      ["1;", "2"],
      [new NotAvailable("no such steel")],
      [new InvalidValue("no such steel")],
      [new NotAvailable("no such wood")],
      [{ type: "Error", basicValue: "#VALUE!" }],
    ];
    expect(worked(questions)).toBe(questions.length);
  });

  it("a whole column is no question to keep", () => {
    const column = Array.from({ length: 200_000 }, (_, row) => [row]);
    expect(worked([[column]])).toBe(2);
  });

  it("more answers than are kept are worked out again and stay right", () => {
    const remembered = new RememberedCalls();
    const long = "x".repeat(10_000);
    const ask = (n: number) => remembered.answer([n, long], () => [[n]]);
    for (let n = 0; n < 1000; n += 1) expect(ask(n)).toEqual([[n]]);
    expect(ask(0)).toEqual([[0]]);
  });

  it("two cells that ask the same of one function have one calculation, and each its own figure", () => {
    let count = 0;
    const twice = tableFunction({
      name: "TWICE",
      summary: "For this test.",
      relations: [],
      parameters: { a: number({ label: "a", quantity: "length", unit: "mm", help: "A length.", max: 100 }) },
      result: [
        { label: "once", unit: "mm" },
        { label: "twice", unit: "mm" },
      ],
      compute: ({ a }) => {
        count += 1;
        return [[a, 2 * a]];
      },
    });
    const cell = (formula: string) => ({ formula });
    const calls = ["A1", "A1", "A2"].map((of) => cell(`=INDEX(BLADE.TWICE(${of}),1,2)`));
    const rows = [[{ value: 3 }, ...calls], [{ value: 5 }]];
    const calculator = new Calculator({ sheets: [{ name: "S", rows }] }, [twice]);
    calculator.calculateAll();
    expect([1, 2, 3].map((column) => calculator.at(0, 0, column))).toEqual([
      { value: 6 },
      { value: 6 },
      { value: 10 },
    ]);
    expect(count).toBe(2);
    calculator.change([{ sheet: 0, row: 0, column: 0, content: { value: 5 } }]);
    expect(calculator.at(0, 0, 1)).toEqual({ value: 10 });
    expect(count).toBe(2);
    calculator.dispose();
  });
});
