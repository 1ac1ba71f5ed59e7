import { describe, expect, test } from "vitest";
import { basisText, findUse, leanText, USES } from "../../src/core/blade/bands";
import { caution, cautionClause, ranked } from "../../src/core/blade/caution";
import { chanceInBand, chanceText } from "../../src/core/blade/chance";
import { hardPartMm } from "../../src/core/blade/hard-part";
import {
  bandCautions,
  fahrenheitAsked,
  hardeningCautions,
  hardnessCautions,
} from "../../src/core/blade/hardness-cautions";
import { bathCaution } from "../../src/core/blade/quench-cautions";
import type { BladeQuestion, BladeStory } from "../../src/core/blade/question";
import { missOf, statusOf } from "../../src/core/blade/status";
import { steelCautions } from "../../src/core/blade/steel-cautions";
import { isStainless, steelKind } from "../../src/core/blade/steel-kind";
import { suitability } from "../../src/core/blade/suitability";
import { impliedBy, temperCautions } from "../../src/core/blade/temper-cautions";
import { findQuench } from "../../src/core/hardening/quench-media";
import { findSteel } from "../../src/core/steel/find";

/* Rules of the trade (common practice, no source) at their limits; the table of steel by use is the compilation's. */

describe("kinds of steel by analysis, on both sides of each border", () => {
  test.each([
    ["C 0.79 Mn 0.7", "medium carbon"],
    ["C 0.80 Mn 0.7", "plain high carbon"],
    ["C 0.60 Cr 0.8 Mn 0.8", "spring steel"],
    ["C 0.64 Si 2 Mn 0.8", "spring steel"],
    ["C 0.65 Cr 0.8", "0.7-0.85 % C low alloy"],
    ["C 0.87 Cr 0.8", "0.7-0.85 % C low alloy"],
    ["C 0.88 Cr 0.8", "low-alloy high carbon"],
    ["C 1.00 Cr 0.29", "plain high carbon"],
    ["C 1.00 Cr 0.30", "low-alloy high carbon"],
    ["C 1.00 Ni 0.40", "low-alloy high carbon"],
    ["C 1.00 Ni 0.39", "plain high carbon"],
    ["C 1.00 Mo 0.10", "low-alloy high carbon"],
    ["C 1.00 W 0.30", "low-alloy high carbon"],
    ["C 1.00 W 0.29", "plain high carbon"],
    ["C 1.00 Mn 1.30", "low-alloy high carbon"],
    ["C 1.00 Mn 1.29", "plain high carbon"],
    ["C 1.00 Si 1.00", "low-alloy high carbon"],
    ["C 1.00 Si 0.99", "plain high carbon"],
  ])("%s: %s", (analysis, kind) => {
    expect(steelKind(findSteel(analysis))).toBe(kind);
  });

  // Designations as any handbook sorts them.
  test.each([
    ["D2", "cold work"],
    ["A2", "cold work"],
    ["H13", "hot work"],
    ["S7", "shock resisting"],
    ["M2", "high alloy"],
    ["440C", "stainless"],
    ["X50CrMoV15", "stainless"],
    ["O1", "low-alloy high carbon"],
    ["52100", "low-alloy high carbon"],
    ["1095", "plain high carbon"],
    ["1060", "medium carbon"],
    ["5160", "spring steel"],
    ["80CrV2", "0.7-0.85 % C low alloy"],
  ])("%s: %s", (name, kind) => {
    expect(steelKind(findSteel(name))).toBe(kind);
    expect(isStainless(name)).toBe(kind === "stainless");
  });
});

