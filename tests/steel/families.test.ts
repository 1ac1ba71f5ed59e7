import { describe, expect, it, test } from "vitest";
import { InvalidValue } from "../../src/core/refusal";
import { steelAsked } from "../../src/core/steel/asked";
import { boundsOf } from "../../src/core/steel/bounds";
import { densityOf, densityRelations } from "../../src/core/steel/density";
import { STEEL_MODULUS } from "../../src/core/steel/elastic-modulus";
import { findSteel } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";

const familyOf = (analysis: string) => findSteel(analysis).family;

describe("the family of an analysis", () => {
  // EN 10020:2000, 3.2.2: stainless is 10.5 % chromium and more with at most 1.2 % carbon.
  test.each([
    ["C 0.6 Cr 10.5", "martensitic stainless"],
    ["C 0.6 Cr 10.4", "cold work"],
    ["C 1.2 Cr 12", "martensitic stainless"],
    ["C 1.21 Cr 12", "cold work"],
    // The structures, by the compositions of EN 10088-1: X5CrNi18-10, X6Cr17, X12CrNi17-7, X17CrNi16-2, X6Cr13.
    ["C 0.05 Cr 18 Ni 9", "austenitic stainless"],
    ["C 0.1 Cr 17 Ni 6", "austenitic stainless"],
    ["C 0.06 Cr 17", "ferritic stainless"],
    ["C 0.06 Cr 16", "ferritic stainless"],
    ["C 0.12 Cr 17", "martensitic stainless"],
    ["C 0.11 Cr 17 Ni 1", "martensitic stainless"],
    ["C 0.17 Cr 16 Ni 2", "martensitic stainless"],
    ["C 0.06 Cr 13", "martensitic stainless"],
  ])("%s is %s", (analysis, family) => expect(familyOf(analysis)).toBe(family));

  // EN ISO 4957: high speed is at least two of W, Mo and V, 7 % together, 0.60 % C or more and 3 to 6 % Cr.
  test.each([
    ["C 0.85 Cr 4 W 6 Mo 5 V 2", true],
    ["C 0.8 Cr 4 W 18 V 1", true],
    ["C 0.6 Cr 4 W 6 V 1", true],
    ["C 0.59 Cr 4 W 6 V 1", false],
    ["C 0.85 Cr 3 Mo 6 V 1", true],
    ["C 0.85 Cr 6 Mo 6 V 1", true],
    ["C 0.85 Cr 2.9 Mo 6 V 1", false],
    ["C 0.85 Cr 6.1 Mo 6 V 1", false],
    ["C 0.85 Cr 4 Mo 5.9 V 1", false],
    ["C 0.85 Cr 4 W 7", false],
    ["C 0.85 Cr 4 W 7 V 0.5", false],
    ["C 0.85 Cr 4 W 6.5 V 0.6", true],
    ["C 0.85 Cr 4 W 3 Mo 3 V 1", true],
    // 2.5 % of three elements is not 7 %.
    ["C 0.85 Cr 4 W 1 Mo 1 V 0.6", false],
  ])("%s is high speed: %s", (analysis, isHighSpeed) => {
    expect(familyOf(analysis) === "high speed").toBe(isHighSpeed);
  });

  // EN 10020:2000, table 1: from these contents on a steel is an alloy steel.
  test.each([
    ["Mn", 1.65],
    ["Si", 0.6],
    ["Cr", 0.3],
    ["Ni", 0.3],
    ["Mo", 0.08],
    ["V", 0.1],
    ["W", 0.3],
    ["Co", 0.3],
    ["Cu", 0.4],
    ["Al", 0.3],
  ])("%s makes an alloy steel from %d %% on", (element, from) => {
    expect(familyOf(`C 0.6 ${element} ${from}`)).toBe("low alloy");
    expect(familyOf(`C 0.6 ${element} ${(from - 0.01).toFixed(2)}`)).toBe("plain carbon");
  });

  // Hot work steels of EN ISO 4957 hold 0.30 to 0.45 % C, cold work steels with chromium 0.6 % and more: the split is ours.
  test.each([
    ["C 0.4 Cr 5 Mo 1.3 V 1", "hot work"],
    ["C 0.4 Cr 3 Mo 3", "hot work"],
    ["C 0.4 Cr 2.9 Mo 3", "low alloy"],
    ["C 0.5 Cr 5 Mo 1", "cold work"],
    ["C 1.5 Cr 12 Mo 1 V 1", "cold work"],
  ])("%s is %s", (analysis, family) => expect(familyOf(analysis)).toBe(family));
});

