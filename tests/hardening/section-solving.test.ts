import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitSection } from "../../src/core/hardening/section-fit";
import { solveBanded } from "../../src/core/hardening/section-matrix";
import { hardenedDepth, quenchSection, type SectionInputs } from "../../src/core/hardening/section-quench";
import { crossing } from "../../src/core/root";
import { sectionOf } from "./sections";

describe("banded equations", () => {
  const value = fc.double({ min: -1, max: 1, noNaN: true });

  // Outside check: the matrix times the solution must give the right side back.
  test("the solution fits the equations", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        fc.array(fc.tuple(value, value, value, value, value), { minLength: 1, maxLength: 30 }),
        (reach, rows) => {
          const width = reach + 1;
          const bands = Float64Array.from(
            rows.flatMap((row) => [10 + (row[0] ?? 0), ...row.slice(1, width)]),
          );
          const kept = Float64Array.from(bands);
          const right = Float64Array.from(rows.map((row) => 100 * row[4]));
          const solution = Float64Array.from(right);
          solveBanded(bands, solution, reach);
          const at = (row: number, column: number) => {
            const [low, high] = [Math.min(row, column), Math.max(row, column)];
            return high - low > reach ? 0 : (kept[high * width + high - low] ?? 0);
          };
          const given = rows.map((_, row) =>
            solution.reduce((sum, x, column) => sum + at(row, column) * x, 0),
          );
          for (const [row, value] of given.entries()) expect(value).toBeCloseTo(right[row] ?? 0, 10);
        },
      ),
    );
  });
});

describe("crossing", () => {
  test("finds roots known by hand: the square root of 2, a jump at 0.3, a flat triple root at 1", () => {
    expect(crossing((x) => x * x - 2, 0, 2, 1e-14)).toBeCloseTo(Math.SQRT2, 13);
    expect(crossing((x) => (x < 0.3 ? -1 : 5), 0, 1, 1e-12)).toBeCloseTo(0.3, 11);
    expect(crossing((x) => (x - 1) ** 3, 0, 3, 1e-9)).toBeCloseTo(1, 8);
    expect(crossing((x) => 4 - x, 10, 0, 1e-12)).toBeCloseTo(4, 11);
  });
});

const section = (spineMm: number, clay: number) =>
  sectionOf("1084", spineMm, { edgeMm: 0.7, clay, clayLineMm: clay > 0 ? 12 : 0 });

describe("calibration", () => {
  /** Halvings on a logarithmic scale, as the fit was made before. */
  function byHalving(inputs: SectionInputs, measured: number): number {
    let [low, high] = [Math.log(0.02), Math.log(1e-5)];
    for (let halving = 0; halving < 16; halving += 1) {
      const middle = (low + high) / 2;
      if (hardenedDepth({ ...inputs, clay: Math.exp(middle) }) < measured) low = middle;
      else high = middle;
    }
    return Math.exp((low + high) / 2);
  }

  test.each([5, 6, 7])("clay by the root finder is that by halving, spine %d mm", (spine) => {
    const inputs = section(spine, 0.004);
    const measured = 13.4;
    const { clay, misfitMm } = fitSection(inputs, measured);
    expect(Math.abs(misfitMm)).toBeLessThan(0.001);
    expect(clay / byHalving(inputs, measured)).toBeCloseTo(1, 3);
  });

  test("a section asked for again is the run of before; another analysis of the same name is not", () => {
    const inputs = section(5, 0);
    expect(quenchSection({ ...inputs }).likely).toBe(quenchSection(inputs).likely);
    const other = { ...inputs.steel, composition: { ...inputs.steel.composition, Mn: 0.4 } };
    expect(quenchSection({ ...inputs, steel: other }).likely).not.toBe(quenchSection(inputs).likely);
  });
});
