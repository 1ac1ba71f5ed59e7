import { describe, expect, it } from "vitest";
import { bandFor } from "../../src/core/blade/band-by-steel";
import { findUse, USES } from "../../src/core/blade/bands";
import { chanceInBand, type HardnessEstimate } from "../../src/core/blade/chance";
import type { BladeQuestion } from "../../src/core/blade/question";
import { statusOf } from "../../src/core/blade/status";
import { steelCautions } from "../../src/core/blade/steel-cautions";
import { bladeStory } from "../../src/core/blade/story";
import { BATHS } from "../../src/core/hardening/max-section";
import { findQuench, QUENCH_MEDIA } from "../../src/core/hardening/quench-media";
import { findSteel } from "../../src/core/steel/find";

type Rest = Omit<Partial<BladeQuestion>, "use" | "steel" | "reading">;

const USUAL = { hours: 2, cycles: 1 };

/** The story of a blade that reads so many HRC. */
function ask(use: string, steel: string, low: number, high = low, rest: Rest = {}) {
  const question = { use: findUse(use), steel: findSteel(steel), treatment: USUAL, reading: { low, high } };
  const story = bladeStory({ ...question, ...rest });
  return { ...story, text: story.cautions.map(({ full }) => full).join(" ") };
}

function steelSays(use: string, steel: string, length?: number): string {
  const found = steelCautions({ use: findUse(use), steel: findSteel(steel), length });
  return found.map(({ full }) => full).join(" ");
}

const HARD_TARGETS = "Heavy cutting sword hard targets";
const SWORDS = USES.filter(({ group, part }) => group === "sword" && part === "whole").map(
  ({ word }) => word,
);

describe("status and chance of a reading", () => {
  // The band 50 to 53 and a tester within ±1 HRC for 90 % of readings, that is a standard deviation of 1/1.645.
  // Tail areas of the normal distribution from any printed table: at 1.645 sd 0.050, at 2.4675 sd 0.0068, at 0.8225
  // sd 0.2054, at 0 sd 0.5000, at 3.29 sd 0.0005, at 4.1125 sd 0.00002.
  it.each<[number, number, string]>([
    [55, 0.0005, "too hard"],
    [54, 0.05, "too hard"],
    [53.5, 0.2054, "too hard"],
    [52.5, 0.7946, "likely inside"],
    [52, 0.95 - 0.0005, "inside"],
    [51.5, 1 - 2 * 0.0068, "inside"],
    [50.5, 0.7946, "likely inside"],
    [50, 0.5, "uncertain"],
    [49, 0.05, "too soft"],
  ])("%f HRC in 50 to 53: chance %f, %s", (likely, chance, status) => {
    const band = { low: 50, high: 53 };
    const found = chanceInBand(band, { low: likely, likely, high: likely });
    expect(found).toBeCloseTo(chance, 3);
    expect(statusOf(band, likely, found)).toBe(status);
  });

  it("an estimate of ±3 HRC in the middle of a band 3 HRC wide is uncertain, and says how much", () => {
    // sd = √(3² + 1²)/1.645 = 1.9223; ±1.5 HRC is ±0.7803 sd: 56.5 % by the table of the normal distribution.
    const chance = chanceInBand({ low: 50, high: 53 }, { low: 48.5, likely: 51.5, high: 54.5 });
    expect(chance).toBeCloseTo(0.565, 3);
    expect(statusOf({ low: 50, high: 53 }, 51.5, chance)).toBe("uncertain");
  });

  it("an uneven estimate counts each side by its own width", () => {
    // 11 HRC below and 3 above the likely 51.5: sds 6.714 and 1.9223; 1.5 HRC are 0.2234 and 0.7803 sd:
    // half-areas 0.0884 and 0.2824.
    const estimate: HardnessEstimate = { low: 40.5, likely: 51.5, high: 54.5 };
    expect(chanceInBand({ low: 50, high: 53 }, estimate)).toBeCloseTo(0.0884 + 0.2824, 3);
  });

  it("takes the aim of every use as inside or likely inside, and two points outside as outside", () => {
    for (const use of USES) {
      const steel = use.high < 45 ? "S7" : "1095";
      const { aim } = bandFor(use, findSteel(steel));
      expect(ask(use.word, steel, aim).status, use.word).toMatch(/inside|out of reach/);
      const above = chanceInBand(use, { low: use.high + 2, likely: use.high + 2, high: use.high + 2 });
      expect(statusOf(use, use.high + 2, above), use.word).toBe("too hard");
      const below = chanceInBand(use, { low: use.low - 2, likely: use.low - 2, high: use.low - 2 });
      expect(statusOf(use, use.low - 2, below), use.word).toBe("too soft");
    }
  });

  // Readings of the invented run R-07 against the bands of its uses (60-64 in high-carbon steel, 45-52, 46-52, 50-54, 56-59 HRC).
  it.each([
    ["Chef knife thin hard", "52100", 60.23, "likely inside"],
    ["Machete light", "1075", 53.23, "too hard"],
    ["Practice longsword blunt", "51CrV4", 49.03, "inside"],
    ["European sword sharp", "5160", 55.23, "too hard"],
    ["Field camp bushcraft", "80CrV2", 58.87, "uncertain"],
  ])("%s in %s at %f HRC: %s", (use, steel, hrc, status) => {
    expect(ask(use, steel, hrc).status).toBe(status);
  });
});