describe("how a kind suits a use, from the table of steel by use", () => {
  const suits = (use: string, name: string, length?: number) => {
    const steel = findSteel(name);
    return suitability({ use: { ...findUse(use), steels: "" }, steel, length }, steelKind(steel));
  };

  test.each([
    // Sword, chopper, field, kitchen and edge-tool columns; what the steel itself changes stands beside.
    ["European sword sharp", "5160", "best"],
    ["European sword sharp", "80CrV2", "fair"], // "low end"
    ["European sword sharp", "1095", "no"], // "differential only", the whole blade hard
    ["Differential edge Japanese style", "1095", "good"],
    ["Differential edge Japanese style", "5160", "no"], // hardens deep under the clay
    ["European sword sharp", "D2", "no"],
    ["European sword sharp", "440C", "no"],
    ["Heavy chopper golok kukri", "1095", "good"], // "edge only", and the edge is
    ["Large camp chopper", "1095", "caution"], // "edge only", the whole blade hard
    ["Chef knife European style", "52100", "best"],
    ["Chef knife European style", "5160", "no"],
    ["Wood carving", "1095", "best"],
    ["Hunting or skinning", "1060", "fair"],
    ["Hunting or skinning", "H13", "no"],
  ])("%s of %s: %s", (use, steel, word) => {
    expect(suits(use, steel)).toBe(word);
  });

  test("a struck stainless blade is long from over 400 mm", () => {
    expect(suits("Field camp bushcraft", "X50CrMoV15", 400)).not.toBe("no");
    expect(
      steelCautions({ use: findUse("Large camp chopper"), steel: findSteel("440C"), length: 401 })[0],
    ).toMatchObject({
      rank: "danger",
      short: "stainless breaks in a long blade that is struck",
    });
    expect(
      steelCautions({ use: findUse("Large camp chopper"), steel: findSteel("440C"), length: 400 }).map(
        ({ short }) => short,
      ),
    ).not.toContain("stainless breaks in a long blade that is struck");
  });

  test("a steel that the trade names for the use is best whatever its kind", () => {
    const use = findUse("Hunting or skinning");
    const d2 = findSteel("D2");
    expect(suitability({ use, steel: d2 }, steelKind(d2))).toBe("best");
    expect(suits("Hunting or skinning", "D2")).toBe("good");
  });
});

describe("a hardness against a band", () => {
  const band = { low: 50, high: 54 };

  test.each([
    [47, -3],
    [49.4, -1],
    [49.5, 0],
    [50, 0],
    [54.4, 0],
    [54.5, 1],
    [57, 3],
  ])("%d HRC misses 50 to 54 by %d whole points", (hrc, miss) => {
    expect(missOf(band, hrc)).toBe(miss);
  });

  test.each([
    [52, 0.9, "inside"],
    [52, 0.899, "likely inside"],
    [52, 0.6, "likely inside"],
    [52, 0.599, "uncertain"],
    [54.5, 0.599, "too hard"],
    [54.4, 0.599, "uncertain"],
    [49.4, 0.599, "too soft"],
    [49.5, 0.599, "uncertain"],
    [60, 0.6, "likely inside"],
  ])("%d HRC with a chance of %d: %s", (likely, chance, status) => {
    expect(statusOf(band, likely, chance)).toBe(status);
  });

  test("a reading on the end of an open band lies in it as often as not, by the table of the normal distribution", () => {
    const at = (hrc: number) => ({ low: hrc, likely: hrc, high: hrc });
    expect(chanceInBand({ low: 50, high: 90 }, at(50))).toBeCloseTo(0.5, 6);
    expect(chanceInBand({ low: 10, high: 50 }, at(50))).toBeCloseTo(0.5, 6);
    // One standard deviation, 1 ÷ 1.645 HRC, to both sides: 0.6827; two: 0.9545; three: 0.9973.
    for (const [sd, share] of [
      [1, 0.6827],
      [2, 0.9545],
      [3, 0.9973],
    ] as const) {
      const side = sd / 1.645;
      expect(chanceInBand({ low: 52 - side, high: 52 + side }, at(52))).toBeCloseTo(share, 4);
    }
    expect(chanceText(0.625)).toBe("63 %");
  });

  test("only the edge has to be hard where the use asks for no more, 2 mm of it at most", () => {
    expect(hardPartMm({ use: findUse("European sword sharp"), thicknessMm: 6 })).toBe(6);
    expect(hardPartMm({ use: findUse("Hatchet bit"), thicknessMm: 20 })).toBe(2);
    expect(hardPartMm({ use: findUse("Hatchet bit"), thicknessMm: 1.5 })).toBe(1.5);
    expect(hardPartMm({ use: findUse("Hatchet bit") })).toBeUndefined();
    expect(hardPartMm({ thicknessMm: 20 })).toBe(20);
  });
});

