import { describe, expect, it } from "vitest";
import { Refusal } from "../../src/core/refusal";
import type { Example, WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import * as declared from "../../src/functions/hardness";
import { ACCEPT_CHANCE, READINGS, SAMPLE_PLAN, TEST_THICKNESS } from "../../src/functions/inspection";

const { HARDNESS, READ_HARDNESS, SCALES, STRENGTH } = declared;

/** Cells with refusals written as "code sentence". */
function answer(fn: WorksheetFunction, ...given: unknown[]) {
  return evaluate(fn, given).map((row) =>
    row.map((cell) => (cell instanceof Refusal ? `${cell.code} ${cell.message}` : cell)),
  );
}

function expectedRows({ gives }: Example): unknown[][] {
  if (!Array.isArray(gives)) return [[gives]];
  return Array.isArray(gives[0]) ? (gives as unknown[][]) : [gives as unknown[]];
}

describe("examples of the declarations", () => {
  const cases = Object.values<WorksheetFunction>(declared).flatMap((fn) =>
    examplesOf(fn).map((example) => ({ fn, example, title: `${fn.name}(${JSON.stringify(example.given)})` })),
  );
  it.each(cases)("$title", ({ fn, example }) => {
    const given = evaluate(fn, example.given);
    expectedRows(example).forEach((row, r) => {
      row.forEach((cell, c) => {
        const found = given[r]?.[c];
        if (cell === "…") expect(found).toEqual(expect.any(String));
        else if (typeof cell !== "number") expect(found).toBe(cell);
        else expect(Math.abs((found as number) - cell)).toBeLessThanOrEqual(example.within ?? 1e-9);
      });
    });
  });
});

describe("HARDNESS", () => {
  it("answers a column, one bad row spoiling itself only", () => {
    expect(answer(HARDNESS, [[60.1], ["hard"], [75], [""], [0]], "HRC", "HV")).toEqual([
      [700],
      [expect.stringContaining('#VALUE! value: "hard" is not a number')],
      [expect.stringContaining("#N/A HRC 75 is outside 20.3 to 68, where the table for low alloy")],
      [""],
      [""],
    ]);
  });

  it("lets each row name its own scale", () => {
    expect(answer(HARDNESS, 400, "HV", [["HB", "MPa", "Vickers"]])).toEqual([[380, 1290, 400]]);
  });

  it("names the scales for a word it does not know", () => {
    expect(answer(HARDNESS, 60, "HRX", "HV")[0]?.[0]).toMatch(
      /#N\/A "HRX" is not a known hardness scale.*SCALES/,
    );
    expect(answer(HARDNESS, 60, "HRC", "HV", "wood")[0]?.[0]).toMatch(
      /#N\/A "wood" is not a known class of steel/,
    );
  });
});

describe("the others", () => {
  it("STRENGTH is a bound above 58 HRC", () => {
    expect(answer(STRENGTH, [[62], [10]])).toEqual([
      [expect.stringMatching(/^over 17\d\d$/), "none published"],
      [expect.stringContaining("#N/A"), expect.stringContaining("#N/A")],
    ]);
  });

  it("SCALES lists every word that HARDNESS takes", () => {
    const words = answer(SCALES).map(([word]) => word);
    expect(words).toContain("HR15N");
    expect(words).toContain("cold work");
    expect(words).toHaveLength(16);
  });

  it("READ_HARDNESS refuses a date and another scale", () => {
    expect(answer(READ_HARDNESS, [["58-60"], [45144], ["700 HV"]])).toEqual([
      [58, 59, 60],
      Array(3).fill(expect.stringContaining("#VALUE! 45144 looks like a date")),
      Array(3).fill(expect.stringContaining("#VALUE!")),
    ]);
  });

  it("READINGS skips empty cells and takes a whole range as one blade", () => {
    expect(
      answer(
        READINGS,
        [
          [58, null],
          [59, ""],
          [60, 0],
        ],
        57,
        61,
      )[0]?.slice(0, 3),
    ).toEqual([3, 59, 2]);
    expect(answer(READINGS, [[58], ["soft"]])[0]?.[0]).toContain('#VALUE! range: "soft" is not');
  });

  it("SAMPLE_PLAN and ACCEPT_CHANCE say what is accepted", () => {
    expect(answer(SAMPLE_PLAN, 60, 3)[0]?.[1]).toContain("use 2.5");
    expect(answer(SAMPLE_PLAN, 60.5, 2.5)[0]?.[1]).toContain("#VALUE! lot: 60.5 given; give a whole number");
    expect(answer(SAMPLE_PLAN, 60, 2.5, "IV")[0]?.[1]).toContain("#N/A");
    expect(answer(ACCEPT_CHANCE, 20, 1, 2.5)[0]?.[0]).toContain("was 0.025 meant?");
    expect(answer(TEST_THICKNESS, 72)[0]?.[0]).toContain("20 HRC to 69 HRC");
  });
});
