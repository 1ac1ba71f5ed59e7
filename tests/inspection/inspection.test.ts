import fc from "fast-check";
import { sampleStandardDeviation } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { readHardness } from "../../src/core/hardness/read-hardness";
import { strengthOf } from "../../src/core/hardness/strength";
import { acceptChance } from "../../src/core/inspection/accept-chance";
import { summariseReadings } from "../../src/core/inspection/readings";
import { findLevel, INSPECTION_LEVELS, samplePlan } from "../../src/core/inspection/sample-plan";
import { findThicknessRule, testThickness } from "../../src/core/inspection/test-thickness";

const plan = (lot: number, aql: number, level = "II") => samplePlan(lot, aql, findLevel(level));
const numbers = (p: ReturnType<typeof plan>) => [p.letter, p.sample, p.accept, p.reject];

describe("sampling plans", () => {
  // MIL-STD-105E table II-A as reprinted by the National Institute of Building Sciences (level II lots).
  it.each([
    [60, 2.5, ["F", 20, 1, 2]],
    [10, 2.5, ["C", 5, 0, 1]],
    [200, 2.5, ["G", 32, 2, 3]],
    [8, 6.5, ["A", 2, 0, 1]],
    [600, 15, ["J", 80, 21, 22]],
    [600, 0.65, ["J", 80, 1, 2]],
    [300, 0.65, ["J", 80, 1, 2]],
    [160, 0.65, ["F", 20, 0, 1]],
    [30, 1.5, ["D", 8, 0, 1]],
  ])("lot %d at AQL %d", (lot, aql, expected) => {
    expect(numbers(plan(lot, aql))).toEqual(expected);
  });

  // Letter K: read in the same reprint; its arrow at AQL 15 leads to letter J.
  it.each([
    [0.65, 2],
    [1, 3],
    [1.5, 5],
    [2.5, 7],
    [4, 10],
    [6.5, 14],
    [10, 21],
  ])("letter K at AQL %d accepts %d", (aql, accept) => {
    expect(numbers(plan(1000, aql, "III"))).toEqual(["K", 125, accept, accept + 1]);
  });

  it("follows every arrow to a plan, for every lot size and level", () => {
    for (const level of INSPECTION_LEVELS)
      for (let lot = 2; lot <= 1200; lot += 7)
        for (const aql of [0.65, 1, 1.5, 2.5, 4, 6.5, 10, 15]) {
          const { sample, accept, reject } = samplePlan(lot, aql, level);
          expect(sample).toBeLessThanOrEqual(lot);
          expect(reject).toBe(accept + 1);
        }
  });

  it("letter A points down at AQL 10 and 15", () => {
    // From memory of MIL-STD-105E; the reprint points up at 10, where nothing stands.
    expect(numbers(plan(8, 10))).toEqual(["C", 5, 1, 2]);
    expect(numbers(plan(8, 15))).toEqual(["B", 3, 1, 2]);
  });

  it("names the nearest AQL and the lots it covers", () => {
    expect(() => plan(60, 2)).toThrow("use 1.5, the nearest of 0.65, 1, 1.5, 2.5, 4, 6.5, 10, 15");
    expect(() => plan(60, 3)).toThrow("use 2.5");
    expect(() => plan(1201, 2.5)).toThrow("2 pieces to 1200 pieces");
  });
});

describe("chance of acceptance", () => {
  // Printed operating characteristics of these plans, four decimals.
  it.each([
    [20, 1, [0.9831, 0.9118, 0.8103, 0.3917]],
    [32, 2, [0.996, 0.9548, 0.8651, 0.3667]],
    [13, 1, [0.9928, 0.9594, 0.9068, 0.6213]],
    [8, 0, [0.9227, 0.8167, 0.7214, 0.4305]],
    [5, 0, [0.951, 0.8811, 0.8154, 0.5905]],
  ])("sample %d, accept %d", (sample, accept, expected) => {
    [0.01, 0.025, 0.04, 0.1].forEach((bad, index) => {
      expect(acceptChance(sample, accept, bad)).toBeCloseTo(expected[index] as number, 4);
    });
  });

  it("draws without putting back from a small lot", () => {
    // C(45,8) / C(50,8), worked by hand: 0.40149.
    expect(acceptChance(8, 0, 0.1, 50)).toBeCloseTo(0.40149, 5);
  });

  it("sums to one and never rises with the fraction bad", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.double({ min: 0, max: 1, noNaN: true }), (n, bad) => {
        expect(acceptChance(n, n, bad)).toBeCloseTo(1, 9);
        const accept = Math.floor(n / 3);
        expect(acceptChance(n, accept, Math.min(1, bad + 0.05))).toBeLessThanOrEqual(
          acceptChance(n, accept, bad) + 1e-12,
        );
      }),
    );
  });

  it("asks for a whole number of bad pieces", () => {
    expect(() => acceptChance(8, 0, 0.1, 55)).toThrow("give 5/55 or 6/55");
    expect(() => acceptChance(5, 6, 0.1)).toThrow("nothing would ever fail");
    expect(() => acceptChance(60, 6, 0.1, 50)).toThrow("more than the lot of 50");
  });
});

