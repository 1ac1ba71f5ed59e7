import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { hollomonJaffe, hoursAtParameter } from "../../src/core/tempering/hollomon-jaffe";
import { retemper } from "../../src/core/tempering/retemper";
import { temperedHardness } from "../../src/core/tempering/tempered";

const steel = findSteel("1084");
const published = (celsius: number, hours = 2) => temperedHardness(steel, celsius, { hours, cycles: 1 });
const next = (celsius: number, hrc: number, target: number, hours = 2, name = "1084") =>
  retemper(findSteel(name), { celsius, hours: 2, hrc }, target, hours);

describe("a blade at, under and over its target", () => {
  test("half a point either way is at the target: no tester tells it apart", () => {
    for (const hrc of [60.5, 60, 59.5]) {
      expect(next(200, hrc, 60)).toEqual({
        nextC: null,
        likely: hrc,
        advice: expect.stringContaining("no further temper"),
      });
    }
  });

  test("under it only a new hardening helps", () => {
    expect(next(200, 59.4, 60)).toEqual({
      nextC: null,
      likely: 59.4,
      advice: expect.stringMatching(/^re-harden: 59\.4 HRC is under .* 60 HRC/),
    });
  });

  test("over it a hotter temper follows, as hot as brings the parameter of both to the target", () => {
    const shift = 0.8;
    const { nextC, likely, advice } = next(200, published(200) + shift, 57);
    expect(likely).toBe(57);
    // Both tempers as hours at the second one's temperature: the same parameter at once gives 57 less the shift.
    const celsius = nextC as number;
    const hours = 2 + hoursAtParameter(hollomonJaffe(200, 2), celsius);
    expect(published(celsius, hours) + shift).toBeCloseTo(57, 6);
    expect(celsius).toBeGreaterThan(200);
    expect(advice).toMatch(/^temper at \d+ °C \(\d+ °F\) for 2 h.*; then read again$/);
  });

  test("where as much time again at the same heat is enough, it says so and what will be read", () => {
    // Twenty hours more at 220 °C soften by more than the 0.6 HRC that are wanted.
    const hrc = published(220) + 0.5;
    const { nextC, likely, advice } = next(220, hrc, hrc - 0.6, 20);
    expect(nextC).toBe(220);
    expect(advice).toMatch(/as hot as before is enough; then read again$/);
    // 22 h in all at 220 °C, moved by the reading.
    expect(likely).toBeCloseTo(published(220, 22) + 0.5, 6);
    expect(likely).toBeLessThan(hrc - 0.6);
  });

  test("a temper in the brittle range is named as such", () => {
    expect(next(200, published(200), 53).advice).toMatch(
      /for 2 h \(.*embrittlement range.*\); then read again$/,
    );
    expect(next(150, published(150), published(150) - 1.5).advice).not.toContain("embrittlement");
  });

  test("a target under the end of the curve is out of reach, with the lowest that is not", () => {
    // 1084 is published to 700 °C; W2 only to 315.6 °C, 55 HRC after 2 h.
    const w2 = "W2";
    const known = temperedHardness(findSteel("C 1.0 Mn 0.25 Si 0.25"), 200, { hours: 2, cycles: 1 });
    expect(known).toBeGreaterThan(50);
    expect(() => next(204.4, 62, 40, 2, w2)).toThrow(
      /40 HRC in W2 is out of reach: the lowest is 5\d\.\d HRC, at 31\d °C/,
    );
    expect(() => next(204.4, 63, 40, 2, w2)).toThrow(/the lowest is 5\d\.\d HRC/);
  });
});
