import { describe, expect, it } from "vitest";
import { InvalidValue, NotAvailable } from "../../src/core/refusal";
import { SOURCES } from "../../src/core/sources";
import { certificate, type Result } from "../../src/core/steel/certificate";
import type { Element } from "../../src/core/steel/composition";
import { findSteel } from "../../src/core/steel/find";
import { roundToPlaces } from "../../src/core/steel/rounding";
import variations from "../../src/data/steel/product-variation.json";
import tables from "../../src/data/steel/product-variation-tables.json";

function results(text: string): Result[] {
  return text
    .split(" ")
    .flatMap((word, at, words) =>
      at % 2 === 0 ? [{ element: word as Element, value: Number(words[at + 1]) }] : [],
    );
}

function report(steel: string, text: string, kind: "heat" | "product" = "heat") {
  return certificate(findSteel(steel), results(text), kind);
}

function limits(steel: string, element: Element) {
  const [line] = report(steel, `${element} 0.5`, "product").lines;
  return [line?.low, line?.high];
}

describe("a certificate of the heat", () => {
  it("with a planted fault: 1075 with 0.95 Mn", () => {
    // SAE J403: 1075 has C 0.70-0.80, Mn 0.40-0.70, P 0.040 max, S 0.050 max and no Si, Cr limit.
    const { lines, verdict } = report("1075", "C 0.74 Si 0.22 Mn 0.95 P 0.012");
    expect(lines.map(({ element, status }) => `${element} ${status}`)).toEqual([
      "C OK",
      "Si NO LIMIT",
      "Mn HIGH",
      "P OK",
      "S MISSING",
    ]);
    expect(verdict).toBe("fail: Mn high");
  });

  it("passes where every limited element is given and within its limits", () => {
    expect(report("1075", "C 0.74 Mn 0.55 P 0.012 S 0.01").verdict).toBe("pass");
    expect(report("1075", "C 0.74 Mn 0.55 P 0.012").verdict).toBe("incomplete: S not given");
    expect(report("1075", "C 0.69 Mn 0.55 P 0.012 S 0.01").verdict).toBe("fail: C low");
  });

  it("says where the limits rest on memory", () => {
    expect(report("8670", "C 0.7").verdict).toContain("limits recalled, not confirmed");
    expect(report("1551", "C 0.5 Mn 1 P 0.01 S 0.01").verdict).toBe("pass; limits recalled, not confirmed");
  });

  it("rounds to the last place of the limit before comparing, halves to the even digit (ASTM E29)", () => {
    // Worked examples of the rounding rule: 0.805 to 0.80, 0.815 to 0.82, 0.8051 to 0.81.
    expect([0.805, 0.815, 0.8051, 0.8049].map((value) => roundToPlaces(value, 2))).toEqual([
      0.8, 0.82, 0.81, 0.8,
    ]);
    expect(roundToPlaces(0.0405, 3)).toBe(0.04);
    expect(report("1075", "C 0.804 Mn 0.55 P 0.0404 S 0.01").verdict).toBe("pass");
    expect(report("1075", "C 0.806 Mn 0.55 P 0.01 S 0.01").verdict).toBe("fail: C high");
  });

  it.each([
    ["1075", "C 60 Mn 0.5", "was 0.6 meant"],
    ["1075", "C 6000 Mn 0.5", "parts per million given"],
    ["1075", "C 0.7 C 0.8", "C is given twice"],
    ["304", "C 0.05 Cr 30 Ni 30 W 22 Co 16 Mn 3", "more than 100 %"],
    ["C 0.7 Mn 0.5", "C 0.7", "give the grade that was ordered"],
  ])("%s, %s is refused", (steel, text, sentence) => {
    expect(() => report(steel, text)).toThrow(InvalidValue);
    expect(() => report(steel, text)).toThrow(sentence);
  });

  it("asks for the class where each has its own carbon", () => {
    expect(() => report("M2", "C 0.9")).toThrow('"M2 (regular C)" or "M2 (high C)"');
    expect(report("W1", "C 0.9").lines[0]?.status).toBe("OK");
  });
});

describe("pieces of the bar", () => {
  it("may exceed the limits of the heat by the permissible variation", () => {
    // Worked from ASTM A29 table 5 (recalled) and SAE J409 (C to 0.75 read, above recalled; Cr recalled).
    expect(limits("1084", "C")).toEqual([0.76, 0.97]);
    expect(limits("5160", "C")).toEqual([0.54, 0.66]);
    expect(limits("5160", "Cr")).toEqual([0.67, 0.93]);
    expect(limits("52100", "C")).toEqual([0.9, 1.08]);
    // SAE J409: Mn over 0.90 to 2.10 0.04, P 0.005 over the maximum only.
    expect(limits("5160", "Mn")).toEqual([0.71, 1.04]);
    expect(limits("5160", "P")).toEqual([null, 0.04]);
    // EN 10088 as printed for 1.4057: Cr 15-17 by 0.20, Ni 1.5-2.5 by 0.07, S 0.003 to 0.015.
    expect(limits("1.4057", "Cr")).toEqual([14.8, 17.2]);
    expect(limits("1.4057", "Ni")).toEqual([1.43, 2.57]);
    // A minimum alone is widened downwards by 0.01: 6150 has V 0.15 min.
    expect(limits("6150", "V")).toEqual([0.14, null]);
  });

  it("fail where one heat lies both above and below its range, each within the variation", () => {
    const split = report("5160", "C 0.55 C 0.65 Si 0.2 Mn 0.9 P 0.01 S 0.01 Cr 0.8", "product");
    expect(split.lines.every(({ status }) => status === "OK")).toBe(true);
    expect(split.verdict).toMatch(/^fail: C both above and below the range in one heat/);
    const one = report("5160", "C 0.65 C 0.66 Si 0.2 Mn 0.9 P 0.01 S 0.01 Cr 0.8", "product");
    expect(one.verdict).toBe("pass; variation of Cr recalled, not confirmed");
  });

  it("are refused where no variation is held", () => {
    for (const steel of ["D2", "SK85", "65Mn", "65Г", "1.2842"]) {
      expect(() => report(steel, "C 0.8", "product"), steel).toThrow(NotAvailable);
    }
    expect(() => report("D2", "C 1.5", "product")).toThrow("ASTM A681");
  });

  it("rest on tables with known sources, brackets without gaps and of known elements", () => {
    for (const [, , , , source] of tables.rows)
      expect(SOURCES[source as keyof typeof SOURCES], source).toBeDefined();
    const names = new Set(tables.rows.map(([name]) => name));
    for (const [table, , over, to, size] of variations.rows as [string, string, number, number, number][]) {
      expect(names.has(table), table).toBe(true);
      expect(to).toBeGreaterThan(over);
      expect(size).toBeGreaterThan(0);
    }
  });
});