describe("cautions", () => {
  test("the heaviest first, each sentence once, equals as they came", () => {
    const of = (rank: "danger" | "spoils the blade" | "note", full: string) => caution(rank, full, full);
    const found = ranked([
      of("note", "a"),
      of("spoils the blade", "b"),
      of("danger", "c"),
      of("note", "d"),
      of("danger", "b"),
      of("note", "a"),
    ]);
    expect(found.map(({ full }) => full)).toEqual(["c", "b", "a", "d"]);
    expect(cautionClause(caution("note", "x", "One. Two."))).toBe("One. Two");
    expect(caution("note", "x", "y").instead).toBe("");
  });

  const USE = { ...findUse("Hunting or skinning"), low: 57, high: 60 };
  const QUESTION: BladeQuestion = { steel: findSteel("O1"), use: USE, treatment: {} };
  const REACH = {
    coolestC: 150,
    hottestC: 300,
    lowest: 55.25,
    lowestError: 2,
    highest: 63.5,
    highestError: 1.5,
    highestBelowUsual: 64.5,
  };
  const STORY = { status: "inside", reach: REACH, missing: undefined, estimate: undefined } as Pick<
    BladeStory,
    "status" | "reach" | "missing" | "estimate"
  >;
  const told = (
    question: Partial<BladeQuestion>,
    story: Partial<typeof STORY> = {},
    expected?: { low: number; likely: number; high: number },
  ) =>
    hardnessCautions({ ...QUESTION, temperHasUnit: true, ...question }, { ...STORY, ...story }, expected).map(
      ({ full }) => full,
    );
  const read = (low: number, high = low) => ({ reading: { low, high } });

  test("a target outside the band is said, its ends are inside", () => {
    expect(told({ target: 57 })).toEqual([]);
    expect(told({ target: 60 })).toEqual([]);
    expect(told({ target: 60.5 })).toEqual([
      'The target 60.5 HRC lies above the usual 57 to 60 HRC for "Hunting or skinning".',
    ]);
    expect(told({ target: 56 })[0]).toMatch(/^The target 56 HRC lies below the usual/);
    expect(told({ target: 56, use: undefined })).toEqual([]);
  });

  test("a target or reading at the limit of the steel is said with the error there", () => {
    const use = undefined;
    expect(told({ use, target: 63.5 })).toEqual([]);
    expect(told({ use, target: 55.25 })).toEqual([]);
    expect(told({ use, target: 64 })).toEqual([
      "64 HRC lies over the 63.5 HRC that O1 is likely to give, within the error of ±1.5 HRC.",
    ]);
    expect(told({ use, target: 55 })).toEqual([
      "55 HRC lies under the 55.3 HRC that O1 is likely to give, within the error of ±2 HRC.",
    ]);
    // A reading may come from a temper cooler than is usual.
    expect(told({ use, ...read(64) })).toEqual([]);
    expect(told({ use, ...read(65) })[0]).toMatch(/^65 HRC lies over the 63.5 HRC/);
    expect(told({ use, target: 64 }, { status: "out of reach", reach: undefined })).toEqual([]);
  });

  test("out of reach tells what the steel gives", () => {
    expect(told({}, { status: "out of reach" })).toEqual([
      "Out of reach: O1 gives 55.3 to 63.5 HRC between 150 °C (302 °F) and 300 °C (572 °F).",
    ]);
    const missing = { message: "no curve is held" } as NonNullable<BladeStory["missing"]>;
    expect(told({}, { status: "not known", reach: undefined, missing })).toEqual(["No curve is held."]);
    expect(told({}, { status: "inside", missing })).toEqual([]);
  });

  test("hard targets have a ceiling, which is itself allowed", () => {
    const use = findUse("Heavy cutting sword hard targets");
    const at = (likely: number) =>
      told({ use }, { reach: undefined, estimate: { low: likely, likely, high: likely } });
    expect(use.ceiling).toBe(54);
    expect(at(54)).toEqual([]);
    expect(at(54.1)[0]).toMatch(/^Hard targets: 54 HRC at most/);
    expect(
      told(
        { use },
        { reach: undefined, status: "does not harden", estimate: { low: 60, likely: 60, high: 60 } },
      ),
    ).toEqual([]);
  });

  test("a range narrower than 2 HRC claims too much, a single reading claims nothing", () => {
    const use = undefined;
    expect(told({ use, ...read(58) })).toEqual([]);
    expect(told({ use, ...read(58, 60) })).toEqual([]);
    expect(told({ use, ...read(58, 59.9) })).toEqual([
      "A range narrower than 2 HRC is tighter than a tester and a furnace can hold together.",
    ]);
  });

  test("hardness and temper that do not go together are said where the blade is uncertain", () => {
    const expected = { low: 56.6, likely: 58, high: 59.4 };
    const given = { temperC: 250, ...read(62) };
    expect(told(given, { status: "uncertain" }, expected)).toEqual([
      "After 250 °C (482 °F) 57 to 59 HRC is expected: check section, quench and decarburised skin, and read again on a ground spot.",
    ]);
    expect(told(given, { status: "inside" }, expected)).toEqual([]);
    expect(told(given, { status: "uncertain" })).toEqual([]);
    expect(told(read(62), { status: "uncertain" }, expected)).toEqual([]);
  });

  test("a bare 400 may be °F: asked where it leads nearer to the band, never where the unit stands beside it", () => {
    const given = { temperC: 400, use: USE };
    const asked = (more: Partial<BladeQuestion>) =>
      fahrenheitAsked(hardnessCautions({ ...QUESTION, ...given, ...more }, STORY, undefined));
    // 400 °F is 204 °C, where O1 is near 60 HRC; at 400 °C it is near 50 (sheets of O1).
    expect(asked({})).toBe('400 taken as 400 °C (752 °F); write "400F" if °F was meant (204 °C (400 °F)).');
    expect(asked({ temperHasUnit: true })).toBe("");
    expect(asked({ use: undefined })).not.toBe("");
    // A band that 400 °C leads into and 204 °C does not.
    expect(asked({ use: { ...USE, low: 48, high: 53 } })).toBe("");
    expect(fahrenheitAsked([])).toBe("");
  });

  test("each word for hardening has its caution, none where it hardens through", () => {
    const of = (word: string, fullyHardMm?: number, question: Partial<BladeQuestion> = {}) =>
      hardeningCautions({ ...QUESTION, ...question }, {
        word,
        sentence: "so it is",
        ...(fullyHardMm === undefined ? {} : { fullyHardMm }),
      } as Parameters<typeof hardeningCautions>[1]);
    expect(of("hardens through", 9)).toEqual([]);
    expect(of("does not harden")).toEqual([caution("danger", "does not harden", "So it is.")]);
    expect(of("does not harden through", 3.14)).toEqual([
      caution("spoils the blade", "does not harden through: about 3.1 mm", "So it is."),
    ]);
    expect(of("marginal")).toEqual([
      caution(
        "spoils the blade",
        "marginal in this quench",
        "So it is.",
        "Quench a trial piece of the thickest place and read its middle.",
      ),
    ]);
    expect(of("edge only", 4.2)[0]?.short).toBe("hard where it is under about 4.2 mm thick");
    expect(of("edge only")[0]?.short).toBe("hard at the edge only");
    const quench = findQuench("fast oil");
    expect(of("not judged", undefined, { quench, thickness: 5 })[0]?.full).toBe(
      "Whether 5 mm of O1 hardens through is not known here. So it is.",
    );
    expect(of("not judged", undefined, { quench })).toEqual([]);
    expect(of("not judged", undefined, { thickness: 5 })).toEqual([]);
  });

  test("a band that is common practice is told so", () => {
    for (const use of USES) {
      const is = use.evidence === "common practice";
      expect(bandCautions({ ...QUESTION, use }).length, use.word).toBe(is ? 1 : 0);
      expect(basisText(use).startsWith("common practice"), use.word).toBe(is);
      // Only swords hard all through from 50 HRC are tempered inside the range of spring steel.
      const sword = use.group === "sword" && use.part === "whole" && use.low >= 50;
      expect(leanText(use).includes("less tough"), use.word).toBe(sword);
    }
    expect(bandCautions({ ...QUESTION, use: undefined })).toEqual([]);
  });
});

