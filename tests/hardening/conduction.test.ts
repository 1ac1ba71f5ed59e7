import { describe, expect, it } from "vitest";
import { type HeatTransferCoefficient, heatTransferOf } from "../../src/core/hardening/heat-transfer";
import { findQuench } from "../../src/core/hardening/quench-media";
import { sectionGrid } from "../../src/core/hardening/section-grid";
import { PearliteCells } from "../../src/core/hardening/section-pearlite";
import { SectionCooling } from "../../src/core/hardening/section-solver";
import { AUSTENITE, type SectionSteel } from "../../src/core/hardening/section-steel";
import { coefficient, roots, share } from "./series";

const STEEL = { conductivity: 27, density: 7800, heatCapacity: 600 };
const START = 800;
const BATH = 25;
/** Constant properties, as the closed solutions assume. */
const steel: SectionSteel = {
  density: STEEL.density,
  conductivity: () => STEEL.conductivity,
  heatCapacity: () => STEEL.heatCapacity,
};

/** One coefficient at every temperature. */
const constantCoefficient = (coefficient: number): HeatTransferCoefficient => ({
  medium: "constant",
  bathC: BATH,
  source: "section-quench-model",
  byDegree: new Float64Array(1301).fill(coefficient),
});

function cooling(
  shape: [number, number, number],
  cells: [number, number],
  heatTransfer: number,
  stepC: number,
  plate: boolean,
) {
  const [widthMm, spineMm, edgeMm] = shape;
  const [columns, layers] = cells;
  const grid = sectionGrid({ widthMm, spineMm, edgeMm }, { columns, layers });
  const bare = { flank: new Float64Array(columns), edge: 0, spine: 0 };
  const closed = { ...bare, edge: 1e9, spine: 1e9 };
  return new SectionCooling({
    grid,
    steel,
    coat: plate ? closed : bare,
    startC: START,
    stages: [{ coefficient: constantCoefficient(heatTransfer), factor: 1, untilS: 1e9 }],
    latentJkg: 0,
    stepC,
  });
}

describe("the series used as the measure", () => {
  // Textbook table of first roots and coefficients for the plane wall (recalled): Bi, zeta, C1.
  it.each([
    [0.1, 0.3111, 1.0161],
    [0.5, 0.6533, 1.0701],
    [1, 0.8603, 1.1191],
    [5, 1.3138, 1.2402],
    [100, 1.5552, 1.2731],
  ])("Bi %d", (biot, zeta, c1) => {
    const [first = 0] = roots(biot, 1);
    expect(first).toBeCloseTo(zeta, 4);
    expect(coefficient(first)).toBeCloseTo(c1, 4);
  });
});

describe("plates against the full series", () => {
  const cases = [2, 4, 6, 8].flatMap((mm) =>
    [100, 1000, 4000, 12000].map((heatTransfer) => ({ mm, heatTransfer })),
  );
  it("centre within 3 °C from Bi 0.004 to 1.8 with four layers and 5 °C steps", () => {
    let largest = 0;
    for (const { mm, heatTransfer } of cases) {
      const half = mm / 2000;
      const seconds = (0.6 * STEEL.density * STEEL.heatCapacity * half) / heatTransfer;
      const plate = cooling([100, mm, mm], [1, 4], heatTransfer, 5, true);
      plate.run(seconds);
      // The innermost cell's middle stands an eighth of the half thickness from mid-plane.
      const left = share({ thicknessM: mm / 1000, heatTransfer, ...STEEL }, seconds, 0.125);
      const error = Math.abs((plate.temperature[0] as number) - (BATH + (START - BATH) * left));
      largest = Math.max(largest, error);
    }
    console.log(
      `plate series, 16 cases: largest error of the centre ${largest.toFixed(2)} °C of ${START - BATH}`,
    );
    expect(largest).toBeLessThan(3);
  });

  it("6 mm, 4000 W/m²K: 800 to 500 °C at the centre in 2.229 s by the full series", () => {
    const plate = cooling([100, 6, 6], [1, 8], 4000, 2, true);
    while ((plate.temperature[0] as number) > 500) plate.run(plate.seconds + 0.002);
    expect(plate.seconds).toBeCloseTo(2.229, 1);
  });
});

describe("bar 30 × 6 mm against the product of two series", () => {
  it("every cell within 3 °C after 0.6 s on the standard grid", () => {
    const heatTransfer = 4000;
    const seconds = 0.6;
    const bar = cooling([30, 6, 6], [30, 3], heatTransfer, 10, false);
    bar.run(seconds);
    let largest = 0;
    for (let column = 0; column < 30; column += 1) {
      const along = share({ thicknessM: 0.03, heatTransfer, ...STEEL }, seconds, (column + 0.5) / 15 - 1);
      for (let layer = 0; layer < 3; layer += 1) {
        const across = share({ thicknessM: 0.006, heatTransfer, ...STEEL }, seconds, (layer + 0.5) / 3);
        const exact = BATH + (START - BATH) * along * across;
        largest = Math.max(largest, Math.abs((bar.temperature[column * 3 + layer] as number) - exact));
      }
    }
    console.log(`product solution, 30 × 3 cells: largest error ${largest.toFixed(2)} °C`);
    expect(largest).toBeLessThan(3);
  });
});

describe("books of heat", () => {
  it.each(["fast oil", "oil A", "slow oil", "agitated water", "brine", "still air"])(
    "balance to a millionth in %s, with clay, pearlite and varying properties",
    (word) => {
      const grid = sectionGrid({ widthMm: 30, spineMm: 7, edgeMm: 1.5 });
      const flank = Float64Array.from({ length: 30 }, (_, column) => (column > 7 ? 0.0016 : 0.0002));
      const section = new SectionCooling({
        grid,
        steel: AUSTENITE,
        coat: { flank, edge: 0.0002, spine: 0.0016 },
        startC: 820,
        stages: [{ coefficient: heatTransferOf(findQuench(word)), factor: 1, untilS: 1e9 }],
        pearlite: new PearliteCells(90, 0.35, 225),
        latentJkg: 85_000,
        stepC: 10,
      });
      section.run(3600);
      const { lost, stored, latent } = section.balance;
      expect(lost).toBeGreaterThan(0);
      expect(Math.abs(lost + stored - latent) / lost).toBeLessThan(1e-6);
    },
  );
});
