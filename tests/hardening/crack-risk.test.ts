import { describe, expect, it } from "vitest";
import { bathCaution } from "../../src/core/blade/quench-cautions";
import { bladeStory } from "../../src/core/blade/story";
import { crackEquivalent, crackRisk } from "../../src/core/hardening/crack-risk";
import { findQuench } from "../../src/core/hardening/quench-media";
import { findSteel } from "../../src/core/steel/find";

const rank = (steel: string, quench: string) => crackRisk(findSteel(steel), findQuench(quench)).rank;

describe("crack and warp risk", () => {
  it("works out the carbon equivalent of Kunitake and Sugisawa", () => {
    // 4140, middle of its limits: 0.40 + 0.875/5 + 0.20/5 + 0.95/10 = 0.71.
    expect(crackEquivalent(findSteel("4140").composition, 0.4)).toBeCloseTo(0.71, 3);
  });

  // Common practice, no source: spring steel belongs in oil, shallow steel is quenched in water with losses,
  // low carbon takes water without fear, air-hardening steel is not put into oil.
  it.each([
    ["5160", "agitated water", "high"],
    ["O1", "brine", "high"],
    ["1095", "agitated water", "raised"],
    ["W1-10", "brine", "raised"],
    ["1018", "agitated water", "low"],
    ["5160", "fast oil", "low"],
    ["1095", "fast oil", "low"],
    ["A2", "fast oil", "raised"],
    ["X50CrMoV15", "fast oil", "low"],
    ["D2", "plates", "low"],
  ])("%s in %s: %s", (steel, quench, expected) => {
    expect(rank(steel, quench)).toBe(expected);
  });

  it("counts a long thin blade as one that may bend, in a liquid only", () => {
    const sword = { length: 800, thickness: 4 };
    expect(crackRisk(findSteel("5160"), findQuench("fast oil"), sword)).toEqual({
      rank: "raised",
      reasons: ["200 times as long as thick: it may bend"],
    });
    expect(crackRisk(findSteel("S7"), findQuench("still air"), sword).rank).toBe("low");
  });

  it("tells its reasons and that no criterion is accepted, in at most 40 words", () => {
    const [told] = bathCaution(findSteel("5160"), findQuench("agitated water"));
    expect(told?.full).toMatch(
      /^5160 is likely to crack in agitated water: use oil. Crack and warp risk high/,
    );
    expect(told?.full).toContain("it hardens in oil, 0.6 % C, martensite starts at");
    expect(told?.full).toContain("no accepted criterion exists");
    expect(told?.full.split(" ").length).toBeLessThanOrEqual(40);
  });

  it("is the caution that the story of a blade tells", () => {
    const steel = findSteel("5160");
    const quench = findQuench("fast oil");
    const { cautions } = bladeStory({
      steel,
      quench,
      length: 900,
      thickness: 5,
      treatment: { hours: 2, cycles: 1 },
    });
    expect(cautions).toContainEqual(bathCaution(steel, quench, { length: 900, thickness: 5 })[0]);
  });
});
