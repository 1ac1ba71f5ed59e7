import { describe, expect, test } from "vitest";
import { findUse } from "../../src/core/blade/bands";
import { chanceInBand } from "../../src/core/blade/chance";
import type { BladeAsked } from "../../src/core/blade/question";
import { statusOf } from "../../src/core/blade/status";
import { steelCautions } from "../../src/core/blade/steel-cautions";
import { steelKind } from "../../src/core/blade/steel-kind";
import { bladeStory } from "../../src/core/blade/story";
import { isLongImpact, suitability } from "../../src/core/blade/suitability";
import { tradeOff } from "../../src/core/blade/trade-off";
import { findSteel } from "../../src/core/steel/find";
import { temperedRange } from "../../src/core/tempering/tempered-range";

const TREATMENT = { hours: 2, cycles: 1 };
const story = (more: Partial<BladeAsked> = {}) =>
  bladeStory({ use: "Field camp bushcraft", steel: "80CrV2", treatment: TREATMENT, ...more });

describe("what a story is told of", () => {
  test("a temper is chosen for the band only where nothing else was given", () => {
    expect(story().isForBand).toBe(true);
    for (const given of [
      { reading: { low: 58, high: 58 } },
      { temperC: 220 },
      { target: 58 },
      { asIs: true },
      { temperC: 220, target: 58 },
    ]) {
      expect(story(given).isForBand, JSON.stringify(given)).toBe(false);
    }
  });

  test("judged as it is, a blade that was neither read nor tempered is not known", () => {
    expect(story({ asIs: true })).toMatchObject({
      status: "not known",
      temperC: undefined,
      chance: undefined,
    });
    expect(story({ asIs: true, temperC: 220 }).temperC).toBe(220);
    expect(story({ reading: { low: 58, high: 58 } })).toMatchObject({ temperC: undefined });
  });

  test("without a use nothing is judged", () => {
    const { status, chance, next, best, cautions } = story({ use: undefined, temperC: 220 });
    expect([status, chance, best]).toEqual(["", undefined, undefined]);
    expect(next).toMatch(/^Temper one, 1 × 2 h at 220 °C/);
    expect(cautions.map(({ short }) => short)).not.toContain("band: common practice, no source");
    expect(story({ use: undefined, reading: { low: 58, high: 58 } }).status).toBe("");
  });

  test("a temper typed expects what TEMPERED_RANGE gives, and its status is that of the normal distribution", () => {
    for (const temperC of [160, 200, 240, 300]) {
      const { estimate, status, chance, basis } = story({ temperC });
      const range = temperedRange(findSteel("80CrV2"), temperC, TREATMENT);
      expect(estimate).toEqual({ low: range.low, likely: range.likely, high: range.high });
      const use = findUse("Field camp bushcraft");
      expect(chance).toBeCloseTo(chanceInBand(use, range), 9);
      expect(status).toBe(statusOf(use, range.likely, chance ?? Number.NaN));
      expect(basis).toBe(range.basis);
    }
  });

  // A careful reading may lie 1 HRC outside the band of an estimate: the tester's own doubt (common practice).
  test("a reading and its temper go together to one point outside what is expected, and no further", () => {
    const { low, high } = temperedRange(findSteel("80CrV2"), 200, TREATMENT);
    const use = { ...findUse("Field camp bushcraft"), low: 40, high: 70 };
    const at = (hrc: number) => {
      const { status, chance, cautions } = story({ use, temperC: 200, reading: { low: hrc, high: hrc } });
      return { status, chance: chance ?? Number.NaN, said: cautions.map(({ short }) => short).join("; ") };
    };
    for (const hrc of [low - 0.9, low, high]) expect(at(hrc).status, String(hrc)).toMatch(/inside/);
    for (const hrc of [low - 1.1]) {
      expect(at(hrc)).toMatchObject({ status: "uncertain" });
      expect(at(hrc).chance).toBeLessThan(0.6);
      expect(at(hrc).said).toContain("hardness and temper do not go together");
    }
  });

  test("a blade that stays soft has no temper, no figures and no word on cracks", () => {
    const soft = story({ steel: "1018", temperC: 200, quench: "brine", target: 58 });
    expect(soft).toMatchObject({
      status: "does not harden",
      chance: 0,
      estimate: undefined,
      reach: undefined,
      plan: undefined,
    });
    const said = soft.cautions.map(({ short }) => short);
    expect(said).toContain("does not harden");
    expect(said.join()).not.toMatch(/crack|brittle/);
  });

  test("a reading stands as it is, likely in the middle between its ends", () => {
    const read = story({ reading: { low: 58, high: 58 } });
    expect(read.estimate).toEqual({ low: 58, likely: 58, high: 58 });
    expect(story({ reading: { low: 56, high: 60 } }).estimate).toEqual({ low: 56, likely: 58, high: 60 });
  });
});