describe("density", () => {
  // Makers' data sheets, as recalled: D2 7.70, A2 7.86, 440C 7.80, 304 8.03; ASM Metals Handbook: 1095 7.872 (7.85 rounded).
  test.each([
    ["D2", 7.7],
    ["A2", 7.86],
    ["440C", 7.8],
    ["304", 8.03],
  ])("%s is that of its sheet", (name, value) => {
    expect(densityOf(name).value).toBe(value);
    expect(densityOf(name).relation.title).toBe("density published for the grade");
  });

  // An analysis has that of its family. More tungsten is heavier, more chromium lighter, than iron (7.87).
  test.each([
    ["C 1.5 Cr 10", 7.7, "cold work, 10 % chromium and over"],
    ["C 1.5 Cr 9.9", 7.8, "cold work, 4 to 10 % chromium"],
    ["C 1.5 Cr 4", 7.8, "cold work, 4 to 10 % chromium"],
    ["C 1.5 Cr 3.9", 7.8, "cold work, under 4 % chromium"],
    ["C 0.85 Cr 4 W 11.9 V 1", 8.1, "high speed, under 12 % tungsten"],
    ["C 0.85 Cr 4 W 12 V 1", 8.6, "high speed, 12 % tungsten and over"],
    ["C 0.05 Cr 18 Ni 9", 7.95, "austenitic stainless"],
    ["C 0.95 Mn 0.4", 7.85, "plain carbon"],
  ])("%s: %d of %s", (analysis, value, locator) => {
    const { value: told, relation } = densityOf(analysis);
    expect(told).toBe(value);
    expect(relation.locator).toBe(locator);
    expect(relation.title).toBe("density typical of the family");
    expect(relation.output).toEqual({ label: "density", unit: "g/cm³" });
  });

  it("states an error that covers the values of its family: 304 of 8.03 and 304L of 8.00 beside 7.95", () => {
    const errorOf = (name: string) => densityOf(name).relation.error.size as number;
    expect(errorOf("C 0.05 Cr 18 Ni 9")).toBeGreaterThanOrEqual(8.03 - 7.95 - 1e-9);
    expect(errorOf("C 0.05 Cr 18 Ni 9")).toBeLessThan(0.15);
    // Plain carbon steels were read from 7.84 to 7.872 and default to 7.85.
    expect(errorOf("C 0.95 Mn 0.4")).toBeLessThan(0.1);
    const [published, family] = densityRelations(null);
    expect(published?.title).toBe("density published for the grade");
    expect(family?.error.size).toBeGreaterThanOrEqual(errorOf("C 0.05 Cr 18 Ni 9"));
    expect(densityRelations(findSteel("D2"))).toEqual([densityOf("D2").relation]);
  });
});

describe("a steel that is asked for", () => {
  it("is taken by name, by number, as a grade and as what findSteel gives", () => {
    const steel = findSteel("1095");
    expect(steelAsked("1095")).toBe(steel);
    expect(steelAsked(1095)).toBe(steel);
    expect(steelAsked(steel)).toBe(steel);
    const grade = allGrades().find(({ designation }) => designation === "1095");
    expect(steelAsked(grade as never)).toBe(steel);
  });

  it("is refused as anything else", () => {
    for (const given of [null, undefined, true, {}, [], () => "1095"])
      expect(() => steelAsked(given as never)).toThrow(InvalidValue);
  });
});

it("an analysis is bounded by what it states; what it leaves out has no limit, a stated 0 is 0", () => {
  const steel = findSteel("C 0.95 Mn 0.40 Cr 0");
  expect(boundsOf(steel, "C")).toEqual({ low: 0.95, high: 0.95 });
  expect(boundsOf(steel, "Cr")).toEqual({ low: 0, high: 0 });
  expect(boundsOf(steel, "V")).toEqual({ low: null, high: null });
  expect(boundsOf(findSteel("C 0.95 Cr 0.5"), "Cr")).toEqual({ low: 0.5, high: 0.5 });
});

it("the elastic modulus is 30 million psi of 6894.757 Pa (ASM Handbook 1: steels 200 to 215 GPa)", () => {
  expect(STEEL_MODULUS.output).toEqual({ label: "elastic modulus", unit: "GPa" });
  expect(STEEL_MODULUS.locator).toContain(`${Math.round(30 * 6.894757)} GPa`);
  const { size, unit } = STEEL_MODULUS.error;
  expect(unit).toBe("%");
  expect(207 * (1 - (size as number) / 100)).toBeLessThanOrEqual(201);
});
