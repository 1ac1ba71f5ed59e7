import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";

// Answers at limits, asked as cells ask. Expectations are arithmetic, or follow from what a word means: tempering takes
// hardness away, an oven is not set outside the range a table was published for, a plan does not depend on the order in
// which bars are listed.

const ask = (name: string, ...given: readonly unknown[]): unknown[][] => {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no function ${name}`);
  return evaluate(fn, given as never) as unknown[][];
};
const first = (name: string, ...given: readonly unknown[]) => ask(name, ...given)[0]?.[0];
const column = (values: readonly unknown[]) => values.map((value) => [value]);
const isFigure = (value: unknown): value is number => typeof value === "number";

describe("READINGS", () => {
  const tenths = fc.integer({ min: 500, max: 620 });

  it("takes a mean that lies on a limit for one that is on it, whatever the sum of the decimals comes to", () => {
    const lists = fc.array(tenths, { minLength: 1, maxLength: 12 });
    let onLimit = 0;
    fc.assert(
      fc.property(lists, (list) => {
        const sum = list.reduce((a, b) => a + b, 0);
        // One more reading brings the sum to a whole number of tenths a reading.
        const rest = (list.length + 1) * 560 - sum;
        if (rest < 200 || rest > 700) return;
        const readings = [...list, rest].map((value) => value / 10);
        onLimit += 1;
        for (const [low, high] of [
          [56, undefined],
          [undefined, 56],
        ]) {
          const verdict = String(ask("READINGS", column(readings), low ?? "", high ?? "")[0]?.[5]);
          expect(verdict).not.toMatch(/mean (?:under|over)/);
        }
      }),
      { numRuns: 400 },
    );
    expect(onLimit).toBeGreaterThan(100);
  });

  it("still finds a mean that lies a tenth of a step outside", () => {
    expect(ask("READINGS", column([59.9, 60, 60]), 60, "")[0]?.[5]).toContain("too soft");
  });
});

describe("hardness", () => {
  const grades = ask("STEELS").flatMap(([name]) => (typeof name === "string" ? [name] : []));

  it("as quenched is never under the same steel tempered, for every grade of the table", () => {
    let asked = 0;
    const below = grades.filter((steel) => {
      const [quenched, tempered] = [first("QUENCHED_HRC", steel), first("TEMPERED_HRC", steel, 150)];
      if (!isFigure(quenched) || !isFigure(tempered)) return false;
      asked += 1;
      return tempered > quenched;
    });
    expect(below).toEqual([]);
    expect(asked).toBeGreaterThan(100);
  });

  it("names no temper outside the range that a curve is published for", () => {
    let asked = 0;
    for (const steel of ["W2", "1095", "O1", "D2", "A2", "5160", "52100", "440C", "S7"])
      for (let target = 48; target <= 64; target += 1) {
        const [row = []] = ask("TEMPER_PLAN", steel, target);
        for (const celsius of row.slice(0, 3).filter(isFigure)) {
          asked += 1;
          expect(isFigure(first("TEMPERED_HRC", steel, celsius)), `${steel} ${target} ${celsius}`).toBe(true);
        }
      }
    expect(asked).toBeGreaterThan(150);
  });

  it.each(["D2", "A2"])("%s at 58 HRC is planned alike in TEMPER_PLAN and RECIPE", (steel) => {
    const likely = ask("TEMPER_PLAN", steel, 58)[0]?.[1];
    expect(first("RECIPE", steel, 58)).toContain(`temper ${likely} °C`);
  });
});

describe("COMPOSITION", () => {
  it("gives a stated 0 as 0, and nothing for an element that was not stated", () => {
    expect(first("COMPOSITION", "C 0.95 Mn 0.40 Si 0", "Si")).toBe(0);
    expect(first("COMPOSITION", "C 0.95 Mn 0.40 Si 0", "Si", "high")).toBe(0);
    expect(first("COMPOSITION", "C 0.95 Mn 0.40 Si 0", "Cr")).toBe("");
  });
});

describe("CUT_PLAN", () => {
  it("does not depend on the order in which bars and pieces are listed", () => {
    const piece = fc.record({
      length: fc.integer({ min: 100, max: 900 }),
      count: fc.integer({ min: 1, max: 12 }),
    });
    const order = fc.record({
      pieces: fc.array(piece, { minLength: 1, maxLength: 4 }),
      bars: fc.uniqueArray(fc.integer({ min: 1000, max: 4000 }), { minLength: 2, maxLength: 4 }),
    });
    const plan = ({ pieces, bars }: { pieces: { length: number; count: number }[]; bars: number[] }) =>
      JSON.stringify(
        ask(
          "CUT_PLAN",
          column(pieces.map(({ length }) => length)),
          column(pieces.map(({ count }) => count)),
          column(bars),
        ),
      );
    fc.assert(
      fc.property(order, ({ pieces, bars }) => {
        const turned = { pieces: [...pieces].reverse(), bars: [...bars].reverse() };
        expect(plan(turned)).toBe(plan({ pieces, bars }));
      }),
      { numRuns: 60 },
    );
  });
});
