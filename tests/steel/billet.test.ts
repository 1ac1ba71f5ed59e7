import { describe, expect, it } from "vitest";
import { billetCarbon, carbonDiffusivity, minutesToEvenOut } from "../../src/core/steel/billet";

describe("carbon of a billet", () => {
  it("is the mean by mass", () => {
    expect(billetCarbon([0.95, 0.75], [3, 1])).toBeCloseTo(0.9, 12); // worked by hand
    expect(billetCarbon([1, 0], [50, 50])).toBe(0.5);
    expect(() => billetCarbon([1, 0], [1])).toThrow("give one share a steel");
    expect(() => billetCarbon([1, 0], [0, 0])).toThrow("the shares add up to 0");
  });
});

describe("carbon diffusion in austenite", () => {
  // Table of the equation of Lee, Matlock and Van Tyne (2011), two digits as tabulated.
  it.each([
    [850, 0.2, 3.7e-12],
    [850, 0.8, 8.2e-12],
    [925, 0.2, 9.6e-12],
    [1000, 0.8, 4.4e-11],
    [1100, 0.2, 5.9e-11],
    [1100, 0.8, 1.09e-10],
    [1200, 0.2, 1.4e-10],
    [1200, 0.8, 2.4e-10],
  ])("%d °C, %d %% C", (celsius, carbon, expected) => {
    expect(Math.abs(carbonDiffusivity(celsius, carbon) / expected - 1)).toBeLessThan(0.04); // two digits are printed
  });

  it("evens layers out in about the time of Ågren's equation", () => {
    // Worked with Ågren 1986 (recalled) at 0.6 % C: 1100 °C 1.0 mm 57, 0.5 mm 14, 0.25 mm 3.6 min; 1150 °C 0.25 mm 2.3 min.
    const cases: [number, number, number][] = [
      [1, 1100, 57],
      [0.5, 1100, 14],
      [0.25, 1100, 3.6],
      [0.25, 1150, 2.3],
    ];
    for (const [layer, celsius, minutes] of cases)
      expect(Math.abs(minutesToEvenOut(layer, celsius, 0.6) / minutes - 1), `${layer} mm`).toBeLessThan(0.12);
    expect(minutesToEvenOut(0.25, 1100, 0.6)).toBeCloseTo(3.85, 2); // 0.328 h²/D worked by hand
  });

  it("refuses what the equation does not cover", () => {
    expect(() => minutesToEvenOut(0.25, 700, 0.6)).toThrow("700 °C (1292 °F) is outside 850 °C (1562 °F)");
    expect(() => minutesToEvenOut(0.25, 1100, 1.5)).toThrow("1.5 % is outside 0.1 % to 1.2 %");
  });
});
