import { describe, expect, it } from "vitest";
import { NotAvailable } from "../../src/core/refusal";
import { carbonBounds, carbonOf, statedCarbon } from "../../src/core/steel/carbon";
import { carbonRelation } from "../../src/core/steel/carbon-relations";
import { limitsCaution } from "../../src/core/steel/composition-text";
import { findSteel, steelOf } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { encodedCarbon } from "../../src/core/steel/nominal-carbon";
import { hasOpenCarbon } from "../../src/core/steel/typical";

describe("carbon that a designation encodes", () => {
  // SAE J402: last two digits in hundredths, three in 52100. EN 10027-1: hundredths. JIS G 4051, G 4401:
  // hundredths. GB/T 221: two digits hundredths, one digit or T tenths. GOST 1435, 5950: tenths; 14959, 5632: hundredths.
  it.each([
    ["1045", 0.45],
    ["1084", 0.84],
    ["1095", 0.95],
    ["5160", 0.6],
    ["6150", 0.5],
    ["52100", 1.0],
    ["50100", 1.0],
    ["15B62H", 0.62],
    ["51B60", 0.6],
    ["C75S", 0.75],
    ["C105U", 1.05],
    ["51CrV4", 0.51],
    ["80CrV2", 0.8],
    ["75Ni8", 0.75],
    ["56SiCr7", 0.56],
    ["100Cr6", 1.0],
    ["X50CrMoV15", 0.5],
    ["X153CrMoV12", 1.53],
    ["X210Cr12", 2.1],
    ["S50C", 0.5],
    ["S60C-CSP", 0.6],
    ["SK140", 1.4],
    ["SK5", 0.85],
    ["SCM440", 0.4],
    ["65Mn", 0.65],
    ["GB 45", 0.45],
    ["60Si2Mn", 0.6],
    ["GB T8", 0.8],
    ["T10", 1.0],
    ["9SiCr", 0.9],
    ["5CrW2Si", 0.5],
    ["108Cr17", 1.08],
    ["65Г", 0.65],
    ["60С2А", 0.6],
    ["У8", 0.8],
    ["У10", 1.0],
    ["9ХС", 0.9],
    ["13Х", 1.3],
    ["95Х18", 0.95],
    ["40Х13", 0.4],
  ])("%s %d", (name, carbon) => {
    expect(carbonOf(findSteel(name))).toBeCloseTo(carbon, 10);
  });

  it("is not read out of names that state none: the middle of the limits stands", () => {
    // Limits of ASTM A681, J405, ISO 4957, GB/T 1299, GB/T 18254, GOST 5950, 801; GCr15 and ШХ15 write chromium in tenths.
    const middles: [string, number][] = [
      ["D2", 1.5],
      ["O1", 0.925],
      ["440C", 1.075],
      ["HS6-5-2C", 0.9],
      ["GCr15", 1.0],
      ["ШХ15", 1.0],
      ["Cr12", 2.15],
      ["Cr12MoV", 1.575],
      ["Х12МФ", 1.55],
      ["W1-8", 0.85],
      ["SUS420J2", 0.33],
    ];
    for (const [name, carbon] of middles) {
      expect(encodedCarbon(findSteel(name).grade ?? never()), name).toBeNull();
      expect(carbonOf(findSteel(name)), name).toBeCloseTo(carbon, 10);
    }
  });

  it("lies within the limits of every grade and within 0.051 of the middle below 1.5 % C", () => {
    for (const grade of allGrades().filter((each) => !hasOpenCarbon(each))) {
      const { low = null, high = null } = grade.limits.C ?? {};
      const carbon = carbonOf(steelOf(grade));
      expect(carbon, grade.designation).toBeGreaterThanOrEqual(low ?? 0);
      expect(carbon, grade.designation).toBeLessThanOrEqual(high ?? 0);
      expect(Math.abs(carbon - ((low ?? 0) + (high ?? 0)) / 2), grade.designation).toBeLessThan(0.051);
    }
  });
});

describe("carbon that a grade leaves open", () => {
  it.each([
    ["304", "at most 0.08"],
    ["410", "at most 0.15"],
    ["431", "at most 0.20"],
    ["1.4301", "at most 0.07"],
    ["420", "at least 0.15"],
    ["W1", "0.70 to 1.50"],
    ["W2", "0.85 to 1.50"],
    ["L2", "0.45 to 1.00"],
    ["M2", "0.78 to 0.88 or 0.95 to 1.05"],
  ])("%s refuses with its limit, %s", (name, limit) => {
    expect(() => statedCarbon(findSteel(name))).toThrow(NotAvailable);
    expect(() => statedCarbon(findSteel(name))).toThrow(`${limit} mass % C`);
  });

  it("is taken as usual by relations, and said (common practice, no source)", () => {
    for (const [name, carbon] of [
      ["W1", 1],
      ["W2", 1],
      ["M2", 0.83],
      ["420", 0.3],
      ["410", 0.12],
    ] as const) {
      expect(carbonOf(findSteel(name)), name).toBe(carbon);
      expect(limitsCaution(findSteel(name)), name).toContain("taken as usual");
    }
    expect(() => carbonOf(findSteel("1.4301"))).toThrow(NotAvailable);
  });

  it("names what to give instead, and what it names exists", () => {
    expect(() => statedCarbon(findSteel("W1"))).toThrow("W1-8, W1-8.5");
    expect(() => statedCarbon(findSteel("M2"))).toThrow("M2 (regular C), M2 (high C)");
    expect(() => statedCarbon(findSteel("W2"))).toThrow('"C 0.95 Mn 0.25 Si 0.25"');
    expect(() => statedCarbon(findSteel("420"))).toThrow(
      "SUS420J1, SUS420J2, X20Cr13, X30Cr13, X39Cr13 or X46Cr13",
    );
    for (const name of ["SUS420J1", "SUS420J2", "X20Cr13", "X30Cr13", "X39Cr13", "X46Cr13"]) {
      expect(carbonOf(findSteel(name)), name).toBeGreaterThan(0.15);
    }
  });

  it("still has its limits", () => {
    expect(carbonBounds(findSteel("420"))).toEqual({ low: 0.15, high: null });
    expect(carbonBounds(findSteel("C 0.62 Mn 0.8"))).toEqual({ low: 0.62, high: 0.62 });
  });
});

describe("the relation behind a carbon figure", () => {
  it("says whether the name or the limits gave it, and how far a heat may lie off", () => {
    expect(carbonRelation(findSteel("1084"))).toMatchObject({ source: "rule-sae", error: { size: 0.09 } });
    expect(carbonRelation(findSteel("D2"))).toMatchObject({ evidence: "compiled", error: { size: 0.1 } });
    expect(carbonRelation(findSteel("C 0.7"))).toBeNull();
  });
});

function never(): never {
  throw new Error("no grade");
}