describe("facts of the trade (common practice, no source)", () => {
  it("heavy cutting sword: 53-54 at most, 56 is too hard, better rolled than chipped", () => {
    const { status, chance, text } = ask(HARD_TARGETS, "5160", 56);
    expect(status).toBe("too hard");
    expect(chance).toBeLessThan(0.01);
    expect(text).toContain("54 HRC at most");
    expect(text).toContain("better rolled than chipped");
  });

  it("a light sharp sword of 55 is inside", () => {
    expect(ask("Light sharp sword soft targets", "5160", 55).status).toBe("inside");
  });

  it.each(["5160", "1060", "1070", "6150", "9260"])("%s for swords: no caution on the steel", (steel) => {
    for (const use of SWORDS) expect(steelSays(use, steel), use).toBe("");
  });

  it("0.45 % C: too little for a knife edge, low end for choppers", () => {
    expect(steelSays("Chef knife European style", "1045")).toContain(
      "too little carbon for a lasting edge: choose 0.60 % C or more",
    );
    expect(steelSays("Heavy chopper golok kukri", "1045")).toContain(
      "the low end for blades that are struck",
    );
    expect(steelSays("Heavy chopper golok kukri", "1060")).toBe("");
  });

  it("plain 0.95 % C hardens shallow: little room in the quench, brittle through, fine for a hard edge", () => {
    const { text } = ask("European sword sharp", "1095", 52);
    expect(text).toContain("hardens shallow and leaves little room for error");
    expect(text).toContain("hardened through is brittle under blows");
    expect(steelSays("Differential edge Japanese style", "1095")).toBe("");
    expect(steelSays("Differential edge Japanese style", "5160")).toContain(
      "clay will not leave the body soft",
    );
  });

  it("stainless hardened through is a poor choice for a long blade that is struck", () => {
    for (const steel of ["440C", "420", "X50CrMoV15"]) {
      expect(steelSays("European sword sharp", steel, 800), steel).toContain("poor choice for a long blade");
      expect(steelSays("Large camp chopper", steel, 450), steel).toContain("poor choice for a long blade");
      expect(steelSays("Chef knife European style", steel, 250), steel).not.toContain("poor choice");
    }
    expect(steelSays("European sword sharp", "5160", 800)).toBe("");
  });

  it("never says that a blade is good or safe", () => {
    for (const { word } of USES) {
      const { status, text, next } = ask(word, "5160", 52);
      expect(`${status} ${text} ${next}`).not.toMatch(/\b(ok|safe|pass|good)\b/i);
    }
  });
});

