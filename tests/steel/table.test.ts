import { describe, expect, it } from "vitest";
import { SOURCE_ADDRESSES } from "../../src/core/source-addresses";
import { SOURCES } from "../../src/core/sources";
import { ELEMENTS } from "../../src/core/steel/composition";
import { findSteel } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import kin from "./grade-kin.json";

describe("the grade table", () => {
  it("names a known source for every row, density and note", () => {
    for (const grade of allGrades()) {
      const keys = [grade.source];
      if (grade.densitySource !== null) keys.push(grade.densitySource);
      for (const key of keys) expect(SOURCES[key], `${grade.designation}: ${key}`).toBeDefined();
    }
  });

  it("names a known source for everything that stands beside a grade", () => {
    const keys = kin.rows.flatMap(([, , others = ""]) => others.split(" ").filter((key) => key !== ""));
    expect(keys.filter((key) => !(key in SOURCES))).toEqual([]);
  });

  it("marks a row as recalled exactly where its source was recalled", () => {
    // Five rows whose main elements are recalled still cite the page that carried the rest.
    const partly = ["SUS440C", "GCr15", "SUP6", "SUP7", "90MnCrV8"];
    for (const { designation, status, source } of allGrades()) {
      const expected = status === "read" || partly.includes(designation) ? "READ" : "MEMORY";
      expect(SOURCES[source].seen, designation).toBe(expected);
    }
  });

  it("keeps every limit in order and of known elements only", () => {
    const limits = allGrades().flatMap((grade) =>
      Object.entries(grade.limits).map(([element, bounds]) => ({
        name: grade.designation,
        element,
        ...bounds,
      })),
    );
    expect(limits.filter(({ element }) => !ELEMENTS.some((known) => known === element))).toEqual([]);
    expect(limits.filter(({ low, high }) => low === null && high === null)).toEqual([]);
    expect(limits.filter(({ low, high }) => (low ?? 0) >= (high ?? 100))).toEqual([]);
  });
});

describe("limits printed in the standards", () => {
  // SAE J403/J404, ASTM A295, A686, J405, JIS G 4401, GB/T 699 and GOST 14959 as suppliers print them.
  it.each([
    ["1084", "C", 0.8, 0.93],
    ["1095", "Mn", 0.3, 0.5],
    ["5160", "Cr", 0.7, 0.9],
    ["52100", "C", 0.93, 1.05],
    ["W1-9.5", "C", 0.95, 1.05],
    ["440C", "C", 0.95, 1.2],
    ["SK85", "C", 0.8, 0.9],
    ["S55C", "C", 0.52, 0.58],
    ["65Mn", "Mn", 0.9, 1.2],
    ["65Г", "C", 0.62, 0.7],
    ["O1", "W", 0.4, 0.6],
    ["C75S", "C", 0.7, 0.8],
    ["X46Cr13", "Cr", 12.5, 14.5],
  ] as const)("%s %s %d to %d", (name, element, low, high) => {
    expect(findSteel(name).grade?.limits[element]).toEqual({ low, high });
  });

  it("leaves a blank limit blank: 304 has no carbon minimum, 420 no maximum", () => {
    expect(findSteel("304").grade?.limits.C).toEqual({ low: null, high: 0.08 });
    expect(findSteel("420").grade?.limits.C).toEqual({ low: 0.15, high: null });
    expect(findSteel("1095").grade?.limits.Si).toBeUndefined();
  });
});

it("every address belongs to a source", () => {
  expect(Object.keys(SOURCE_ADDRESSES).filter((key) => !Object.hasOwn(SOURCES, key))).toEqual([]);
});
