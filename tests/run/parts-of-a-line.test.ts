import { describe, expect, test } from "vitest";
import { NotAvailable, planRun, Refusal } from "../../src/core";
import { bladeMass, checkBlank, plannedStock } from "../../src/core/run/blank";
import { edgeCaution } from "../../src/core/run/edge-caution";
import { furnaceLine, plannedEnergy } from "../../src/core/run/energy";
import { heatContent } from "../../src/core/run/heat-content";
import { itemHistories, type PastLot } from "../../src/core/run/history";
import { type PlanLine, readLine } from "../../src/core/run/line";
import { lineRecipe } from "../../src/core/run/line-recipe";
import { runTotals, weeksNeeded } from "../../src/core/run/totals";

// Figures worked by hand beside each check; densities and windows are those of the steel's own sheet. Rules are the
// house's: what is not given is not judged, what is counted in one line is not counted in another.

/** An analysis counts as low-alloy steel of 7.85 g/cm³. */
const STEEL = "C 1.00 Si 0.24 Mn 0.34 Cr 1.45";

const line = (more: Partial<PlanLine> = {}) => readLine({ steel: STEEL, good: 10, yieldShare: 0.9, ...more });
const planned = (...lines: Partial<PlanLine>[]) =>
  planRun(lines.map((more) => ({ steel: STEEL, good: 10, yieldShare: 0.9, ...more })));

describe("steel of a line", () => {
  const blade = { length: 300, width: 40, thickness: 4 };

  test("the blade weighs nothing until all three sizes are known", () => {
    expect(bladeMass(line({ ...blade, grind: "rectangle" }))).toBeCloseTo((300 * 40 * 4 * 7.85) / 1000, 9);
    for (const side of ["length", "width", "thickness"] as const) {
      expect(bladeMass(line({ ...blade, [side]: undefined }))).toBeUndefined();
    }
  });

  test("without a bar the blanks themselves are bought, with one the bars", () => {
    const blank = (300 * 40 * 4 * 7.85) / 1e6;
    const loose = plannedStock(line(blade), 12);
    expect(loose.bars).toBeUndefined();
    expect(loose.hardenKg).toBeCloseTo(blank, 9);
    expect(loose.kilograms).toBeCloseTo(12 * blank, 9);
    // (2000 - 10 + 1.2) ÷ 301.2 = 6.6: six a bar, two bars of 2000 mm.
    const cut = plannedStock(line({ ...blade, barLength: 2000 }), 12);
    expect(cut.bars).toMatchObject({ piecesABar: 6, bars: 2 });
    expect(cut.kilograms).toBeCloseTo((2 * 2000 * 40 * 4 * 7.85) / 1e6, 9);
  });

  test("the blank comes before the blade, and a mass at hardening before both", () => {
    const own = { ...blade, blankLength: 340, blankWidth: 45, blankThickness: 5 };
    expect(plannedStock(line(own), 1).hardenKg).toBeCloseTo((340 * 45 * 5 * 7.85) / 1e6, 9);
    expect(plannedStock(line({ ...own, hardenMass: 320 }), 1).hardenKg).toBe(0.32);
  });

  test("a forged blade takes its volume with the losses: 1.2 ÷ (0.94 × 0.98), and 25 mm for the tongs", () => {
    const forged = { forgedVolume: 60_000, blankWidth: 30, blankThickness: 6 };
    const length = (60_000 * 1.2) / (0.94 * 0.98) / 180 + 25;
    expect(plannedStock(line(forged), 1).kilograms).toBeCloseTo((length * 180 * 7.85) / 1e6, 9);
    for (const side of ["blankWidth", "blankThickness"] as const) {
      expect(plannedStock(line({ ...forged, [side]: undefined }), 1).kilograms).toBeUndefined();
    }
    // Its blank may be shorter than the blade.
    expect(checkBlank(line({ ...blade, ...forged, blankLength: 200 }))).toBeUndefined();
  });

  test.each(["length", "width", "thickness"] as const)(
    "a blank as large as the blade will do, one under its %s not",
    (side) => {
      const key = `blank${side.charAt(0).toUpperCase()}${side.slice(1)}` as "blankLength";
      expect(checkBlank(line({ ...blade, [key]: blade[side] }))).toBeUndefined();
      expect(() => checkBlank(line({ ...blade, [key]: blade[side] - 1 }))).toThrow(
        `blank ${side}: ${blade[side] - 1} mm is less than the ${side} of the blade, ${blade[side]} mm`,
      );
    },
  );

  test("a thinner blank with a length of its own is forged wider: allowed", () => {
    expect(checkBlank(line({ ...blade, blankLength: 320, blankWidth: 30 }))).toBeUndefined();
    expect(() => checkBlank(line({ ...blade, blankLength: 299, blankWidth: 30 }))).toThrow(/blank length/);
  });

  test("what keeps a mass from being known is named, unless nothing or everything is given", () => {
    const cautions = (sizes: Partial<PlanLine>) => plannedStock(line(sizes), 1).cautions;
    expect(cautions({})).toEqual([]);
    expect(cautions(blade)).toEqual([]);
    expect(cautions({ ...blade, width: undefined })).toEqual(["No mass: width not given."]);
    expect(cautions({ length: 300 })).toEqual(["No mass: width and thickness not given."]);
  });
});