describe("temper and quench", () => {
  it("warns of the embrittlement range that a sword's hardness implies", () => {
    // 52-54 HRC in 0.60 % C spring steel is tempered near 290-340 °C; ranges: ASM note and pmpa.org.
    const { text } = ask("European sword sharp", "5160", 53);
    expect(text).toMatch(
      /Temper 3\d\d °C \(\d+ °F\) \(what 53 HRC implies, 2 h\) lies in the embrittlement range/,
    );
    expect(text).toContain("choose a temper below or above it");
  });

  it("uses the temper given instead", () => {
    const at = (temperC: number) => ask("European sword sharp", "5160", 53, 53, { temperC });
    expect(at(200).text).not.toContain("embrittlement");
    expect(at(300).text).toContain("Temper 300 °C (572 °F) lies in the embrittlement range");
    expect(ask("Chef knife European style", "X50CrMoV15", 50, 50, { temperC: 450 }).text).toContain(
      "toughness and rust resistance suffer",
    );
  });

  it("a reading that its temper does not lead to is uncertain, whatever the band says", () => {
    // 5160 after 2 h at 200 °C reads near 60 HRC (published curves of 5160): 53 was not tempered there.
    const { status, chance, text } = ask("European sword sharp", "5160", 53, 53, { temperC: 200 });
    expect(status).toBe("uncertain");
    expect(chance).toBeLessThan(0.6);
    expect(text).toContain("After 200 °C (392 °F) 57 to 63 HRC is expected: check section, quench");
  });

  it.each([
    ["5160", "water", "likely to crack in agitated water"],
    ["1095", "brine", "cracks some blades of 1095"],
    ["1075", "plates", "does not harden in plates"],
    ["1095", "fast oil", "4 mm of 1095 in fast oil is marginal: about 2.9 mm is fully hard"],
  ])("%s in %s: %s", (steel, quench, sentence) => {
    const { text } = ask("Field camp bushcraft", steel, 58, 58, { quench: findQuench(quench), thickness: 4 });
    expect(text).toContain(sentence);
  });

  it("judges W1 by its usual carbon", () => {
    // Most W1 is sold with about 1 % C (common practice, no source): the bare name is answered.
    expect(ask("Field camp bushcraft", "W1", 58).text).not.toContain("does not fix its carbon");
  });
});

describe("one story for soft, air-hardening, shallow and deep steels", () => {
  const status = (use: string, steel: string, hrc: number, rest: Rest = {}) =>
    ask(use, steel, hrc, hrc, rest).status;
  const camp = "Field camp bushcraft";

  // 0.18 % C and austenite make no hard martensite in any quench: any textbook of heat treatment.
  it.each(["1018", "304"])("%s at 58 HRC does not harden, whatever is read", (steel) => {
    const { status: word, chance, next } = ask(camp, steel, 58);
    expect([word, chance]).toEqual(["does not harden", 0]);
    expect(next).toBe(`Take a steel that hardens: quenching does not harden ${steel}.`);
  });

  // Plain carbon steel misses the nose of its diagram in still air by a second or less: hq. 3.4, Grossmann H.
  it("plain carbon steel in still air does not harden, and air-hardening steel does", () => {
    expect(status(camp, "1095", 58, { quench: findQuench("still air") })).toBe("does not harden");
    expect(status(camp, "A2", 58, { quench: findQuench("still air"), thickness: 5 })).toBe("inside");
  });

  it("a shallow steel hardens thin and not thick, a deep one both", () => {
    const oil = { quench: findQuench("fast oil") };
    expect(status("European sword sharp", "1095", 52, { ...oil, thickness: 6 })).toBe("does not harden");
    expect(status("European sword sharp", "5160", 52, { ...oil, thickness: 6 })).toBe("inside");
  });

  it("a band that no temper of the steel reaches is out of reach, whatever softer target is typed", () => {
    const question = { use: "Wood carving", steel: "SUS431", treatment: USUAL };
    const told = [bladeStory(question), bladeStory({ ...question, target: 41.5 })];
    for (const { status, chance, next } of told) {
      expect([status, chance]).toEqual(["out of reach", 0]);
      expect(next).toBe("Take a steel with more carbon: no temper of this one is hard enough.");
    }
  });

  it("a hardness that no temper of the steel gives is out of reach on either side", () => {
    expect(status("Practice longsword blunt", "D2", 49)).toBe("out of reach");
    expect(status("Straight razor", "1045", 62)).toBe("out of reach");
  });
});

