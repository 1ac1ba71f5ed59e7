import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  coefficientAt,
  HEAT_TRANSFER_MEDIA,
  type HeatTransferCoefficient,
  heatTransferOf,
  heatTransferRelation,
} from "../../src/core/hardening/heat-transfer";
import { findQuench } from "../../src/core/hardening/quench-media";
import {
  checkShape,
  type SectionAustenite,
  sectionAustenite,
} from "../../src/core/hardening/section-austenite";
import { SectionEquations } from "../../src/core/hardening/section-equations";
import { sectionGrid } from "../../src/core/hardening/section-grid";
import { solveBanded } from "../../src/core/hardening/section-matrix";
import { PearliteCells } from "../../src/core/hardening/section-pearlite";
import { SectionCooling } from "../../src/core/hardening/section-solver";
import { AUSTENITE, meanHeatCapacity } from "../../src/core/hardening/section-steel";
import { transmission } from "../../src/core/hardening/section-surface";
import { pearliteWord, plateWord } from "../../src/core/hardening/through-words";
import { SOURCES } from "../../src/core/sources";
import { findSteel } from "../../src/core/steel/find";
import printed from "../../src/data/hardening/heat-transfer.json";

/** One coefficient at every temperature, a straight line, or whatever is given. */
const coefficientOf = (at: (celsius: number) => number, bathC = 25): HeatTransferCoefficient => ({
  medium: "drawn",
  bathC,
  source: "section-quench-model",
  byDegree: Float64Array.from({ length: 1301 }, (_, celsius) => at(celsius)),
});

describe("the grid of a section", () => {
  // Geometry: the trapezoid that the cells fill, its slanted flank and its ends.
  test("fills the half section, follows the taper, and has its flank", () => {
    const grid = sectionGrid({ widthMm: 30, spineMm: 6, edgeMm: 1 });
    const area = grid.half.reduce((sum, half) => sum + half * grid.dx, 0);
    expect(area).toBeCloseTo((0.03 * (0.006 + 0.001)) / 4, 12);
    expect(grid.half).toHaveLength(30);
    expect(grid.border).toHaveLength(31);
    expect(grid.border[0]).toBeCloseTo(0.0005, 12);
    expect(grid.border[30]).toBeCloseTo(0.003, 12);
    expect(grid.border[15]).toBeCloseTo(0.00175, 12);
    expect((grid.half[0] as number) + (grid.half[29] as number)).toBeCloseTo(0.0035, 12);
    expect(30 * grid.flank).toBeCloseTo(Math.hypot(0.03, 0.0025), 12);
    expect([grid.columns, grid.layers, grid.dx]).toEqual([30, 3, 0.001]);
  });

  test("an equal section has equal cells and a flank as long as it is wide", () => {
    const grid = sectionGrid({ widthMm: 20, spineMm: 5, edgeMm: 5 }, { columns: 4, layers: 2 });
    expect([...grid.half]).toEqual([0.0025, 0.0025, 0.0025, 0.0025]);
    expect(grid.flank).toBeCloseTo(0.005, 15);
  });
});

