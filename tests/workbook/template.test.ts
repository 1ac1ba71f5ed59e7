import { beforeAll, describe, expect, it } from "vitest";
import { columnOf } from "../../src/formula/addresses";
import { type Recalculation, recalculate } from "../../src/workbook/file/patch/recalculate";
import type { WorkbookModel } from "../../src/workbook/model/sheet-model";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";
import { partsOf } from "./hand-made";
import { type StoredValues, storedValues } from "./template-cells";

const LONG = 240_000;

interface Written {
  readonly model: WorkbookModel;
  readonly bytes: Uint8Array;
  readonly again: Recalculation;
}

async function write(model: WorkbookModel): Promise<Written> {
  const bytes = await planningFile(model);
  return { model, bytes, again: await recalculate(bytes) };
}

let demo: Written;
let empty: Written;
let stored: StoredValues;

beforeAll(async () => {
  demo = await write(planningTemplate(exampleData()));
  empty = await write(planningTemplate());
  stored = await storedValues(demo.bytes);
}, LONG);

/** A formula that fills cells: its own column and the last of those that it fills. */
const FILLING = /<c r="([A-Z]+)\d+"[^>]* cm="1"[^>]*><f t="array" ref="[A-Z]+\d+:([A-Z]+)\d+"/g;

const figure = (...asked: Parameters<StoredValues["figure"]>) => stored.figure(...asked);

describe("the file", () => {
  it("holds values that a recalculation leaves as they are, in both forms", () => {
    for (const { again } of [demo, empty]) {
      expect(again).toMatchObject({ isChanged: false, changed: 0, repaired: 0, left: [], cutShort: [] });
      expect(again.errors).toEqual([]);
      expect(again.formulas).toBeGreaterThan(1000);
    }
  });

  it("names our functions as Excel finds them and spills in hidden columns alone", () => {
    const sheets = Object.entries(partsOf(demo.bytes)).filter(([name]) => name.includes("worksheets/sheet"));
    expect(sheets.length).toBe(demo.model.sheets.length + 1);
    for (const [name, xml] of sheets) {
      expect(xml, name).not.toMatch(/<f[^>]*>[^<]*BLADE\.[A-Z]/);
      const filling = [...xml.matchAll(FILLING)];
      expect(xml.match(/ cm=|<f t="array"/g) ?? [], name).toHaveLength(2 * filling.length);
      const hidden = [...xml.matchAll(/<col min="(\d+)"[^>]*hidden="1"/g)].map(([, at]) => Number(at) - 1);
      for (const column of filling.flatMap(([, ...ends]) => ends.map(columnOf)))
        expect(hidden, name).toContain(column);
    }
    expect(sheets.map(([, xml]) => xml).join("")).toContain("_xldudf_BLADE_TREATMENT(");
  });

  it("makes the list of the rack once for all rows of Steel choice", () => {
    const sheet = demo.model.sheets.find(({ name }) => name === "Steel choice");
    const asking = (sheet?.rows ?? []).flatMap((cells) =>
      cells.flatMap((cell, column) =>
        /BLADE\.STEELS_FOR\(.*:.*\)/.test(String(cell?.content ?? "")) ? [column] : [],
      ),
    );
    expect(asking).toHaveLength(1);
    expect(sheet?.hiddenColumns).toEqual(expect.arrayContaining(asking));
  });

  it("asks for no calculation on opening and prints one page wide", () => {
    const parts = partsOf(demo.bytes);
    expect(parts["xl/workbook.xml"]).not.toMatch(/fullCalcOnLoad|forceFullCalc/);
    for (const [name, xml] of Object.entries(parts)) {
      if (!/worksheets\/sheet\d+\.xml$/.test(name)) continue;
      expect(xml, name).toMatch(/<pageSetUpPr[^>]*fitToPage="1"/);
      expect(xml, name).toMatch(/<pageSetup[^>]*fitToHeight="0"/);
      expect(xml, name).not.toMatch(/fitToWidth="(?!1")/);
    }
  });

  it("has its drop-downs, tables and status colours", () => {
    const parts = partsOf(demo.bytes);
    const lines = parts["xl/worksheets/sheet2.xml"] ?? "";
    expect(lines).toMatch(/<dataValidation [^>]*type="list"[^>]*sqref="C5:C12"/);
    expect(lines).toContain("<conditionalFormatting");
    expect(lines).toMatch(/<pane [^>]*state="frozen"/);
    expect(Object.keys(parts).filter((name) => name.startsWith("xl/tables/")).length).toBeGreaterThan(10);
  });
});

