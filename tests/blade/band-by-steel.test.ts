import { describe, expect, test } from "vitest";
import { bandFor } from "../../src/core/blade/band-by-steel";
import { basisText, findUse, USES } from "../../src/core/blade/bands";
import { findSteel } from "../../src/core/steel/find";
import table from "../../src/data/blade/bands-by-steel.json";
import { BAND } from "../../src/functions/blade/band";
import { BAND_TEMPER } from "../../src/functions/blade/band-temper";
import { answer } from "../steel/answer";

const band = (use: string, steel?: string) => {
  const { low, aim, high } = bandFor(findUse(use), steel === undefined ? undefined : findSteel(steel));
  return [low, aim, high];
};

describe("the band of a use by its steel", () => {
  // Common practice, no source: stainless kitchen 56-60, thin kitchen of carbon steel 60-64, D2 and O1 hunting to 61.
  test.each([
    ["Chef knife thin hard", "X50CrMoV15", 56, 60],
    ["Chef knife thin hard", "52100", 60, 64],
    ["Chef knife thin hard", "1095", 60, 64],
    ["Paring or petty", "440A", 56, 60],
    ["Hunting or skinning", "D2", 57, 61],
    ["Hunting or skinning", "O1", 57, 61],
    ["Hunting or skinning", "5160", 57, 60],
  ])("%s in %s: %d to %d", (use, steel, low, high) => {
    expect([band(use, steel)[0], band(use, steel)[2]]).toEqual([low, high]);
  });

  test("without a steel, and for an analysis of no carbon, that of the use", () => {
    expect(band("Hunting or skinning")).toEqual([57, 58, 60]);
    expect(BAND.name).toBe("BAND");
    expect(answer(BAND, "Hunting or skinning")[0]?.slice(0, 3)).toEqual([57, 58, 60]);
    expect(answer(BAND, "Hunting or skinning", "O1")[0]?.slice(0, 3)).toEqual([57, 59, 61]);
  });

  test("where sources differ, the basis says so", () => {
    expect(answer(BAND, "Chef knife thin hard", "440B")[0]?.[8]).toMatch(
      /two kitchen knife makers.*In stainless steel: One maker gives 58-62 .*57-58 for ordinary stainless/,
    );
    for (const [word, , , low, high, aim, , , disagreement] of table.rows) {
      expect(USES.map((use) => use.word)).toContain(word);
      expect((low as number) <= (aim as number) && (aim as number) <= (high as number)).toBe(true);
      expect(disagreement).not.toBe("");
    }
    expect(basisText(findUse("Meat cleaver"))).toBe("common practice of the trade, no source");
  });

  test("BAND_TEMPER aims at the same band: 52100 comes cooler than for 59-62", () => {
    const [celsius, , , likely] = answer(BAND_TEMPER, "Chef knife thin hard", "52100")[0] ?? [];
    expect(celsius).toBeLessThan(200);
    expect(likely).toBeGreaterThanOrEqual(60);
    expect(likely).toBeLessThanOrEqual(64);
  });
});
