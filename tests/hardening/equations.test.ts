import { describe, expect, test } from "vitest";
import { lowerCritical, upperCritical } from "../../src/core/hardening/critical";
import { criticalPoints } from "../../src/core/hardening/critical-points";
import { grindAllowance } from "../../src/core/hardening/decarb";
import { idealDiameter } from "../../src/core/hardening/ideal-diameter";
import { hardenability } from "../../src/core/hardening/jominy";
import { highChromiumStart, martensiteStart, retainedAustenite } from "../../src/core/hardening/martensite";
import { soakMinutes } from "../../src/core/hardening/soak";
import type { Composition } from "../../src/core/steel/composition";
import { findSteel } from "../../src/core/steel/find";

const base = findSteel("C 0.45 Mn 0.6 Si 0.2").composition;
const with_ = (changes: Partial<Composition>): Composition => ({ ...base, ...changes });

type Effects = Readonly<Partial<Record<keyof Composition, number>>>;

/** What one tenth of a per cent more of an element changes, against the coefficient that the source prints. */
function expectEffects(of: (c: Composition) => number, effects: Effects): void {
  for (const [element, effect] of Object.entries(effects) as [keyof Composition, number][]) {
    const more = of(with_({ [element]: (base[element] as number) + 0.1 })) - of(base);
    expect(more, element).toBeCloseTo(effect / 10, 9);
  }
}

describe("each element as its source prints it, recalled", () => {
  test("Ms of lean steel: van Bohemen, Mater. Sci. Technol. 28 (2012) 487", () => {
    expectEffects(martensiteStart, { Mn: -31, Si: -13, Cr: -10, Ni: -18, Mo: -12 });
  });

  test("rate of Koistinen and Marburger: the same paper", () => {
    const rate = (c: Composition) =>
      (-1000 * Math.log(retainedAustenite(c) / 100)) / (martensiteStart(c) - 20);
    expectEffects(rate, { Mn: -0.14, Si: -0.21, Cr: -0.11, Ni: -0.08, Mo: -0.05 });
  });

  test("Ms of high-chromium steel: Capdevila, Caballero and García de Andrés, ISIJ Int. 42 (2002) 894", () => {
    expectEffects(highChromiumStart, {
      C: -302.6,
      Mn: -30.6,
      Cr: -8.9,
      Ni: -16.6,
      Mo: 2.4,
      Si: -14.5,
      Cu: -11.3,
      Co: 8.58,
      W: 7.4,
    });
  });

  test("Ac1: Andrews, JISI 203 (1965) 721", () => {
    expectEffects(lowerCritical, { Mn: -10.7, Ni: -16.9, Si: 29.1, Cr: 16.9, W: 6.38 });
  });

  test("Ac3, alloy terms: the same paper", () => {
    expectEffects((c) => upperCritical(c, 0.45), { Si: 44.7, Ni: -15.2, V: 104, Mo: 31.5, W: 13.1 });
  });
});

describe("equations at their ends", () => {
  test("9 % Cr is the last that the lean Ms takes", () => {
    const ms = (chromium: number) => criticalPoints(findSteel(`C 0.5 Mn 0.4 Si 0.3 Cr ${chromium}`), 1050).ms;
    // Between 1.8 and 11 % Cr no carbon in solution is published, so neither is Ms.
    expect(() => ms(9)).toThrow(/no relation is published/);
    expect(ms(13)).toBeGreaterThan(100);
  });

  test("grain size moves the ideal diameter: finer is shallower, straight between whole numbers", () => {
    const at = (grain: number) =>
      hardenability(findSteel("4140"), grain) / hardenability(findSteel("4140"), 7);
    // ASTM grain 4, 5, 6: 1.27, 1.172, 1.083 of grain 7, recalled.
    expect([4, 5, 6, 7].map(at)).toEqual([1.27, 1.172, 1.083, 1].map((factor) => expect.closeTo(factor, 9)));
    expect(at(4.25)).toBeCloseTo(1.27 - 0.25 * (1.27 - 1.172), 9);
    expect(at(10)).toBeCloseTo(0.76, 9);
  });

  test("vanadium counts in full below 0.70 % C and stays in carbide above", () => {
    const grown = (carbon: number) =>
      hardenability(findSteel(`C ${carbon} Mn 0.6 V 0.1`)) / hardenability(findSteel(`C ${carbon} Mn 0.6`));
    expect(grown(0.69)).toBeGreaterThan(1.1);
    expect(grown(0.72)).toBeLessThanOrEqual(1);
  });

  test("beyond the carbon of the factors a held grade has its own diameter, an analysis none", () => {
    // 0.9 % C in solution is the end of the factors; the grade series holds 22 mm for 1095 at 0.95 % C.
    expect(() => hardenability(findSteel("C 1.0 Mn 0.4"))).toThrow(/carbon .* is outside 0\.01 % to 0\.9 %/);
    expect(hardenability(findSteel("5160"))).toBeCloseTo(idealDiameter(findSteel("5160").composition), 9);
    expect(hardenability(findSteel("1095"))).toBe(22);
    // 0.90 % C at most is in solution in 1084: its factors answer, not the series' 31 mm.
    expect(hardenability(findSteel("1084"))).not.toBe(31);
  });

  test("heats are counted in whole numbers", () => {
    const allowance = (heats: number) => grindAllowance(findSteel("1084"), 1000, 30, heats);
    expect(() => allowance(0)).toThrow(/0 heats given: it must be a whole number, 1 or more/);
    expect(() => allowance(1.5)).toThrow(/1\.5 heats given/);
    const { skinMm, advice } = allowance(1);
    expect(advice).toContain(`between ${(skinMm / 2).toFixed(2)} and ${(skinMm * 1.5).toFixed(2)} mm`);
  });

  test("a tempering oven has no soak; a hardening furnace has", () => {
    const { heatUp, soak, total } = soakMinutes(4, 300, "plain carbon");
    expect(soak).toBeNull();
    expect(total).toBe(heatUp);
    expect(soakMinutes(4, 800, "plain carbon").soak).toBeGreaterThan(0);
  });
});
