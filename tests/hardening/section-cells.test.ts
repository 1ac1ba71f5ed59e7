import { describe, expect, test } from "vitest";
import { coefficientAt, type HeatTransferCoefficient } from "../../src/core/hardening/heat-transfer";
import { type Coat, SectionEquations } from "../../src/core/hardening/section-equations";
import { sectionGrid } from "../../src/core/hardening/section-grid";
import { PearliteCells } from "../../src/core/hardening/section-pearlite";
import { SectionCooling, type SectionProblem } from "../../src/core/hardening/section-solver";
import { meanHeatCapacity, type SectionSteel } from "../../src/core/hardening/section-steel";
import { transmission } from "../../src/core/hardening/section-surface";

// A single cell, two cells and four, of which Newton's and Fourier's laws can be written out by hand.
const BATH = 25;
const START = 800;
const bathOf = (at: (celsius: number) => number): HeatTransferCoefficient => ({
  medium: "drawn",
  bathC: BATH,
  source: "section-quench-model",
  byDegree: Float64Array.from({ length: 1301 }, (_, celsius) => at(celsius)),
});
const constantSteel: SectionSteel = { density: 7800, conductivity: () => 27, heatCapacity: () => 600 };
/** So good a conductor that a section has one temperature. */
const copperLike: SectionSteel = { ...constantSteel, conductivity: () => 1e9 };
const closedCoat = (columns: number): Coat => ({
  flank: new Float64Array(columns).fill(1e12),
  edge: 1e12,
  spine: 1e12,
});

/** One cell, 10 mm wide and 4 mm thick, that loses heat through its flank alone. */
const GRID = sectionGrid({ widthMm: 10, spineMm: 4, edgeMm: 4 }, { columns: 1, layers: 1 });
const FLANK_ONLY: Coat = { flank: new Float64Array(1), edge: 1e12, spine: 1e12 };
const MASS = 7800 * 0.01 * 0.002;
const AREA = 0.01;
const H = 500;
const lump = (more: Partial<SectionProblem> = {}) =>
  new SectionCooling({
    grid: GRID,
    steel: copperLike,
    coat: FLANK_ONLY,
    startC: START,
    stages: [{ coefficient: bathOf(() => H), factor: 1, untilS: 1e9 }],
    latentJkg: 0,
    stepC: 10,
    ...more,
  });
const at = (section: SectionCooling) => section.temperature[0] as number;
/** Share of a lump's excess over the bath that is left after a time: Newton's law of cooling. */
const left = (seconds: number, h = H) => Math.exp((-h * AREA * seconds) / (MASS * 600));

describe("one cell cools by Newton's law", () => {
  test("its temperature is the exponential within the error of its steps, which halves with them", () => {
    const error = (stepC: number) => {
      const section = lump({ stepC });
      section.run(20);
      expect(section.seconds).toBeCloseTo(20, 9);
      return at(section) - (BATH + (START - BATH) * left(20));
    };
    const [coarse, fine] = [error(10), error(5)];
    expect(Math.abs(coarse)).toBeLessThan(5);
    expect(coarse / fine).toBeGreaterThan(1.7);
    expect(coarse / fine).toBeLessThan(2.3);
  });

  test("the first step moves it by what is aimed at", () => {
    const rate = (H * AREA * (START - BATH)) / (MASS * 600);
    for (const [share, steps] of [
      [0.97, 1],
      [1.03, 2],
    ] as const) {
      const section = lump();
      section.run((share * 10) / rate);
      expect(section.steps).toBe(steps);
    }
  });

  test("one step is implicit: what is lost is lost at the temperature of its end", () => {
    const section = lump();
    section.run(0.05);
    const each = (0.05 * H * AREA) / (MASS * 600);
    expect(section.steps).toBe(1);
    expect(at(section)).toBeCloseTo((START + each * BATH) / (1 + each), 4);
  });

  test("books what the bath takes and what the steel gives", () => {
    const section = lump();
    section.run(30);
    const { lost, stored, latent } = section.balance;
    expect(lost / (MASS * 600 * (START - at(section)))).toBeCloseTo(1, 6);
    expect(stored / (MASS * 600 * (at(section) - START))).toBeCloseTo(1, 9);
    expect(latent).toBe(0);
  });

  test("each stage lasts as long as it is said, wherever a run stops", () => {
    const stages = [
      { coefficient: bathOf(() => 50), factor: 1, untilS: 4 },
      { coefficient: bathOf(() => 400), factor: 2, untilS: 6 },
      { coefficient: bathOf(() => 100), factor: 1, untilS: 1e9 },
    ];
    const whole = left(4, 50) * left(2, 800);
    for (const stops of [[6], [4, 6], [1.5, 5, 6]]) {
      const section = lump({ stages, stepC: 1 });
      for (const until of stops) section.run(until);
      expect(section.seconds).toBeCloseTo(6, 9);
      expect(Math.abs(at(section) - (BATH + (START - BATH) * whole))).toBeLessThan(1.5);
      section.run(20);
      expect(Math.abs(at(section) - (BATH + (START - BATH) * whole * left(14, 100)))).toBeLessThan(1.5);
    }
  });

  test("new surroundings begin with a small step: the long ones of the air do not reach into the bath", () => {
    const stages = [
      { coefficient: bathOf(() => 5), factor: 1, untilS: 60 },
      { coefficient: bathOf(() => 12_000), factor: 1, untilS: 1e9 },
    ];
    const section = lump({ stages });
    section.run(60);
    const before = section.steps;
    section.run(60.5);
    expect(section.steps - before).toBeGreaterThan(15);
    const aimed = BATH + (START - BATH) * left(60, 5) * left(0.5, 12_000);
    expect(Math.abs(at(section) - aimed)).toBeLessThan(8);
  });
});

