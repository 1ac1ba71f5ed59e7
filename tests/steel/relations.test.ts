import { describe, expect, it } from "vitest";
import { carbonOf } from "../../src/core/steel/carbon";
import { carbonRelation } from "../../src/core/steel/carbon-relations";
import { carbonRelations, limitsRelation, limitsRelations } from "../../src/core/steel/composition-relations";
import { findSteel } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { variationOf, variationRelation } from "../../src/core/steel/product-variation";
import type { Grade } from "../../src/core/steel/steel";

/*
 * What EVIDENCE tells of a composition. The limits named are those of SAE J403 (1095: 0.90 to 1.03 % C), ASTM A681 (D2:
 * 1.40 to 1.60 % C) and EN 10132-4 (C75S: 0.70 to 0.80 % C).
 */
const relationOf = (name: string) => carbonRelation(findSteel(name));
const gradeOf = (name: string) => findSteel(name).grade as Grade;

describe("the relation behind the carbon of a steel", () => {
  it("is the rule of the system where the name encodes it, good to the farther limit", () => {
    // 1095 encodes 0.95: 1.03 lies 0.08 above, 0.90 lies 0.05 below. C75S encodes 0.75, both limits 0.05 away.
    expect(relationOf("1095")).toMatchObject({
      title: "carbon as SAE/AISI designations encode it",
      evidence: "standard",
      error: { size: 0.08, unit: "mass %" },
      output: { label: "carbon", unit: "mass %" },
    });
    expect(relationOf("C75S")).toMatchObject({
      title: "carbon as EN designations encode it",
      error: { size: 0.05 },
    });
  });

  it("is the middle of the limits where it does not: D2 1.50, 0.10 to either side", () => {
    expect(carbonOf(findSteel("D2"))).toBeCloseTo(1.5, 9);
    expect(relationOf("D2")).toMatchObject({
      title: "carbon as the middle of the standard's limits",
      evidence: "compiled",
      error: { size: 0.1, unit: "mass %" },
    });
  });

  it("is none for an analysis, which rests on its certificate", () => {
    expect(relationOf("C 0.95 Mn 0.4")).toBeNull();
    expect(limitsRelation(findSteel("C 0.95 Mn 0.4"))).toBeNull();
    expect(carbonRelations(findSteel("C 0.95 Mn 0.4"))).toEqual([]);
    expect(limitsRelations(findSteel("C 0.95 Mn 0.4"))).toEqual([]);
  });

  it("has no error where the standard limits one side only", () => {
    const open = allGrades().find(
      ({ limits: { C } }) => C !== undefined && (C.low === null || C.high === null),
    );
    expect(relationOf(open?.designation ?? "")?.error.size ?? null).toBeNull();
  });

  it("is told for every system that encodes carbon, and as the middle, where no steel is given", () => {
    const titles = carbonRelations(null).map(({ title }) => title);
    expect(titles).toContain("carbon as SAE/AISI designations encode it");
    expect(titles).toContain("carbon as EN designations encode it");
    expect(titles).toContain("carbon as the middle of the standard's limits");
    expect(titles.at(-1)).toBe("chemical limits of the grade");
  });
});

describe("the relation behind the limits of a grade", () => {
  it("names the grade and its standard, and is one of two", () => {
    const steel = findSteel("1095");
    const limits = limitsRelation(steel);
    expect(limits).toMatchObject({
      title: "chemical limits of 1095",
      output: { label: "limits by heat analysis", unit: "mass %" },
      error: { size: null, unit: "mass %" },
    });
    expect(limits?.locator).toBe(steel.grade?.standard);
    expect(carbonRelations(steel)).toEqual([relationOf("1095"), limits]);
    expect(limitsRelations(steel)).toEqual([limits]);
    expect(limitsRelations(null).map(({ title }) => title)).toEqual(["chemical limits of the grade"]);
  });

  it("is a standard only where the row was read, and says so where it was recalled", () => {
    for (const grade of allGrades()) {
      const limits = limitsRelation(findSteel(grade.designation));
      const isRead = grade.status === "read";
      expect(limits?.evidence, grade.designation).toBe(isRead ? "standard" : "compiled");
      expect(/^Limits recalled/.test(limits?.note ?? ""), grade.designation).toBe(!isRead);
      expect(limits?.note ?? "", grade.designation).not.toMatch(/^\. |\. $/);
    }
  });
});

describe("permissible variation in a piece", () => {
  // ASTM A29/A29M, table of permissible variations in product analysis of alloy steel, to 65 000 mm²: carbon to 0.30 %
  // 0.01, over 0.30 to 0.75 % 0.02; phosphorus 0.005 over the maximum only.
  const spring = gradeOf("5160");

  it("takes the bracket by the maximum, its end within it, and one side where the table has one", () => {
    expect(variationOf(spring, "C", { low: 0.25, high: 0.3 })).toMatchObject({ under: 0.01, over: 0.01 });
    expect(variationOf(spring, "C", { low: 0.25, high: 0.31 })).toMatchObject({ under: 0.02, over: 0.02 });
    expect(variationOf(spring, "C", { low: 0.56, high: 0.64 })).toMatchObject({ isRecalled: false });
    expect(variationOf(spring, "P", { low: null, high: 0.035 })).toMatchObject({ under: 0, over: 0.005 });
    expect(variationOf(spring, "N", { low: null, high: 0.05 })).toBeNull();
  });

  it("has a relation for the standards it is held for, and none for the others", () => {
    expect(variationRelation(spring)).toMatchObject({
      title: "permissible variation of product analysis",
      evidence: "standard",
      output: { label: "variation from the limits of the heat", unit: "mass %" },
      error: { size: null, unit: "mass %" },
    });
    expect(variationRelation(gradeOf("У10"))).toBeNull();
  });
});
