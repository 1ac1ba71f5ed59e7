import { describe, expect, test } from "vitest";
import { cutPlan, findSteel, InvalidValue, steelOrder } from "../../src/core";
import { barsFor } from "../../src/core/run/bars";
import type { CutRequest } from "../../src/core/stock/cut-order";
import type { BlankLine } from "../../src/core/stock/steel-order";

// What a program may hand over and no worksheet cell can: each must come to a sentence before the search begins.
// -300 mm once took all the memory there was.

const SLIPS = [-300, Number.NaN, Number.POSITIVE_INFINITY, "300", null] as number[];

const line: BlankLine = {
  steel: findSteel("1084"),
  width: 40,
  thickness: 4,
  length: 300,
  quantity: 10,
  barLength: 3000,
};
const request: CutRequest = { pieces: [{ length: 300, quantity: 10 }], bars: [{ length: 3000 }] };

function sentence(question: () => unknown): string {
  try {
    question();
  } catch (thrown) {
    expect(thrown).toBeInstanceOf(InvalidValue);
    return (thrown as Error).message;
  }
  throw new Error("it was answered");
}

describe("figures that cannot be", () => {
  test.each(["width", "thickness", "length", "quantity", "barLength", "inStock"] as const)(
    "steelOrder refuses a %s that is none, naming the line",
    (key) => {
      const slips = key === "quantity" ? [...SLIPS, 2.5] : SLIPS;
      for (const slip of slips) {
        const told = sentence(() => steelOrder([line, { ...line, [key]: slip }]));
        expect(told).toMatch(/^line 2, .+: .+ given; give a (whole )?number/);
        expect(told.split(/\s+/).length).toBeLessThanOrEqual(40);
      }
    },
  );

  test("kerf and trim are held to the limits of the worksheet functions", () => {
    for (const slip of [...SLIPS.slice(0, 4), -5]) {
      expect(sentence(() => steelOrder([line], slip))).toMatch(/^kerf: /);
      expect(sentence(() => steelOrder([line], 1.2, slip))).toMatch(/^trim: /);
      expect(sentence(() => cutPlan({ ...request, kerf: slip }))).toMatch(/^kerf: /);
      expect(sentence(() => cutPlan({ ...request, trim: slip }))).toMatch(/^trim: /);
    }
    expect(sentence(() => steelOrder([line], 21))).toBe(
      "kerf: 21 mm given; give a number in mm, from 0 mm up to 20 mm",
    );
  });

  test("cutPlan refuses pieces and bars that are none", () => {
    for (const slip of SLIPS) {
      const pieces = (piece: object) => () =>
        cutPlan({ ...request, pieces: [{ length: 300, quantity: 10, ...piece }] });
      const bars = (bar: object) => () => cutPlan({ ...request, bars: [{ length: 3000, ...bar }] });
      expect(sentence(pieces({ length: slip }))).toMatch(/^length: /);
      expect(sentence(pieces({ quantity: slip }))).toMatch(/^quantity: /);
      expect(sentence(bars({ length: slip }))).toMatch(/^bar length: /);
      expect(sentence(bars({ price: slip }))).toMatch(/^bar price: /);
      expect(sentence(bars({ inStock: slip }))).toMatch(/^bars in stock: /);
      expect(sentence(() => barsFor({ piece: slip, pieces: 3, barLength: 3000 }))).toMatch(/^piece: /);
      expect(sentence(() => barsFor({ piece: 300, pieces: slip, barLength: 3000 }))).toMatch(/^pieces: /);
    }
    expect(sentence(() => cutPlan({ ...request, pieces: [{ length: 300, quantity: 2.5 }] }))).toBe(
      "quantity: 2.5 given; give a whole number, from 0 up to 100000",
    );
  });
});

test("kerf 1.2 and trim 10 are taken where they are left out, as the worksheet functions do", () => {
  expect(steelOrder([line])).toEqual(steelOrder([line], 1.2, 10));
  expect(cutPlan(request)).toEqual(cutPlan({ ...request, kerf: 1.2, trim: 10 }));
  // 3000 less 10 trim holds nine pieces of 300 with their kerfs of 1.2 and 279.2 over: counted by hand.
  expect(cutPlan(request)).toMatchObject({ bars: 2 });
  expect(barsFor({ piece: 300, pieces: 10, barLength: 3000 })).toMatchObject({ bars: 2, piecesABar: 9 });
});