describe("what a step expects", () => {
  /** The same lump stepped every 0.01 s, with the temperatures at which its steel and its pearlite were asked. */
  function stepped(count: number) {
    const asked = { conduct: [] as number[], pearlite: [] as [number, number][] };
    const steel: SectionSteel = {
      ...copperLike,
      conductivity: (celsius) => {
        asked.conduct.push(celsius);
        return 1e9;
      },
    };
    const told = {
      isDone: () => false,
      advance: (_: number, celsius: number, seconds: number) => {
        asked.pearlite.push([celsius, seconds]);
        return 0;
      },
    } as unknown as PearliteCells;
    const section = lump({ steel, pearlite: told });
    const temperatures = [START];
    for (let step = 1; step <= count; step += 1) {
      section.run(0.01 * step);
      temperatures.push(at(section));
    }
    expect(section.steps).toBe(count);
    return { asked, temperatures };
  }

  test("pearlite forms at the middle of a step, properties are those of its end, both by the rate of the step before", () => {
    const { asked, temperatures } = stepped(5);
    // One look for the size of the first step, then one a step.
    expect(asked.conduct).toHaveLength(6);
    expect(asked.conduct.slice(0, 2)).toEqual([START, START]);
    expect(asked.pearlite[0]?.[0]).toBe(START);
    for (let step = 1; step < 5; step += 1) {
      const [before, now] = temperatures.slice(step - 1, step + 1) as [number, number];
      expect(asked.conduct[step + 1]).toBeCloseTo(now + (now - before), 9);
      expect(asked.pearlite[step]?.[0]).toBeCloseTo(now + 0.5 * (now - before), 9);
      expect(asked.pearlite[step]?.[1]).toBeCloseTo(0.01, 9);
    }
  });

  test("heat booked by a capacity that was expected is made good in the next step", () => {
    // Capacity doubles between 25 and 800 °C: the energy from 0 is 400 t + 0.25 t².
    const heatCapacity = (celsius: number) => 400 + 0.5 * celsius;
    const energy = (celsius: number) => MASS * (400 * celsius + 0.25 * celsius ** 2);
    const section = lump({ steel: { ...copperLike, heatCapacity } });
    section.run(15);
    const gone = energy(START) - energy(at(section));
    expect(section.balance.stored / -gone).toBeCloseTo(1, 9);
    expect(Math.abs(section.balance.lost / gone - 1)).toBeLessThan(1e-5);
  });
});