describe("what a few points buy, in per cent of the first hardness", () => {
  const rows = tradeOff("European sword sharp", "5160", [50, 54, 47, 50, 30], TREATMENT);
  const percent = (at: number) =>
    Math.round(((rows[at]?.yieldMPa ?? 0) / (rows[0]?.yieldMPa ?? 1) - 1) * 100);

  // The load of a wedge's first set is in proportion to its yield strength: both change alike.
  test("harder is plus, softer minus, the same ±0; nothing is held against the first itself", () => {
    expect(percent(1)).toBeGreaterThan(0);
    expect(rows[1]?.changes).toMatch(new RegExp(`^yield \\+${percent(1)} %; edge load \\+${percent(1)} %; `));
    expect(percent(2)).toBeLessThan(0);
    expect(rows[2]?.changes).toMatch(new RegExp(`^yield −${-percent(2)} %; edge load −${-percent(2)} %; `));
    expect(rows[3]?.changes).toMatch(/^yield ±0 %; edge load ±0 %; /);
    expect(rows[0]?.changes).not.toMatch(/yield|edge load [+−±]/);
    for (const at of [0, 1, 2, 3]) expect(rows[at]?.changes).toMatch(/overloaded, an edge of this hardness/);
  });

  test("what no temper leads to says so and has no figures; held against it nothing is said", () => {
    expect(rows[4]).toEqual({
      hrc: 30,
      temperC: undefined,
      chance: undefined,
      yieldMPa: undefined,
      isBound: false,
      edgeLoad: undefined,
      toughness: "",
      changes: "no temper of this steel leads there",
    });
    const [, second] = tradeOff("European sword sharp", "5160", [30, 50], TREATMENT);
    expect(second?.changes).not.toMatch(/yield|edge load [+−±]/);
  });

  test("a use without an edge angle has no edge load to change", () => {
    const [, blunt] = tradeOff("Re-enactment blunt", "5160", [46, 48], TREATMENT);
    expect(blunt?.yieldMPa).toBeGreaterThan(0);
    expect(blunt?.edgeLoad).toBeUndefined();
    expect(blunt?.changes).toMatch(/^yield \+\d+ %; /);
    expect(blunt?.changes).not.toMatch(/edge load/);
  });
});

// The compilation's table of steel by use, and what carbon, carbide and toughness change of it (common practice).
describe("what the steel itself leaves of the verdict on its kind", () => {
  const suits = (use: string, name: string, length?: number) => {
    const steel = findSteel(name);
    return suitability({ use: { ...findUse(use), steels: "" }, steel, length }, steelKind(steel));
  };

  test("coarse carbide breaks out of an edge thinner than 15° a side, not of one that is thicker", () => {
    // 440C holds over a tenth of carbide when hardened, X50CrMoV15 hardly any.
    expect(suits("Fillet flexible", "440C")).toBe("fair");
    expect(suits("Boning or butcher", "440C")).toBe("best");
    expect(suits("Fillet flexible", "X50CrMoV15")).toBe("best");
  });

  test("under 0.5 % C an edge does not last: barred from a knife, doubtful where it is struck and hard", () => {
    expect(suits("Chef knife European style", "1045")).toBe("no");
    expect(suits("Heavy chopper golok kukri", "1045")).toBe("caution");
    expect(suits("Machete light", "1045")).toBe("good");
    expect(suits("Machete light", "C 0.44 Mn 0.7")).toBe("caution");
    expect(suits("Machete light", "C 0.50 Mn 0.7")).toBe("good");
    // It has no edge.
    expect(suits("Throwing knife", "1045")).toBe("good");
  });

  test("a long blade is one over 400 mm, or long by its nature, and struck", () => {
    const long = (use: string, length?: number) => isLongImpact({ use: findUse(use), length });
    expect(long("European sword sharp")).toBe(true);
    expect(long("European sword sharp", 100)).toBe(true);
    expect([400, 400.1, undefined].map((length) => long("Large camp chopper", length))).toEqual([
      false,
      true,
      false,
    ]);
    expect(long("Fillet flexible", 900)).toBe(false);
  });
});

describe("what is said of a steel for a use", () => {
  const said = (use: string, name: string, length?: number) =>
    steelCautions({ use: findUse(use), steel: findSteel(name), length }).map(
      ({ rank, full }) => `${rank}: ${full}`,
    );

  test("the wrong steel is a danger where the blade is struck, a note elsewhere", () => {
    expect(said("European sword sharp", "D2")).toEqual([
      "danger: D2 (high-chromium cold-work steel) is not the trade's choice for swords.",
    ]);
    expect(said("Chef knife European style", "5160")).toEqual([
      "note: 5160 (Cr, Cr-V or Si spring steel) is not the trade's choice for kitchen knives.",
    ]);
  });

  test("a stainless sword is for display, a stainless chopper is not", () => {
    expect(said("European sword sharp", "440C")[0]).toMatch(
      /breaks sooner than a spring steel; keep it for display\.$/,
    );
    expect(said("Large camp chopper", "440C", 450)[0]).toMatch(/breaks sooner than a spring steel\.$/);
  });

  test("the low end of the band, where the table says so", () => {
    expect(said("European sword sharp", "80CrV2")).toEqual([
      "note: 80CrV2 suits swords at the low end of the band.",
    ]);
    expect(said("Large camp chopper", "80CrV2")).toEqual([]);
  });

  test("what has a caution of its own is not said twice", () => {
    expect(said("European sword sharp", "1095")).toHaveLength(1);
    expect(said("Differential edge Japanese style", "5160")).toHaveLength(1);
    expect(said("Chef knife European style", "1045")).toEqual([
      "spoils the blade: 0.45 % C is too little carbon for a lasting edge: choose 0.60 % C or more.",
    ]);
  });
});
