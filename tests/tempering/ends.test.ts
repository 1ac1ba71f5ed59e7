import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { formulaCurve } from "../../src/core/tempering/composition-formula";
import { crossings, extremes, type HardnessCurve } from "../../src/core/tempering/curve";
import {
  brittleText,
  isNearBrittle,
  isUnavoidable,
  nearBrittleText,
} from "../../src/core/tempering/embrittlement";
import { equivalentTime } from "../../src/core/tempering/hollomon-jaffe";
import { oxideColour, oxideColours } from "../../src/core/tempering/oxide-colour";
import { isBeyondError, isOutOfReach, temperReach } from "../../src/core/tempering/reach";
import { sectionEffect, slackOf, softText } from "../../src/core/tempering/section-effect";
import { tableCurve } from "../../src/core/tempering/table-curve";
import { temperPlan } from "../../src/core/tempering/temper-plan";
import { temperedHardness } from "../../src/core/tempering/tempered";
import { temperModel } from "../../src/core/tempering/tempering-model";

/* Ends of ranges as the relations print them, and properties that any curve through published rows has. */

describe("oxide colours as a scale", () => {
  const colours = oxideColours();

  test("come as the three lists have them, from 390 °F (198.9 °C) to 630 °F (332.2 °C), without a gap", () => {
    expect(colours.map(({ colour }) => colour)).toEqual([
      "pale straw",
      "straw",
      "dark straw",
      "brown",
      "purple",
      "dark blue",
      "light blue",
      "grey",
    ]);
    expect(colours[0]?.low).toBeCloseTo(198.889, 3);
    expect(colours.at(-1)?.high).toBeCloseTo(332.222, 3);
    expect(colours.slice(1).map(({ low }) => low)).toEqual(colours.slice(0, -1).map(({ high }) => high));
  });

  test("part halfway between the middles of neighbours", () => {
    // Straw 220 °C to 460 °F: middle 228.9; dark straw 240 °C to 480 °F: middle 244.4. Brown 480 °F to 260 °C: 254.4.
    expect(colours[1]?.high).toBeCloseTo((228.889 + 244.444) / 2, 2);
    expect(colours[2]?.high).toBeCloseTo((244.444 + 254.444) / 2, 2);
  });

  test("half a degree beside a printed span still counts as in it", () => {
    // Light blue from 310 °C; dark blue to 575 °F = 301.67 °C.
    expect(oxideColour(309.5)).toMatch(/^light blue/);
    expect(oxideColour(309.49)).toMatch(/^dark blue .* to light blue/);
  });
});