describe("furnace of a line", () => {
  test("a line is packed where pieces or kg a load are given, and never one treated outside", () => {
    const asked = (more: Partial<PlanLine>, mass: number | undefined) =>
      furnaceLine(line(more), 12, mass, "oil");
    expect(asked({}, 0.4)).toBeUndefined();
    expect(asked({ massALoad: 3 }, undefined)).toBeUndefined();
    expect(asked({ piecesALoad: 5, outsideHeat: 90 }, 0.4)).toBeUndefined();
    expect(asked({ piecesALoad: 5 }, undefined)).toEqual({
      recipe: "oil",
      pieces: 12,
      mass: 0,
      limits: { pieces: 5, mass: Infinity },
    });
    expect(asked({ massALoad: 3, recipe: "as last time" }, 0.4)).toEqual({
      recipe: "as last time",
      pieces: 12,
      mass: 0.4,
      limits: { pieces: Infinity, mass: 3 },
    });
    // A limit of mass binds nothing that has no mass.
    expect(asked({ massALoad: 3, piecesALoad: 5 }, undefined)?.limits).toEqual({ pieces: 5, mass: Infinity });
  });

  const share = { added: 3, shared: 0 };

  test("heat is mass times heat content over efficiency, and holding by load", () => {
    const given = { hardenC: 845, efficiency: 0.2 };
    const heat = (4 * heatContent(20, 845)) / 3600 / 0.2;
    expect(plannedEnergy(line(given), 4, share).kilowattHours).toBeCloseTo(heat, 9);
    expect(plannedEnergy(line({ ...given, holdEnergy: 2.5 }), 4, share).kilowattHours).toBeCloseTo(
      heat + 7.5,
      9,
    );
    expect(plannedEnergy(line({ ...given, holdEnergy: 2.5 }), 4, undefined).kilowattHours).toBeCloseTo(
      heat,
      9,
    );
    expect(plannedEnergy(line(given), undefined, share).kilowattHours).toBeUndefined();
  });

  test("metered loads count as they are metered, whatever the mass", () => {
    const metered = line({ meteredEnergy: 11, holdEnergy: 2.5, ovenHours: 4 });
    expect(plannedEnergy(metered, undefined, share)).toMatchObject({
      kilowattHours: 33,
      ovenHours: 12,
      loads: 3,
    });
    expect(plannedEnergy(metered, 4, undefined)).toMatchObject({
      kilowattHours: undefined,
      ovenHours: undefined,
    });
  });

  test("outside the shop there is no heat to plan", () => {
    expect(plannedEnergy(line({ outsideHeat: 90, meteredEnergy: 11 }), 4, share)).toEqual({
      loads: undefined,
      kilowattHours: undefined,
      ovenHours: undefined,
      cautions: [],
    });
  });

  test("what is left open is said", () => {
    const told = (more: Partial<PlanLine>, by?: typeof share) =>
      plannedEnergy(line({ hardenC: 845, ...more }), 4, by).cautions;
    expect(told({}, undefined)).toEqual([]);
    for (const key of ["meteredEnergy", "holdEnergy", "ovenHours"] as const) {
      expect(told({ [key]: 3 }, undefined)).toEqual(["Loads not counted: give pieces a load or kg a load."]);
      expect(told({ [key]: 3 }, share)).toEqual([]);
    }
    expect(told({}, { added: 1, shared: 1 })).toEqual([
      "1 piece goes into loads of another line of the same recipe, counted there.",
    ]);
    expect(told({}, { added: 0, shared: 4 })).toEqual([
      "4 pieces go into loads of another line of the same recipe, counted there.",
    ]);
  });

  test("a heat above what the standard covers is declined in a sentence, 1200 °C (EN 1993-1-2)", () => {
    const { kilowattHours, cautions } = plannedEnergy(line({ hardenC: 1210 }), 4, share);
    expect(kilowattHours).toBeInstanceOf(NotAvailable);
    expect(cautions.join(" ")).toMatch(/1210 °C .* is outside/);
  });

  test("a steel without a published window is heated to the handbook's temperature, which is said", () => {
    const { cautions } = plannedEnergy(line(), 4, share);
    expect(cautions).toEqual([
      expect.stringMatching(
        /^No hardening window of .* is held: 845 °C \(1553 °F\) taken for the energy only\.$/,
      ),
    ]);
    expect(plannedEnergy(line({ steel: "52100" }), 4, share).cautions).toEqual([]);
  });
});