describe("tempers in a brittle range, 230 to 370 °C for 5160 (pmpa.org and the ASM note)", () => {
  const of = (use: string | undefined, celsius: number, steel = "5160") =>
    temperCautions(use === undefined ? undefined : findUse(use), findSteel(steel), { celsius, how: "" });

  test("both ends belong to it; slow cooling embrittles above it", () => {
    for (const celsius of [230, 300, 370]) {
      expect(of("European sword sharp", celsius).map(({ short }) => short)).toContain(
        "temper lies in the brittle range",
      );
    }
    for (const celsius of [229, 371]) expect(of("European sword sharp", celsius)).toEqual([]);
    expect(of("European sword sharp", 450)[0]).toMatchObject({
      rank: "spoils the blade",
      short: "cool fast from the temper: slow cooling embrittles",
    });
  });

  test("it spoils what is struck, what is stainless and what is not known, and is noted elsewhere", () => {
    expect(of("European sword sharp", 300)[0]?.rank).toBe("spoils the blade");
    expect(of(undefined, 300)[0]?.rank).toBe("spoils the blade");
    expect(of("Chef knife thin hard", 300)[0]).toMatchObject({
      rank: "note",
      full: expect.stringContaining("it matters less where nothing is struck"),
    });
    expect(of("Chef knife thin hard", 480, "X50CrMoV15")[0]?.rank).toBe("spoils the blade");
  });

  test("a temper that only a hardness stands for says so", () => {
    expect(impliedBy(53.04, 2)).toBe(" (what 53 HRC implies, 2 h)");
    expect(impliedBy(53.26, 1.5)).toBe(" (what 53.3 HRC implies, 1.5 h)");
  });
});

