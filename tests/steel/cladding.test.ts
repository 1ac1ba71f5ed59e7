import { describe, expect, it } from "vitest";
import {
  bowOf,
  carbonAcross,
  claddingNote,
  cladEdge,
  diffusionLength,
  errorFunction,
  twoLayerCurvature,
} from "../../src/core/steel/cladding";
import { findSteel } from "../../src/core/steel/find";
import { CLADDING } from "../../src/functions/steel";
import { answer } from "./answer";

const HEAT = { core: 0.95, clad: 0.12, celsius: 1100, minutes: 20 };

/** The same weld by explicit finite differences with one diffusivity: carbon at distances from the weld [mm]. */
function byDifferences(places: readonly number[]): readonly number[] {
  const length = diffusionLength(HEAT);
  const diffusivity = length ** 2; // over the whole time
  const [cells, half] = [400, 8 * length];
  const dx = (2 * half) / cells;
  const steps = Math.ceil(diffusivity / (0.4 * dx * dx));
  const number = diffusivity / steps / dx ** 2;
  let carbon = Array.from({ length: cells }, (_, at) => (at < cells / 2 ? HEAT.clad : HEAT.core));
  for (let step = 0; step < steps; step++) {
    const before = carbon;
    carbon = before.map((value, at) => {
      const left = before[Math.max(0, at - 1)] as number;
      const right = before[Math.min(cells - 1, at + 1)] as number;
      return value + number * (left - 2 * value + right);
    });
  }
  return places.map((x) => {
    const at = (x + half) / dx - 0.5;
    const low = Math.floor(at);
    return (carbon[low] as number) + (at - low) * ((carbon[low + 1] as number) - (carbon[low] as number));
  });
}

describe("carbon across a weld", () => {
  it("has the error function of the tables", () => {
    // Abramowitz and Stegun, table 7.1.
    for (const [x, value] of [
      [0, 0],
      [0.5, 0.5204998778],
      [1, 0.8427007929],
      [2, 0.995322265],
    ] as const) {
      expect(errorFunction(x)).toBeCloseTo(value, 6);
      expect(errorFunction(-x)).toBeCloseTo(-value, 6);
    }
  });

  it("is what a finite-difference solution of the same weld gives", () => {
    const length = diffusionLength(HEAT);
    const places = [-2, -1, -0.5, 0, 0.5, 1, 2].map((times) => times * length);
    const numeric = byDifferences(places);
    for (const [at, x] of places.entries()) {
      expect(carbonAcross(HEAT, x)).toBeCloseTo(numeric[at] as number, 3);
    }
  });

  it("leaves a tenth of the step where it says", () => {
    const { depth, weld } = cladEdge({ ...HEAT, layer: 5 });
    const step = HEAT.core - HEAT.clad;
    expect(carbonAcross(HEAT, depth)).toBeCloseTo(HEAT.core - 0.1 * step, 5);
    expect(carbonAcross(HEAT, -depth)).toBeCloseTo(HEAT.clad + 0.1 * step, 5);
    expect(weld).toBeCloseTo((HEAT.core + HEAT.clad) / 2, 12);
  });

  it("agrees with distances from Ågren's diffusivity (1986), from memory, within a tenth", () => {
    // √(D t) at 0.4 % C: 10 min at 900 °C 77 µm, at 1000 °C 136 µm, at 1100 °C 222 µm.
    for (const [celsius, micrometres] of [
      [900, 77],
      [1000, 136],
      [1100, 222],
    ] as const) {
      const found = 1000 * diffusionLength({ core: 0.7, clad: 0.1, celsius, minutes: 10 });
      expect(Math.abs(found / micrometres - 1), `${celsius} °C`).toBeLessThan(0.1);
    }
  });
});

describe("a strip of two layers", () => {
  it("bends as Timoshenko's has it where the layers are alike: 3 ε / (2 h)", () => {
    expect(twoLayerCurvature(0.002, 1.5, 1.5)).toBeCloseTo((3 * 0.002) / (2 * 3), 12);
  });

  it("bends the less, the more the layers differ in thickness", () => {
    const thin = twoLayerCurvature(0.002, 0.2, 2.8);
    expect(thin).toBeLessThan(twoLayerCurvature(0.002, 1.5, 1.5));
    // Worked by hand: m = 1/14, n = 1: 6 × 0.002 × 1.14796 / (3 × [3 × 1.14796 + 1.07143 × (0.0051 + 14)]).
    expect(thin).toBeCloseTo(2.489e-4, 6);
  });

  it("rises as an arc does", () => {
    expect(bowOf(1 / 1000, 200)).toBe(5);
  });
});

