import { describe, expect, it } from "vitest";
import { limitsRelation } from "../../src/core/steel/composition-relations";
import { compositionText, limitsCaution } from "../../src/core/steel/composition-text";
import { densityOf } from "../../src/core/steel/density";
import { findSteel, steelOf } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { noteOf } from "../../src/core/steel/notes";

describe("composition used by relations", () => {
  it("takes the middle, a lone maximum as 0, half of it for Si and Mn, a lone minimum as it stands", () => {
    // Limits of ASTM A681 (O1: Mn 1.00-1.40, Si 0.50 max, Cr 0.40-0.60, W 0.40-0.60) and J404 (6150: V 0.15 min).
    expect(findSteel("O1").composition).toMatchObject({ C: 0.925, Mn: 1.2, Si: 0.25, Cr: 0.5, W: 0.5, P: 0 });
    expect(findSteel("6150").composition.V).toBe(0.15);
  });

  it("assumes 0.22 % Si for plain carbon steel whose standard sets none", () => {
    // Common practice, no source; A576 calls 0.15-0.35 the commonest range where one is specified.
    expect(findSteel("1095").composition.Si).toBe(0.22);
    expect(findSteel("C75S").composition.Si).toBe(0.25);
  });

  it("is printed with what was assumed and how sure the limits are", () => {
    const text = compositionText(findSteel("1095"));
    expect(text).toContain("C 0.95 Si 0.22 Mn 0.4 mass %");
    expect(text).toContain("silicon assumed");
    expect(text).toContain("P, S limited only upwards, taken as 0");
    expect(compositionText(findSteel("440C"))).toContain("Si, Mn limited only upwards, taken as half");
    expect(compositionText(findSteel("W1"))).toContain("W1 fixes no carbon: 1 % taken as usual");
    expect(compositionText(findSteel("C 0.6 Mn 0.8"))).toBe(
      "C 0.6 Mn 0.8 mass %, as given; other elements taken as 0",
    );
  });

  it("says when limits rest on memory", () => {
    expect(limitsCaution(findSteel("1095"))).toBe("");
    expect(limitsCaution(findSteel("80CrV2"))).toBe("limits recalled");
    expect(limitsCaution(findSteel("8670"))).toBe("limits recalled, not confirmed");
    expect(compositionText(findSteel("6150"))).toContain("limits read; those of Si recalled");
    expect(limitsRelation(findSteel("8670"))?.note).toContain("Limits recalled, not confirmed");
  });
});

describe("density", () => {
  // 1095: PNNL-15870 Rev.2. D2, O2, 304: suppliers' data pages. 1.4301: EN 10088-1, from memory.
  it.each([
    ["1095", 7.872],
    ["D2", 7.7],
    ["O2", 7.66],
    ["304", 8.03],
    ["1.4301", 7.9],
  ])("%s is published: %d", (name, value) => {
    const density = densityOf(findSteel(name));
    expect(density.value).toBe(value);
    expect(density.relation.title).toBe("density published for the grade");
  });

  it("falls back to the family and says so", () => {
    const density = densityOf(findSteel("1075"));
    expect(density.value).toBe(7.85); // common handbook value for carbon steel, from memory
    expect(density.relation.title).toBe("density typical of the family");
    expect(densityOf(findSteel("T1")).value).toBeGreaterThan(densityOf(findSteel("M4")).value);
  });

  it("exists for every grade, between 7.6 and 8.7, with an error", () => {
    for (const grade of allGrades()) {
      const { value, relation } = densityOf(steelOf(grade));
      expect(value, grade.designation).toBeGreaterThan(7.6);
      expect(value, grade.designation).toBeLessThan(8.7);
      expect(relation.error.size, grade.designation).toBeGreaterThan(0);
    }
  });
});

describe("notes", () => {
  it("keep near equivalents apart and warn where it matters", () => {
    expect(noteOf(findSteel("8670").grade ?? never())).toContain("Ask for the mill certificate");
    expect(noteOf(findSteel("O6").grade ?? never())).toContain("graphite");
    expect(findSteel("SKD11").name).not.toBe("D2");
  });
});

function never(): never {
  throw new Error("no grade");
}