describe("cracks in the bath", () => {
  const of = (steel: string, quench: string | undefined) =>
    bathCaution(findSteel(steel), quench === undefined ? undefined : findQuench(quench));

  test("an oil-hardening steel in water is likely to crack, plain carbon steel cracks now and then, in oil neither", () => {
    expect(of("O1", "brine")[0]).toMatchObject({
      rank: "spoils the blade",
      short: "likely to crack in brine: use oil",
      instead: "Quench O1 in oil: brine is likely to crack it.",
    });
    expect(of("1084", "brine")[0]).toMatchObject({
      rank: "spoils the blade",
      short: "brine cracks some blades: start more",
    });
    expect(of("1084", "fast oil")).toEqual([]);
    expect(of("1084", undefined)).toEqual([]);
  });
});

describe("a stretch of tempers", () => {
  test("is told as lying between its ends, in every steel and use", () => {
    const steels = ["5160", "1095", "O1", "9260", "4140", "A2", "S7", "440C"];
    const sentences = steels
      .map(findSteel)
      .flatMap((steel) =>
        USES.flatMap((use) =>
          [300, 400, 500].flatMap((celsius) =>
            temperCautions(use, steel, { celsius, how: "" }).map(({ full }) => full),
          ),
        ),
      );
    expect(sentences.filter((sentence) => /\bbetween [^.;:]*? to \d/.test(sentence))).toEqual([]);
    const slow = temperCautions(undefined, findSteel("5160"), { celsius: 400, how: "" });
    expect(slow.map(({ full }) => full).join(" ")).toContain(
      "slow cooling between 375 °C (707 °F) and 575 °C (1067 °F) embrittles",
    );
  });
});
