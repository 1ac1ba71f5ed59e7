import { describe, expect, it, test } from "vitest";
import { usualHardening } from "../../src/core/hardening/hardening-temperature";
import { attempt, Refusal } from "../../src/core/refusal";
import { findSteel } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { areTwins, similarGrades } from "../../src/core/steel/similar-grades";
import { stainless, stainlessRelations } from "../../src/core/steel/stainless";
import { toughnessAt, toughnessRelations } from "../../src/core/steel/toughness";
import { steelTraits } from "../../src/core/steel/traits";
import { allTwins, systemsCarrying, twinGroups } from "../../src/core/steel/twins";

const twins = (one: string, other: string) => areTwins(findSteel(one), findSteel(other));

describe("steels that are one for a smith", () => {
  // Cross references of ISO 4957 and EN 10132-4 (annexes): the same composition under the names of two standards.
  test.each([
    ["1075", "C75S"],
    ["6150", "51CrV4"],
    ["52100", "100Cr6"],
  ])("%s is %s", (one, other) => {
    expect(twins(one, other)).toBe(true);
    expect(twins(other, one)).toBe(true);
  });

  // SAE J403 sorts 15xx apart as of higher manganese; ASTM A681 gives O1 tungsten and O2 none; carbon parts the others.
  test.each([
    ["1070", "1572"],
    ["O1", "O2"],
    ["1060", "65Mn"],
    ["1075", "1095"],
    ["1095", "W2"],
    ["440A", "440C"],
    ["A2", "D2"],
  ])("%s is not %s", (one, other) => {
    expect(twins(one, other)).toBe(false);
    expect(twins(other, one)).toBe(false);
  });

  it("is itself, and of analyses one with hardly other carbon and no other addition", () => {
    const steel = findSteel("C 0.75 Mn 0.6");
    expect(areTwins(steel, steel)).toBe(true);
    expect(twins("C 0.75 Mn 0.6", "C 0.77 Mn 0.61")).toBe(true);
    expect(twins("C 0.75 Mn 0.6", "C 0.8 Mn 0.6")).toBe(false);
    expect(twins("C 0.75 Mn 0.6", "C 0.7 Mn 0.6")).toBe(false);
    expect(twins("C 0.75 Mn 0.6", "C 0.75 Mn 1.4")).toBe(false);
    expect(twins("C 0.75 Mn 0.6", "C 0.75 Mn 0.6 Ni 1.5")).toBe(false);
    expect(twins("C 0.75 Mn 0.6 V 0.2", "C 0.75 Mn 0.6 V 0.21")).toBe(true);
  });

  it("groups hold every grade once, each with the twins of its first", () => {
    const steels = ["1075", "C75S", "1095", "6150", "51CrV4", "1075"].map(findSteel);
    const names = twinGroups(steels).map(({ first, all }) => [first.name, ...all.map(({ name }) => name)]);
    expect(names).toEqual([
      ["1075", "1075", "C75S"],
      ["1095", "1095"],
      ["6150", "6150", "51CrV4"],
    ]);
    const every = allTwins().flatMap(({ all }) => all.map(({ name }) => name));
    expect(new Set(every).size).toBe(every.length);
    expect(every).toContain("M2 (high C)");
    expect(every).not.toContain("M2");
    expect(every.length).toBeLessThanOrEqual(allGrades().length);
  });

  it("are carried by as many systems as name them: 1075 by SAE and EN at least, an analysis by one of its own", () => {
    expect(systemsCarrying(findSteel("1075"))).toBeGreaterThanOrEqual(2);
    expect(systemsCarrying(findSteel("52100"))).toBeGreaterThanOrEqual(2);
    expect(systemsCarrying(findSteel("C 0.77 Mn 0.5"))).toBe(1);
    for (const { all } of allTwins()) {
      const systems = new Set(all.map(({ grade }) => grade?.system)).size;
      for (const steel of all) expect(systemsCarrying(steel)).toBe(systems);
    }
  });
});