describe("edge angles against the band of the use (the table of uses)", () => {
  const { use } = line({ use: "Chef knife thin hard" });
  const said = (edgeAngle: number | undefined) => edgeCaution({ use, edgeAngle });

  test("10 to 15° a side are usual for a thin kitchen knife, both ends among them", () => {
    expect([use?.angleLow, use?.angleHigh]).toEqual([10, 15]);
    for (const angle of [10, 12, 15, undefined]) expect(said(angle)).toBe("");
    expect(edgeCaution({ use: undefined, edgeAngle: 50 })).toBe("");
    expect(edgeCaution({ use: line({ use: "Throwing knife" }).use, edgeAngle: 50 })).toBe("");
  });

  test("twice a usual angle may be the included one", () => {
    for (const angle of [20, 24, 30])
      expect(said(angle)).toContain(`Half of it, ${angle / 2}°, would be usual`);
    for (const angle of [9.9, 15.1, 19.9, 30.1]) {
      expect(said(angle)).toBe(
        `Edge ${angle}° a side is outside the usual 10 to 15° a side for "Chef knife thin hard".`,
      );
    }
  });
});

describe("past lots of an item", () => {
  const lot = (item: string, started: number, good: number, more: Partial<PastLot> = {}): PastLot => ({
    item,
    started,
    good,
    hours: undefined,
    loads: undefined,
    kilowattHours: undefined,
    ...more,
  });

  test("are summed by name, each mean over the lots that have both of its figures", () => {
    const [first, second] = itemHistories(
      [
        lot(" Paring ", 10, 9, { hours: 20, loads: 2 }),
        lot("Cleaver", 4, 4),
        lot("paring", 20, 15, { loads: 3, kilowattHours: 36 }),
        lot("PARING", 20, 20, { hours: 25, loads: 1, kilowattHours: 8 }),
      ],
      0.9,
    );
    // 44 of 50; 45 h over 30 starts; 44 kWh over 4 loads.
    expect(first).toMatchObject({
      item: "Paring",
      record: { lots: 3, started: 50, good: 44, yieldShare: 0.88, hoursAStart: 1.5, energyALoad: 11 },
    });
    expect(second).toMatchObject({
      item: "Cleaver",
      record: { yieldShare: 1, hoursAStart: undefined, energyALoad: undefined },
    });
    // All good: floor⁴ = 0.1.
    expect(second?.record).toMatchObject({ yieldFloor: expect.closeTo(0.1 ** 0.25, 12) });
  });

  test("no loads make no mean", () => {
    const [only] = itemHistories([lot("a", 5, 5, { loads: 0, kilowattHours: 9 })], 0.9);
    expect(only?.record).toMatchObject({ energyALoad: undefined });
  });

  test("one faulty lot refuses the item, not the others", () => {
    const refusal = new NotAvailable("no such day");
    const [a, b, c] = itemHistories(
      [lot("a", 5, 6), lot("b", 5, 5), { item: "c", refusal }, lot("c", 5, 5), lot("a", 9, 9)],
      0.9,
    );
    expect(a?.record).toMatchObject({
      message: "good: 6 of 5 started given; more cannot come out than went in",
    });
    expect(b?.record).toMatchObject({ lots: 1 });
    expect(c?.record).toBe(refusal);
    expect(itemHistories([], 0.9)).toEqual([]);
  });
});

