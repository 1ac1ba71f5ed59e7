import { describe, expect, test } from "vitest";
import { airHardeningMm } from "../../src/core/hardening/air-hardening";
import { dissolvedAt } from "../../src/core/hardening/dissolved";
import { martensiteStart } from "../../src/core/hardening/martensite";
import { maxSection, solutionAt } from "../../src/core/hardening/max-section";
import { findQuench } from "../../src/core/hardening/quench-media";
import { sectionAustenite } from "../../src/core/hardening/section-austenite";
import {
  hardenedDepth,
  quenchSection,
  quenchShifted,
  type SectionBand,
  type SectionInputs,
  type SectionRun,
} from "../../src/core/hardening/section-quench";
import {
  hardenedMm,
  hardnessOrBand,
  sectionPoints,
  verdictText,
} from "../../src/core/hardening/section-report";
import { sectionVerdict } from "../../src/core/hardening/section-verdict";
import { sectionWord } from "../../src/core/hardening/section-word";
import { CONVERSION_TABLES, type ConversionTable } from "../../src/core/hardness/conversion-tables";
import { convertHardness } from "../../src/core/hardness/convert";
import { findSteel } from "../../src/core/steel/find";
import { sectionOf } from "./sections";

const CLAY = { clay: 0.0016, clayLineMm: 8, below: 0.0002, quench: findQuench("agitated water") };
const hv = (hrc: number) => convertHardness(hrc, "HRC", "HV", CONVERSION_TABLES[0] as ConversionTable);

describe("the band of a section", () => {
  // 90 % of a normal spread lie within 1.645 standard deviations; each cause brings its share of it.
  test.each([
    ["bare", sectionOf("1084", 6, { quench: findQuench("slow oil") }), 0.58, 0.81, 0],
    ["clayed", sectionOf("1075", 7, CLAY), 0.09, 0.74, 0.67],
  ] as const)(
    "%s: its ends are heat transfer, nose and clay moved together",
    (_, inputs, bath, nose, clay) => {
      const { soft, hard } = quenchSection(inputs);
      const moved = (sign: number) =>
        quenchShifted(inputs, {
          heatTransfer: Math.exp(sign * 1.645 * bath * 0.25),
          nose: Math.exp(sign * 1.645 * nose * 0.35),
          clay: Math.exp(-sign * 1.645 * clay * 0.4),
        });
      for (const [end, sign] of [
        [soft, -1],
        [hard, 1],
      ] as const) {
        const again = moved(sign);
        again.hv.forEach((value, column) => {
          expect(end.hv[column]).toBeCloseTo(value, 6);
        });
      }
      expect(bath ** 2 + nose ** 2 + clay ** 2).toBeCloseTo(1, 1);
    },
  );

  test("a bath twice as good is a coefficient twice as high", () => {
    const inputs = sectionOf("1095", 6, { quench: findQuench("slow oil") });
    const [byBath, byShift] = [
      quenchShifted({ ...inputs, bathFactor: 2 }, { heatTransfer: 1, nose: 1, clay: 1 }),
      quenchShifted(inputs, { heatTransfer: 2, nose: 1, clay: 1 }),
    ];
    expect(byBath.hv).toEqual(byShift.hv);
  });

  test("the depth is where the drawn pearlite crosses one half", () => {
    const { likely } = quenchSection(sectionOf("1075", 7, { ...CLAY, clayLineMm: 8.6 }));
    const after = likely.pearlite.findIndex((share) => share >= 0.5);
    const [low, high] = [likely.pearlite[after - 1], likely.pearlite[after]] as [number, number];
    // Columns of 1 mm, their middles at half millimetres.
    expect(likely.depthMm).toBeCloseTo(after - 0.5 + (0.5 - low) / (high - low), 9);
  });
});

describe("clay", () => {
  test("as thick below its line as above it, the line does not matter", () => {
    const depth = (clayLineMm: number) =>
      quenchSection(sectionOf("1075", 7, { ...CLAY, below: 0.0016, clayLineMm })).likely.hv;
    expect(depth(8.3)).toEqual(depth(20));
  });

  test("a line moved by part of a column moves the depth by part of a column", () => {
    const depths = [8, 8.25, 8.5, 8.75, 9].map((clayLineMm) =>
      hardenedDepth(sectionOf("1075", 7, { ...CLAY, clayLineMm })),
    );
    for (let at = 1; at < depths.length; at += 1) {
      const step = (depths[at] as number) - (depths[at - 1] as number);
      expect(step).toBeGreaterThan(0.02);
      expect(step).toBeLessThan(0.8);
    }
  });

  test("from the edge on covers every column", () => {
    const run = (clayLineMm: number) =>
      quenchSection(sectionOf("1075", 7, { ...CLAY, clayLineMm })).likely.hv;
    expect(run(0)).toEqual(run(-3));
  });
});