describe("grades that are near", () => {
  it("none is the steel itself or a class of it, the nearest first, as many as are asked for", () => {
    const near = similarGrades("M2 (high C)", 20).map(({ grade }) => grade.designation);
    expect(near.some((name) => /^M2\b(?! ?\d)/.test(name))).toBe(false);
    expect(similarGrades("W1-9.5", 30).some(({ grade }) => grade.designation.startsWith("W1"))).toBe(false);
    expect(similarGrades("1095", 3)).toEqual(similarGrades("1095", 10).slice(0, 3));
    expect(similarGrades("1095")).toHaveLength(10);
  });

  // ASTM A681: O1 0.40 to 0.60 % W, O2 at most 0.30 % Cr; ISO 4957: X153CrMoV12 0.70 to 1.00 % V beside D2 at most 1.10.
  it("names what parts them most: manganese 1575 from 1075, nothing where the middles agree", () => {
    const of = (steel: string, other: string) =>
      similarGrades(steel, 60).find(({ grade }) => grade.designation === other);
    const d2 = of("C 1.5 Cr 12 Mo 0.95 V 0.8 Si 0.35 Mn 0.35", "D2");
    expect(Math.abs(d2?.difference ?? 9)).toBeLessThan(0.5);
    for (const { element, difference } of similarGrades("1095", 60))
      expect(element === null).toBe(difference === 0);
    for (const { difference, element } of similarGrades("C 0.5 Mn 0.75 Si 0.2", 5))
      if (element === "C") expect(Math.abs(difference)).toBeLessThan(0.3);
  });

  it("none is near a steel that is like none", () => {
    expect(similarGrades("C 2.4 Cr 25 V 9 Mo 4")).toEqual([]);
  });
});

describe("stainless", () => {
  // EN 10088-1: 10.5 % chromium. PREN Cr + 3.3 (Mo + 0.5 W) + 16 N, as the International Molybdenum Association prints it.
  it("annealed grades keep all their chromium: 304 and 430 whole, their PREN by hand", () => {
    for (const name of ["304", "430", "C 0.15 Cr 18 Ni 9"]) {
      const { bulk, dissolved, verdict } = stainless(name);
      expect(dissolved).toBe(bulk);
      expect(verdict).toMatch(/^stainless: .*; does not harden by quenching$/);
    }
    expect(stainless("C 0.05 Cr 18 Ni 9 Mo 2 N 0.1").pren).toBeCloseTo(18 + 6.6 + 1.6, 9);
    expect(stainless("C 0.05 Cr 18 Ni 9 W 2").pren).toBeCloseTo(18 + 3.3, 9);
    // More carbon than 0.15 % holds carbide even annealed: what dissolves is then asked at a temperature.
    expect(() => stainless("C 0.16 Cr 18 Ni 9")).toThrow("no hardening window is held");
  });

  it("under 10.5 % it is not, whatever is dissolved; without chromium there is no PREN", () => {
    expect(stainless("C 0.6 Cr 10.4")).toMatchObject({
      verdict: "not stainless: 10.4 % Cr in all, 10.5 % needed",
    });
    expect(stainless("C 0.95 Mn 0.4", 800)).toMatchObject({ bulk: 0, pren: null });
    expect(stainless("C 0.95 Mn 0.4 Cr 0.5", 800).dissolved).toBeLessThanOrEqual(0.5);
    expect(stainless("C 0.95 Mn 0.4 Cr 0.5").dissolved).toBeNull();
    expect(stainless("52100").dissolved).toBeGreaterThan(0.3);
    expect(stainless("52100", 850).dissolved).not.toBe(stainless("52100", 800).dissolved);
    expect(stainless("C 0.5 Cr 10.5", 1050).verdict).toContain("in solution");
  });

  const HARDENED = ["440A", "440B", "440C", "X46Cr13", "X50CrMoV15", "D2"].flatMap((name) =>
    [1000, 1020, 1040, 1060, 1080, 1100].flatMap((hardenC) => {
      const told = attempt(() => stainless(name, hardenC));
      return told instanceof Refusal ? [] : [told];
    }),
  );

  it("hardened, the word follows what is in solution: 10.5 % barely, 11 % and more stainless", () => {
    const due = (dissolved: number) =>
      dissolved < 10.5 ? "not stainless" : dissolved < 11 ? "barely stainless" : "stainless";
    for (const { dissolved, verdict } of HARDENED)
      expect(verdict.startsWith(due(dissolved ?? 0)), verdict).toBe(true);
    const kept = HARDENED.filter(({ dissolved }) => (dissolved ?? 0) >= 10.5);
    for (const { verdict } of kept)
      expect(verdict).toContain("a temper at 425 °C (797 °F) to 600 °C (1112 °F) takes more out");
    expect(kept.length).toBeGreaterThan(10);
  });

  it("rests on passivity and PREN, and on what is dissolved where that is counted", () => {
    const titles = (name: string | null) =>
      stainlessRelations(name === null ? null : findSteel(name)).map(({ title }) => title);
    const own = titles(null);
    expect(own).toHaveLength(2);
    expect(titles("304")).toEqual(own);
    expect(titles("1095")).toEqual(own);
    expect(titles("440C").length).toBeGreaterThan(2);
    expect(titles("440C").slice(0, 2)).toEqual(own);
    expect(titles("C 0.5 Cr 10.5").length).toBeGreaterThan(2);
  });
});

