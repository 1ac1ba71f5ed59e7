import { describe, expect, it } from "vitest";
import { findSteel, steelOf } from "../../src/core/steel/find";
import { allGrades } from "../../src/core/steel/grades";
import { ratingsOf } from "../../src/core/steel/ratings";
import { steelTraits } from "../../src/core/steel/traits";
import { allTwins } from "../../src/core/steel/twins";
import { STEEL_TRAITS } from "../../src/functions/steel";
import { answer } from "./answer";

const traits = (name: string) => steelTraits(findSteel(name));

describe("ratings of tool steels", () => {
  // Selected properties of tool steels, Table 11-4, as a merchant prints it (read): wear, toughness.
  it.each([
    ["M2", 7, 3],
    ["M4", 9, 3],
    ["T1", 7, 3],
    ["T15", 9, 1],
    ["M42", 8, 1],
    ["H13", 3, 9],
  ])("%s: wear %d, toughness %d as printed", (name, wear, toughness) => {
    expect(ratingsOf(findSteel(name))).toEqual({ wear, toughness, basis: "handbook" });
  });

  // The same table from memory.
  it.each([
    ["A2", 6, 4],
    ["D2", 8, 2],
    ["O1", 4, 3],
    ["S7", 3, 8],
    ["S5", 2, 8],
    ["L6", 3, 6],
  ])("%s: wear %d, toughness %d from memory", (name, wear, toughness) => {
    expect(ratingsOf(findSteel(name))).toEqual({ wear, toughness, basis: "handbook, from memory" });
  });

  it("orders what is not rated as the trade does (common practice, no source)", () => {
    const toughness = (name: string) => ratingsOf(findSteel(name))?.toughness ?? 0;
    const falling = ["5160", "80CrV2", "1084", "52100"].map(toughness);
    expect(falling).toEqual([...falling].sort((a, b) => b - a));
    expect(toughness("X65Cr13")).toBeGreaterThan(toughness("440C"));
    expect(ratingsOf(findSteel("440C"))?.wear).toBeGreaterThan(ratingsOf(findSteel("X50CrMoV15"))?.wear ?? 9);
  });

  it("reads W1 by its carbon, inside the range 3 to 7 that the table prints for the whole grade", () => {
    for (const name of ["W1-8", "W1-9.5", "W2"]) {
      expect(ratingsOf(findSteel(name))?.basis).toBe("by relation");
      expect(ratingsOf(findSteel(name))?.toughness).toBeGreaterThanOrEqual(2);
    }
  });
});

describe("traits", () => {
  it("says what a shop must have (common practice, no source)", () => {
    expect(traits("5160").need).toBe("forge or kiln");
    expect(traits("1084").need).toBe("forge or kiln");
    expect(traits("52100").need).toBe("steady kiln");
    expect(traits("X50CrMoV15").need).toBe("kiln above 900 °C (1652 °F)");
    expect(traits("M2").need).toBe("outside heat treater");
  });

  it("calls only what keeps its chromium stainless", () => {
    expect(traits("440C").rust).toBe("stainless");
    expect(traits("D2").rust).toBe("slow to rust");
    expect(traits("O1").rust).toBe("rusts");
  });

  it("has nothing to say of hardening where a steel does not harden", () => {
    expect(traits("304")).toMatchObject({
      kind: "does not harden",
      depth: "none",
      needs: "",
      rust: "stainless",
    });
    expect(traits("304").ratings).toBeUndefined();
  });

  it("knows the kind and the needs of every grade of the table that hardens", () => {
    const all = allGrades().map((grade) => steelTraits(steelOf(grade)));
    expect(all.filter(({ kind }) => kind === "not known")).toEqual([]);
    for (const { kind, needs } of all) expect(needs === "").toBe(kind === "does not harden");
  });

  it("takes a hardening temperature and refuses an unknown steel in one cell", () => {
    const cool = answer(STEEL_TRAITS, "52100", 800)[0] ?? [];
    const hot = answer(STEEL_TRAITS, "52100", 870)[0] ?? [];
    expect(cool[3]).toBeGreaterThan(Number(hot[3]));
    expect(String(answer(STEEL_TRAITS, "Unobtainium")[0]?.[1])).toMatch(/not in the grade table/);
  });
});

describe("twins", () => {
  const groupOf = (name: string) =>
    allTwins()
      .find(({ all }) => all.includes(findSteel(name)))
      ?.all.map((steel) => steel.name) ?? [];

  it("gathers the same steel of several standards", () => {
    expect(groupOf("5160")).toEqual(expect.arrayContaining(["5160", "SUP9A", "51B60"]));
    expect(groupOf("52100")).toEqual(expect.arrayContaining(["52100", "100Cr6", "SUJ2", "ШХ15"]));
    expect(groupOf("X50CrMoV15")).toContain("50Cr15MoV");
  });

  it("keeps apart what a smith would keep apart", () => {
    for (const [one, other] of [
      ["5160", "5155"],
      ["1084", "1095"],
      ["D2", "A2"],
      ["1095", "1084"],
      ["440A", "440C"],
      ["420", "410"],
    ] as const) {
      expect(groupOf(one), one).not.toContain(other);
    }
  });

  it("holds every grade once", () => {
    const all = allTwins().flatMap(({ all }) => all);
    expect(new Set(all).size).toBe(all.length);
  });
});