describe("the invented run", () => {
  // Smallest n with P(good of n at the line's yield) >= 0.9 by the binomial distribution, summed term by term in
  // Python's integers (math.comb): 24 at 0.92 -> 28, 40 at 0.95 -> 44, 12 at 0.95 -> 14, 6 and 8 at 0.90 -> 8 and 10,
  // 4 at 0.85 -> 6.
  it.each([
    ["L1", 28],
    ["L2", 44],
    ["L3", 14],
    ["L4", 8],
    ["L5", 10],
    ["L6", 6],
  ])("starts enough of %s", (line, starts) => {
    expect(figure("Cut list", line, "Starts")).toBe(starts);
  });

  it("holds the rack against a line: what fits first, what cannot be last with its reason", () => {
    const rows = stored.rows("Steel choice").slice(13);
    const named = rows.filter(([steel]) => steel !== undefined && steel !== "none").slice(0, 6);
    // L1 is a thin chef knife: bearing steel before spring steel (common practice, no source); of two that the oil
    // hardens no deeper than the edge the cheaper comes first.
    expect(named.map(([, steel]) => steel)).toEqual(["52100", "80CrV2", "C60", "1075", "5160", "51CrV4"]);
    expect(named.map(([, , status]) => status).slice(4)).toEqual(["ruled out", "ruled out"]);
    expect(named[0]?.[15]).toMatch(/^Usually named for this use/);
    expect(named[4]?.[15]).toMatch(/not the trade's choice for this use/);
    expect(figure("Steel choice", "1075", "Mill's figures")).toBe("FAIL: Mn high");
  });

  it("leads from the enquiry to the steel of the rack for each line", () => {
    const first = (line: string) => String(figure("Enquiry", line, "Of the rack fits first"));
    expect(first("L1")).toMatch(/^52100: /);
    expect(first("L5")).toBe("5160: likely inside");
    expect(first("L6")).toBe("5160: likely inside");
  });

  // Bars by hand: (3000 - 10 + 1.2) / (length + 1.2) whole pieces a bar: 346 -> 8, 241 -> 12, 611 -> 4, 128 -> 23;
  // starts over that, rounded up: 28/8 -> 4, 44/12 -> 4, 14/4 -> 4, 8/23 -> 1.
  it.each([
    ["L1", 8, 4],
    ["L2", 12, 4],
    ["L3", 4, 4],
    ["L4", 23, 1],
  ])("cuts %s from bars", (line, pieces, bars) => {
    expect(figure("Cut list", line, "Pieces a bar")).toBe(pieces);
    expect(figure("Cut list", line, "Bars to buy")).toBe(bars);
  });

  // By hand: bars 4 x 3 m x 50 x 3 mm at the density of 52100, 7.81 g/cm3 (ASM Handbook Volume 1, from memory), 9 a kg
  // = 126.52; hours of 28 pieces = sum of 2.4 n^(log2 0.95) = 56.271; set-up 5.5 h; 28 x 6.5; 24 x 11; 24 x 2.2;
  // overhead 17 (56.271 + 5.5) = 1050.11.
  it("costs L1 as by hand", () => {
    expect(figure("Costs", "L1", "Steel")).toBeCloseTo(4 * 3 * 0.05 * 0.003 * 7810 * 9, 2);
    expect(figure("Costs", "L1", "Bench hours")).toBeCloseTo(56.271, 3);
    expect(figure("Costs", "L1", "Labour")).toBeCloseTo(2701.01, 1);
    expect(figure("Costs", "L1", "Set-up")).toBe(264);
    expect(figure("Costs", "L1", "Overhead")).toBeCloseTo(1050.11, 1);
    const energy = Number(figure("Costs", "L1", "Energy"));
    const total = 126.52 + 2701.01 + 264 + 182 + 264 + 52.8 + 1050.11 + energy;
    expect(figure("Costs", "L1", "Cost of the line")).toBeCloseTo(total, 1);
    expect(figure("Costs", "L1", "Price")).toBeCloseTo(total / 24 / 0.65, 1);
  });

  // Common practice, no source: bands of the uses 59-62, 56-59, 45-52, 46-52, 50-54 HRC; an edge is too thin to test.
  it("finds the planted faults of the readings", () => {
    const rows = stored.rows("Hardness readings");
    const column = rows[3]?.indexOf("Status") ?? -1;
    expect(rows.slice(4, 11).map((row) => [row[0], String(row[column]).split(":")[0]])).toEqual([
      ["R-07-L1-03", "inside"],
      ["R-07-L1-07", "CHECK"],
      ["R-07-L2-11", "TWICE"],
      ["R-07-L3-02", "too hard"],
      ["R-07-L5-01", "inside"],
      ["R-07-L6-04", "too hard"],
      ["R-07-L2-11", "TWICE"],
    ]);
  });

  it("finds the other planted faults, and no more", () => {
    const rows = stored.rows("Checks").filter((row) => row[3] === "CHECK");
    expect(rows.map(([what, , found]) => [what, found])).toEqual([
      ["Steels without a heat number", 1],
      ["Mill's figures that fail", 1],
      ["Steel received that needs a look", 4],
      ["Hardened lots that fail", 2],
      ["Prices too old", 1],
      ["Quantities changed since the order", 1],
      ["Readings above the band", 2],
      ["Readings where the steel is too thin", 1],
      ["Blade numbers used twice", 2],
      ["Lots that fail inspection", 2],
      ["Prices above the ceiling", 1],
      ["Hours that do not go with the route", 3],
    ]);
    expect(figure("Steel and heats", "S3", "Mill's figures")).toMatch(/^FAIL: .*Mn high/);
    expect(figure("Steel and heats", "S2", "Mill's figures")).toMatch(/^CHECK: no heat number/);
    // The cover counts what the sheet of checks finds.
    const checks = stored.rows("Checks").filter((row) => row[3] === "OK" || row[3] === "CHECK");
    const beside = stored.rows("Cover").find(([label]) => label === "Checks")?.[1];
    expect(beside).toBe(`CHECK: ${rows.length} of ${checks.length} need a look`);
  });

  // By count: six lines, none with a rate for its labour. A price without labour would be no price.
  it("says so where a cost leaves out steel or labour", async () => {
    const { cover, costs, ...run } = exampleData();
    const { hourRate: _, ...rest } = cover;
    const values = await storedValues(
      await planningFile(planningTemplate({ ...run, cover: rest, costs: costs.slice(0, 1) })),
    );
    const found = values
      .rows("Checks")
      .find(([what]) => what === "Lines whose cost leaves out steel or labour");
    expect(found?.slice(2, 4)).toEqual([6, "CHECK"]);
    const quoted = values.rows("Quote").filter(([line]) => /^L\d$/.test(String(line)));
    expect(quoted.filter((row) => row[3] === "to be agreed")).toHaveLength(6);
    // Hours that nobody typed are those of the route: 44 starts of L2, the steps of its route one by one.
    const steps = values.rows("Route").filter(([line]) => line === "L2");
    const minutes = steps.reduce((sum, row) => sum + Number(row[5]) * Number(row[6]), 0);
    expect(values.figure("Costs", "L2", "Bench hours")).toBeCloseTo(minutes / 60, 6);
    expect(values.figure("Costs", "L2", "Hours against the route")).toBe("OK");
  });

  it("gives every blade a number of its own on the travellers", () => {
    const texts = stored.rows("Traveller").flat().map(String);
    const starts = [28, 44, 14, 8, 10, 6];
    expect(texts.filter((text) => text.endsWith(": tick when good"))).toEqual(
      starts.map((last, at) => `R-07-L${at + 1}-01 to -${String(last).padStart(2, "0")}: tick when good`),
    );
    const boxes = texts.flatMap((text) =>
      [...text.matchAll(/\[ {2}\] (\d\d)\b/g)].map(([, number]) => Number(number)),
    );
    expect(boxes).toEqual(starts.flatMap((last) => Array.from({ length: last }, (_, at) => at + 1)));
  });
});

describe("papers that go out", () => {
  /** Points and what stands in them, of the pages that have a subject. */
  function fieldsOf(sheet: string) {
    const rows = stored.rows(sheet);
    const begins = rows.flatMap((row, at) => (row[2] === "Page" ? [at] : []));
    const filled = begins.filter((at) => (rows[at]?.[1] ?? "") !== "");
    const each = (begins[1] ?? rows.length) - (begins[0] ?? 0);
    const shown = filled.flatMap((at) => rows.slice(at, at + each - 2));
    return shown.flatMap((row) =>
      [0, 2].map((column) => [String(row[column] ?? ""), String(row[column + 1] ?? "")] as const),
    );
  }

  // What an order to a steel supplier has to say, and one to a heat treater: fields of trade practice (purchasing
  // pages of heat treaters, EN 10204 for certificates); common practice where none of them names it.
  const STEEL_ORDER =
    "Order no.|Run, revision|To|Delivery by|Delivery terms|Packing|Price|Certificate|Heat number|Substitution|Grade, standard|Form|Thickness × width|Bars|Tolerance|Condition|Surface|Grain, straightness";
  const HEAT_TREAT =
    "Order no.|Run, revision|To|Part|Pieces, mass each|Mass in all|Due back|Contact|Grade|Standard|Heat no.|Prior condition|Stress relieved|Thickest as sent|Edge as sent|Overall as sent|Process|Protection|Preheat|Austenitise|Soak|Quench|Clay|Sub-zero|Tempers, suggested|Temper within|Normalise first|Hardens through|Aim HRC|HRC low to high|Test method|Place of test|Pieces tested|Straightness|Straightening|Decarburised skin|Surface, edges|Marks|Furnace chart|Actual treatment|Readings|Certificate|Price";

  // Lines of the run: five are bought from two suppliers, the sixth lies in the rack; two are hardened outside.
  it.each([
    ["Steel order", STEEL_ORDER, "Grade, standard", 5],
    ["Heat-treat order", HEAT_TREAT, "Grade", 2],
  ])("fill every point of the %s, or leave it open by name", (sheet, points, first, count) => {
    const fields = fieldsOf(sheet);
    const named = fields.filter(([label, value]) => label === first && value !== "");
    expect(named).toHaveLength(count);
    for (const point of points.split("|")) {
      const values = fields.filter(([label, value]) => label === point && value !== "");
      const once = fields.filter(([label]) => label === first).length;
      const all = fields.filter(([label]) => label === point).length;
      expect(all, point).toBeGreaterThan(0);
      // A place of a line that is not taken stays empty; a point of the page or of a line in use never.
      expect(values.length, point).toBeGreaterThanOrEqual(all === once ? count : all);
    }
  });

  it("says nothing to a supplier that is another's: no price of before, no heat, no line in the rack", () => {
    const words = stored.rows("Steel order").flat().map(String);
    const heats = ["TH-4471", "TH-2290", "TH-1183", "TH-6035", "TH-6102"];
    expect(words.filter((text) => heats.includes(text))).toEqual([]);
    expect(words.filter((text) => /^(Price a kg|Heat no\. of last delivery)$/.test(text))).toEqual([]);
    expect(words).not.toContain("L6");
    expect(words).toContain("ground all over, no decarburised skin");
  });

  it("says nothing to the customer that is the shop's", () => {
    const words = stored.rows("Quote").flat().map(String);
    expect(words.filter((text) => /CHANGED|Planning workbook|in mm/.test(text))).toEqual([]);
    expect(words).toContain("Tern Hollow Forge");
  });

  // °F = °C x 1.8 + 32; a tolerance is a difference, 10 °C being 18 °F.
  it.each(["Heat-treat order", "Traveller"])("print every temperature of the %s in both scales", (sheet) => {
    const texts = stored
      .rows(sheet)
      .flat()
      .map(String)
      // The axis of the order's curve has one scale; the temper that the curve marks is printed in both.
      .filter((text) => text.includes("°C") && text !== "Temper °C");
    expect(texts.length).toBeGreaterThan(7);
    for (const text of texts) {
      const pairs = [...text.matchAll(/(± )?(\d+) °C \((\d+) °F\)/g)];
      expect(pairs.length, text).toBe(text.split("°C").length - 1);
      for (const [, difference, celsius, fahrenheit] of pairs)
        expect(Number(fahrenheit), text).toBe(Math.round(Number(celsius) * 1.8 + (difference ? 0 : 32)));
    }
  });

  it.each(["Quote", "Steel order", "Heat-treat order", "Certificate check", "Traveller"])(
    "tell the reader of the %s to follow local codes",
    (sheet) => {
      const texts = stored
        .rows(sheet)
        .flat()
        .map((text) => String(text).toLowerCase());
      expect(texts.some((text) => text.includes("follow local codes and licensed practice"))).toBe(true);
    },
  );
});
