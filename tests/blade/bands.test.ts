import { describe, expect, it } from "vitest";
import { bandRelation, basisText, findUse, leanText, USES, usesContaining } from "../../src/core/blade/bands";
import { SOURCES } from "../../src/core/sources";

const total = (figures: readonly (number | null)[]) =>
  figures.reduce<number>((sum, figure) => sum + (figure ?? 0), 0);

describe("the table of uses", () => {
  it("is complete: counts and column sums, added up by hand from the compilation", () => {
    expect(USES).toHaveLength(37);
    expect(total(USES.map(({ low }) => low))).toBe(1944);
    expect(total(USES.map(({ high }) => high))).toBe(2109);
    expect(total(USES.map(({ aim }) => aim))).toBe(2031);
    expect(total(USES.map(({ angleLow }) => angleLow))).toBe(561.5);
    expect(total(USES.map(({ angleHigh }) => angleHigh))).toBe(747);
    expect(total(USES.map(({ behindEdgeLow }) => behindEdgeLow))).toBeCloseTo(17.55, 10);
    expect(total(USES.map(({ behindEdgeHigh }) => behindEdgeHigh))).toBeCloseTo(22.9, 10);
  });

  it("is in order in every row", () => {
    for (const use of USES) {
      expect(use.low, use.word).toBeLessThan(use.aim);
      expect(use.aim, use.word).toBeLessThan(use.high);
      // Narrower than 2 HRC no tester and furnace hold (common practice, no source).
      expect(use.high - use.low, use.word).toBeGreaterThanOrEqual(2);
      expect(use.angleLow ?? 0, use.word).toBeLessThanOrEqual(use.angleHigh ?? 90);
      expect(use.behindEdgeLow ?? 0, use.word).toBeLessThanOrEqual(use.behindEdgeHigh ?? 9);
    }
  });

  it("names a known source in every row and tells where it rests on common practice", () => {
    for (const use of USES) {
      for (const key of use.sources) expect(Object.hasOwn(SOURCES, key), key).toBe(true);
      const isCommon = use.evidence === "common practice";
      expect(use.sources.includes("common"), use.word).toBe(isCommon);
      expect(basisText(use).startsWith("common practice"), use.word).toBe(isCommon);
      expect(bandRelation(use).title).toContain(use.word);
    }
    expect(USES.filter(({ evidence }) => evidence === "common practice")).toHaveLength(28);
  });

  it("keeps disagreement and refuses to follow the outlier", () => {
    expect(bandRelation(findUse("Practice longsword blunt")).note).toContain("do not follow it");
  });
});

describe("facts of the trade (common practice, no source)", () => {
  it("heavy cutting swords for hard targets: 53-54 at most", () => {
    const use = findUse("Heavy cutting sword hard targets");
    expect(use.high).toBeLessThanOrEqual(54);
    expect(use.ceiling).toBe(54);
  });

  it("knives go higher than swords; 55 is near the usual region of a sword", () => {
    const middles = (group: string) =>
      USES.filter((use) => use.group === group && use.part === "whole").map(({ aim }) => aim);
    const mean = (figures: number[]) => total(figures) / figures.length;
    expect(mean(middles("kitchen"))).toBeGreaterThan(mean(middles("sword")));
    expect(mean(middles("field"))).toBeGreaterThan(mean(middles("sword")));
    const light = findUse("Light sharp sword soft targets");
    expect([light.low <= 55, light.high >= 55]).toEqual([true, true]);
  });

  it("thin hard kitchen blades and differentially hardened edges: about 60; at most about 62", () => {
    expect(findUse("Chef knife thin hard").aim).toBe(60);
    expect(findUse("Differential edge Japanese style").aim).toBe(60);
    expect(findUse("Chef knife thin hard").high).toBe(62);
  });

  it("in doubt err to the tougher side", () => {
    for (const use of USES) expect(leanText(use)).toMatch(/^low end/);
    expect(leanText(findUse("European sword sharp"))).toContain("50 to 52 HRC");
    expect(leanText(findUse("European sword sharp"))).toContain("230 °C (446 °F) and 370 °C (698 °F)");
  });
});

describe("finding a use", () => {
  it.each([
    ["chef knife thin hard", "Chef knife thin hard"],
    ["Gyuto", "Chef knife thin hard"],
    ["field", "Field camp bushcraft"],
    ["hatchet", "Hatchet bit"],
    ["bread knife", "Bread serrated"],
    ["hunting knife", "Hunting or skinning"],
    ["butcher knife", "Boning or butcher"],
    ["practice longsword", "Practice longsword blunt"],
    ["re-enactment", "Re-enactment blunt"],
    ["sword sharp european", "European sword sharp"],
  ])("%s", (given, word) => {
    expect(findUse(given).word).toBe(word);
  });

  it("finds every use by its own name in any case", () => {
    for (const { word } of USES) expect(findUse(`  ${word.toUpperCase()} `).word).toBe(word);
  });

  it.each([
    ["sword", 'fits more than one use: "European sword sharp"'],
    ["chef", 'fits more than one use: "Chef knife thin hard", "Chef knife European style"'],
    [
      "kitchen",
      'more than one use: "Chef knife thin hard", "Chef knife European style", "Vegetable cleaver"',
    ],
    [
      "kitchen knife",
      'more than one use: "Chef knife thin hard", "Chef knife European style", "Paring or petty"',
    ],
    ["carving knife", 'more than one use: "Wood carving", "Carving or side axe bit"'],
    ["machette", 'Nearest: "Machete light"'],
    ["spaceship", "USES() lists them all"],
    ["", "is not a known use"],
  ])("refuses %s", (given, sentence) => {
    expect(() => findUse(given)).toThrow(sentence);
  });

  it("lists by a part of the name or by group", () => {
    expect(usesContaining("")).toHaveLength(37);
    expect(usesContaining("axe")).toEqual([
      "Felling axe bit",
      "Hatchet bit",
      "Carving or side axe bit",
      "Splitting maul edge",
    ]);
    expect(usesContaining("KITCHEN")).toHaveLength(8);
  });
});
