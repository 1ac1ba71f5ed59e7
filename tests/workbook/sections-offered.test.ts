import { beforeAll, describe, expect, it } from "vitest";
import { sectionArea } from "../../src/core/shape/section-area";
import { bladeProperties } from "../../src/core/shape/stations";
import { taperedBlade } from "../../src/core/shape/taper";
import { densityOf } from "../../src/core/steel/density";
import { findSteel } from "../../src/core/steel/find";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import type { WorkbookModel } from "../../src/workbook/model/sheet-model";
import { carriedOver } from "../../src/workbook/sheets/carried-over";
import { listedWords } from "../../src/workbook/sheets/parts/listed-words";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningLines, planningTemplate } from "../../src/workbook/sheets/planning-template";
import { Stations } from "../../src/workbook/sheets/stations-sheet";
import { EMPTY_DATA, type TemplateData } from "../../src/workbook/sheets/template-data";
import { CSV_OF_ALL_SHEETS, converted, hasLibreOffice } from "../interchange/office";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 300_000;
const STEEL = "1095";
const [LENGTH, WIDTH, THICKNESS] = [200, 30, 4];

/** What is filled in for a section, in mm, and its area by plane geometry, mm². */
interface Filled {
  readonly edge: number;
  readonly bevel?: number;
  readonly curve?: number;
  readonly flat?: number;
  readonly rib?: number;
  readonly area: number;
  readonly asks: RegExp;
}

/** Segment of a circle over a chord: radius² (half angle - sin × cos). */
function segment(radius: number, chord: number): number {
  const half = Math.asin(chord / (2 * radius));
  return radius ** 2 * (half - Math.sin(half) * Math.cos(half));
}

/** Radius of a circle over a chord with a height: (chord² ÷ 4 + height²) ÷ 2 heights. */
const radiusOver = (chord: number, height: number) => (chord ** 2 / 4 + height ** 2) / (2 * height);

/** Slanting face of a bevel 20 mm high from 4 mm to 0.5 mm. */
const FACE = Math.hypot(20, 1.75);
const PLATE_AND_BEVEL = 10 * 4 + (20 * 4.5) / 2;

/**
 * Sections 30 mm wide and 4 mm thick by hand: trapezia, triangles and segments of circles, as any book of plane
 * geometry has them; 0.5 mm behind the edge.
 */
const BY_HAND: Readonly<Record<string, Filled>> = {
  flat: { edge: 0.5, area: (30 * 4.5) / 2, asks: /^$/ },
  "part flat": { edge: 0.5, bevel: 20, area: PLATE_AND_BEVEL, asks: /asks for the bevel height$/ },
  chisel: { edge: 0.5, bevel: 20, area: PLATE_AND_BEVEL, asks: /bevel height unless it is the whole width/ },
  hollow: {
    edge: 0.5,
    bevel: 20,
    curve: 100,
    area: PLATE_AND_BEVEL - 2 * segment(100, FACE),
    asks: /the radius of the wheel/,
  },
  convex: {
    edge: 0.5,
    bevel: 20,
    curve: 0.2,
    area: PLATE_AND_BEVEL + 2 * segment(radiusOver(FACE, 0.2), FACE),
    asks: /the height of the bulge/,
  },
  lenticular: { edge: 0.5, area: 30 * 0.5 + 2 * segment(radiusOver(30, 1.75), 30), asks: /^$/ },
  diamond: { edge: 0.5, area: (30 * 4.5) / 2, asks: /^$/ },
  hexagonal: { edge: 0.5, flat: 8, area: 8 * 4 + (22 * 4.5) / 2, asks: /the width of the flat/ },
  rectangle: { edge: 0, area: 30 * 4, asks: /has no thickness behind the edge/ },
  "t-back": {
    edge: 0.5,
    bevel: 20,
    flat: 9,
    rib: 5,
    area: PLATE_AND_BEVEL + 9 * 5,
    asks: /width and height of the rib/,
  },
};

