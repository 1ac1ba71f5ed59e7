import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import {
  blandTempers,
  brittleRanges,
  embrittlementCaution,
  mustCoolFast,
} from "../../src/core/tempering/embrittlement";

/* The ranges are those that the relation prints: 230 to 370 °C, 350 to 450 °C with silicon, 375 to 575 °C by slow cooling. */

const spans = (steel: string) => brittleRanges(findSteel(steel)).map(({ low, high }) => [low, high]);
const CARBON = [230, 370];
const SLOW = [375, 575];

describe("which ranges a steel has", () => {
  test("slow cooling matters from 1.2 % of manganese, nickel and chromium together", () => {
    expect(spans("C 0.6 Mn 0.4 Ni 0.4 Cr 0.4")).toEqual([CARBON, SLOW]);
    expect(spans("C 0.6 Mn 0.4 Ni 0.4 Cr 0.3")).toEqual([CARBON]);
    expect(spans("C 0.6 Mn 0.3 Ni 1.0")).toEqual([CARBON, SLOW]);
  });

  test("0.15 % Mo or 0.3 % W protect", () => {
    expect(spans("C 0.6 Mn 1.3 Mo 0.14")).toEqual([CARBON, SLOW]);
    expect(spans("C 0.6 Mn 1.3 Mo 0.15")).toEqual([CARBON]);
    expect(spans("C 0.6 Mn 1.3 W 0.29")).toEqual([CARBON, SLOW]);
    expect(spans("C 0.6 Mn 1.3 W 0.3")).toEqual([CARBON]);
  });

  test("from 1.2 % Si the range lies hotter", () => {
    expect(spans("C 0.6 Mn 0.4 Si 1.2")).toEqual([[350, 450]]);
    expect(spans("C 0.6 Mn 0.4 Si 1.19")).toEqual([CARBON]);
  });

  test("over 1.8 % Cr none is known, but for stainless steel from 11 % and the steels with sheets of their own", () => {
    expect(spans("C 0.6 Mn 0.1 Cr 1.8")).toEqual([CARBON, SLOW]);
    expect(spans("C 0.6 Mn 0.1 Cr 1.81")).toEqual([]);
    expect(spans("D2")).toEqual([]);
    expect(spans("440C")).toEqual([[425, 600]]);
    // S7: 141 against 169 J; A2: 39 against 56 J, each on its sheet.
    expect(spans("S7")).toEqual([[370, 425]]);
    expect(spans("A2")).toEqual([[460, 500]]);
    const stainless = { ...findSteel("440C"), family: "martensitic stainless" } as const;
    const withChromium = (Cr: number) => ({ ...stainless, composition: { ...stainless.composition, Cr } });
    expect(brittleRanges(withChromium(11))).toHaveLength(1);
    expect(brittleRanges(withChromium(10.9))).toHaveLength(0);
  });
});

test("both ends of a range belong to it", () => {
  const plain = findSteel("1084");
  for (const celsius of [230, 300, 370]) {
    expect(embrittlementCaution(plain, celsius)).toMatch(
      /^embrittlement range 230 °C \(446 °F\) to 370 °C \(698 °F\): /,
    );
  }
  expect(embrittlementCaution(plain, 229.9)).toBe("");
  expect(embrittlementCaution(plain, 370.1)).toBe("");
});

test("a blade must cool fast from 375 to 575 °C, and only where slow cooling is what embrittles", () => {
  const lean = findSteel("C 0.6 Mn 1.3");
  expect([374, 375, 500, 575, 576].map((celsius) => mustCoolFast(lean, celsius))).toEqual([
    false,
    true,
    true,
    true,
    false,
  ]);
  expect(mustCoolFast(lean, 300)).toBe(false);
  expect(mustCoolFast(findSteel("1084"), 500)).toBe(false);
});

describe("tempers on either side, 5 °C clear of the range", () => {
  const plain = findSteel("1084");

  test("both, one or none, as far as tempers may be advised", () => {
    expect(blandTempers(plain, 300, [150, 600])).toEqual({ cooler: 225, hotter: 375 });
    expect(blandTempers(plain, 300, [225, 375])).toEqual({ cooler: 225, hotter: 375 });
    expect(blandTempers(plain, 300, [226, 600])).toEqual({ cooler: null, hotter: 375 });
    expect(blandTempers(plain, 300, [150, 374])).toEqual({ cooler: 225, hotter: null });
    expect(blandTempers(plain, 300, [240, 360])).toEqual({ cooler: null, hotter: null });
  });

  test("none for a temper that is clear already, or that fast cooling makes harmless", () => {
    expect(blandTempers(plain, 225, [150, 600])).toEqual({ cooler: null, hotter: null });
    expect(blandTempers(findSteel("C 0.6 Mn 1.3"), 500, [150, 600])).toEqual({ cooler: null, hotter: null });
  });

  test("the nearest of several ends", () => {
    // Ends of both ranges: 225 and 375, 370 (inside the first) and 580.
    expect(blandTempers(findSteel("C 0.6 Mn 1.3"), 300, [150, 700])).toEqual({ cooler: 225, hotter: 375 });
  });
});