describe("heat of transformation", () => {
  test("in a closed section warms the steel by what pearlite sets free", () => {
    const pearlite = new PearliteCells(1, 1, 225);
    const section = lump({
      coat: closedCoat(1),
      startC: 600,
      pearlite,
      latentJkg: 30_000,
      stages: [{ coefficient: bathOf(() => 500), factor: 1, untilS: 1e9 }],
    });
    while (!section.isDone() && section.seconds < 500) section.run(section.seconds + 0.05);
    const formed = pearlite.fraction[0] as number;
    expect(formed).toBeGreaterThan(0.999);
    expect(section.balance.latent).toBeCloseTo(MASS * 30_000 * formed, 6);
    expect(at(section)).toBeCloseTo(600 + (30_000 / 600) * formed, 3);
    expect(Math.abs(section.balance.lost)).toBeLessThan(1e-6);
  });
});

describe("the equations of two and four cells, written out by hand", () => {
  test("two layers of a closed plate exchange heat by the harmonic mean of their conductivities", () => {
    const grid = sectionGrid({ widthMm: 10, spineMm: 4, edgeMm: 4 }, { columns: 1, layers: 2 });
    const equations = new SectionEquations(
      grid,
      { ...constantSteel, conductivity: (celsius) => celsius / 10 },
      closedCoat(1),
    );
    const [old, guess] = [Float64Array.of(500, 300), Float64Array.of(500, 300)];
    const dt = 0.02;
    equations.solve(old, guess, new Float64Array(2), dt, {
      coefficient: bathOf(() => 1000),
      factor: 1,
      untilS: 1,
    });
    // Layers of 1 mm, 10 mm wide; 50 and 30 W/mK in series, each over half a millimetre.
    const flow = 0.01 / (0.0005 / 50 + 0.0005 / 30);
    const store = 7800 * 0.01 * 0.001 * 600;
    const difference = 200 / (1 + (2 * dt * flow) / store);
    expect((guess[0] as number) - (guess[1] as number)).toBeCloseTo(difference, 6);
    expect((guess[0] as number) + (guess[1] as number)).toBeCloseTo(800, 6);
  });

  /** Solves a few equations by elimination. */
  function solved(matrix: number[][], right: number[]): number[] {
    const rows = matrix.map((row, at) => [...row, right[at] as number]);
    rows.forEach((row, at) => {
      const lead = row[at] as number;
      for (let column = at; column < row.length; column += 1) row[column] = (row[column] as number) / lead;
      rows.forEach((other, place) => {
        if (place === at) return;
        const share = other[at] as number;
        for (let column = at; column < row.length; column += 1)
          other[column] = (other[column] as number) - share * (row[column] as number);
      });
    });
    return rows.map((row) => row[row.length - 1] as number);
  }

  test("a tapered section of two columns and two layers, each surface under its own coat", () => {
    const grid = sectionGrid({ widthMm: 8, spineMm: 6, edgeMm: 2 }, { columns: 2, layers: 2 });
    const coat: Coat = { flank: Float64Array.of(1e-4, 3e-4), edge: 2e-4, spine: 5e-4 };
    const equations = new SectionEquations(grid, constantSteel, coat);
    const old = Float64Array.of(700, 600, 500, 400);
    const guess = Float64Array.from(old);
    const heat = Float64Array.of(3, 0, 0, 1);
    const dt = 0.1;
    equations.solve(old, guess, heat, dt, { coefficient: bathOf(() => 2000), factor: 1.5, untilS: 1 });
    // Half thicknesses 1.5 and 2.5 mm in the middle of the columns, 1, 2 and 3 mm at their borders; columns 4 mm wide.
    const [halves, borders, dx] = [[0.0015, 0.0025], [0.001, 0.002, 0.003], 0.004] as const;
    const store = [0, 0, 1, 1].map((column) => (7800 * 600 * dx * (halves[column] as number)) / 2);
    const joined = [
      [0, 1, (27 * dx) / (halves[0] / 2)],
      [2, 3, (27 * dx) / (halves[1] / 2)],
      [0, 2, (27 * borders[1]) / 2 / dx],
      [1, 3, (27 * borders[1]) / 2 / dx],
    ] as const;
    const through = (area: number, depth: number, coated: number) => area / (depth / 27 + coated + 1 / 3000);
    const flank = Math.hypot(dx, 0.001);
    const surface = [
      through(borders[0] / 2, dx / 2, 2e-4),
      through(borders[0] / 2, dx / 2, 2e-4) + through(flank, halves[0] / 4, 1e-4),
      through(borders[2] / 2, dx / 2, 5e-4),
      through(borders[2] / 2, dx / 2, 5e-4) + through(flank, halves[1] / 4, 3e-4),
    ];
    const matrix = store.map((each, row) =>
      store.map((_, column) => (row === column ? each / dt + (surface[row] as number) : 0)),
    );
    const add = (row: number, column: number, value: number) => {
      (matrix[row] as number[])[column] = (matrix[row]?.[column] as number) + value;
    };
    for (const [a, b, flow] of joined) {
      add(a, a, flow);
      add(b, b, flow);
      add(a, b, -flow);
      add(b, a, -flow);
    }
    const right = store.map(
      (each, cell) =>
        (each * (old[cell] as number) + (heat[cell] as number)) / dt + (surface[cell] as number) * BATH,
    );
    const expected = solved(matrix, right);
    for (let cell = 0; cell < 4; cell += 1) {
      expect(equations.toBath[cell] as number, `surface of ${cell}`).toBeCloseTo(surface[cell] as number, 6);
      expect(guess[cell] as number, `cell ${cell}`).toBeCloseTo(expected[cell] as number, 4);
    }
    expect(meanHeatCapacity(constantSteel, 700, 25)).toBe(600);
  });
});

