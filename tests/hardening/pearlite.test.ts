import { describe, expect, it } from "vitest";
import { PearliteCells } from "../../src/core/hardening/section-pearlite";

/** Pearlite after cooling at one rate from 727 to 225 °C. */
function cooled(noseS: number, rate: number): number {
  const cells = new PearliteCells(1, noseS, 225);
  for (let celsius = 726.5; celsius > 225; celsius -= 1) cells.advance(0, celsius, 1 / rate);
  return cells.fraction[0] as number;
}

/** Slowest rate at which under one per cent forms. */
function criticalRate(noseS: number): number {
  let [low, high] = [0.1, 5000];
  while (high / low > 1.001) {
    const middle = Math.sqrt(low * high);
    if (cooled(noseS, middle) > 0.01) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}

describe("eutectoid steel (Callister, figure 11.28 and the isothermal diagram)", () => {
  it("is free of pearlite above 140 °C/s and all pearlite below 35 °C/s, for a nose of 1.1 to 1.2 s", () => {
    for (const nose of [1.1, 1.2]) {
      expect(criticalRate(nose) / 140).toBeGreaterThan(0.8);
      expect(criticalRate(nose) / 140).toBeLessThan(1.25);
      expect(cooled(nose, 35)).toBeGreaterThan(0.95);
    }
  });

  it("is half transformed at 540 °C in about 3 s", () => {
    const cells = new PearliteCells(1, 1.1, 225);
    let seconds = 0;
    while ((cells.fraction[0] as number) < 0.5) {
      cells.advance(0, 540, 0.01);
      seconds += 0.01;
    }
    expect(seconds / 3).toBeGreaterThan(0.8);
    expect(seconds / 3).toBeLessThan(1.25);
  });
});

describe("nose time from hardenability", () => {
  it("gives 4340 its critical rate of 8.3 °C/s (Callister) within a factor 1.5", () => {
    // Ideal diameter of 4340 by the factors of ASTM A255, typical composition: 171 mm.
    const rate = criticalRate(0.9 * (171 / 31) ** 2);
    expect(rate).toBeGreaterThan(8.3 / 1.5);
    expect(rate).toBeLessThan(8.3 * 1.5);
  });

  it("gives eutectoid steel, ideal diameter 31 mm, its 140 °C/s within a factor 1.5", () => {
    const rate = criticalRate(0.9);
    expect(rate).toBeGreaterThan(140 / 1.5);
    expect(rate).toBeLessThan(140 * 1.5);
  });
});

it("hardness of pearlite is 250 HV from 650 °C and 380 HV from 550 °C (recalled)", () => {
  for (const [celsius, hv] of [
    [650, 250],
    [550, 380],
  ] as const) {
    const cells = new PearliteCells(1, 0.5, 225);
    for (let step = 0; step < 4000; step += 1) cells.advance(0, celsius, 0.01);
    expect(cells.fraction[0]).toBeCloseTo(1, 3);
    expect(Math.abs((cells.hardness[0] as number) - hv)).toBeLessThan(8);
  }
});