const GRINDS = listedWords("GRINDS");
const density = densityOf(findSteel(STEEL)).value;
const filledFor = (word: string) => BY_HAND[word] ?? { edge: 0, area: Number.NaN, asks: /never/ };
const sectionOf = (grind: string, share = 1) => {
  const { edge, bevel, curve, flat, rib } = filledFor(grind);
  const scaled = (value: number | undefined) => (value === undefined ? undefined : value * share);
  return { grind, edge, bevelHeight: scaled(bevel), curve, flatWidth: scaled(flat), ribHeight: rib };
};

/** A straight bar of each section measured at two places (M), and the same tapered to three quarters of its width (T). */
function plan(): TemplateData {
  const line = (name: string, grind: string, tipWidth: number) => ({
    line: name,
    item: grind,
    use: "sword",
    steel: STEEL,
    good: 1,
    yield: 0.9,
    confidence: 0.9,
    aim: 58,
    quench: "fast oil",
    grind,
    length: LENGTH,
    width: WIDTH,
    thickness: THICKNESS,
    tipWidth,
    tipThickness: THICKNESS,
    ...filledFor(grind),
  });
  const stations = (grind: string) => {
    const { edge, bevel = 0, curve = 0, flat = 0, rib = 0 } = filledFor(grind);
    return [0, LENGTH].map((x) => [x, WIDTH, THICKNESS, edge, 0, 0, bevel, curve, flat, rib]);
  };
  return {
    ...EMPTY_DATA,
    lines: GRINDS.flatMap((grind, at) => [
      line(`M${at}`, grind, WIDTH),
      line(`T${at}`, grind, 0.75 * WIDTH),
    ]) as unknown as TemplateData["lines"],
    swords: GRINDS.map((grind, at) => ({
      name: `M${at} measured`,
      grind,
      stations: stations(grind),
    })) as unknown as TemplateData["swords"],
  };
}

let bytes: Uint8Array;
let values: StoredValues;

beforeAll(async () => {
  bytes = await planningFile(planningTemplate(plan()));
  values = await storedValues(bytes);
}, LONG);

/** What stands beside a name in the block of the n-th blade on Stations. */
function measured(at: number, label: string) {
  const rows = values.rows("Stations");
  const start = rows.findIndex((row) => row[0] === "Line" && row[1] === `M${at}`);
  const row = rows.slice(start, start + 15).find((cells) => cells.includes(label)) ?? [];
  return row[row.indexOf(label) + 1];
}

