import { describe, expect, it } from "vitest";
import { assess, type BladeQuestion } from "../../src/core/blade/assess";
import { findUse, USES } from "../../src/core/blade/bands";
import { judge } from "../../src/core/blade/status";
import { steelCautions } from "../../src/core/blade/steel-cautions";
import { BATHS } from "../../src/core/hardening/max-section";
import { findQuench, QUENCH_MEDIA } from "../../src/core/hardening/quench-media";
import { findSteel } from "../../src/core/steel/find";

type Rest = Omit<BladeQuestion, "use" | "steel" | "low">;

function ask(use: string, steel: string, low: number, rest: Rest = {}) {
  const { status, cautions } = assess({ use: findUse(use), steel: findSteel(steel), low, ...rest });
  return { status, text: cautions.join(" ") };
}

function steelSays(use: string, steel: string, length?: number): string {
  return steelCautions({ use: findUse(use), steel: findSteel(steel), length }).join(" ");
}

const HARD_TARGETS = "Heavy cutting sword hard targets";
const SWORDS = USES.filter(({ group, part }) => group === "sword" && part === "whole").map(
  ({ word }) => word,
);

describe("status", () => {
  // The band 50-53, a tester good to ±1 HRC (a tool maker's page gives 1 to 2): 55 HIGH, 53.5 doubtful.
  it.each([
    [55, 55, "HIGH"],
    [54, 54, "HIGH"],
    [53.5, 53.5, "DOUBTFUL"],
    [52.5, 52.5, "DOUBTFUL"],
    [52, 52, "inside the usual band"],
    [51, 51, "inside the usual band"],
    [50.5, 50.5, "DOUBTFUL"],
    [49.5, 49.5, "DOUBTFUL"],
    [49, 49, "LOW"],
    [50, 53, "inside the usual band"],
    [52, 55, "DOUBTFUL"],
    [49, 54, "DOUBTFUL"],
    [53, 56, "HIGH"],
    [45, 50, "LOW"],
  ])("%f to %f in 50 to 53: %s", (low, high, status) => {
    expect(judge({ low: 50, high: 53 }, low, high)).toBe(status);
  });

  it("takes the aim of every use as inside, and two points outside as outside", () => {
    for (const use of USES) {
      expect(judge(use, use.aim, use.aim), use.word).toBe("inside the usual band");
      expect(judge(use, use.high + 2, use.high + 2), use.word).toBe("HIGH");
      expect(judge(use, use.low - 2, use.low - 2), use.word).toBe("LOW");
    }
  });

  // Readings of the invented run R-07 against the bands of its uses.
  it.each([
    ["Chef knife thin hard", "52100", 60.23, "inside the usual band"],
    ["Machete light", "1075", 53.23, "HIGH"],
    ["Practice longsword blunt", "51CrV4", 49.03, "inside the usual band"],
    ["European sword sharp", "5160", 55.23, "HIGH"],
    ["Field camp bushcraft", "80CrV2", 58.87, "DOUBTFUL"],
  ])("%s in %s at %f HRC: %s", (use, steel, hrc, status) => {
    expect(ask(use, steel, hrc).status).toBe(status);
  });

  it("refuses a range the wrong way round", () => {
    expect(() => ask(HARD_TARGETS, "5160", 54, { high: 50 })).toThrow("give the low end first");
  });
});

describe("facts of the trade (common practice, no source)", () => {
  it("heavy cutting sword: 53-54 at most, 56 is HIGH, better rolled than chipped", () => {
    const { status, text } = ask(HARD_TARGETS, "5160", 56);
    expect(status).toBe("HIGH");
    expect(text).toContain("54 HRC at most");
    expect(text).toContain("better rolled than chipped");
  });

  it("a light sharp sword of 55 is inside", () => {
    expect(ask("Light sharp sword soft targets", "5160", 55).status).toBe("inside the usual band");
  });

  it.each(["5160", "1060", "1070", "6150", "9260"])("%s for swords: no caution on the steel", (steel) => {
    for (const use of SWORDS) expect(steelSays(use, steel), use).toBe("");
  });

  it("0.45 % C: too little for a knife edge, low end for choppers", () => {
    expect(steelSays("Chef knife European style", "1045")).toContain("too little carbon for a lasting edge");
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
      const { status, text } = ask(word, "5160", 52);
      expect(`${status} ${text}`).not.toMatch(/\b(ok|safe|pass|good)\b/i);
    }
  });
});

describe("temper and quench", () => {
  it("warns of the embrittlement range that a sword's hardness implies, and says which way to lean", () => {
    // 52-54 HRC in 0.60 % C spring steel is tempered near 290-340 °C; ranges: ASM note and pmpa.org.
    const { text } = ask("European sword sharp", "5160", 53);
    expect(text).toMatch(/Temper 3\d\d °C \(\d+ °F\) \(what 53 HRC implies, 2 h\): embrittlement range/);
    expect(text).toContain("Lean to the softer end, near 50 HRC");
  });

  it("uses the temper given instead", () => {
    expect(ask("European sword sharp", "5160", 53, { temperC: 200 }).text).not.toContain("embrittlement");
    expect(ask("European sword sharp", "5160", 53, { temperC: 300 }).text).toContain(
      "Temper 300 °C (572 °F): embrittlement",
    );
    expect(ask("Chef knife European style", "X50CrMoV15", 56, { temperC: 450 }).text).toContain(
      "Lean to a lower temper",
    );
  });

  it("says when the hardness cannot be had in the steel", () => {
    expect(ask("Straight razor", "1045", 63).text).toContain(
      "No temper is implied: 63 HRC is out of reach for 1045",
    );
  });

  it.each([
    ["5160", "water", "likely to crack in agitated water"],
    ["1095", "brine", "cracks some blades of 1095"],
    ["1075", "plates", "does not harden in plates"],
    ["1095", "fast oil", "1095, fast oil: fully hard to about 2.9 mm"],
  ])("%s in %s: %s", (steel, quench, sentence) => {
    expect(ask("Field camp bushcraft", steel, 58, { quench: findQuench(quench) }).text).toContain(sentence);
  });

  it("judges W1 by its usual carbon", () => {
    // Most W1 is sold with about 1 % C (common practice, no source): the bare name is answered.
    expect(ask("Field camp bushcraft", "W1", 58).text).not.toContain("does not fix its carbon");
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
