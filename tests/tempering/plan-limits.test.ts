import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { temperPlan } from "../../src/core/tempering/temper-plan";
import { temperedHardness } from "../../src/core/tempering/tempered";

/*
 * Rows of the steelmakers' tables, each at the time of its table (src/core/tempering/fits.json):
 * H13 (2 h): 53 at 350, 54 at 400, 55.5 at 450, 56 at 500, 52.5 HRC at 550 °C.
 * 440B (1 h): 58 at 150, 56 at 200, 54 at 250, 53 at 300, 54 HRC at 350 °C.
 * A2 (4 h): 61 at 205, 60 HRC at 260 °C. L6 (2 h): 62 at 148.9, 61 HRC at 204.4 °C.
 * O2 (1 h): 63.5 at 100, 62.5 at 150, 61.5 HRC at 200 °C. W2 (2 h): 62 at 204.4, 55 at 315.6 °C.
 */

type Known = { celsius: number; hrc: number };
const plan = (steel: string, target: number, hours: number, known?: Known) =>
  temperPlan(findSteel(steel), target, { hours, cycles: 1, known });
const published = (steel: string, celsius: number, hours: number) =>
  temperedHardness(findSteel(steel), celsius, { hours, cycles: 1 });
const flags = (steel: string, hours: number, targets: readonly number[]) =>
  targets.map((target) => plan(steel, target, hours).flag);

describe("between two tempers half a point either way is flat", () => {
  test("a peak of half a point makes a plateau, a higher one two answers", () => {
    // The peak of H13 is 56 HRC.
    expect(flags("H13", 2, [55.6, 55.5, 55.49, 55.4])).toEqual([
      "plateau",
      "plateau",
      "two answers",
      "two answers",
    ]);
  });

  test("so does a dip", () => {
    // The dip of 440B is 53 HRC.
    expect(flags("440B", 1, [53.4, 53.5, 53.51, 53.6])).toEqual([
      "plateau",
      "plateau",
      "two answers",
      "two answers",
    ]);
  });

  test("the plateau is told from half a point over the target to half a point under it", () => {
    // 53.5 and half a point: 54 HRC at 250 and at 350 °C.
    expect(plan("440B", 53.5, 1).caution).toMatch(
      /^hardness hardly moves from 250 °C \(482 °F\) to 350 °C \(662 °F\): lean to the cooler; /,
    );
  });
});

describe("of two answers the band is that of the cooler", () => {
  test("it ends where the curve first leaves it, not beyond the hotter answer", () => {
    // 53.2 HRC and 2.5: the curve passes 55.7 HRC between 450 and 500 °C, on its way up to 56.
    const { flag, startC, likelyC, highC } = plan("H13", 53.2, 2);
    expect(flag).toBe("two answers");
    expect(published("H13", highC as number, 2)).toBeCloseTo(55.7, 6);
    expect(highC).toBeGreaterThan(450);
    expect(highC).toBeLessThan(500);
    // Nothing below 53 HRC on the cool side: the band begins with the table, 350 °C.
    expect(startC).toBeCloseTo(350, 9);
    expect(likelyC).toBeGreaterThan(350);
    expect(likelyC).toBeLessThan(400);
  });
});

describe("a plateau is one point over 55 °C or more", () => {
  test("A2 loses one point from 205 to 260 °C, exactly 55 °C", () => {
    const { flag, caution } = plan("A2", 60.5, 4);
    expect(flag).toBe("plateau");
    expect(caution).toContain("hardly moves from 205 °C (401 °F) to 260 °C (500 °F)");
  });

  test("54.4 and 50 °C are none", () => {
    // L6 loses its point from 148.9 to 204.4 °C, of which 150 °C and more may be advised.
    expect(flags("L6", 2, [61.5])).toEqual(["one answer"]);
    expect(flags("O2", 1, [62])).toEqual(["one answer"]);
  });
});

describe("no answer", () => {
  test("a reading lifts the lowest that can be had as it lifts the curve", () => {
    // W2: 62 HRC is printed at 204.4 °C, the end of the table is 55 HRC.
    const lowest = (hrc: number) => plan("W2", 40, 2, { celsius: 204.4, hrc }).caution;
    expect(lowest(64)).toContain("the lowest is 57.0 HRC");
    expect(lowest(62)).toContain("the lowest is 55.0 HRC");
    expect(lowest(60)).toContain("the lowest is 53.0 HRC");
    // With the blade two points over the table 56 HRC is at the limit, two points under it is not.
    expect(plan("W2", 56, 2, { celsius: 204.4, hrc: 64 }).flag).toBe("at the limit");
    expect(plan("W2", 56, 2, { celsius: 204.4, hrc: 60 }).likelyC).toBeGreaterThan(260);
  });

  test("the hardest of all tempers needs one below 150 °C, a tenth more is at the limit, more than the error out of reach", () => {
    expect(flags("O2", 1, [62.4, 62.6, 63.5, 63.6, 66.5])).toEqual([
      "one answer",
      "below usual temper",
      "below usual temper",
      "at the limit",
      "out of reach",
    ]);
  });

  test("a table that begins above 150 °C has nothing below the usual temper", () => {
    // H13 begins at 350 °C and is hardest at 500.
    const hard = plan("H13", 57, 2);
    expect(hard.flag).toBe("at the limit");
    expect(hard.likelyC).toBe(500);
    expect(hard.caution).toContain("the highest from 350 °C (662 °F) up is 56.0 HRC; within the error");
    expect(plan("H13", 62, 2).caution).toContain("up is 56.0 HRC; choose a softer target");
  });
});