describe("the surface is found in few looks", () => {
  /** How often the coefficient is looked up for one transmission; each look reads two neighbouring degrees at most. */
  function looks(coefficient: HeatTransferCoefficient, cellC: number, resistance: number): number {
    let reads = 0;
    const byDegree = new Proxy(coefficient.byDegree, {
      get: (degrees, key) => {
        if (typeof key === "string" && /^\d+$/.test(key)) reads += 1;
        const value: unknown = Reflect.get(degrees, key);
        return value;
      },
    });
    const counted = { ...coefficient, byDegree };
    reads = 0;
    coefficientAt(counted, 300.5);
    const each = reads;
    reads = 0;
    transmission(cellC, resistance, counted, 1);
    return reads / each;
  }

  test("with one coefficient the first guess is right: the steel, the guess and the answer are looked up", () => {
    for (const [cellC, resistance] of [
      [790.5, 1e-4],
      [400.5, 1e-3],
      [60.5, 1e-5],
    ] as const)
      expect(
        looks(
          bathOf(() => 1000),
          cellC,
          resistance,
        ),
      ).toBeLessThanOrEqual(3);
  });

  test("with a boiling bath a dozen are enough, where an end that stays is counted by half", () => {
    // A hump as boiling has: little under a vapour film, most at 500 °C.
    const boiling = bathOf((celsius) => 300 + 9000 * Math.exp(-(((celsius - 500) / 90) ** 2)));
    const counts = [200, 400, 520, 600, 800].flatMap((cellC) =>
      [1e-5, 1e-4, 5e-4, 2e-3].map((resistance) => looks(boiling, cellC + 0.5, resistance)),
    );
    expect(Math.max(...counts)).toBeLessThanOrEqual(14);
  });

  test("a cell exactly as cold as the bath still has a transmission", () => {
    expect(
      transmission(
        BATH,
        1e-3,
        bathOf(() => 1000),
        2,
      ),
    ).toBeCloseTo(1 / (1e-3 + 1 / 2000), 9);
  });
});

describe("pearlite between and beyond the whole degrees", () => {
  const share = (celsius: number, seconds: number, martensiteC = 225) =>
    new PearliteCells(1, 1, martensiteC).advance(0, celsius, seconds);

  test("forms the more slowly the hotter above the nose, also between two degrees", () => {
    const formed = [600, 600.25, 600.5, 600.75, 601].map((celsius) => share(celsius, 2));
    expect(formed).toEqual([...formed].sort((a, b) => b - a));
    expect(new Set(formed).size).toBe(5);
  });

  test("forms down to the start of martensite itself, and nothing forms below freezing", () => {
    expect(share(225, 1e5)).toBeGreaterThan(0.1);
    expect(share(-5, 1e5, -50)).toBe(0);
  });
});
