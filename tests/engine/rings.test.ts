import { afterEach, describe, expect, test } from "vitest";
import { Calculator } from "../../src/engine/calculation/calculator";
import { SAMPLES } from "./sample-functions";
import { type Typed, typedSheet } from "./typed-cell";

// Excel finds a circular reference by the path that the calculation takes: where a circle runs through a branch of IF
// that is not taken there is none ("Excel does not warn about that circular reference anymore ... it will depend on the
// result of the TEST argument", perfectxl.com, Hidden circular references, read 2026-11-29).

let calculator: Calculator;
const shown = (cell: unknown) => {
  const { value, error } = (cell ?? {}) as { value?: unknown; error?: string };
  return error ?? value;
};
const row = (width: number) =>
  Array.from({ length: width }, (_, column) => shown(calculator.at(0, 0, column)));

function start(cells: Typed[]): void {
  calculator = new Calculator({ sheets: [typedSheet("Plan", [cells])], names: {} }, SAMPLES);
  calculator.calculateAll();
}

function type(column: number, typed: Typed): void {
  const content = typedSheet("", [[typed]]).rows[0]?.[0];
  calculator.change([{ sheet: 0, row: 0, column, content }]);
}

afterEach(() => calculator.dispose());

const CIRCLE = "#CYCLE!";

describe("a formula that reads itself in a branch", () => {
  test("is a ring where the branch is taken, and none where it is not, typed first or changed later", () => {
    start([1, "=IF(A1>0,1,B1)", '=IF(A1>0,1,INDIRECT("C1"))', "=IF(A1>0,1,SUM(C1:E1))"]);
    expect(row(4)).toEqual(
      [1, 1, 1, 1].map((value, at) => (at === 0 ? shown(calculator.at(0, 0, 0)) : value)),
    );
    type(0, -1);
    expect(row(4).slice(1)).toEqual([CIRCLE, CIRCLE, CIRCLE]);
    type(0, 2);
    expect(row(4).slice(1)).toEqual([1, 1, 1]);
  });

  test("what IFERROR has instead of an error is read only where there is one", () => {
    start([5, "=IFERROR(A1,B1)", "=IFERROR(A1/0,C1)"]);
    expect(row(3).slice(1)).toEqual([5, CIRCLE]);
  });
});

describe("two formulas that read each other in opposite branches", () => {
  const ORDERS: readonly Typed[][] = [
    [1, "=IF(A1>0,1,C1)", "=IF(A1>0,B1,2)"],
    [1, "=IF(A1>0,C1,1)", "=IF(A1>0,2,B1)"],
    ["=2-1", "=IF(A1>0,C1,1)", "=IF(A1>0,2,B1)"],
  ];

  test.each(ORDERS)("have their values whichever stands first: %s, %s, %s", (...cells) => {
    start(cells);
    const taken = row(3).slice(1);
    expect(taken).toEqual(cells[1] === "=IF(A1>0,1,C1)" ? [1, 1] : [2, 2]);
    type(0, -1);
    expect(row(3).slice(1)).toEqual(cells[1] === "=IF(A1>0,1,C1)" ? [2, 2] : [1, 1]);
    type(0, 1);
    expect(row(3).slice(1)).toEqual(taken);
  });

  test("whose condition stands behind them and changes", () => {
    start(["=IF(C1>0,B1,7)", "=A1+1", "=D1-1", 1]);
    expect(row(3)).toEqual([7, 8, 0]);
    type(3, 2);
    expect(row(2)).toEqual([CIRCLE, CIRCLE]);
    type(3, 1);
    expect(row(3)).toEqual([7, 8, 0]);
  });

  test("a long ladder of branches comes to an end", () => {
    const length = 300;
    const cells = Array.from({ length }, (_, at): Typed => {
      const next = nameOf((at + 1) % length);
      return at === length - 1
        ? `=IF(${nameOf(length)}>0,1,${next})`
        : `=IF(${nameOf(length)}>0,${next},${next})+1`;
    });
    start([...cells, 1]);
    expect(shown(calculator.at(0, 0, 0))).toBe(length);
    type(length, 0);
    expect(row(length).every((value) => value === CIRCLE)).toBe(true);
  });
});

function nameOf(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return `${column < 26 ? "" : nameOf(Math.floor(column / 26) - 1)[0]}${letter}`.concat("1");
}