describe("CLADDING", () => {
  it("says when the whole layer has changed, and keeps its sentence short", () => {
    const [row] = answer(CLADDING, "52100", "304", 1100, 60, 0.8);
    expect(row?.[0]).toBe(0.8);
    expect(row?.[3]).toMatch(/^after 60 min at 1100 °C \(2012 °F\) carbon has crossed the whole layer/);
    for (const clad of ["304", "410", "420", "1018"]) {
      const told = String(answer(CLADDING, "1095", clad, 1100, 10, 1.5)[0]?.[3]);
      expect(told.split(" ").length, told).toBeLessThanOrEqual(40);
      expect(told.includes("chromium draws more"), clad).toBe(clad !== "1018");
    }
  });

  it("refuses what is outside its range in one cell", () => {
    expect(String(answer(CLADDING, "1095", "410", 700, 10, 1.5)[0]?.[0])).toMatch(/^#VALUE! C: 700 °C/);
    expect(String(answer(CLADDING, "304", "410", 1100, 10, 1.5)[0]?.[0])).toMatch(
      /^#N\/A 304 does not fix its carbon/,
    );
  });
});

describe("where it is asked for too much or too little", () => {
  it("a weld outside 850 to 1250 °C, 600 min or 50 mm is refused", () => {
    const cladding = { ...HEAT, layer: 1 };
    for (const wrong of [
      { celsius: 849 },
      { celsius: 1251 },
      { minutes: 601 },
      { minutes: 0 },
      { layer: 51 },
    ])
      expect(() => cladEdge({ ...cladding, ...wrong }), JSON.stringify(wrong)).toThrow(/is outside/);
    for (const right of [{ celsius: 850 }, { celsius: 1250 }, { minutes: 600 }, { layer: 50 }])
      expect(cladEdge({ ...cladding, ...right }).depth).toBeGreaterThan(0);
  });

  it("layers without thickness have no curvature", () => {
    for (const [first, second] of [
      [0, 1],
      [1, 0],
      [-1, 1],
      [1, -1],
      [Number.NaN, 1],
    ] as const)
      expect(() => twoLayerCurvature(0.001, first, second)).toThrow("give thicknesses above 0");
  });

  // Timoshenko 1925: curvature 6 ε (1+m)² / (h (3 (1+m)² + (1+mn)(m² + 1/(mn)))); equal layers and moduli give 3 ε / (2 h).
  it("equal layers bend by 3 ε / 2h, a stiffer one by less than twice, and either may be named first", () => {
    expect(twoLayerCurvature(0.001, 1, 1)).toBeCloseTo((1.5 * 0.001) / 2, 12);
    // m = 2, n = 3: 6 · 9 ε / (3 h (27 + 7 (4 + 1/6)))
    expect(twoLayerCurvature(0.001, 2, 1, 3)).toBeCloseTo((54 * 0.001) / (3 * (27 + 7 * (4 + 1 / 6))), 12);
    expect(twoLayerCurvature(0.001, 1, 2, 1 / 3)).toBeCloseTo(twoLayerCurvature(0.001, 2, 1, 3), 12);
  });
});

describe("the note of a clad blade", () => {
  const noteOf = (core: string, clad: string, given = { layer: 1.5 }) =>
    claddingNote(findSteel(core), findSteel(clad), {
      core: findSteel(core).composition.C,
      clad: findSteel(clad).composition.C,
      celsius: 1100,
      minutes: 20,
      ...given,
    });

  it("keeps the edge twice as far from either weld as carbon has gone, or says that it has gone through", () => {
    const given = { core: 0.95, clad: 0.1, celsius: 1100, minutes: 20, layer: 1.5 };
    const depth = cladEdge(given).depth;
    const told = claddingNote(findSteel("1095"), findSteel("C 0.1 Mn 0.4"), given);
    expect(told).toContain(`keep the edge ${Number((2 * depth).toFixed(2))} mm of core or more`);
    expect(noteOf("1095", "C 0.1 Mn 0.4", { layer: 0.1 })).toMatch(
      /^after 20 min at 1100 °C \(2012 °F\) carbon has crossed/,
    );
    expect(noteOf("1045", "C 0.1 Mn 0.4")).toMatch(/^1045 holds under 0.6 % C: no edge lasts on it/);
    // 0.60 % C is what an edge wants (common practice): 1060 of 0.60 has it.
    expect(claddingNote(findSteel("1060"), findSteel("C 0.1 Mn 0.4"), { ...given, core: 0.6 })).toMatch(
      /^the middle of the core/,
    );
  });

  it("names the pull of chromium from 10.5 % on, where EN 10020 has stainless steel begin", () => {
    expect(noteOf("1095", "C 0.05 Cr 10.5")).toContain("chromium draws more across than this");
    expect(noteOf("1095", "C 0.05 Cr 10.4")).not.toContain("chromium");
  });

  // A third of the volume change of martensite, 1.68 % for each per cent of carbon (Thelning): 0.95 % C makes the core
  // 0.53 % longer; two layers of 1.5 mm then curve by 3 ε / (2 · 3 mm), over 200 mm an arc of κ L² / 8.
  it("tells the bow of a blade clad on one side as the strip of two layers gives it", () => {
    const strain = (1.68 * 0.95) / 300;
    const bow = (((1.5 * strain) / 3) * 200 ** 2) / 8;
    expect(noteOf("1095", "C 0.1 Mn 0.4")).toContain(`200 mm may bow ${Math.round(bow)} mm in hardening`);
  });
});