describe("runs that are remembered", () => {
  test("a section told again, in whatever order, is the run of before; another steel of the same name is not", () => {
    const inputs = sectionOf("1084", 5);
    const first = quenchSection(inputs).likely;
    const turned = Object.fromEntries(Object.entries(inputs).reverse()) as unknown as SectionInputs;
    expect(quenchSection(turned).likely).toBe(first);
    const other = { ...inputs.steel, composition: { ...inputs.steel.composition, Mn: 0.4 } };
    expect(quenchSection({ ...inputs, steel: other }).likely).not.toBe(first);
    expect(quenchSection({ ...inputs, spineMm: 5.1 }).likely).not.toBe(first);
  });
});

describe("sections that harden through by the figures of the plate", () => {
  test("air-hardening steel is hard in every column, within 70 HV, up to what it hardens in still air", () => {
    const most = airHardeningMm(findSteel("A2")) as number;
    const band = quenchSection(sectionOf("A2", most, { widthMm: 90, startC: 970 }));
    expect(band.likely.hv).toHaveLength(30);
    expect(band.likely.pearlite).toEqual(new Array(30).fill(0));
    expect(band.likely.most).toBe(0);
    expect([band.soft, band.likely, band.hard].map(({ depthMm }) => depthMm)).toEqual([90, 90, 90]);
    expect((band.likely.hv[7] as number) - (band.soft.hv[7] as number)).toBeCloseTo(70, 9);
    expect((band.hard.hv[7] as number) - (band.likely.hv[7] as number)).toBeCloseTo(70, 9);
    expect(band.likely.edgeC).toBe(970);
    expect(quenchSection(sectionOf("A2", 6)).likely.edgeC).toBeGreaterThan(900);
    expect(() => quenchSection(sectionOf("A2", most + 0.1, { widthMm: 90 }))).toThrow();
  });

  test("bare molybdenum steel up to the fully hard plate less its factor of 1.5, bare only", () => {
    const steel = findSteel("4140");
    const most = maxSection(steel, "fast oil").fullyHardMm / 1.5;
    const at = (spineMm: number, more: Partial<SectionInputs> = {}) =>
      quenchSection(sectionOf("4140", spineMm, { widthMm: 60, ...more }));
    expect(at(most).likely.depthMm).toBe(60);
    expect(at(4).likely.most).toBe(0);
    expect(() => at(most * 1.001)).toThrow("bainite comes before pearlite");
    expect(() => at(4, { below: 1e-4 })).toThrow("bainite comes before pearlite");
    expect(() => at(4, { clay: 1e-4 })).toThrow("bainite comes before pearlite");
  });

  test("with 0.15 % molybdenum it is calculated", () => {
    const inputs = sectionOf("C 0.6 Mn 0.8 Si 0.2 Mo 0.15", 4, { startC: 850 });
    const { soft, likely } = quenchSection(inputs);
    expect((likely.hv[29] as number) - (soft.hv[29] as number)).not.toBeCloseTo(70, 3);
  });
});

/** A run drawn by hand: hardness and pearlite by column. */
const drawn = (depthMm: number, more: Partial<SectionRun> = {}): SectionRun => ({
  pearlite: [0, 0, 0, 0],
  most: 0,
  hv: [800, 800, 800, 800],
  depthMm,
  edgeC: 800,
  ...more,
});
const band = (soft: SectionRun, likely: SectionRun, hard: SectionRun): SectionBand => ({
  soft,
  likely,
  hard,
  widthMm: 30,
});