describe("heat through steel, clay and surface", () => {
  // Fourier and Newton: what is conducted to the surface is what leaves it; in series the resistances add.
  test("with one coefficient the resistances add", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 30, max: 900, noNaN: true }),
        fc.double({ min: 1e-5, max: 5e-3, noNaN: true }),
        fc.double({ min: 20, max: 15_000, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        (cellC, resistance, h, factor) => {
          const each = transmission(
            cellC,
            resistance,
            coefficientOf(() => h),
            factor,
          );
          expect(each * (resistance + 1 / (factor * h))).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  const CASES = [60, 200, 400, 600, 800].flatMap((cellC) =>
    [1e-5, 1e-4, 1e-3].flatMap((resistance) =>
      [0.5, 1, 2].map((factor) => [cellC, resistance, factor] as const),
    ),
  );

  test.each([
    ["rising", coefficientOf((t) => 50 + 4 * t)],
    ["falling", coefficientOf((t) => 6000 - 4 * t)],
    ["of fast oil", heatTransferOf(findQuench("fast oil"))],
  ])("with a coefficient %s, the flux conducted is the flux that leaves", (_, coefficient) => {
    for (const [cellC, resistance, factor] of CASES) {
      const flux = transmission(cellC, resistance, coefficient, factor) * (cellC - coefficient.bathC);
      const surfaceC = cellC - flux * resistance;
      const leaves = factor * coefficientAt(coefficient, surfaceC) * (surfaceC - coefficient.bathC);
      // The surface is found to 0.02 °C of what the resistance carries.
      const error = 0.05 / resistance + 0.002 * flux;
      expect(Math.abs(flux - leaves), `${cellC} ${resistance} ${factor}`).toBeLessThan(error);
    }
  });

  test("a cell as cold as the bath passes what both resistances let it", () => {
    const each = transmission(
      25.001,
      1e-3,
      coefficientOf(() => 1000),
      2,
    );
    expect(each).toBeCloseTo(1 / (1e-3 + 1 / 2000), 6);
  });
});

describe("heat transfer as printed", () => {
  const rows = printed.rows as unknown as readonly (readonly [string, number, number, number, string])[];

  test.each(HEAT_TRANSFER_MEDIA)(
    "%s is what the table prints at its temperatures, straight between, level beyond",
    (medium) => {
      const coefficient = heatTransferOf(findQuench(medium));
      const points = rows.filter(([word]) => word === medium);
      const [first, second] = points as [(typeof rows)[number], (typeof rows)[number]];
      expect(coefficient.bathC).toBe(first[1]);
      for (const [, , celsius, value] of points.filter(([, , celsius]) => Number.isInteger(celsius)))
        expect(coefficientAt(coefficient, celsius)).toBeCloseTo(value, 6);
      const middle = Math.round((first[2] + second[2]) / 2);
      const share = (middle - first[2]) / (second[2] - first[2]);
      expect(coefficientAt(coefficient, middle)).toBeCloseTo(first[3] + share * (second[3] - first[3]), 6);
      expect(coefficientAt(coefficient, 1290)).toBeCloseTo(points.at(-1)?.[3] ?? Number.NaN, 6);
      expect(coefficientAt(coefficient, -20)).toBeCloseTo(coefficientAt(coefficient, 0), 6);
    },
  );

  test("between whole degrees it is the straight line, up to the last one", () => {
    const line = coefficientOf((t) => 100 + 2 * t);
    for (const celsius of [0, 0.25, 17.5, 799.75, 1299.5, 1300])
      expect(coefficientAt(line, celsius)).toBeCloseTo(100 + 2 * celsius, 6);
  });

  test("a quench that is not held is refused with those that are; the record says how it was seen", () => {
    expect(HEAT_TRANSFER_MEDIA).toContain("still air");
    expect(() => heatTransferOf(findQuench("polymer"))).toThrow(
      `no figure is held for how fast polymer draws heat; a section can be worked for ${HEAT_TRANSFER_MEDIA.join(", ")}`,
    );
    for (const medium of HEAT_TRANSFER_MEDIA) {
      const relation = heatTransferRelation(heatTransferOf(findQuench(medium)));
      expect(relation.title).toBe(`Heat drawn by ${medium}`);
      expect(relation.evidence).toBe(SOURCES[relation.source].seen === "READ" ? "measured" : "compiled");
      expect(relation.output).toEqual({ label: "heat transfer coefficient", unit: "W/m²K" });
      expect(relation.error).toMatchObject({ size: 25, unit: "%" });
    }
  });
});

describe("austenite as it cools", () => {
  // Eurocode 3 part 1-2 gives carbon steel above 800 °C 27.3 W/mK, above 900 °C 650 J/kgK; austenitic 304 at 20 °C has
  // 14.6 W/mK by its equation of the same code, and 450 J/kgK.
  test("conducts and stores heat as Eurocode 3 gives it, within a tenth", () => {
    expect(AUSTENITE.conductivity(20) / 14.85).toBeCloseTo(1, 1);
    expect(AUSTENITE.conductivity(850) / 27.3).toBeGreaterThan(0.94);
    expect(AUSTENITE.conductivity(850) / 27.3).toBeLessThan(1.03);
    expect(AUSTENITE.heatCapacity(20) / 450).toBeCloseTo(1, 1);
    expect(AUSTENITE.heatCapacity(900) / 650).toBeGreaterThan(0.95);
    expect(AUSTENITE.heatCapacity(900) / 650).toBeLessThan(1.05);
    expect(AUSTENITE.heatCapacity(500) / 580).toBeCloseTo(1, 1);
    expect(AUSTENITE.density).toBeGreaterThan(7700);
    expect(AUSTENITE.density).toBeLessThan(7900);
  });

  test("the mean between two temperatures is the integral: exact for a cubic", () => {
    const cubic = {
      ...AUSTENITE,
      heatCapacity: (t: number) => 400 + 0.5 * t - 1e-3 * t ** 2 + 6e-7 * t ** 3,
    };
    const integral = (t: number) => 400 * t + 0.25 * t ** 2 - (1e-3 / 3) * t ** 3 + 1.5e-7 * t ** 4;
    for (const [from, to] of [
      [800, 790],
      [800, 200],
      [50, 700],
    ] as const)
      expect(meanHeatCapacity(cubic, from, to)).toBeCloseTo((integral(to) - integral(from)) / (to - from), 8);
    expect(meanHeatCapacity(cubic, 300, 300)).toBeCloseTo(cubic.heatCapacity(300), 9);
  });
});

describe("equations of the section", () => {
  const grid = sectionGrid({ widthMm: 12, spineMm: 4, edgeMm: 2 }, { columns: 6, layers: 2 });
  const bare = { flank: new Float64Array(6), edge: 0, spine: 0 };
  const steel = { density: 7800, conductivity: () => 27, heatCapacity: () => 600 };
  const bath = { coefficient: coefficientOf(() => 2000), factor: 1, untilS: 1e9 };

  test("the masses are the half section of the steel", () => {
    const { mass } = new SectionEquations(grid, steel, bare);
    const whole = mass.reduce((sum, each) => sum + each, 0);
    expect(whole).toBeCloseTo((7800 * 0.012 * 0.003) / 2, 9);
  });

  test("what one step takes from the steel goes into the bath, and the warm cells warm the cold ones", () => {
    const equations = new SectionEquations(grid, steel, bare);
    const old = Float64Array.from({ length: 12 }, (_, cell) => 300 + 40 * cell);
    const guess = Float64Array.from(old);
    const dt = 0.05;
    equations.solve(old, guess, new Float64Array(12), dt, bath);
    let [taken, given] = [0, 0];
    for (let cell = 0; cell < 12; cell += 1) {
      taken += (equations.store[cell] as number) * ((old[cell] as number) - (guess[cell] as number));
      given += dt * (equations.toBath[cell] as number) * ((guess[cell] as number) - 25);
    }
    expect(given).toBeGreaterThan(0);
    expect(taken / given).toBeCloseTo(1, 9);
  });

  test("heat set free in a closed section stays in it and spreads", () => {
    const closed = { flank: new Float64Array(6).fill(1e9), edge: 1e9, spine: 1e9 };
    const equations = new SectionEquations(grid, steel, closed);
    const old = new Float64Array(12).fill(500);
    const guess = Float64Array.from(old);
    const heat = new Float64Array(12);
    heat[0] = 10;
    equations.solve(old, guess, heat, 0.01, bath);
    const gained = guess.reduce((sum, now, cell) => sum + (equations.store[cell] as number) * (now - 500), 0);
    expect(gained).toBeCloseTo(10, 3);
    expect(guess[0]).toBeGreaterThan(guess[1] as number);
    expect(guess[1]).toBeGreaterThan(500);
    expect(guess[2]).toBeGreaterThan(500);
    expect(guess[0]).toBeGreaterThan(guess[2] as number);
  });

  test("only outer cells meet the bath: the flank along the taper, the two ends", () => {
    const equations = new SectionEquations(grid, steel, bare);
    const even = new Float64Array(12).fill(500);
    equations.conduct(even);
    equations.surfaces(even, bath);
    const whole = equations.toBath.reduce((sum, each) => sum + each, 0);
    // Each surface by its own path: half a layer, or half a column, of steel before 2000 W/m²K.
    const byPath = (area: number, depth: number) => area / (depth / 27 + 1 / 2000);
    const flanks = [...grid.half].reduce((sum, half) => sum + byPath(grid.flank, half / 4), 0);
    const ends = [0, 6].reduce((sum, end) => sum + byPath(grid.border[end] as number, grid.dx / 2), 0);
    expect(whole).toBeCloseTo(flanks + ends, 6);
    for (let column = 1; column < 5; column += 1) expect(equations.toBath[2 * column]).toBe(0);
  });
});

describe("banded equations of three bands, as a section has", () => {
  const at = (row: number, d: number) => (d === 0 ? 12 + row : d > row ? 0 : Math.sin(3 * row + d));
  /** An entry of the whole matrix. */
  const entry = (row: number, column: number) => {
    const d = Math.abs(row - column);
    return d > 3 ? 0 : at(Math.max(row, column), d);
  };

  test.each([1, 2, 3, 4, 5, 9, 30])(
    "of %d rows: the matrix times the solution gives the right side",
    (rows) => {
      const bands = Float64Array.from({ length: 4 * rows }, (_, i) => at(Math.floor(i / 4), i % 4));
      const right = Float64Array.from({ length: rows }, (_, row) => Math.cos(row) * 50);
      const solution = Float64Array.from(right);
      solveBanded(bands, solution, 3);
      for (let row = 0; row < rows; row += 1) {
        const sum = solution.reduce((all, value, column) => all + entry(row, column) * value, 0);
        expect(sum).toBeCloseTo(right[row] as number, 9);
      }
    },
  );
});

describe("pearlite in a cell", () => {
  test("none forms above 727 °C, below the start of martensite, or at once", () => {
    const cells = new PearliteCells(3, 1, 225);
    for (const celsius of [727, 800, 224.9, 100]) expect(cells.advance(0, celsius, 1000)).toBe(0);
    expect(cells.advance(1, 540, 1e-6)).toBe(0);
    expect(cells.fraction[0]).toBe(0);
    expect(cells.isDone(0, 224.9)).toBe(true);
    expect(cells.isDone(0, 225)).toBe(false);
    expect(cells.isDone(0, 600)).toBe(false);
    cells.advance(2, 540, 1000);
    expect(cells.fraction[2]).toBeGreaterThan(0.9999);
    expect(cells.isDone(2, 600)).toBe(true);
  });

  // Additivity (Scheil): a hold in parts makes as much as the hold at once, and the nose is where 1 % takes its time.
  test("a hold in parts is the hold at once, and what forms is what was told", () => {
    const [whole, parts] = [new PearliteCells(1, 1, 225), new PearliteCells(1, 1, 225)];
    const once = whole.advance(0, 550, 3);
    let sum = 0;
    for (let part = 0; part < 30; part += 1) sum += parts.advance(0, 550, 0.1);
    expect(once).toBeCloseTo(whole.fraction[0] as number, 12);
    expect(sum).toBeCloseTo(once, 9);
    expect(parts.hardness[0]).toBeCloseTo(whole.hardness[0] as number, 6);
  });

  test("one per cent takes the nose time at the nose, and longer at any other temperature", () => {
    const share = (celsius: number, seconds: number) =>
      new PearliteCells(1, 2, 225).advance(0, celsius, seconds);
    const after = Array.from({ length: 400 }, (_, at) => share(300 + at + 0.5, 2));
    expect(Math.max(...after)).toBeCloseTo(0.01, 4);
    const nose = 300.5 + after.indexOf(Math.max(...after));
    expect(nose).toBeGreaterThan(480);
    expect(nose).toBeLessThan(620);
    // Eutectoid steel, Callister, figure 11.28: half of it in about 2.9 times the time of its first per cent.
    expect(share(nose, 2 * 2.88)).toBeCloseTo(0.5, 1);
    expect(share(0, 100)).toBe(0);
    expect(share(726.9, 1)).toBeLessThan(1e-6);
  });
});

describe("a plate on its way down", () => {
  test("reaches the bath, books its heat, and is done when nothing can turn any more", () => {
    const grid = sectionGrid({ widthMm: 20, spineMm: 3, edgeMm: 3 }, { columns: 5, layers: 2 });
    const section = new SectionCooling({
      grid,
      steel: AUSTENITE,
      coat: { flank: new Float64Array(5), edge: 0, spine: 0 },
      startC: 800,
      stages: [
        { coefficient: heatTransferOf(findQuench("still air")), factor: 1, untilS: 2 },
        { coefficient: heatTransferOf(findQuench("fast oil")), factor: 1, untilS: 1e9 },
      ],
      pearlite: new PearliteCells(10, 5, 225),
      latentJkg: 85_000,
      stepC: 10,
    });
    expect(section.isDone()).toBe(false);
    section.run(2);
    expect(section.seconds).toBeCloseTo(2, 9);
    const inAir = Math.min(...section.temperature);
    expect(inAir).toBeGreaterThan(750);
    section.run(2.5);
    expect(Math.min(...section.temperature)).toBeLessThan(inAir - 20);
    section.run(3600);
    expect(section.isDone()).toBe(true);
    expect(section.seconds).toBeLessThan(100);
    expect(Math.max(...section.temperature)).toBeLessThan(225);
    const { lost, stored, latent } = section.balance;
    expect(Math.abs(lost + stored - latent) / lost).toBeLessThan(1e-5);
    expect(latent).toBeGreaterThanOrEqual(0);
  });

  test("without transformation it is never done, and the first step moves the fastest cell by what is aimed at", () => {
    const grid = sectionGrid({ widthMm: 20, spineMm: 3, edgeMm: 3 }, { columns: 3, layers: 2 });
    const make = (stepC: number) =>
      new SectionCooling({
        grid,
        steel: { density: 7800, conductivity: () => 27, heatCapacity: () => 600 },
        coat: { flank: new Float64Array(3), edge: 0, spine: 0 },
        startC: 800,
        stages: [{ coefficient: coefficientOf(() => 2000), factor: 1, untilS: 1e9 }],
        latentJkg: 0,
        stepC,
      });
    const [coarse, fine] = [make(20), make(5)];
    expect(coarse.isDone()).toBe(false);
    coarse.run(1);
    fine.run(1);
    expect(fine.steps).toBeGreaterThan(2 * coarse.steps);
    expect(coarse.steps).toBeGreaterThan(10);
    expect(Math.abs((coarse.temperature[0] as number) - (fine.temperature[0] as number))).toBeLessThan(6);
  });
});

describe("words for what hardens through", () => {
  test("up to 5 % pearlite, or the fully hard plate, through; up to half marginal; the limits themselves within", () => {
    expect([0, 0.05, 0.051, 0.5, 0.51].map(pearliteWord)).toEqual([
      "hardens through",
      "hardens through",
      "marginal",
      "marginal",
      "does not harden through",
    ]);
    expect([1, 3, 3.1, 5, 5.1].map((mm) => plateWord(mm, 3, 5))).toEqual([
      "hardens through",
      "hardens through",
      "marginal",
      "marginal",
      "does not harden through",
    ]);
  });
});

describe("what goes into the bath", () => {
  const oil = findQuench("fast oil");
  const austenite = (name: string, startC?: number, quench = oil) =>
    sectionAustenite(findSteel(name), quench, startC);

  test("is austenite of the steel at its start: hotter, more in solution, a lower Ms and a later nose", () => {
    const [cool, hot] = [780, 840].map((startC) => austenite("C 0.95 Mn 0.4 Si 0.2", startC)) as [
      SectionAustenite,
      SectionAustenite,
    ];
    expect(cool.startC).toBe(780);
    expect(hot.martensiteC).toBeLessThan(cool.martensiteC);
    expect(hot.noseS).toBeGreaterThan(cool.noseS);
    expect(austenite("1095").startC).toBeGreaterThan(760);
    // Eutectoid steel starts at 220 to 240 °C (Callister, figure 11.28), as quenched 64 to 67 HRC (SAE charts).
    expect(Math.abs(austenite("1080").martensiteC - 230)).toBeLessThan(25);
    expect(austenite("1080").fullHrc).toBeGreaterThan(63);
    expect(austenite("1080").fullHrc).toBeLessThan(67.5);
  });

  test("bainite is not known: alloy steel outside liquids and molybdenum are refused, plain carbon in air is not", () => {
    expect(() => austenite("5160", undefined, findQuench("still air"))).toThrow(
      /only plain carbon steel is worked outside liquids/,
    );
    expect(austenite("1084", undefined, findQuench("still air")).noseS).toBeGreaterThan(0);
    expect(() => austenite("4140")).toThrow(/holds 0.2 % Mo: above 0.15 % bainite comes before pearlite/);
    expect(austenite("C 0.6 Mn 0.8 Si 0.2 Mo 0.15", 850).noseS).toBeGreaterThan(0);
    expect(() => austenite("C 0.6 Mn 0.8 Si 0.2 Mo 0.16", 850)).toThrow("bainite");
    expect(() => austenite("C 0.44 Mn 0.8 Si 0.2", 850)).toThrow("carbon in austenite");
    expect(austenite("C 0.45 Mn 0.8 Si 0.2", 850).fullHrc).toBeGreaterThan(55);
  });

  test("an edge thicker than the spine and a spine thicker than twice the width are no section", () => {
    expect(() => checkShape(30, 4, 4)).not.toThrow();
    expect(() => checkShape(30, 4, 4.1)).toThrow("edge 4.1 mm is thicker than spine 4 mm");
    expect(() => checkShape(2, 4, 1)).not.toThrow();
    expect(() => checkShape(2, 4.1, 1)).toThrow("is no blade: check the order, width first");
  });
});
