import { describe, expect, test } from "vitest";
import { type OvenCheck, ovenSetting } from "../../src/core/tempering/oven";

/* Straight lines between checks, worked by hand; common practice, no source. */

const checks = (...pairs: readonly (readonly [setC: number, measuredC: number])[]): OvenCheck[] =>
  pairs.map(([setC, measuredC]) => ({ setC, measuredC }));
const THREE = checks([200, 190], [300, 310], [250, 245]);

describe("between checks", () => {
  test("a straight line, whatever order they stand in", () => {
    // From 190 to 245 the setting goes from 200 to 250, from 245 to 310 from 250 to 300.
    expect(ovenSetting(217.5, THREE)).toBeCloseTo(225, 9);
    expect(ovenSetting(277.5, THREE)).toBeCloseTo(275, 9);
    expect(ovenSetting(245, THREE)).toBeCloseTo(250, 9);
    expect(ovenSetting(310, THREE)).toBeCloseTo(300, 9);
    expect(ovenSetting(190, THREE)).toBeCloseTo(200, 9);
  });
});

describe("beyond them", () => {
  test("the nearest error holds for 50 °C either way", () => {
    expect(ovenSetting(140, THREE)).toBe(150);
    expect(ovenSetting(360, THREE)).toBe(350);
    expect(ovenSetting(205, checks([200, 190]))).toBe(215);
    expect(() => ovenSetting(139.9, THREE)).toThrow(
      /140 °C .* is more than 50 °C \(90 °F\) from the nearest check, 190 °C/,
    );
    expect(() => ovenSetting(360.1, THREE)).toThrow(/from the nearest check, 310 °C/);
  });
});

describe("checks that cannot be", () => {
  test("80 °C apart is the most", () => {
    expect(ovenSetting(280, checks([200, 280]))).toBe(200);
    expect(() => ovenSetting(280, checks([200, 281]))).toThrow(/more than 80 °C \(144 °F\) apart/);
    expect(() => ovenSetting(280, checks([281, 200]))).toThrow(/more than 80 °C/);
  });

  test("a hotter setting must read hotter, and twice the same setting or reading is no second check", () => {
    for (const pair of [
      checks([200, 210], [250, 205]),
      checks([200, 205], [200, 215]),
      checks([200, 205], [230, 205]),
    ]) {
      expect(() => ovenSetting(205, pair)).toThrow(
        /contradict each other: set \d+ °C .* a hotter setting must read hotter/,
      );
    }
  });

  test("none is no answer", () => {
    expect(() => ovenSetting(200, [])).toThrow(/no check of the oven was given/);
  });
});
