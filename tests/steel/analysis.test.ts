import { describe, expect, it } from "vitest";
import { InvalidValue } from "../../src/core/refusal";
import { analysisText } from "../../src/core/steel/analysis";
import { findSteel } from "../../src/core/steel/find";

describe("an analysis in mass %", () => {
  it.each([
    "C 0.95 Mn 0.40 Si 0.22",
    "Si 0.22 C 0.95 Mn 0.40",
    "C 0,95 Mn 0,40 Si 0,22",
    "C 0,95, Mn 0,40, Si 0,22",
    "C=0.95; Mn=0.40; Si=0.22",
    "C: 0.95% Mn: 0.40 % Si: 0.22 %",
    "c .95 MN .4 sI .22",
    "C0.95Mn0.40Si0.22",
    "C\u00a00.95 / Mn\u00a00.40 / Si\u00a00.22",
  ])("%s", (text) => {
    const steel = findSteel(text);
    expect(steel).toMatchObject({ name: text, grade: null, family: "plain carbon" });
    expect(steel.composition).toMatchObject({ C: 0.95, Mn: 0.4, Si: 0.22, Cr: 0, P: 0 });
  });

  it.each([
    ["C 0.5 Ti 0.02", '"Ti" is not an element used here'],
    ["C 0.5 Fe 99", "iron is the rest"],
    ["C 0.5 Mn 0.7 C 0.6", "C is given twice"],
    ["Mn 0.7 Si 0.2", "needs carbon"],
    ["C 0.0 Mn 0.7", "needs carbon"],
    ["C 60 Mn 70", "was 0.6 meant"],
    ["C 0.60 Mn 75", "was 0.75 meant"],
    ["C 5 Mn 0.7", "more than the 2.5 % accepted"],
    ["C 9500 Mn 0.7", "was 0.95 meant (parts per million given)?"],
    ["C 0.5 N 120", "was 0.012 meant (parts per million given)?"],
    ["C 0.5 P 18", "was 0.018 meant (the decimal point left out)?"],
  ])("%s is refused", (text, sentence) => {
    expect(() => findSteel(text)).toThrow(InvalidValue);
    expect(() => findSteel(text)).toThrow(sentence);
  });

  it("is refused where it adds up to more than the whole", () => {
    expect(findSteel("C 2 Cr 30 Ni 30 W 22 Co 16").grade).toBeNull();
    expect(() => findSteel("C 2 Cr 30 Ni 30 W 22 Co 16 Mn 1")).toThrow("add up to 101 %, more than 100 %");
  });

  it("is not made out of a designation: Cr12MoV and C 60 are grades", () => {
    expect(findSteel("Cr 12 Mo V").name).toBe("Cr12MoV");
    expect(findSteel("W6Mo5Cr4V2").name).toBe("W6Mo5Cr4V2");
    expect(findSteel("C 60").name).toBe("C60");
    expect(() => findSteel("Cr12Mo2V1")).toThrow("not in the grade table");
  });
});

describe("the family of an analysis", () => {
  // EN 10020 table 1 (alloy steel), 3.2.2 (stainless) and ISO 4957 (high speed), all from memory; limits of the named grades.
  it.each([
    ["C 0.95 Mn 0.40", "plain carbon"],
    ["C 0.60 Mn 0.85 Cr 0.80", "low alloy"], // 5160
    ["C 1.00 Cr 5.2 Mo 1.1 V 0.3", "cold work"], // A2
    ["C 1.50 Cr 12 Mo 0.9 V 0.9", "cold work"], // D2
    ["C 0.38 Cr 5.2 Mo 1.4 V 1.0", "hot work"], // H13
    ["C 0.85 Cr 4.1 Mo 5 W 6.1 V 2", "high speed"], // M2
    ["C 0.73 Cr 4.1 W 18 V 1.1", "high speed"], // T1
    ["C 1.07 Cr 17 Mo 0.6", "martensitic stainless"], // 440C
    ["C 0.05 Cr 18.5 Ni 9", "austenitic stainless"], // 304
    ["C 0.05 Cr 17", "ferritic stainless"], // 430
  ])("%s: %s", (text, family) => {
    expect(findSteel(text).family).toBe(family);
  });
});

describe("writing an analysis", () => {
  it("gives a text that is a steel again", () => {
    const text = analysisText(["C", "mn", "N", "Ni"], [0.95, 0.4, 0.00005, 20]);
    expect(text).toBe("C 0.95 Mn 0.4 N 0.00005 Ni 20");
    expect(findSteel(text).composition).toMatchObject({ C: 0.95, Mn: 0.4, N: 0.00005, Ni: 20 });
  });

  it("refuses unequal lists, negative figures and slips", () => {
    expect(() => analysisText(["C", "Mn"], [0.9])).toThrow("2 elements but 1 figures");
    expect(() => analysisText(["C"], [-0.9])).toThrow("cannot be negative");
    expect(() => analysisText(["C", "Mn"], [60, 0.7])).toThrow("was 0.6 meant");
  });
});
