import { describe, expect, it } from "vitest";
import { findSteel, steelOf } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { similarGrades } from "../../src/core/steel/similar-grades";

function near(name: string): Record<string, string | null> {
  return Object.fromEntries(
    similarGrades(findSteel(name)).map(({ grade, element }) => [grade.designation, element]),
  );
}

describe("grades near a steel", () => {
  it("show where they part: SKD11 from D2 in V, 1.2714 from L6 in C", () => {
    // ASTM A681 D2 has V up to 1.10, JIS G 4404 SKD11 0.20-0.50; L6 C 0.65-0.75, 1.2714 C 0.50-0.60.
    expect(near("D2").SKD11).toBe("V");
    expect(near("L6")["55NiCrMoV7"]).toBe("C");
    expect(
      similarGrades(findSteel("L6")).find(({ grade }) => grade.enNumber === "1.2714")?.difference,
    ).toBeCloseTo(-0.15, 9);
  });

  it("include the steels that suppliers pair", () => {
    // Pairings of suppliers' tables: 1095 and SK95, O1 and 100MnCrW4 kind, 440C and 1.4125, 52100 and 100Cr6 and SUJ2.
    expect(Object.keys(near("1095"))).toContain("SK95");
    expect(Object.keys(near("440C"))).toContain("X105CrMo17");
    expect(Object.keys(near("52100"))).toEqual(expect.arrayContaining(["100Cr6", "SUJ2"]));
    expect(Object.keys(near("M2 (regular C)"))).toEqual(expect.arrayContaining(["SKH51", "Р6М5"]));
  });

  it("never include the steel itself or its classes", () => {
    for (const grade of allGrades()) {
      const names = similarGrades(steelOf(grade)).map((each) => each.grade.designation);
      expect(names, grade.designation).not.toContain(grade.designation);
    }
    expect(Object.keys(near("M2")).filter((name) => name.startsWith("M2"))).toEqual([]);
    expect(Object.keys(near("W1-9")).filter((name) => name.startsWith("W1"))).toEqual([]);
  });

  it("are found for an analysis, and none where nothing is near", () => {
    expect(Object.keys(near("C 0.95 Mn 0.4 Si 0.22"))).toContain("1095");
    expect(similarGrades(findSteel("C 2.4 Cr 30"))).toEqual([]);
  });
});
