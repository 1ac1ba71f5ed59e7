import { describe, expect, it } from "vitest";
import { steelOf } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { hasOpenCarbon } from "../../src/core/steel/typical";
import { type Example, relationsOf, type WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { examplesOf } from "../../src/functions/examples";
import * as declared from "../../src/functions/steel";
import { answer } from "./answer";

const { ANALYSIS, CARBON, CERTIFICATE, COMPOSITION, DENSITY, NEAREST_GRADES, STEEL, STEELS } = declared;

function expectedCells({ gives }: Example): unknown[][] {
  if (!Array.isArray(gives)) return [[gives]];
  const rows = Array.isArray(gives[0]) ? (gives as unknown[][]) : [gives as unknown[]];
  return rows.map((row) => row.map((cell) => (cell === "…" ? expect.any(String) : cell)));
}

/** The expected figure where the answer lies within the difference that the example allows, else the answer. */
function settled(example: Example, cell: unknown, row: number, column: number): unknown {
  const expected = expectedCells(example)[row]?.[column];
  if (typeof cell !== "number" || typeof expected !== "number") return cell;
  return Math.abs(cell - expected) <= (example.within ?? 0) ? expected : cell;
}

describe("examples of the declarations", () => {
  const cases = Object.values<WorksheetFunction>(declared).flatMap((fn) =>
    examplesOf(fn).map((example) => ({ fn, example, title: `${fn.name}(${JSON.stringify(example.given)})` })),
  );
  it.each(cases)("$title", ({ fn, example }) => {
    const given = example.given.map((argument) =>
      Array.isArray(argument) && !Array.isArray(argument[0]) ? [argument] : argument,
    );
    expect(
      evaluate(fn, given).map((row, at) => row.map((cell, column) => settled(example, cell, at, column))),
    ).toEqual(expectedCells(example));
  });
});

describe("CARBON", () => {
  it("answers a column, an unknown name spoiling its own row only", () => {
    expect(answer(CARBON, [["1095"], ["10955"], [""], [80]])).toEqual([
      [0.95],
      [expect.stringContaining('#N/A "10955" is not in the grade table; nearest designations: 1095')],
      [""],
      [expect.stringContaining("#N/A")],
    ]);
  });

  it("refuses what a grade leaves open, with its limit", () => {
    expect(answer(CARBON, "304")[0]?.[0]).toContain("#N/A 304 does not fix its carbon");
    expect(answer(CARBON, "304", "low")[0]?.[0]).toContain("#N/A 304 has no carbon minimum");
    expect(answer(CARBON, "420", "high")[0]?.[0]).toContain("#N/A 420 has no carbon maximum");
    expect(answer(CARBON, "W1", "low")).toEqual([[0.7]]);
    expect(answer(CARBON, "1095", "middle")[0]?.[0]).toBe(
      '#VALUE! bound "middle" given; give nominal, low, high',
    );
  });
});

describe("COMPOSITION", () => {
  it("leaves a blank limit empty, never 0", () => {
    expect(answer(COMPOSITION, "1095", "Mn", "low")).toEqual([[0.3]]);
    expect(answer(COMPOSITION, "1095", "P", "low")).toEqual([[""]]);
    expect(answer(COMPOSITION, "1095", "Cr")).toEqual([[""]]);
    expect(answer(COMPOSITION, "304")[0]).toEqual(["C", "", 0.08, ""]);
  });

  it("broadcasts a column of steels over a row of elements", () => {
    // SAE J404: 5160 Cr 0.70-0.90, Mn 0.75-1.00; J403: 1084 has no chromium limit, Mn 0.60-0.90.
    expect(answer(COMPOSITION, [["5160"], ["1084"]], [["Cr", "Mn"]], "high")).toEqual([
      [0.9, 1],
      ["", 0.9],
    ]);
    expect(answer(COMPOSITION, "1095", "Xx")[0]?.[0]).toContain('#VALUE! "Xx" is not an element used here');
  });

  it("tabulates an analysis as given", () => {
    expect(answer(COMPOSITION, "Mn 0.75 C 0.62")).toEqual([
      ["C", 0.62, 0.62, 0.62],
      ["Mn", 0.75, 0.75, 0.75],
    ]);
  });
});

describe("STEEL and DENSITY", () => {
  it("answer for every grade of the table", () => {
    const grades = allGrades();
    const column = grades.map(({ designation }) => [designation]);
    const rows = answer(STEEL, column);
    expect(rows.map(([name]) => name)).toEqual(grades.map(({ designation }) => designation));
    expect(rows.every((row) => row.length === STEEL_COLUMNS)).toBe(true);
    expect(answer(DENSITY, column).filter(([value]) => typeof value !== "number")).toEqual([]);
    const open = answer(CARBON, column).filter(([value]) => typeof value !== "number");
    expect(open).toHaveLength(grades.filter(hasOpenCarbon).length);
  });

  it("spoil one row only", () => {
    const [good, bad] = answer(STEEL, [["O1"], ["O9"]]);
    expect(good?.[0]).toBe("O1");
    expect(bad?.[0]).toBe("");
    expect(bad?.[6]).toContain('#N/A "O9" is not in the grade table');
  });

  it("know an analysis", () => {
    expect(answer(STEEL, "C 0.62 Mn 0.75")).toEqual([
      ["C 0.62 Mn 0.75", "analysis", "", "", "", "plain carbon", 0.62, 0.62, "", "", 7.85, "as given"],
    ]);
  });

  it("refuse a density as a steel, since it names none", () => {
    expect(answer(DENSITY, 7.85)[0]?.[0]).toContain("#VALUE! 7.85 is not a steel");
  });
});

const STEEL_COLUMNS = 12;

describe("STEELS", () => {
  it("lists names that every steel argument accepts", () => {
    const names = answer(STEELS).flat();
    expect(names).toHaveLength(allGrades().length);
    expect(new Set(names).size).toBe(names.length);
    expect(
      answer(
        STEEL,
        names.map((name) => [name]),
      ).map(([name]) => name),
    ).toEqual(names);
  });

  it("narrows by family, system and part of a name", () => {
    expect(answer(STEELS, "austenitic")).toContainEqual(["304"]);
    expect(answer(STEELS, null, "GOST", "U8")).toContainEqual(["У8"]);
    expect(answer(STEELS, null, null, "1.4116")).toEqual([["X50CrMoV15"]]);
    expect(answer(STEELS, "bronze")[0]?.[0]).toContain("#N/A no family of steels is called");
    expect(answer(STEELS, "hot work", "GOST")[0]?.[0]).toContain(
      "#N/A no grade of the table has: hot work, GOST",
    );
  });
});

describe("ANALYSIS", () => {
  it("takes a certificate as it stands, empty cells not analysed", () => {
    const elements = [["C"], ["Si"], ["Mn"], ["Cr"], [""]];
    expect(answer(ANALYSIS, elements, [["0,62"], [0.2], ["0.75 %"], [""], [""]])).toEqual([
      ["C 0.62 Si 0.2 Mn 0.75"],
    ]);
  });

  it.each([
    [[["C", "Mn"]], [[0.6]], "ranges of equal length"],
    [[["C", "Mn"]], [[60, 0.7]], "was 0.6 meant"],
    [[["C", "N"]], [[0.6, 80]], "was 0.008 meant (parts per million given)?"],
    [[["C", "C"]], [[0.6, 0.6]], "C is given twice"],
    [[["Si", "Mn"]], [[0.2, 0.7]], "needs carbon"],
    [[["C", "Ti"]], [[0.6, 0.1]], '"Ti" is not an element used here'],
    [[["C", ""]], [[0.6, 0.1]], "has no element beside it"],
    [[["C"]], [[-0.6]], "#VALUE!"],
  ])("%j %j: %s", (elements, values, sentence) => {
    expect(answer(ANALYSIS, elements, values)[0]?.[0]).toContain(sentence);
  });
});

describe("relations", () => {
  it("stand behind every figure of a grade, and name the table where no steel is given", () => {
    for (const fn of [CARBON, COMPOSITION, STEEL, DENSITY, CERTIFICATE, NEAREST_GRADES]) {
      expect(relationsOf(fn, null).length, fn.name).toBeGreaterThan(0);
      for (const grade of allGrades()) {
        expect(relationsOf(fn, steelOf(grade)).length, `${fn.name} ${grade.designation}`).toBeGreaterThan(0);
      }
    }
  });
});