describe("sections that a drop-down offers", () => {
  const lines = planningLines(EMPTY_DATA, 2);
  const lists = new Stations(EMPTY_DATA, lines, 1).model().wordLists;

  it("are the same on Lines and on Stations, all that the functions know", () => {
    expect(lists.find(({ words }) => words.includes("flat"))?.words).toEqual(GRINDS);
    expect(lines.model().wordLists.find(({ words }) => words.includes("flat"))?.words).toEqual(GRINDS);
    expect(Object.keys(BY_HAND).sort()).toEqual([...GRINDS].sort());
  });

  describe.each(GRINDS.map((word, at) => [word, at] as const))("%s", (word, at) => {
    const { area, asks } = filledFor(word);

    it("gives the mass of geometry by hand from stations, and it reaches Lines", () => {
      const sizes = { ...sectionOf(word), width: WIDTH, thickness: THICKNESS };
      expect(sectionArea(sizes)).toBeCloseTo(area, 9);
      expect(measured(at, "Volume mm³")).toBeCloseTo(area * LENGTH, 6);
      const blade = bladeProperties(
        [0, LENGTH].map((x) => ({ ...sizes, x })),
        density,
      );
      expect(measured(at, "Blade g")).toBeCloseTo(blade.mass, 9);
      expect(values.figure("Lines", `M${at}`, "Mass g")).toBeCloseTo((area * LENGTH * density) / 1000, 6);
    });

    it("bends and rings there", () => {
      for (const label of ["Balance mm", "Inertia kg m²", "Stiffness N/mm", "Sets at N", "Rings at Hz"])
        expect(measured(at, label), label).toBeGreaterThan(0);
      expect(measured(at, "Balance mm")).toBeCloseTo(LENGTH / 2, 9);
    });

    it("gives the mass of the library from a taper on Lines", () => {
      const taper = {
        ...sectionOf(word),
        length: LENGTH,
        width: WIDTH,
        thickness: THICKNESS,
        tipWidth: 0.75 * WIDTH,
        tipThickness: THICKNESS,
      };
      const { mass } = taperedBlade(taper, density);
      expect(values.figure("Lines", `T${at}`, "Mass g")).toBeCloseTo(mass, 9);
      expect(mass).toBeLessThan((area * LENGTH * density) / 1000);
      expect(mass).toBeGreaterThan((0.7 * area * LENGTH * density) / 1000);
    });

    it("is asked for on Stations by what it needs", () => {
      const rows = values.rows("Stations");
      const start = rows.findIndex((row) => row[0] === "Line" && row[1] === `M${at}`);
      expect(String(rows[start + 1]?.[2] ?? "")).toMatch(asks);
    });
  });

  it.runIf(hasLibreOffice)(
    "show the same mass in LibreOffice, which opens the file without the functions",
    () => {
      const files = converted("grinds.xlsx", bytes, CSV_OF_ALL_SHEETS);
      const rows = String(files.get("grinds-Stations.csv")).split("\n");
      const shown = rows
        .filter((row) => /,Blade g,/.test(row))
        .map((row) => Number(/,Blade g,([\d.]+)/.exec(row)?.[1]));
      for (const [at, word] of GRINDS.entries())
        expect(shown[at], word).toBeCloseTo((filledFor(word).area * LENGTH * density) / 1000, 6);
    },
    LONG,
  );
});

describe("a section without what it needs", () => {
  it(
    "is told what that is, on Lines too",
    async () => {
      const { lines, ...rest } = plan();
      const bare = lines.map(({ bevel: _b, curve: _c, flat: _f, rib: _r, ...line }) => line);
      const model = planningTemplate({ ...rest, lines: bare as TemplateData["lines"] });
      const found = await storedValues(await planningFile(model));
      const caution = (word: string) => String(found.figure("Lines", `T${GRINDS.indexOf(word)}`, "Caution"));
      expect(caution("hollow")).toMatch(/mass: see its cell \(hollow asks for the radius of the wheel, and/);
      expect(caution("part flat")).toMatch(/part flat asks for the bevel height\)/);
      expect(caution("hexagonal")).toMatch(/hexagonal asks for the width of the flat\)/);
      expect(caution("t-back")).toMatch(/t-back asks for width and height of the rib, and/);
      expect(caution("flat")).not.toMatch(/mass:/);
    },
    LONG,
  );
});

/** What stands in the columns of Stations that are typed. */
function typedStations({ sheets }: WorkbookModel) {
  const rows = sheets.find(({ name }) => name === "Stations")?.rows ?? [];
  return rows
    .slice(3, 3 + 15 * GRINDS.length)
    .map((row) => row.slice(0, 10).map((cell) => cell?.content ?? ""));
}

describe("a plan whose Stations had fewer columns", () => {
  it(
    "is carried over by heading: what stood in the place of a new column stays behind",
    async () => {
      const model = planningTemplate(plan());
      const sheets = model.sheets.map((sheet) =>
        sheet.name === "Stations"
          ? { ...sheet, rows: sheet.rows.map((row) => [...row.slice(0, 6), ...row.slice(10)]) }
          : sheet,
      );
      const old = readLiveWorkbook(await planningFile({ ...model, sheets }));
      const grown = typedStations(carriedOver(planningTemplate(undefined, 24), old));
      const expected = typedStations(model).map((row) =>
        row.map((content, column) => (column > 5 && typeof content === "number" ? "" : content)),
      );
      expect(grown).toEqual(expected);
    },
    LONG,
  );
});