describe("a run", () => {
  test("names that stand twice are said on both lines, whatever their case; no name is none", () => {
    const rows = planned({ name: "L1" }, { name: "l1" }, { name: "L2" }, {}, {});
    const twice = rows.map((row) => (row instanceof Refusal ? "" : row?.cautions.join(" ")));
    expect(twice.map((said) => said?.includes("stands in the table twice"))).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
  });

  test("totals leave out refused and blank rows, and name the refused ones from 1", () => {
    const good = { steel: STEEL, good: 10, yieldShare: 1, price: 50 };
    const rows = planRun([
      good,
      undefined,
      { ...good, yieldShare: 92 },
      { ...good, good: 4, price: undefined },
    ]);
    const { planned: lines, refused, totals } = runTotals(rows);
    expect(lines).toHaveLength(2);
    expect(refused.map(([row, { message }]) => [row, message])).toEqual([
      [3, expect.stringContaining("was 0.92 meant?")],
    ]);
    const of = (what: string) => totals.find((each) => each.what === what);
    expect(of("good")).toMatchObject({ figure: 14, lines: 2 });
    expect(of("starts")).toMatchObject({ figure: 14, lines: 2 });
    expect(of("income")).toMatchObject({ figure: 500, lines: 1, unit: "money" });
    expect(of("bars")).toMatchObject({ figure: undefined, lines: 0 });
  });

  test("time that is just enough fits, an hour less is late", () => {
    expect(weeksNeeded(90, 30, 3)).toEqual({ needed: 3, note: "fits 3 × 30 h with 0.0 h to spare" });
    expect(weeksNeeded(91, 30, 3).note).toBe("LATE: 1.0 h over what 3 × 30 h hold");
    expect(weeksNeeded(45, 30, undefined)).toEqual({ needed: 1.5, note: "" });
  });
});

describe("the recipe of a line", () => {
  const recipe = (more: Partial<PlanLine>) => lineRecipe(line({ steel: "52100", ...more }));

  test("lines that share a load read the same, those that differ in heat, quench, temper, cold or clay do not", () => {
    const base = { quench: "medium oil", chosenC: { celsius: 200, hasUnit: true } };
    const texts = [
      base,
      { ...base, hardenC: 860 },
      { ...base, quench: "fast oil" },
      { ...base, quench: undefined },
      { ...base, chosenC: { celsius: 210, hasUnit: true } },
      { ...base, temperHours: 1 },
      { ...base, temperCycles: 2 },
      { ...base, quenchToC: -75 },
      { ...base, quenchToC: -75, subZeroHours: 3 },
      { ...base, clayMm: 3, clayFromMm: 12 },
    ].map((more) => recipe(more).text);
    expect(new Set(texts).size).toBe(texts.length);
    // Length, thickness and name do not part them.
    expect(recipe({ ...base, length: 200, width: 30, name: "L9" }).text).toBe(texts[0]);
    expect(texts[0]).toMatch(/harden .* to .*, medium oil, temper 200 °C \(392 °F\)$/);
    expect(texts[1]).toContain("harden 860 °C (1580 °F), medium oil");
    expect(texts[6]).toMatch(/, 2 × 2 h$/);
    expect(texts[8]).toMatch(/, sub-zero -75 °C \(-103 °F\), 3 h, straight after the quench$/);
    expect(texts[9]).toMatch(/, clay 3 mm from 12 mm above the edge to the spine$/);
  });

  test("clay wants its thickness and its place", () => {
    for (const half of [{ clayMm: 3 }, { clayFromMm: 12 }]) {
      expect(() => recipe(half)).toThrow(/clay needs both, how thick it is and where it begins/);
    }
    expect(recipe({}).clay).toBe("none");
    expect(recipe({ clayMm: 3, clayFromMm: 12, quench: "fast oil", thickness: 6 }).hardening).toEqual({
      word: "edge only, clay",
      caution: "Under clay the spine stays soft: SECTION_QUENCH tells how deep the edge hardens.",
    });
  });

  test("the soak is timed by the section where it hardens, whole minutes, the furnace no less than the soak", () => {
    expect(recipe({})).toMatchObject({ soakMinutes: undefined, furnaceMinutes: undefined });
    const [thin, thick] = [recipe({ thickness: 3 }), recipe({ thickness: 3, sectionMm: 10 })].map(
      ({ soakMinutes, furnaceMinutes }) => [soakMinutes, furnaceMinutes] as [number, number],
    ) as [[number, number], [number, number]];
    for (const minutes of [...thin, ...thick]) expect(Number.isInteger(minutes)).toBe(true);
    expect(thin[1]).toBeGreaterThanOrEqual(thin[0]);
    expect(thick[0]).toBeGreaterThan(thin[0]);
    expect(thick[1]).toBeGreaterThan(thick[0]);
    // Without a window no time is told.
    expect(lineRecipe(line({ thickness: 3 }))).toMatchObject({ hardenC: undefined, soakMinutes: undefined });
  });

  test("hardening and normalising are told in whole degrees in the middle of the published ranges", () => {
    const { hardenC, normaliseC } = recipe({});
    expect(Number.isInteger(hardenC)).toBe(true);
    expect(normaliseC === undefined || Number.isInteger(normaliseC)).toBe(true);
    expect(recipe({ hardenC: 851.6 }).hardenC).toBe(852);
  });
});