describe("what is told of a band", () => {
  const clayed = sectionOf("1075", 7, CLAY);
  const untold = "; no clay value is published: measure one blade and fit it with SECTION_FIT";
  const half = { most: 0.9 };

  test.each([
    [4.4, 8.6, "does not harden through: hard from the edge to between 4 mm and 9 mm"],
    [5.6, 6.4, "does not harden through: hard from the edge to about 6 mm"],
    [4, 30, "does not harden through: hard from the edge to between 4 mm and the spine"],
    [4, 31, "does not harden through: hard from the edge to between 4 mm and the spine"],
    [0, 0.4, "does not harden through: it hardens nowhere"],
    [0, 0.6, "does not harden through: hard from the edge to between 0 mm and 1 mm"],
  ])("soft end %d mm, hard end %d mm", (soft, hard, said) => {
    expect(verdictText(clayed, band(drawn(soft, half), drawn(6, half), drawn(hard, half)))).toBe(
      said + untold,
    );
  });

  test("soft spots are told where the soft end has some, with the lowest hardness", () => {
    const soft = drawn(30, { most: 0.06, hv: [hv(60), hv(41), hv(55), hv(50)] });
    const spots = "soft spots possible inside, at worst about 41 HRC";
    expect(verdictText(clayed, band(soft, drawn(30, { most: 0.03 }), drawn(30)))).toBe(
      `hardens through, but ${spots}${untold}`,
    );
    expect(verdictText(clayed, band(soft, drawn(30, { most: 0.2 }), drawn(30)))).toBe(
      `marginal: ${spots}${untold}`,
    );
    const under = drawn(30, { most: 0.9, hv: [hv(60), 180, 200, 200] });
    expect(verdictText(clayed, band(under, drawn(30), drawn(30)))).toContain("at worst about under 20 HRC");
    expect(verdictText(clayed, band(drawn(30, { most: 0.05 }), drawn(30), drawn(30)))).toBe(
      `hardens through${untold}`,
    );
  });

  test("an edge colder than 727 °C is told where it was carried through air, no other", () => {
    const told = (transferS: number, edgeC: number) => {
      const run = drawn(30, { edgeC });
      return verdictText({ ...clayed, clay: 0, bathFactor: 1.1, transferS }, band(run, run, run));
    };
    expect(told(2, 700)).toBe(
      "hardens through; the edge falls to 700 °C (1292 °F) on the way to the bath, under 727 °C (1341 °F): it may be soft",
    );
    expect(told(2, 727)).toBe("hardens through");
    expect(told(0, 700)).toBe("hardens through");
  });

  test("the depth of a blade that is said not to harden ends where most pearlite is", () => {
    const thick = sectionOf("1095", 8, { quench: findQuench("slow oil") });
    const whole = drawn(30, { pearlite: [0.1, 0.2, 0.45, 0.3] });
    expect(sectionWord(thick, band(whole, whole, whole))).toBe("does not harden through");
    // The third of four columns of 7.5 mm: its middle at 18.75 mm.
    expect(hardenedMm(thick, band(whole, whole, whole))).toBeCloseTo(18.75, 9);
    expect(hardenedMm(thick, band(whole, drawn(12.3), whole))).toBe(12.3);
    expect(hardenedMm(sectionOf("1084", 3), band(whole, whole, whole))).toBe(30);
  });
});

describe("points of a section", () => {
  test("have an allowance of 2 HRC either way, at most 68, none under the scale", () => {
    const run = drawn(30, { hv: [hv(67.5), hv(40), hv(21), 150] });
    const points = sectionPoints(band(run, run, run));
    expect(points.map(({ fromEdgeMm }) => fromEdgeMm)).toEqual([3.75, 11.25, 18.75, 26.25]);
    expect(points[0]?.high).toBe(68);
    expect(points[1]?.low).toBeCloseTo(38, 6);
    expect(points[1]?.likely).toBeCloseTo(40, 6);
    expect(points[1]?.high).toBeCloseTo(42, 6);
    expect(points[2]?.low).toBeUndefined();
    expect(points[2]?.high).toBeCloseTo(23, 6);
    expect([points[3]?.low, points[3]?.likely, points[3]?.high]).toEqual([undefined, undefined, undefined]);
  });

  test("are one figure up to 4 HRC apart, else a band, with words where the scale ends", () => {
    const point = (low: number, likely: number, high: number) => ({
      fromEdgeMm: 1,
      low: low - 2,
      likely,
      high: high + 2,
      hvLow: hv(low),
      hvLikely: hv(likely),
      hvHigh: hv(high),
    });
    expect(hardnessOrBand(point(60, 62.4, 63.9))).toBe(62);
    expect(hardnessOrBand(point(60, 62.4, 64.2))).toBe("58 to 66");
    expect(hardnessOrBand({ ...point(60, 62, 63), likely: undefined })).toBe("58 to 65");
    expect(hardnessOrBand({ ...point(21, 30, 40), low: undefined })).toBe("under 20 to 42");
    expect(hardnessOrBand({ ...point(21, 30, 40), low: undefined, hvLow: 150 })).toBe("under 20 to 42");
    expect(hardnessOrBand({ ...point(21, 22, 23), high: undefined })).toBe("under 20");
  });
});

