import { describe, expect, test } from "vitest";
import { findSteel } from "../../src/core/steel/find";
import { blandTempers, brittleRanges } from "../../src/core/tempering/embrittlement";

/* Ranges and limits are those that the relation prints; 5 °C clear of a range is common practice, no source. */

const spans = (steel: string) => brittleRanges(findSteel(steel)).map(({ low, high }) => [low, high]);

test("1.2 % of manganese and chromium together is the first at which slow cooling matters", () => {
  expect(spans("C 0.6 Mn 0.7 Cr 0.5")).toEqual([
    [230, 370],
    [375, 575],
  ]);
  expect(spans("C 0.6 Mn 0.7 Cr 0.49")).toEqual([[230, 370]]);
});

describe("a temper at the very end of a range is moved out of it", () => {
  const neighbours = (steel: string, celsius: number) => blandTempers(findSteel(steel), celsius, [150, 700]);
  const none = { cooler: null, hotter: null };

  test.each([
    // Plain carbon 230 to 370 °C, 1.6 % Si 350 to 450 °C, the dip on the sheet of S7 370 to 425 °C, stainless 425 to 600 °C.
    ["1084", 230, 370],
    ["C 0.6 Mn 0.8 Si 1.6", 350, 450],
    ["S7", 370, 425],
    ["440C", 425, 600],
  ])("%s: from %d to %d °C", (steel, low, high) => {
    // Stainless is tempered at 370 °C at most: its rust resistance falls first.
    const moved = { cooler: steel === "440C" ? 370 : low - 5, hotter: high + 5 };
    expect(neighbours(steel, low)).toEqual(moved);
    expect(neighbours(steel, high)).toEqual(moved);
    expect(neighbours(steel, low - 0.1)).toEqual(none);
    expect(neighbours(steel, high + 0.1)).toEqual(none);
  });

  test("a hotter neighbour may lie where slow cooling embrittles, as fast cooling makes it harmless", () => {
    // 1.6 % Si, 1.3 % Mn: 350 to 450 °C however it cools, 375 to 575 °C by slow cooling.
    expect(spans("C 0.6 Mn 1.3 Si 1.6")).toEqual([
      [350, 450],
      [375, 575],
    ]);
    expect(neighbours("C 0.6 Mn 1.3 Si 1.6", 400)).toEqual({ cooler: 345, hotter: 455 });
    expect(neighbours("C 0.6 Mn 1.3 Si 1.6", 500)).toEqual(none);
  });
});
