import { unzipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { patchWorkbook } from "../../src/workbook/file/patch/patch-workbook";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { verifyCopy } from "../../src/workbook/share/verify/verify-copy";
import { partsOf } from "../workbook/hand-made";
import { faultsOf } from "../workbook/packages";
import { filledEight } from "../workbook/typed-run";
import { hasLibreOffice, hasPdfToText, printed, wordsOf } from "./office";

// The tempering curve in the heat-treat order as a chart of the file: part names, types and links by ECMA-376 Part 1,
// 12.3.8 (drawing), 14.2.1 (chart), 21.2 (DrawingML charts). A 6150 blade for a sword: range 50 to 54 HRC is the use's.

const LONG = 300_000;
const CHART_TYPE = "application/vnd.openxmlformats-officedocument.drawingml.chart+xml";
const DRAWING_TYPE = "application/vnd.openxmlformats-officedocument.drawing+xml";
let plan: Uint8Array;

beforeAll(async () => {
  plan = await filledEight();
}, LONG);

const chartsIn = (bytes: Uint8Array) =>
  Object.entries(partsOf(bytes)).filter(([name]) => /^xl\/charts\/chart[^/]*\.xml$/.test(name));

/** What the series of a chart name: cells with their sheet. */
const placesIn = (xml: string) => [...xml.matchAll(/<c:f>([^<]*)<\/c:f>/g)].map(([, place]) => place ?? "");

describe("the tempering curve in the heat-treat order", () => {
  it("is a chart part, declared and linked, for every page", () => {
    const parts = partsOf(plan);
    const charts = chartsIn(plan);
    expect(charts.length).toBe(8);
    expect(faultsOf(plan)).toEqual([]);
    const types = parts["[Content_Types].xml"] ?? "";
    for (const [name] of charts) expect(types).toContain(`PartName="/${name}" ContentType="${CHART_TYPE}"`);
    expect(types).toContain(`ContentType="${DRAWING_TYPE}"`);
    const [, first = ""] = charts[0] ?? [];
    expect(first.match(/<c:smooth val="1"\/>/g)).toHaveLength(1);
    expect(first).toContain("<a:t>Temper °C</a:t>");
    expect(first).toContain("<a:t>HRC</a:t>");
    // No figures are kept in the chart: it shows its cells.
    expect(first).not.toMatch(/Cache>|<c:v>/);
  });

  it("is drawn from cells of the order that hold the curve, the range, the aim and the temper ordered", async () => {
    const { workbook } = await readWorkbook(plan);
    const order = workbook.sheets.find(({ name }) => name === "Heat-treat order");
    const shown = (column: number, row: number) => {
      const content = order?.cells.find((cell) => cell.row === row && cell.column === column)?.content;
      const held = content !== undefined && "formula" in content ? content.result : content;
      return held !== undefined && "value" in held ? held.value : undefined;
    };
    const [, xml = ""] = chartsIn(plan)[1] ?? [];
    const places = placesIn(xml);
    expect(places.every((place) => place.startsWith("'Heat-treat order'!$"))).toBe(true);
    const headings = Number(/\$G\$(\d+)$/.exec(places[0] ?? "")?.[1]) - 1;
    expect(shown(6, headings)).toBe("likely HRC, 6150");
    expect(shown(7, headings)).toBe("range low 50 HRC");
    expect(shown(8, headings)).toBe("range high 54 HRC");
    const likely = Array.from({ length: 11 }, (_, at) => Number(shown(6, headings + 1 + at)));
    expect(likely).toEqual([...likely].sort((a, b) => b - a));
    const ordered = shown(10, headings + 6);
    const celsius = Number(shown(5, headings + 6));
    expect(shown(10, headings)).toBe(`ordered ${celsius} °C (${Math.round(celsius * 1.8 + 32)} °F)`);
    expect(Math.abs(Number(ordered) - Number(shown(9, headings + 1)))).toBeLessThan(1);
  });

  it(
    "stays byte for byte when cells are changed and calculated",
    async () => {
      const changes = new Map([["Lines", [{ row: 4, column: 1, content: { value: "Other name" } }]]]);
      const { bytes } = await patchWorkbook(plan, changes);
      const anew = await recalculate(bytes);
      const drawn = (file: Uint8Array) =>
        Object.entries(unzipSync(file)).filter(([name]) => /^xl\/(?:charts|drawings)\//.test(name));
      expect(drawn(anew.bytes)).toEqual(drawn(plan));
      expect(faultsOf(anew.bytes)).toEqual([]);
    },
    LONG,
  );

  it(
    "is added to an opened file when it is put into the sheet, beside what the file has",
    async () => {
      const cell = (row: number, column: number, value: string | number) => ({
        row,
        column,
        content: { value },
      });
      const table = [
        ["temper, °C", "low, HRC", "likely, HRC", "high, HRC"],
        [150, 62, 64, 66],
        [200, 60, 62, 64],
        [250, 57, 59, 61],
      ];
      const typed = table.flatMap((cells, row) =>
        cells.map((value, column) => cell(200 + row, 60 + column, value)),
      );
      const changes = new Map([["Quote", [...typed, cell(200, 66, "Curve of BI201:BL204")]]]);
      const { bytes } = await patchWorkbook(plan, changes);
      expect(faultsOf(bytes)).toEqual([]);
      expect(chartsIn(bytes)).toHaveLength(9);
      const [, xml = ""] = chartsIn(bytes).find(([, text]) => text.includes("Quote!$BK$202:$BK$204")) ?? [];
      expect(placesIn(xml)).toContain("Quote!$BI$202:$BI$204");
      const before = unzipSync(plan);
      for (const [name] of chartsIn(plan)) expect(unzipSync(bytes)[name]).toEqual(before[name]);
      // It goes with its words, and no other does.
      const without = await patchWorkbook(bytes, new Map([["Quote", [{ row: 200, column: 66 }]]]));
      expect(faultsOf(without.bytes)).toEqual([]);
      expect(chartsIn(without.bytes)).toEqual(chartsIn(plan));
    },
    LONG,
  );

  it(
    "goes along in the copy for the heat treater, and names no sheet that stays behind",
    async () => {
      const copy = await shareCopy(plan, {
        choice: { kind: "for", whom: "heat-treater", name: "Salt Lane Heat Treatment" },
      });
      const charts = chartsIn(copy.bytes);
      expect(charts.length).toBeGreaterThan(0);
      expect(copy.travels).toContain(`Charts: ${charts.length}, each drawn from cells of its own sheet`);
      for (const [, xml] of charts)
        for (const place of placesIn(xml)) expect(place).toMatch(/^'Heat-treat order'!\$/);
      const parts = Object.entries(partsOf(copy.bytes)).filter(([name]) =>
        /^xl\/(?:charts|drawings)\//.test(name),
      );
      for (const [name, xml] of parts) expect(xml, name).not.toMatch(/Lines|Recipe|Costs|Heat batches/);
      expect(faultsOf(copy.bytes)).toEqual([]);
      const done = await verifyCopy(plan, copy.bytes);
      expect(done).toMatchObject({ isSound: true, differences: [] });
    },
    LONG,
  );

  it.runIf(hasLibreOffice && hasPdfToText)(
    "opens in LibreOffice as a chart with its names",
    async () => {
      const pages = wordsOf(await printed("plan.xlsx", plan))
        .split("\f")
        .filter((page) => /Forge +Heat-treat order/.test(page));
      expect(pages).toHaveLength(3);
      for (const page of pages) {
        expect(page).toMatch(/likely HRC, \w+/);
        expect(page).toMatch(/ordered \d+ °C/);
        expect(page).toContain("Temper °C");
        // The whole of the paper is on its page: chart, report, signatures.
        expect(page).toContain("For the treater, date");
      }
    },
    LONG,
  );
});
