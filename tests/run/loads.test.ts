import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { barsFor } from "../../src/core/run/bars";
import type { LoadLimits, LoadLine } from "../../src/core/run/load-packing";
import { furnaceLoads, loadShares } from "../../src/core/run/loads";
import { type Line, plan, totals } from "./run";

const limits = fc.record({
  pieces: fc.integer({ min: 1, max: 12 }),
  mass: fc.constantFrom(Infinity, 2.5, 5),
});
const lines = fc.array(
  fc.record({
    recipe: fc.constantFrom("oil", "Oil ", "plates"),
    pieces: fc.integer({ min: 0, max: 40 }),
    mass: fc.constantFrom(0.2, 0.25, 0.7, 1.1, 2.5),
  }),
  { maxLength: 12 },
);

// Conservation: what is counted line by line must make up what is loaded.
describe("loads by line", () => {
  test("add up to the loads of the run, however the lines share them", () => {
    fc.assert(
      fc.property(lines, limits, (given, furnace) => {
        const shares = loadShares(given.map((line) => ({ ...line, limits: furnace })));
        const added = shares.reduce((sum, share) => sum + (share?.added ?? 0), 0);
        const loads = furnaceLoads(given, furnace);
        expect(added).toBe(loads.length);
        expect(loads.reduce((sum, load) => sum + load.pieces, 0)).toBe(
          given.reduce((sum, line) => sum + line.pieces, 0),
        );
      }),
      { numRuns: 500 },
    );
  });

  test("a second line fills up what the first began", () => {
    // By hand: 10 pieces at 7 a load leave room for 4; 5 pieces take it and begin one load.
    const line = { recipe: "52100", mass: 0.2, limits: { pieces: 7, mass: Infinity } };
    expect(loadShares([{ ...line, pieces: 10 }, undefined, { ...line, pieces: 5 }])).toEqual([
      { added: 2, shared: 0 },
      undefined,
      { added: 1, shared: 4 },
    ]);
  });

  test("a long line of heavy pieces leaves room for as many light ones", () => {
    // By hand: 2000 loads of one 3 kg piece have 1 kg left each, so 2500 pieces of 1 kg fill them and begin 125 of 4.
    const [heavy, light] = [3, 1].map((mass) => ({ recipe: "D2", mass, limits: { pieces: 9, mass: 4 } }));
    expect(
      loadShares([
        { ...(heavy as LoadLine & { limits: LoadLimits }), pieces: 2000 },
        { ...(light as LoadLine & { limits: LoadLimits }), pieces: 2500 },
      ]),
    ).toEqual([
      { added: 2000, shared: 0 },
      { added: 125, shared: 2000 },
    ]);
  });

  test("lines with furnaces of their own do not share", () => {
    const line = { recipe: "52100", mass: 0.2, pieces: 1 };
    const shares = loadShares([
      { ...line, limits: { pieces: 7, mass: Infinity } },
      { ...line, limits: { pieces: 4, mass: Infinity } },
    ]);
    expect(shares.map((share) => share?.added)).toEqual([1, 1]);
  });
});

describe("bars", () => {
  // By hand, cut list of the invented run R-07: bar 3000, trim 10, kerf 1.2 sawn; the hatchet bar with kerf 1.6.
  test.each([
    [346, 28, 1.2, 8, 212.4, 4],
    [241, 44, 1.2, 12, 83.6, 4],
    [611, 14, 1.2, 4, 541.2, 4],
    [128, 8, 1.6, 23, 9.2, 1],
  ])("%d mm, %d pieces", (piece, pieces, kerf, piecesABar, drop, bars) => {
    const cut = barsFor({ piece, pieces, barLength: 3000, kerf, trim: 10 });
    expect(cut).toMatchObject({ piecesABar, bars });
    expect(cut.drop).toBeCloseTo(drop, 9);
  });

  test("three pieces of 0.1 in 0.3 are three", () => {
    expect(barsFor({ piece: 0.1, pieces: 3, barLength: 0.3, kerf: 0, trim: 0 }).piecesABar).toBe(3);
  });
});

