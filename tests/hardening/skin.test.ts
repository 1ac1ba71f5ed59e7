import { describe, expect, test } from "vitest";
import { decarbDepth, grindAllowance } from "../../src/core/hardening/decarb";
import { austeniteDiffusivity } from "../../src/core/steel/billet";
import { findSteel } from "../../src/core/steel/find";

/*
 * Carbon in ferrite: D = 6.2e-7 exp(-80 kJ/mol ÷ RT) m²/s (Callister, table of diffusion data, from memory), at most
 * 0.022 % C at 727 °C and none at 912 °C (iron-carbon diagram). A layer fed through itself grows as √(2 D c t ÷ C).
 */

const EUTECTOID = findSteel("C 0.8 Mn 0.4");
const HOUR = 60;

/** Skin beyond what diffusion in austenite takes, 2.326 √(D t): the argument at which erf is 0.9 is 1.163 [mm]. */
const rim = (celsius: number, minutes = HOUR, steel = EUTECTOID, carbon = 0.8) =>
  decarbDepth(steel, celsius, minutes) -
  2326 * Math.sqrt(austeniteDiffusivity(celsius, carbon) * minutes * 60);

describe("the rim of ferrite below 850 °C", () => {
  test("worked by hand for 0.8 % C and an hour", () => {
    // 730 °C: D 4.232e-11 m²/s, c 0.02164 %; √(2 × 4.232e-11 × 0.02164 × 3600 ÷ 0.8) = 0.0908 mm.
    expect(rim(730)).toBeCloseTo(0.0908, 4);
    // 800 °C: D 7.908e-11, c 0.01332 %: 0.0974 mm.
    expect(rim(800)).toBeCloseTo(0.0974, 4);
    // 825 °C: D 9.699e-11, c 0.01035 %: 0.0950 mm, of which half is left half way to 850 °C.
    expect(rim(825)).toBeCloseTo(0.0475, 4);
    expect([850, 900, 1200].map((celsius) => rim(celsius))).toEqual(
      [0, 0, 0].map(() => expect.closeTo(0, 12)),
    );
  });

  test("grows with the square root of time, and more slowly the more carbon there is to carry off", () => {
    expect(rim(780, 4 * HOUR) / rim(780, HOUR)).toBeCloseTo(2, 9);
    const [lean, rich] = [findSteel("C 0.5 Mn 0.4"), findSteel("C 1.0 Mn 0.4")];
    expect(rim(780, HOUR, lean, 0.5) / rim(780, HOUR, rich, 1)).toBeCloseTo(Math.SQRT2, 6);
  });
});

describe("where a steel begins to lose carbon as austenite", () => {
  test("at its Ac1, else at the eutectoid, 727 °C, or for alloy steel 790 °C", () => {
    // Too much tungsten and manganese for the equations of Ac1.
    for (const lean of ["C 1.0 W 3 Mn 0.3", "C 0.8 Mn 3"]) {
      expect(() => decarbDepth(lean, 727, 30)).not.toThrow();
      expect(() => decarbDepth(lean, 726.9, 30)).toThrow("below the lower critical temperature");
    }
    for (const alloy of ["C 1 Cr 8 Mn 0.4", "440C"]) {
      expect(() => decarbDepth(alloy, 790, 30)).not.toThrow();
      expect(() => decarbDepth(alloy, 789.9, 30)).toThrow("about 790 °C");
    }
    // 1.8 % Cr with as much tungsten is lean still.
    expect(() => decarbDepth("C 0.8 Cr 1.8 W 3 Mn 0.3", 727, 30)).not.toThrow();
    expect(() => decarbDepth("C 0.8 Cr 1.81 W 3 Mn 0.3", 727, 30)).toThrow("about 790 °C");
  });
});

test("the figure holds to half either way, to a factor of 2 under 850 °C and over 1.8 % Cr", () => {
  const factor = (steel: string, celsius: number) => {
    const { skinMm, advice } = grindAllowance(steel, celsius, 600, 4);
    const most = Number(/ and ([\d.]+) mm; a file/.exec(advice)?.[1]);
    return most / skinMm;
  };
  expect(factor("C 0.8 Mn 0.4", 850)).toBeCloseTo(1.5, 2);
  expect(factor("C 0.8 Mn 0.4", 849)).toBeCloseTo(2, 2);
  expect(factor("C 0.6 Cr 1.8 Mn 0.4", 900)).toBeCloseTo(1.5, 2);
  expect(factor("C 0.6 Cr 1.81 Mn 0.4", 900)).toBeCloseTo(2, 2);
});