describe("least thickness", () => {
  const rule = findThicknessRule;
  it.each([
    // ASTM E18 table, straight lines between its rows.
    ["ASTM E18", 60, 0.73],
    ["ASTM E18", 58, 0.75],
    ["ASTM E18", 55, 0.78],
    ["ASTM E18", 50, 0.824],
    ["ASTM E18", 69, 0.56],
    ["ASTM E18", 20, 1.02],
    // ISO 6508-1: ten times (100 - HRC) × 0.002 mm.
    ["ISO 6508", 60, 0.8],
    ["ISO 6508", 40, 1.2],
    ["larger", 60, 0.8],
    ["larger", 69, 0.62],
  ])("%s at %d HRC is %d mm", (word, hrc, mm) => {
    expect(testThickness(hrc, rule(word))).toBeCloseTo(mm, 3);
  });

  it("refuses outside the printed rows", () => {
    expect(() => testThickness(15, rule("larger"))).toThrow("20 HRC to 69 HRC");
    expect(() => testThickness(70, rule("larger"))).toThrow("20 HRC to 69 HRC");
  });
});

describe("readings", () => {
  it("agrees with a statistics library", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 20, max: 68, noNaN: true }), { minLength: 2, maxLength: 30 }),
        (list) => {
          expect(summariseReadings(list).deviation).toBeCloseTo(sampleStandardDeviation(list), 9);
        },
      ),
    );
  });

  // Verdicts: common practice, no source.
  it.each([
    [[58, 59, 59.5], 57, 60, "inside the limits"],
    [[55, 55.5, 56], 57, 60, "too soft: mean under 57 HRC"],
    [[61, 60.5, 61], 57, 60, "too hard: mean over 60 HRC"],
    [
      [57, 59.5, 60.5],
      57,
      60,
      "uncertain: 1 of 3 readings outside the limits; readings 3.5 HRC apart: clean the spot and test again",
    ],
    [[58], 57, undefined, "inside the limits; fewer than three readings"],
    [[58, 58, 58], undefined, undefined, "no limits given"],
  ])("%j between %s and %s", (list, low, high, verdict) => {
    expect(summariseReadings(list, low, high).verdict).toBe(verdict);
  });

  it("gives no capability without scatter and refuses crossed limits", () => {
    expect(summariseReadings([58, 58, 58], 57, 60).capability).toBeUndefined();
    expect(summariseReadings([58], 57, 60).deviation).toBeUndefined();
    expect(() => summariseReadings([], 57, 60)).toThrow("no readings");
    expect(() => summariseReadings([58], 60, 57)).toThrow("low 60 HRC is above high 57 HRC");
  });
});

describe("hardness as drawings write it", () => {
  it.each([
    ["58-60", [58, 59, 60]],
    ["58 – 60 HRC", [58, 59, 60]],
    ["HRC 58 to 60", [58, 59, 60]],
    ["60 +-1", [59, 60, 61]],
    ["60 ± 1", [59, 60, 61]],
    ["60+/-1", [59, 60, 61]],
    ["60 +1/-2", [58, 60, 61]],
    ["58,5-59,5", [58.5, 59, 59.5]],
    ["59", [59, 59, 59]],
    ["59HRC", [59, 59, 59]],
    [59.5, [59.5, 59.5, 59.5]],
  ])("%s", (given, expected) => {
    const { low, aim, high } = readHardness(given as string);
    expect([low, aim, high]).toEqual(expected);
  });

  it.each([
    ["650-700 HV", "not in Rockwell C"],
    ["min 58", "one end only"],
    ["60-58", "higher end first"],
    ["hard", "is not a hardness"],
    ["", "is not a hardness"],
    [45144, "looks like a date"],
    ["18-22", "18 HRC, outside 20 to 68 HRC"],
    ["66-70", "70 HRC, outside"],
  ])("refuses %s", (given, sentence) => {
    expect(() => readHardness(given as string)).toThrow(sentence);
  });
});

describe("strength", () => {
  // Pavlina and Van Tyne 2008 (coefficients recalled): 513, 595 and 653 HV give 1385, 1621 and 1787 MPa yield.
  it.each([
    [513, 1385],
    [595, 1621],
    [653, 1787],
  ])("%d HV yields at %d MPa", (hv, mpa) => {
    expect(strengthOf(hv, "HV").yieldMPa).toBeCloseTo(mpa, -0.5);
  });

  it("is a bound above 58 HRC, without a tensile strength", () => {
    const strength = strengthOf(62, "HRC");
    expect(strength).toMatchObject({ bounded: true, tensileMPa: undefined });
    expect(strength.yieldMPa).toBeCloseTo(1790, -1);
    // O1 in compression yields at 2200 MPa at 62 HRC (supplier's page): above the bound.
    expect(strength.yieldMPa).toBeLessThan(2200);
    expect(() => strengthOf(2000, "MPa")).toThrow("give a hardness");
  });
});