describe("the place to which a figure is rounded", () => {
  // ASTM E29: to the last place of the limit. SAE J403 prints P and S to three decimals, C and Mn to two.
  it("is the third for phosphorus and sulphur, the second for the rest, whichever side is limited", () => {
    const verdict = (text: string) => report("1075", text).verdict;
    expect(verdict("C 0.74 Mn 0.55 P 0.0404 S 0.0504")).toBe("pass");
    expect(verdict("C 0.74 Mn 0.55 P 0.0406 S 0.0504")).toBe("fail: P high");
    expect(verdict("C 0.74 Mn 0.55 P 0.0404 S 0.0506")).toBe("fail: S high");
    expect(verdict("C 0.696 Mn 0.396 P 0.01 S 0.01")).toBe("pass");
    expect(verdict("C 0.694 Mn 0.55 P 0.01 S 0.01")).toBe("fail: C low");
    expect(verdict("C 0.70 Mn 0.40 P 0.040 S 0.050")).toBe("pass");
    expect(verdict("C 0.80 Mn 0.70 P 0 S 0")).toBe("pass");
  });

  it("an element without a limit is told, not judged", () => {
    const { lines, verdict } = report("1075", "C 0.74 Mn 0.55 P 0.01 S 0.01 Cu 0.9");
    expect(lines.find(({ element }) => element === "Cu")).toMatchObject({
      low: null,
      high: null,
      status: "NO LIMIT",
    });
    expect(verdict).toBe("pass");
  });
});

describe("a certificate of pieces", () => {
  // ASTM A29/A29M, carbon steel bars to 65 000 mm²: C over 0.55 % 0.03 to either side, Mn to 0.90 % 0.03, P and S 0.008
  // over the maximum; with several results of one heat the range may not be left on both sides.
  it("takes each piece by itself, within the variation, its own limits in the line", () => {
    const heat = report("1075", "C 0.74 Mn 0.55 P 0.01 S 0.01");
    const piece = report("1075", "C 0.74 Mn 0.55 P 0.01 S 0.01", "product");
    for (const [at, line] of piece.lines.entries()) {
      const own = heat.lines[at];
      expect(line.high ?? 0).toBeGreaterThanOrEqual(own?.high ?? 0);
      expect(line.low ?? 9).toBeLessThanOrEqual(own?.low ?? 9);
    }
    const [low = 0, high = 0] = limits("1075", "C") as number[];
    expect(0.7 - low).toBeCloseTo(high - 0.8, 9);
    expect(high - 0.8).toBeGreaterThan(0.009);
  });

  it("one element over and under the range of the heat fails, though each piece is within the variation", () => {
    const [low = 0, high = 0] = limits("1075", "C") as number[];
    const rest = "Mn 0.55 P 0.01 S 0.01";
    expect(report("1075", `C ${high} ${rest}`, "product").verdict).toMatch(/^pass/);
    expect(report("1075", `C ${low} C ${high} ${rest}`, "product").verdict).toMatch(
      /^fail: C both above and below the range in one heat/,
    );
    expect(report("1075", `C ${high} C ${high} ${rest}`, "product").verdict).toMatch(/^pass/);
    expect(report("1075", `C 0.7 C ${high} ${rest}`, "product").verdict).toMatch(/^pass/);
    expect(report("1075", `C 0.8 C ${low} ${rest}`, "product").verdict).toMatch(/^pass/);
  });

  it("says which variations are recalled and which are not held, and only of elements that were given and limited", () => {
    const read = report("1075", "C 0.74 Mn 0.55 P 0.01 S 0.01", "product").verdict;
    expect(read).not.toContain("no variation held");
    const chromium = report("5160", "C 0.6 Mn 0.9 P 0.01 S 0.01 Si 0.2 Cr 0.8", "product").verdict;
    expect(chromium).toContain("variation of Cr recalled, not confirmed");
    expect(chromium).not.toContain("no variation held");
    expect(report("5160", "C 0.6 N 0.01", "product").verdict).not.toContain("no variation held for N");
    expect(report("5160", "C 0.6 Mn 0.9", "heat").verdict).not.toContain("variation");
  });
});