describe("published toughness", () => {
  // Crucible data sheets (read): O1 Charpy C-notch 19 J at 64 HRC, 41 J at 62; A2 42 J at 61, 56 J at 60, 45 J at 58.
  test.each([
    ["O1", 64, "19 J, Charpy C-notch, at 64 HRC"],
    ["O1", 62, "41 J, Charpy C-notch, at 62 HRC"],
    ["O1", 61.4, "41 J, Charpy C-notch, at 62 HRC"],
    ["O1", 63.5, "19 J, Charpy C-notch, at 64 HRC"],
    ["A2", 60.9, "42 J, Charpy C-notch, at 61 HRC"],
    ["A2", 59.9, "56 J, Charpy C-notch, at 60 HRC"],
    ["A2", 57, "45 J, Charpy C-notch, at 58 HRC"],
  ])("%s at %d HRC: %s", (name, hrc, told) => expect(toughnessAt(name, hrc)).toBe(told));

  it("is empty more than a point away, and for a steel of which none is held", () => {
    expect(toughnessAt("O1", 65.1)).toBe("");
    expect(toughnessAt("O1", 20)).toBe("");
    expect(toughnessAt("C 0.95 Mn 0.4", 60)).toBe("");
  });

  it("is told test by test in EVIDENCE, its figures in order", () => {
    const of = toughnessRelations(findSteel("O1"));
    const notch = of.find(({ title }) => title === "Toughness by hardness: Charpy C-notch of O1");
    expect(notch?.locator).toMatch(/^19 J at 64 HRC, 41 J at 62 HRC/);
    expect(notch?.output).toEqual({ label: "toughness", unit: "J" });
    expect(notch?.error.size).toBeNull();
    expect(notch?.evidence).toBe("compiled");
    expect(toughnessRelations(null).length).toBeGreaterThan(of.length);
    expect(toughnessRelations(findSteel("C 0.95 Mn 0.4"))).toEqual([]);
  });
});