describe("the word for a section", () => {
  const much = drawn(4, { most: 0.9 });
  const drawnBand = band(much, much, much);

  // A bare 3 mm plate of 1084 hardens through in fast oil by the table of plates; anything else is told by its pearlite.
  test("is that of the plate for a bare section in a bath as published, else that of its pearlite", () => {
    expect(sectionWord(sectionOf("1084", 3), drawnBand)).toBe("hardens through");
    for (const other of [
      { clay: 1e-3 },
      { below: 1e-4 },
      { transferS: 1 },
      { bathFactor: 1.2 },
      { startC: 815 },
    ])
      expect(sectionWord(sectionOf("1084", 3, other), drawnBand), JSON.stringify(other)).toBe(
        "does not harden through",
      );
  });

  test("is that of its pearlite where the table of plates judges nothing", () => {
    const inputs = sectionOf("1084", 3, { quench: findQuench("polymer") });
    const marginal = drawn(20, { most: 0.3 });
    expect(sectionWord(inputs, band(marginal, marginal, marginal))).toBe("marginal");
  });
});

describe("the verdict of a plate", () => {
  test("of air-hardening steel is told as published, up to the thickness itself", () => {
    const steel = findSteel("A2");
    const most = airHardeningMm(steel) as number;
    const plates = findQuench("plates");
    const at = (mm: number) => sectionVerdict(steel, mm, plates);
    expect(at(most)).toMatchObject({ verdict: "hardens through", fullyHardMm: most, halfHardMm: most });
    expect(at(most).sentence).toBe(`A2 ${maxSection(steel, plates).note}`);
    expect(at(most / 2).sentence).toBe(at(most).sentence);
    expect(at(most + 1).verdict).toBe("does not harden through");
    expect(at(most + 1).sentence).toContain("does not harden through: about");
  });

  test("names the word and both thicknesses", () => {
    const oil = findQuench("fast oil");
    const steel = findSteel("1095");
    const { fullyHardMm, halfHardMm } = maxSection(steel, oil);
    const tail = `about ${fullyHardMm.toFixed(1)} mm is fully hard, ${halfHardMm.toFixed(1)} mm half martensite at mid-thickness, within a factor 1.5`;
    expect(sectionVerdict(steel, 4, oil).sentence).toBe(`4 mm of 1095 in fast oil is marginal: ${tail}`);
    expect(sectionVerdict(steel, 2, oil).sentence).toBe(`2 mm of 1095 in fast oil hardens through: ${tail}`);
    expect(sectionVerdict(steel, 9, oil).sentence).toBe(
      `9 mm of 1095 in fast oil does not harden through: ${tail}`,
    );
  });
});

describe("the austenite of a section", () => {
  test("alloy steel is worked in water as in oil", () => {
    const steel = findSteel("5160");
    const [water, oil] = ["agitated water", "fast oil"].map((word) =>
      sectionAustenite(steel, findQuench(word)),
    );
    expect(water).toEqual(oil);
  });

  test("holds what is in solution at its start", () => {
    const oil = findQuench("fast oil");
    const ms = (name: string, startC: number, solution: { carbon: number; chromium: number }) => {
      const { composition } = findSteel(name);
      const held = { ...composition, C: solution.carbon, Cr: solution.chromium };
      expect(sectionAustenite(findSteel(name), oil, startC).martensiteC).toBeCloseTo(
        martensiteStart(held),
        9,
      );
    };
    // Under the carbon at which carbide is left, a start that is given is held against the steel's own diagram.
    for (const startC of [820, 850]) ms("5160", startC, dissolvedAt(findSteel("5160"), startC));
    for (const startC of [780, 840]) ms("1095", startC, solutionAt(findSteel("1095"), startC));
  });
});