describe("out of the brittle range", () => {
  const sword = {
    use: findUse("European sword sharp"),
    steel: findSteel("5160"),
    length: 800,
    thickness: 6,
    quench: findQuench("fast oil"),
    treatment: USUAL,
  };

  // 230 to 370 °C costs plain and low-alloy steel toughness (pmpa.org and the ASM note of the compilation).
  it("a 5160 sword without a target is planned above the range, not at 359 °C inside it", () => {
    const { temperC, status } = bladeStory(sword);
    expect(temperC).toBeGreaterThan(370);
    expect(status).toBe("likely inside");
  });

  it("a typed 52 HRC is told what leaving the range costs", () => {
    const { temperC, next } = bladeStory({ ...sword, target: 52 });
    expect(temperC).toBe(359);
    expect(next).toBe(
      "Temper one, 1 × 2 h at 376 °C (709 °F), cool fast from it, chance 64 % and tougher; " +
        "359 °C (678 °F) has 70 %, but lies in the brittle range.",
    );
  });

  it("a chosen temper is held against the best one", () => {
    const knife = { use: findUse("Chef knife thin hard"), steel: findSteel("1095"), treatment: USUAL };
    expect(bladeStory({ ...knife, temperC: 400 }).next).toContain(
      "203 °C (397 °F) would give the band at 78 %, this 0 %",
    );
  });
});

describe("at the limit of a steel", () => {
  // D2 is published to 540 °C, near 56 HRC there, ±4.5: 52 HRC may be had, but is not what to expect.
  it("a reading that the curve misses by less than its error is never inside", () => {
    const { status, chance, text, next } = ask("European sword sharp", "D2", 52);
    expect(status).toBe("uncertain");
    expect(chance).toBeLessThan(0.4);
    expect(text).toContain("52 HRC lies under the 55.8 HRC that D2 is likely to give, within the error");
    expect(next).toMatch(/^Take one of the trade's steels for it: 5160/);
  });

  it("56 HRC in X50CrMoV15, knives as sold measured 54.1 to 58.3, is not out of reach", () => {
    const wished = ask("Chef knife European style", "X50CrMoV15", 56);
    expect(wished.status).toBe("likely inside");
    const question = { use: findUse("Chef knife European style"), steel: findSteel("X50CrMoV15") };
    const planned = bladeStory({ ...question, treatment: USUAL, target: 56 });
    expect([planned.status, planned.temperC]).toEqual(["likely inside", 150]);
    expect(planned.chance).toBeCloseTo(wished.chance ?? 0, 6);
  });
});

describe("quench words", () => {
  it("cover every bath of the plate thickness table", () => {
    for (const bath of BATHS) expect(findQuench(bath).word).toBe(bath);
  });

  it("are found by the trade's other names and never guessed", () => {
    expect(findQuench("Water").word).toBe("agitated water");
    expect(findQuench("air").word).toBe("still air");
    expect(findQuench("aluminium plates").word).toBe("plates");
    expect(() => findQuench("oil")).toThrow("fits more than one quench");
    expect(() => findQuench("custard")).toThrow("QUENCHES() lists them all");
  });

  it("belong to one medium each", () => {
    const names = QUENCH_MEDIA.flatMap(({ word, aliases }) => [word, ...aliases]);
    expect(new Set(names).size).toBe(names.length);
  });
});
