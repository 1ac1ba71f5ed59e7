import { describe, expect, it } from "vitest";
import { endQuenchHardness, hardenability, jominyHardness } from "../../src/core/hardening/jominy";
import { findSteel } from "../../src/core/steel/find";

const EXAMPLE = "C 0.22 Mn 0.80 Si 0.18 Ni 0.10 Cr 0.43 Mo 0.25 Cu 0.10 V 0.05";

describe("ASTM A255, worked example of SAE 4118 modified", () => {
  it("has an ideal diameter of 1.95 in, from factors rounded to three places", () => {
    expect(Math.abs(hardenability(findSteel(EXAMPLE)) / 25.4 - 1.95)).toBeLessThan(0.03);
  });

  // The metric factors worked outside the project at 49.5 mm and 45.6 HRC, one decimal.
  it.each([
    [3, 45.0],
    [5, 40.1],
    [7, 34.1],
    [9, 26.7],
    [11, 24.2],
    [20, 18.9],
  ])("%d mm: %d HRC", (distance, hrc) => {
    expect(endQuenchHardness(45.6, 49.5, distance)).toBeCloseTo(hrc, 0.9);
  });

  it("starts at the initial hardness", () => {
    expect(endQuenchHardness(45.6, 49.5, 1.5)).toBe(45.6);
  });
});

describe("limits of the method", () => {
  it("never exceeds the initial hardness, and where the printed polynomials cross rises by under 0.6 HRC", () => {
    for (let diameter = 25.4; diameter <= 177; diameter += 3) {
      let before = 60;
      for (let distance = 1.5; distance <= 50; distance += 0.5) {
        const hrc = endQuenchHardness(60, diameter, distance);
        expect(hrc).toBeLessThanOrEqual(before + 0.6);
        before = Math.min(before, hrc);
      }
    }
  });

  it("uses a factor of one past the limit of a polynomial, which turns up again there", () => {
    // The 3 mm polynomial returns 3.8 at 80 mm.
    expect(endQuenchHardness(60, 80, 3)).toBe(60);
  });

  it("refuses what the standard leaves out", () => {
    expect(() => jominyHardness(findSteel("D2"), 5)).toThrow("carbon 1.5 % is outside 0.1 % to 1.2 %");
    expect(() => jominyHardness(findSteel(EXAMPLE), 51)).toThrow("1.5 mm to 50 mm");
    expect(() => hardenability(findSteel("D2"))).toThrow("is outside");
    expect(() => hardenability(findSteel("1084"), 3)).toThrow("ASTM grain number 3 is outside 4 to 10");
  });
});

describe("blade steels", () => {
  it("stand in the order of the trade (common practice, no source): 1095 < 1084 < 80CrV2 < 5160", () => {
    const [a = 0, b = 0, c = 0, d = 0] = ["1095", "1084", "80CrV2", "5160"].map((name) =>
      hardenability(findSteel(name)),
    );
    expect(a).toBeLessThan(b);
    expect(b).toBeLessThan(c);
    expect(c).toBeLessThan(d);
  });

  it("finer grain hardens shallower, by the printed factors", () => {
    const steel = findSteel("1084");
    const at = (grain: number) => hardenability(steel, grain) / hardenability(steel);
    expect([4, 5, 6, 7, 8].map(at)).toEqual([1.27, 1.172, 1.083, 1, 0.92].map((f) => expect.closeTo(f, 6)));
  });
});