describe("traits of a steel hardened from a temperature that is given", () => {
  const from = (name: string, hardenC: number) => steelTraits(name, hardenC);
  const usual = (name: string) => from(name, usualHardening(findSteel(name)).celsius);

  // Common practice, no source: a forge to 900 °C, a kiln to 1120 °C, beyond it salt or vacuum; a steady kiln from 0.88 % C
  // of alloyed and 1 % of plain steel on.
  test.each([
    ["C 0.6 Mn 0.8 Cr 0.8", 850, "forge or kiln"],
    ["C 0.87 Mn 0.5 Cr 0.6 V 0.1", 820, "forge or kiln"],
    ["C 0.88 Mn 0.5 Cr 0.6 V 0.1", 820, "steady kiln"],
    ["C 0.99 Mn 0.4", 800, "forge or kiln"],
    ["C 1 Mn 0.4", 800, "steady kiln"],
    ["C 0.6 Mn 0.8 Cr 0.8", 900, "forge or kiln"],
    ["C 0.6 Mn 0.8 Cr 0.8", 901, "kiln above 900 °C (1652 °F)"],
    ["C 0.6 Cr 13", 1120, "kiln above 900 °C (1652 °F)"],
    ["C 0.6 Cr 13", 1121, "outside heat treater"],
    ["C 0.85 Cr 4 W 6 Mo 5 V 2", 1000, "outside heat treater"],
  ])("%s from %d °C needs a %s", (name, hardenC, need) => expect(from(name, hardenC).need).toBe(need));

  it("the freeze is named for stainless and high-chromium steel of 0.45 % C and more alone (common practice)", () => {
    const freezes = (name: string, hardenC: number) => from(name, hardenC).needs.includes("deep freeze");
    expect(freezes("C 0.45 Cr 13", 1040)).toBe(true);
    expect(freezes("C 0.44 Cr 13", 1040)).toBe(false);
    expect(freezes("C 1.5 Cr 10.5", 1020)).toBe(true);
    expect(freezes("C 1.5 Cr 10.4", 1020)).toBe(false);
    expect(freezes("C 0.95 Mn 0.4", 800)).toBe(false);
  });

  // ASTM A681: water for W, oil for O, air for A and D grades.
  test.each([
    ["W2", "agitated water"],
    ["O1", "fast oil"],
    ["1084", "fast oil"],
    ["A2", "plates or air"],
    ["D2", "plates or air"],
  ])("%s goes into %s, from its own temperature", (name, bath) => {
    expect(usual(name).needs).toContain(`; ${bath}`);
    expect(usual(name).needs).toMatch(
      /^(forge or kiln|a kiln|an outside heat treater).*, about \d+ °C \(\d+ °F\)/,
    );
  });

  it("depth in words: still air for A2, deep from 20 mm in fast oil, medium from 6 mm, shallow under it", () => {
    expect(usual("A2").depth).toMatch(/^deep: about \d+ mm in still air$/);
    expect(usual("5160").depth).toMatch(/^deep: about \d\d mm in fast oil$/);
    expect(usual("1095").depth).toMatch(/^shallow: about \d\.\d mm in fast oil$/);
    const mm = (name: string) => Number(/about ([\d.]+) mm/.exec(usual(name).depth)?.[1]);
    for (const name of [
      "1060",
      "1080",
      "1084",
      "O1",
      "O2",
      "52100",
      "6150",
      "9260",
      "80CrV2",
      "15N20",
      "L6",
    ]) {
      const due = mm(name) >= 20 ? "deep" : mm(name) >= 6 ? "medium" : "shallow";
      expect(usual(name).depth, name).toMatch(new RegExp(`^${due}: about`));
    }
  });

  // Roberts, Krauss and Kennedy, Tool Steels: water moves a steel most, oil less, air least.
  it("size change by the bath, safety the other way round", () => {
    expect(usual("A2").sizeChange).toMatch(/low/);
    expect(usual("C 0.95 Mn 0.4 Si 0.2").sizeChange).toBe("medium");
    expect(usual("1095").safety).toMatch(/ in fast oil$/);
    expect(usual("A2").safety).toMatch(/ in still air$/);
  });

  it("what does not harden has no depth, safety, skin or needs; rust is told of it all the same", () => {
    expect(from("304", 1050)).toMatchObject({
      kind: "does not harden",
      depth: "none",
      safety: "",
      sizeChange: "",
      skin: "",
      needs: "",
      rust: "stainless",
      ratings: undefined,
      carbide: undefined,
    });
    expect(from("C 0.2 Mn 0.8", 850).kind).toBe("does not harden");
  });

  // Chromium from 4 % slows rust (common practice, no source); stainless by EN 10088-1.
  test.each([
    ["1095", 800, "rusts"],
    ["C 0.6 Cr 3.9", 950, "rusts"],
    ["C 0.6 Cr 4", 950, "slow to rust"],
    ["D2", 1020, "slow to rust"],
    ["X50CrMoV15", 1050, "stainless"],
  ])("%s %s", (name, hardenC, rust) => expect(from(name, hardenC).rust).toBe(rust));

  it("the window is the published one, whatever was asked, and the basis says what is rated and counted", () => {
    // ASTM A681: A2 is hardened from 925 to 980 °C; SAE's 1095 is printed with one temperature.
    expect(from("A2", 960).window).toMatch(/^9\d\d °C \(\d+ °F\) to 9\d\d °C \(\d+ °F\)$/);
    expect(from("1095", 810).window).toMatch(/^8\d\d °C \(\d+ °F\)$/);
    expect(from("C 0.95 Mn 0.4", 800).window).toBe("");
    expect(from("D2", 1020).basis).toMatch(/^ratings handbook/);
    expect(from("C 0.95 Mn 0.4", 800).basis).toMatch(/^ratings by relation; carbide calculated$/);
    expect(from("304", 1050).basis).toBe("not rated");
    expect(from("1095", 810).skin).toMatch(/^(.* resistance; )?about 0\.\d\d mm in 10 min, bare$/);
  });
});