const line = fc.record({
  steel: fc.constantFrom("1095", "52100", "5160", "80CrV2"),
  good: fc.integer({ min: 1, max: 200 }),
  yield: fc.double({ min: 0.5, max: 1, noNaN: true }),
  length: fc.integer({ min: 100, max: 900 }),
  width: fc.integer({ min: 20, max: 60 }),
  thickness: fc.integer({ min: 2, max: 8 }),
  "bar length": fc.constantFrom(2000, 3000, null),
  "price kg": fc.integer({ min: 1, max: 20 }),
  "hours first": fc.integer({ min: 1, max: 9 }),
  "hour rate": fc.integer({ min: 10, max: 90 }),
  "pieces a load": fc.constantFrom(3, 7, null),
  margin: fc.constantFrom(0.2, 0.35),
});

describe("a whole run", () => {
  test("totals are the sums of the lines; starts are no fewer than good; bars hold the pieces", () => {
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 8 }), (run: Line[]) => {
        const rows = plan(run);
        const sums = totals(run);
        const columns = {
          starts: "starts",
          bars: "bars",
          kg: "steel",
          loads: "loads",
          kWh: "energy",
          hours: "bench hours",
        };
        for (const [heading, what] of Object.entries(columns)) {
          const figures = rows.map((row) => row[heading]).filter((figure) => typeof figure === "number");
          const sum = figures.reduce((total, figure) => total + figure, 0);
          expect(sums.get(what)?.[1]).toBeCloseTo(sum, 6);
        }
        rows.forEach((row, index) => {
          const { good, length } = run[index] as { good: number; length: number };
          expect(row.starts).toBeGreaterThanOrEqual(good);
          const used = row["use of bar %"];
          if (used === "") return;
          expect(used).toBeLessThanOrEqual(100);
          expect(used).toBeCloseTo(
            ((row.starts as number) * length * 100) /
              ((row.bars as number) * (run[index]?.["bar length"] as number)),
            6,
          );
        });
      }),
      { numRuns: 100 },
    );
  });
});

/** The rule written out: each line looks at every load in turn, heaviest pieces first. */
function packedOneByOne(given: readonly LoadLine[], { pieces: most, mass: limit }: LoadLimits) {
  const loads: { recipe: string; pieces: number; mass: number }[] = [];
  for (const line of [...given].sort((a, b) => b.mass - a.mass)) {
    let left = line.pieces;
    for (let at = 0; left > 0; at += 1) {
      const load = loads[at] ?? { recipe: line.recipe, pieces: 0, mass: 0 };
      loads[at] = load;
      const byMass = Math.floor(((limit - load.mass) / line.mass) * (1 + 1e-9) + 1e-9);
      const room = Math.min(most - load.pieces, line.mass > 0 ? byMass : Infinity);
      const taken = Math.max(load.pieces === 0 ? 1 : 0, Math.min(left, room));
      load.pieces += taken;
      load.mass += taken * line.mass;
      left -= taken;
    }
  }
  return loads;
}

describe("first fit by a tree", () => {
  const masses = fc.oneof(
    fc.constantFrom(0, 0.1, 0.2, 0.3, 2.5),
    fc.double({ min: 0.01, max: 2.5, noNaN: true }),
  );
  const line = fc.record({
    recipe: fc.constant("oil"),
    pieces: fc.integer({ min: 0, max: 30 }),
    mass: masses,
  });

  test("packs as looking at every load does, to the last bit", () => {
    fc.assert(
      fc.property(fc.array(line, { maxLength: 40 }), limits, (given, furnace) => {
        expect(furnaceLoads(given, furnace)).toEqual(packedOneByOne(given, furnace));
      }),
      { numRuns: 1000 },
    );
  });
});
