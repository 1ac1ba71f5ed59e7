import { describe, expect, test } from "vitest";
import type { WorksheetFunction } from "../../src/functions/declare";
import * as tempering from "../../src/functions/tempering";
import { answer } from "../tools/worksheet-examples";

const { OVEN_SET, RETEMPER, SAME_TEMPER, TEMPER_CURVE, TEMPER_FOR, TEMPER_PLAN, TEMPER_TIME_AT } = tempering;
const { TEMPERED_HRC, TEMPERED_RANGE } = tempering;

/** What the first cell says. */
const said = (fn: WorksheetFunction, ...given: unknown[]) => String(answer(fn, ...given)[0]?.[0]);

describe("bad input is answered with a sentence: what was given, what is accepted, both scales", () => {
  test.each<[string, WorksheetFunction, unknown[], RegExp]>([
    [
      "above Ac1",
      TEMPERED_HRC,
      ["1095", 760],
      /^#N\/A temper 760 °C \(1400 °F\) is above the lower critical temperature of 1095, about 72\d °C/,
    ],
    [
      "above every temper",
      TEMPERED_HRC,
      ["1095", 900],
      /^#VALUE! temper C: 900 °C \(1652 °F\) given; give a temperature/,
    ],
    [
      "below 100 °C",
      TEMPERED_HRC,
      ["1095", 90],
      /^#N\/A temper 90 °C \(194 °F\) is outside 100 °C \(212 °F\)/,
    ],
    ["no temperature", TEMPERED_HRC, ["1095", "hot"], /^#VALUE! temper C: "hot" is not a temperature/],
    [
      "negative time",
      TEMPERED_HRC,
      ["1095", 200, -1],
      /^#VALUE! hours: -1 h given; give a time in h, above 0 h/,
    ],
    ["a week", TEMPERED_HRC, ["1095", 200, 168], /^#N\/A 168 h of temper in all is outside 0\.25 h to 32 h/],
    ["half a cycle", TEMPERED_HRC, ["1095", 200, 2, 1.5], /^#VALUE! cycles: 1\.5 given; give a whole number/],
    [
      "a reading without its temper",
      TEMPERED_HRC,
      ["1095", 200, 2, 1, null, 60],
      /^#VALUE! known C: a reading needs the temper/,
    ],
    [
      "target over reach",
      TEMPER_FOR,
      ["1045", 62],
      /^#N\/A 62 HRC in 1045 is out of reach: the highest .* is 5\d\.\d HRC/,
    ],
    ["two answers", TEMPER_FOR, ["H13", 54], /400 °C \(752 °F\) and 53\d °C.*TEMPER_PLAN/],
    [
      "a soft coupon",
      TEMPER_FOR,
      ["1095", 60, 2, 1, 204, 43],
      /check section, quench, decarburised skin; do not temper lower/,
    ],
    ["hardened below Ac1", TEMPERED_HRC, ["5160", 200, 2, 1, null, null, 700], /still holds ferrite/],
    [
      "hardened beyond the relation",
      TEMPERED_HRC,
      ["52100", 200, 2, 1, null, null, 1000],
      /hardening temperature 1000 °C \(1832 °F\) is outside/,
    ],
    ["a target off the scale", TEMPER_PLAN, ["5160", 75], /^#VALUE! target HRC: 75 HRC given/],
    ["a steel without curve", TEMPER_PLAN, ["T1", 58], /^#N\/A no tempering curve of T1 is held/],
    ["a curve out of range", TEMPER_CURVE, ["440B", 150, 425], /425 °C \(797 °F\) is outside 150 °C/],
    ["a curve of too many points", TEMPER_CURVE, ["1095", 150, 400, 0.1], /#VALUE! .*1000 at most/],
    ["a reading far off", RETEMPER, ["1095", 200, 2, 67, 60], /HRC over the .* published for 1095/],
    [
      "a softer target than there is",
      RETEMPER,
      ["52100", 200, 2, 61, 30],
      /30 HRC in 52100 is out of reach: the lowest is/,
    ],
    ["a time not measured", SAME_TEMPER, [200, 4, 100], /time 100 h is outside 0\.25 h to 32 h/],
    [
      "lists of unequal length",
      TEMPER_TIME_AT,
      [[[200], [210]], [[2], [2], [2]], 200],
      /2 tempers but 3 times/,
    ],
    ["a reference far off", TEMPER_TIME_AT, [600, 2, 150], /choose a reference temperature nearer to theirs/],
    ["°F read as °C", OVEN_SET, [200, 400, 205], /more than 80 °C \(144 °F\) apart/],
    ["an oven check far off", OVEN_SET, [350, 200, 190], /measure the oven nearer to it/],
    [
      "half a section",
      TEMPERED_RANGE,
      ["1095", 200, 2, 1, null, null, null, 4],
      /^#VALUE! quench: a section needs its bath/,
    ],
    [
      "a section that stays soft",
      TEMPERED_RANGE,
      ["1095", 200, 2, 1, null, null, null, 12, "fast oil"],
      /12 mm of 1095 in fast oil does not harden through/,
    ],
  ])("%s", (_, fn, given, sentence) => {
    expect(said(fn, ...given)).toMatch(sentence);
  });
});

describe("TEMPER_PLAN", () => {
  const plan = (...given: unknown[]) => answer(TEMPER_PLAN, ...given)[0] ?? [];

  test("a sword target inside the embrittlement range comes with the softer alternative, in both scales", () => {
    const row = plan("5160", 52);
    expect(row[3]).toBe("embrittlement range");
    expect(row[6]).toMatch(/softer: 375 °C \(707 °F\), cooled fast, about 5\d HRC/);
    expect(row[6]).toMatch(/harder: 225 °C \(437 °F\)/);
    expect(row[6]).toMatch(/±3 HRC: begin at the start/);
  });

  test("a target that only a temper under 150 °C gives is planned at 150 °C and questioned", () => {
    const row = plan("1095", 66);
    expect(row.slice(0, 4)).toEqual([150, 150, 177, "below usual temper"]);
    expect(row[6]).toMatch(/the highest from 150 °C \(302 °F\) up is 6\d\.\d HRC/);
  });

  test("10 °C cooler is harder, 10 °C hotter softer", () => {
    const [, likely, , , cooler, hotter] = plan("1084", 58) as number[];
    expect(likely).toBeGreaterThan(200);
    expect(cooler).toBeGreaterThan(58);
    expect(hotter).toBeLessThan(58);
  });

  test("a steel by formula says so where its band is wide", () => {
    expect(answer(TEMPERED_RANGE, "80CrV2", 200)[0]?.[3]).toBe(
      "no published curve of 80CrV2 held, by formula from composition, ±3 HRC",
    );
    expect(plan("80CrV2", 60)[6]).toContain("±3 HRC");
  });
});

describe("RETEMPER", () => {
  test("a reading under the target is hardened again, never tempered cooler", () => {
    const [next, likely, advice] = answer(RETEMPER, "1095", 230, 2, 56, 60)[0] ?? [];
    expect(next).toBe("");
    expect(likely).toBe(56);
    expect(advice).toMatch(/^re-harden: 56 HRC is under the target of 60 HRC/);
  });

  test("never asks for a cooler temper than the blade has had", () => {
    for (const target of [61.4, 61, 60, 58, 55]) {
      const next = answer(RETEMPER, "1095", 200, 2, 62, target)[0]?.[0];
      expect(next as number).toBeGreaterThanOrEqual(200);
    }
  });
});

test("a section that hardens through is named in the caution in place of the assumption", () => {
  const row = answer(TEMPERED_RANGE, "5160", 200, 2, 1, null, null, null, 6, "fast oil")[0] ?? [];
  expect(row[4]).toContain("6 mm of 5160 in fast oil hardens through");
  expect(row[4]).not.toContain("taken as hardened through");
});

test("a bath without figures leaves the assumption standing, and says why", () => {
  const row = answer(TEMPERED_RANGE, "5160", 200, 2, 1, null, null, null, 6, "polymer")[0] ?? [];
  expect(row[4]).toMatch(/section not judged: no plate thickness is held for polymer/);
});
