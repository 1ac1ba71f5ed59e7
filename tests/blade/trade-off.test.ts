import { describe, expect, it } from "vitest";
import { bandFor } from "../../src/core/blade/band-by-steel";
import { findUse } from "../../src/core/blade/bands";
import { bladeStory } from "../../src/core/blade/story";
import { tradeOff } from "../../src/core/blade/trade-off";
import { findSteel } from "../../src/core/steel/find";
import { toughnessAt, toughnessRelations } from "../../src/core/steel/toughness";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { TRADE_OFF } from "../../src/functions/blade";
import { evaluateInParts } from "../../src/functions/evaluate";
import { answer } from "../steel/answer";

const TREATMENT = { hours: 2, cycles: 1 };
const sword = findUse("European sword sharp");

describe("what a few points buy", () => {
  it("takes for each hardness the temper that gives it", () => {
    for (const { hrc, temperC } of tradeOff(sword, findSteel("5160"), [48, 50, 52, 54], TREATMENT)) {
      expect(temperedHardness(findSteel("5160"), temperC as number, TREATMENT)).toBeCloseTo(hrc, 0);
    }
  });

  it("may pause after each hardness, so that a long list keeps nobody waiting", () => {
    const hardnesses = [48, 49, 50, 51, 52, 53];
    const parts = evaluateInParts(TRADE_OFF, [sword.word, "5160", hardnesses.map((hrc) => [hrc])]);
    let pauses = 0;
    while (parts.next().done !== true) pauses += 1;
    expect(pauses).toBeGreaterThanOrEqual(hardnesses.length);
  });

  it("has the best chance in the middle of the band, and the more yield the harder", () => {
    const rows = tradeOff(sword, findSteel("5160"), [50, 52, 54], TREATMENT);
    const [soft, middle, hard] = rows.map(({ chance }) => chance ?? 0) as [number, number, number];
    expect(middle).toBeGreaterThan(soft);
    expect(middle).toBeGreaterThan(hard);
    const yields = rows.map(({ yieldMPa }) => yieldMPa ?? 0);
    expect(yields).toEqual([...yields].sort((a, b) => a - b));
  });

  it("counts the chance in the band that is told for the steel, of what the temper gives", () => {
    // Cr12MoV in a hunting knife has a band of its own kind; SKD12 gives no 49.5 HRC, 52.7 is its least.
    for (const [steel, hrc] of [
      ["Cr12MoV", 59.5],
      ["SKD12", 49.5],
    ] as const) {
      const [row] = tradeOff("Hunting or skinning", steel, [hrc], TREATMENT);
      const story = bladeStory({
        use: "Hunting or skinning",
        steel,
        temperC: row?.temperC,
        treatment: TREATMENT,
      });
      expect(row?.chance).toBeCloseTo(story.chance ?? Number.NaN, 9);
    }
    expect(bandFor(findUse("Hunting or skinning"), findSteel("Cr12MoV"))).not.toEqual(
      findUse("Hunting or skinning"),
    );
  });

  it("counts the edge load by hand: yield × contact × tan² angle / 0.75", () => {
    const [row] = tradeOff(sword, findSteel("5160"), [52], TREATMENT);
    const angle = ((sword.angleLow ?? 0) + (sword.angleHigh ?? 0)) / 2;
    const byHand = ((row?.yieldMPa ?? 0) * 0.1 * Math.tan((angle * Math.PI) / 180) ** 2) / 0.75;
    expect(row?.edgeLoad).toBeCloseTo(byHand, 6);
  });

  it("gives no edge load to a blade without an edge, and no figures where no temper leads", () => {
    const [blunt] = tradeOff(findUse("Re-enactment blunt"), findSteel("9260"), [48], TREATMENT);
    expect(blunt?.edgeLoad).toBeUndefined();
    const [beyond] = tradeOff(sword, findSteel("5160"), [30], TREATMENT);
    expect(beyond).toMatchObject({ temperC: undefined, chance: undefined, yieldMPa: undefined });
  });

  it("names brittle tempers and lower bounds", () => {
    const [hard] = tradeOff(findUse("Hunting"), findSteel("O1"), [60], TREATMENT);
    expect(hard?.changes).toContain("lower bounds");
    const [middle] = tradeOff(sword, findSteel("5160"), [52], TREATMENT);
    expect(middle?.changes).toContain("brittle range");
  });
});

describe("published toughness", () => {
  it("is told with its test and hardness, and never of another notch", () => {
    // Crucible's sheet of O1: 41 J, C-notch, at 62 HRC; 19 J at 64.
    expect(toughnessAt(findSteel("O1"), 62)).toBe("41 J, Charpy C-notch, at 62 HRC");
    expect(toughnessAt(findSteel("O1"), 64)).toBe("19 J, Charpy C-notch, at 64 HRC");
    expect(toughnessAt(findSteel("O1"), 50)).toBe("");
    expect(toughnessAt(findSteel("5160"), 52)).toBe("");
    for (const { title, output } of toughnessRelations(null)) {
      expect(title.includes("Charpy")).toBe(output.unit === "J");
    }
  });
});

describe("TRADE_OFF", () => {
  it("skips blank cells of the list and refuses an empty one", () => {
    expect(answer(TRADE_OFF, "Hunting", "O1", [[60], [null], [58]])).toHaveLength(2);
    expect(String(answer(TRADE_OFF, "Hunting", "O1", [[null]])[0]?.[0])).toMatch(/HRC list/);
  });
});