describe("near a brittle range: 5 °C, below that of stainless steel 55 °C", () => {
  const near = (steel: string, ...tempers: number[]) =>
    tempers.map((celsius) => isNearBrittle(findSteel(steel), celsius));

  test("both ends belong to it", () => {
    // Plain carbon 230 to 370 °C.
    expect(near("1084", 224.9, 225, 300, 375, 375.1)).toEqual([false, true, true, true, false]);
    // Stainless 425 to 600 °C, tempered at 370 °C at most.
    expect(near("440C", 369.9, 370, 500, 605, 605.1)).toEqual([false, true, true, true, false]);
  });

  test("a range that fast cooling avoids does not count", () => {
    // 1.3 % Mn: 375 to 575 °C by slow cooling alone.
    expect(near("C 0.6 Mn 1.3", 500)).toEqual([false]);
    expect(isUnavoidable(findSteel("C 0.6 Mn 1.3"), 500)).toBe(false);
    expect([229.9, 230, 370, 370.1].map((celsius) => isUnavoidable(findSteel("1084"), celsius))).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  test("in words", () => {
    const steel = findSteel("1084");
    expect(nearBrittleText(steel, 300)).toBe("230 °C (446 °F) to 370 °C (698 °F)");
    expect(nearBrittleText(steel, 200)).toBe("");
    expect([230, 370].map((celsius) => brittleText(steel, celsius))).toEqual(
      [230, 370].map(() => "brittle range 230 °C (446 °F) to 370 °C (698 °F)"),
    );
    expect([229.9, 370.1].map((celsius) => brittleText(steel, celsius))).toEqual(["", ""]);
  });
});

describe("what a section does to the low end", () => {
  test("8 HRC where it hardens in part, nothing else", () => {
    const words = ["marginal", "hardens through", "not judged", "does not harden through"] as const;
    expect(words.map(slackOf)).toEqual([8, 0, 0, 0]);
    const thin = sectionEffect(findSteel("1084"), {});
    expect(thin.lower).toBe(0);
    expect(thin.caution).toMatch(/^taken as hardened through, section not judged/);
  });

  test("a middle that stays soft is told what helps; a blade that does not harden is past help", () => {
    expect(softText({ word: "does not harden", sentence: "It stays soft." })).toBe("It stays soft.");
    expect(softText({ word: "does not harden through", sentence: "The middle stays soft" })).toBe(
      "The middle stays soft; give the thickness where hardness counts (the edge) or a faster quench",
    );
  });
});

/** Whether the curve only falls or only rises between its ends and bends. */
function isMonotoneBetweenBreaks(curve: HardnessCurve): boolean {
  const ends = [curve.from, ...curve.breaks, curve.to];
  return ends.slice(1).every((right, i) => {
    const left = ends[i] as number;
    const values = Array.from({ length: 41 }, (_, step) => curve.hrcAt(left + ((right - left) * step) / 40));
    const steps = values.slice(1).map((value, at) => value - (values[at] as number));
    return steps.every((step) => step <= 1e-9) || steps.every((step) => step >= -1e-9);
  });
}

describe("curves", () => {
  // Alloy that resists tempering turns the parabola over inside the published range.
  const LEAN = { C: 0.6, Mn: 0.8, Si: 0.2, Ni: 0, Cr: 0, Mo: 0 };
  const RICH = { ...LEAN, Si: 2.2, Cr: 1.5, Mo: 0.35 };

  test("between their bends they only fall or only rise, whatever the alloy", () => {
    for (const Cr of [0, 0.5, 1, 1.5])
      for (const Mo of [0, 0.2, 0.35])
        for (const Si of [0.2, 1, 2.2]) {
          const curve = formulaCurve({ ...LEAN, Cr, Mo, Si });
          expect(isMonotoneBetweenBreaks(curve)).toBe(true);
          expect(curve.breaks.every((bend) => bend > curve.from && bend < curve.to)).toBe(true);
        }
    expect(formulaCurve(LEAN).breaks).toEqual([]);
    expect(formulaCurve(RICH).breaks).toHaveLength(1);
  });

  test("the highest lies where the alloy turns them over, and two tempers give a hardness beneath it", () => {
    const curve = formulaCurve(RICH);
    const { from, to } = curve;
    const sampled = Array.from({ length: 2001 }, (_, i) => curve.hrcAt(from + ((to - from) * i) / 2000));
    const { lowest, highest } = extremes(curve, from, to);
    expect(highest).toBeGreaterThanOrEqual(Math.max(...sampled));
    expect(highest - Math.max(...sampled)).toBeLessThan(1e-3);
    expect(lowest).toBeCloseTo(Math.min(...sampled), 9);
    const both = crossings(curve, highest - 0.3, from, to);
    expect(both).toHaveLength(2);
    for (const parameter of both) expect(curve.hrcAt(parameter)).toBeCloseTo(highest - 0.3, 6);
    expect(crossings(curve, highest + 0.1, from, to)).toEqual([]);
  });

  test("through rows they meet each row, stay between neighbours and have the slope of a straight line where rows have", () => {
    // No peak is invented (Fritsch and Butland 1984): rows that rise, hold and fall.
    const rows = [
      [9, 60],
      [10, 58],
      [10.5, 58],
      [12, 61],
      [13, 50],
    ] as const;
    const curve = tableCurve(rows);
    for (const [parameter, hrc] of rows) expect(curve.hrcAt(parameter)).toBeCloseTo(hrc, 9);
    expect(curve.breaks).toEqual([10, 10.5, 12]);
    expect(isMonotoneBetweenBreaks(curve)).toBe(true);
    const line = tableCurve([
      [9, 60],
      [10, 58],
      [11.5, 55],
      [12, 54],
    ]);
    for (const parameter of [9.3, 10.7, 11.9])
      expect(line.hrcAt(parameter)).toBeCloseTo(78 - 2 * parameter, 9);
  });

  test("the slope at a row is the weighted harmonic mean of its neighbours (Fritsch and Butland 1984, equation 5)", () => {
    // Intervals 1 and 2, slopes -1 and -4: 3 (1 + 2) / ((2 × 2 + 1) / -1 + (2 + 2 × 1) / -4) = 9 / -6.
    const curve = tableCurve([
      [9, 60],
      [10, 59],
      [12, 51],
    ]);
    const step = 1e-6;
    expect((curve.hrcAt(10) - curve.hrcAt(10 - step)) / step).toBeCloseTo(-1.5, 4);
    expect((curve.hrcAt(10 + step) - curve.hrcAt(10)) / step).toBeCloseTo(-1.5, 4);
  });
});

test("times that mean something at another heat end at 10 seconds and at 1000 h", () => {
  // Holds at one temper are one hold as long as all of them; each is 32 h at most.
  const holds = (hours: number) => {
    const whole = Array.from({ length: 39 }, () => ({ celsius: 300, hours: 25 }));
    return [...whole, { celsius: 300, hours: hours - 39 * 25 }];
  };
  expect(equivalentTime(holds(999.9), 300)).toBeCloseTo(999.9, 6);
  expect(() => equivalentTime(holds(1000.1), 300)).toThrow("over 1000 h");
  expect(() => equivalentTime([{ celsius: 400, hours: 30 }], 250)).toThrow("over 1000 h");
  expect(() => equivalentTime([{ celsius: 150, hours: 0.25 }], 400)).toThrow("under 10 seconds");
});

describe("reach", () => {
  const model = temperModel(findSteel("1084"));
  const at = (celsius: number) => temperedHardness(findSteel("1084"), celsius, { hours: 2 });

  test("from 150 °C to the hottest published temper, cooler ones apart, moved by a reading", () => {
    const reach = temperReach(model, 2, 0);
    expect(reach.highest).toBeCloseTo(at(150), 9);
    // 1084 is published from 100 °C up.
    expect(reach.highestBelowUsual).toBeCloseTo(at(100), 9);
    const moved = temperReach(model, 2, 1.5);
    expect(moved.highest - reach.highest).toBeCloseTo(1.5, 9);
    expect(moved.highestBelowUsual - reach.highestBelowUsual).toBeCloseTo(1.5, 9);
    expect(moved.lowest - reach.lowest).toBeCloseTo(1.5, 9);
  });

  test("its own ends are within it, and within its error", () => {
    const reach = temperReach(model, 2, 0);
    expect([reach.lowest, reach.highestBelowUsual].map((hrc) => isOutOfReach(reach, hrc))).toEqual([
      false,
      false,
    ]);
    const ends = [reach.lowest - reach.lowestError, reach.highest + reach.highestError];
    expect(ends.map((hrc) => isBeyondError(reach, hrc))).toEqual([false, false]);
    expect(isBeyondError(reach, (ends[1] as number) + 0.001)).toBe(true);
  });
});

describe("a target just beyond the curve", () => {
  const plan = (hrc: number, off = 0) =>
    temperPlan(findSteel("1084"), hrc, { hours: 2, known: { celsius: 200, hrc: published(200) + off } });
  const published = (celsius: number) => temperedHardness(findSteel("1084"), celsius, { hours: 2 });

  test("gets the coolest usual temper, by how much it misses, and what ten degrees hotter give", () => {
    const target = published(150) + 0.4;
    const { flag, likelyC, missesBy, hrcCooler, hrcHotter } = plan(target);
    expect(flag).toBe("below usual temper");
    expect(likelyC).toBe(150);
    expect(missesBy).toBeCloseTo(0.4, 9);
    expect(hrcCooler).toBeCloseTo(published(140), 9);
    expect(hrcHotter).toBeCloseTo(published(160), 9);
  });

  test("moved with the reading of a blade that lies over the curve", () => {
    const { likelyC, missesBy, hrcHotter } = plan(published(150) + 1.4, 1);
    expect(likelyC).toBe(150);
    expect(missesBy).toBeCloseTo(0.4, 9);
    expect(hrcHotter).toBeCloseTo(published(160) + 1, 9);
  });
});
