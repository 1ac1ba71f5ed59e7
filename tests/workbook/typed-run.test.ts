import { Workbook } from "@cj-tech-master/excelts";
import { beforeAll, describe, expect, it } from "vitest";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import { neededHeights, rowOfLines } from "../../src/workbook/model/row-heights";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { columnKeys } from "../../src/workbook/sheets/lines-sheet";
import { FIRST_ROW } from "../../src/workbook/sheets/parts/table-sheet";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { partsOf } from "./hand-made";
import { type StoredValues, storedValues } from "./template-cells";
import { filledEight, type TypedPlan, typedEight } from "./typed-run";

const LONG = 300_000;

let plan: TypedPlan;
let file: Uint8Array;
let values: StoredValues;

beforeAll(async () => {
  plan = typedEight();
  file = await planningFile(plan.workbook);
  values = await storedValues(file);
}, LONG);

describe("eight lines typed into a blank plan", () => {
  it("takes 150 cells at most, and no cell shows an error on the way", () => {
    expect(plan.typed).toBeLessThanOrEqual(150);
    expect(plan.errors).toEqual([]);
  });

  it("leaves rows blank in which nothing is typed", () => {
    for (const sheet of ["Lines", "Recipe", "Cut list", "Costs", "Heat batches"]) {
      const blank = values.rows(sheet).filter((row, at) => at > 12 && row.some((cell) => cell === 0));
      expect(blank, sheet).toEqual([]);
    }
  });

  it("comes to a price of every line, and to a page of every paper", () => {
    const quoted = values.rows("Quote").filter(([line]) => /^K\d$/.test(String(line)));
    expect(quoted.map((row) => typeof row[3])).toEqual(Array(8).fill("number"));
    const pages = (sheet: string, label: string) =>
      values
        .rows(sheet)
        .filter(([first, subject]) => first === label && subject !== undefined && subject !== "");
    expect(pages("Steel order", "Supplier")).toHaveLength(3);
    expect(pages("Heat-treat order", "Batch")).toHaveLength(3);
    expect(pages("Traveller", "Line")).toHaveLength(8);
  });

  it("names the first steel on the certificate check, and says that its analysis is still to come", () => {
    const rows = values.rows("Certificate check");
    const beside = (label: string) => rows.find(([first]) => first === label);
    expect(beside("Steel")?.[1]).toBe("S1");
    expect(beside("Grade ordered")?.[1]).toBe("O1");
    expect(beside("Verdict")?.[3]).toBe("no analysis yet");
  });

  // By hand: set-ups 20 + 15 + 45 + 20 + 30 + 30 min; a fillet knife of 180 × 28 mm has 0.504 dm².
  it("works out the hours by the standard route, and they reach the costs", () => {
    expect(values.figure("Costs", "K8", "Route: set-up h")).toBeCloseTo(160 / 60, 9);
    const shares = [1, 1, 1, 0.97, 0.97 * 0.99, 0.97 * 0.99 * 0.98];
    const each = [10, 5, 10, 6, 20, 30].map(
      (minutes, at) => minutes + 0.504 * ([2, 0, 0, 1, 10, 2][at] ?? 0),
    );
    const starts = Number(values.figure("Costs", "K8", "Starts"));
    const hours = each.reduce((sum, minutes, at) => sum + minutes * (shares[at] ?? 0), 0) * (starts / 60);
    expect(values.figure("Costs", "K8", "Route: h of all starts")).toBeCloseTo(hours, 6);
    expect(values.figure("Costs", "K8", "Bench hours")).toBeCloseTo(hours, 6);
  });
});

const PAPERS = ["Quote", "Steel enquiry", "Steel order", "Heat-treat order", "Traveller", "Lines", "Recipe"];

/** Rows of a file that are lower than the texts in them. */
async function tooLow(bytes: Uint8Array, wanted: readonly string[]): Promise<string[]> {
  const { workbook } = await readWorkbook(bytes);
  const sheets = workbook.sheets.filter(({ name }) => wanted.includes(name));
  expect(sheets.map(({ name }) => name).sort()).toEqual([...wanted].sort());
  return sheets.flatMap((sheet) =>
    [...neededHeights(sheet)]
      .filter(([row, size]) => size > (sheet.rows.get(row)?.size ?? 0))
      .map(([row, size]) => `${sheet.name} row ${row + 1}: ${size}`),
  );
}

describe("papers of a plan that another program filled", () => {
  let bytes: Uint8Array;
  beforeAll(async () => {
    bytes = await filledEight();
  }, LONG);

  it(
    "have rows as high as their text, in the file and in a copy for others",
    async () => {
      expect(await tooLow(bytes, PAPERS)).toEqual([]);
      const copy = await shareCopy(bytes, {
        choice: { kind: "sheets", names: ["Traveller", "Heat-treat order"] },
      });
      expect(await tooLow(copy.bytes, ["Traveller", "Heat-treat order"])).toEqual([]);
    },
    LONG,
  );

  it(
    "print the pages that have a subject, in programs that take no formula for it too",
    async () => {
      const main = partsOf(bytes)["xl/workbook.xml"] ?? "";
      const areas = [
        ...main.matchAll(/Print_Area"[^>]*>('?(?:Traveller|Steel order|Heat-treat order)'?![^<]*)</g),
      ];
      const rows = (sheet: string) =>
        Number(/\$(\d+)$/.exec(areas.find(([, area]) => area?.includes(sheet))?.[1] ?? "")?.[1]);
      const page = (sheet: string) => {
        const all = plan.workbook.sheets.find(({ name }) => name === sheet);
        return (all?.print?.breaksAfter?.[0] ?? -1) + 1;
      };
      expect(rows("Traveller")).toBe(8 * page("Traveller"));
      expect(rows("Steel order")).toBe(3 * page("Steel order"));
      expect(rows("Heat-treat order")).toBe(3 * page("Heat-treat order"));
      expect((main.match(/name="Printed_rows"/g) ?? []).length).toBe(4);
      expect((await recalculate(bytes)).isChanged).toBe(false);
    },
    LONG,
  );

  // The demo in the workbench opens with rows of three lines of text.
  it("say the next step and the caution of a line within three lines of text", async () => {
    const { workbook } = await readWorkbook(bytes);
    const lines = workbook.sheets.find(({ name }) => name === "Lines");
    const said = [columnKeys.indexOf("next"), columnKeys.indexOf("caution")];
    const cells = (lines?.cells ?? []).filter(
      ({ row, column }) => said.includes(column) && row >= FIRST_ROW && row < FIRST_ROW + 8,
    );
    expect(cells).toHaveLength(16);
    const heights = neededHeights({ cells, columns: lines?.columns ?? new Map() });
    expect(Math.max(...heights.values())).toBeLessThanOrEqual(rowOfLines(3));
    for (const line of ["K1", "K3", "K5", "K8"])
      for (const heading of ["Next step", "Caution"])
        expect(
          String(values.figure("Lines", line, heading)).length,
          `${line} ${heading}`,
        ).toBeLessThanOrEqual(66);
  });

  it("count their pages within each paper", () => {
    const numbers = (sheet: string) =>
      values
        .rows(sheet)
        .flatMap(([, , label, page]) => (label === "Page" && page !== undefined ? [page] : []));
    expect(numbers("Steel order").filter((page) => page !== "")).toEqual(["1 of 3", "2 of 3", "3 of 3"]);
    expect(numbers("Heat-treat order").filter((page) => page !== "")).toEqual(["1 of 3", "2 of 3", "3 of 3"]);
  });

  // Eight lines of one supplier: three, three and two; the third place of the last page shows nothing, no box either.
  it("leave the place of an item that is not there without words and boxes", async () => {
    const workbook = new Workbook();
    await workbook.xlsx.load(file);
    const sheet = workbook.getWorksheet("Steel order");
    const items = values
      .rows("Steel order")
      .flatMap(([first], row) => (/^Item K\d$/.test(String(first)) ? [row] : []));
    expect(items).toHaveLength(8);
    const [seventh = 0, eighth = 0] = items.slice(6);
    const missing = eighth + (eighth - seventh);
    for (let row = missing; row < missing + (eighth - seventh); row += 1) {
      expect(values.rows("Steel order")[row]?.every((cell) => cell === "" || cell === undefined)).toBe(true);
      for (const column of [1, 2, 3, 4]) expect(sheet?.getCell(row + 1, column).border?.top).toBeUndefined();
    }
  });
});

it(
  "is made for Letter and Tabloid where that is asked",
  async () => {
    const parts = partsOf(await planningFile(planningTemplate(undefined, 1, undefined, "letter")));
    const sizes = Object.values(parts).flatMap((xml) =>
      [...xml.matchAll(/paperSize="(\d+)"/g)].map(([, size]) => size),
    );
    // ST_PaperSize, ECMA-376 Part 1, 18.3.1.63: 1 is Letter, 3 Tabloid.
    expect(new Set(sizes)).toEqual(new Set(["1", "3"]));
    const copy = await shareCopy(await planningFile(planningTemplate(undefined, 1, undefined, "letter")));
    const shared = Object.entries(partsOf(copy.bytes)).filter(([name]) => /sheet1\.xml$/.test(name));
    expect(shared[0]?.[1]).toMatch(/paperSize="[13]"/);
  },
  LONG,
);

/** Headings of cells that are typed on more than one sheet, each with the reason why that is another fact. */
const TWICE: Readonly<Record<string, string>> = {
  Line: "names the line to which a row of a list belongs",
  Batch: "names the batch in which a tested blade was hardened",
  Operation: "steps of a line of its own, beside the standard ones",
  Where: "place of a step, and whether a batch goes out of the house",
  "Set-up min": "of a step of its own, beside the standard one",
  "Minutes a piece": "of a step of its own, beside the standard one",
  Steel: "of what a supplier offers, beside that of a line",
  "Width mm": "of the bar that a supplier offers",
  "Thickness mm": "of the bar that a supplier offers",
  Yield: "of a step, beside that of the whole line",
};

describe("every fact is typed once", () => {
  it("no heading of typed cells stands on two sheets, but for those that say something else there", () => {
    const seen = new Map<string, string[]>();
    for (const { name, rows } of planningTemplate().sheets) {
      const [marks = [], headings = []] = [rows[2], rows[3]];
      headings.forEach((cell, at) => {
        if (marks[at]?.content !== "type" || marks[at]?.role !== "mark") return;
        const heading = String(cell?.content);
        seen.set(heading, [...(seen.get(heading) ?? []), name]);
      });
    }
    const twice = [...seen].filter(([, sheets]) => sheets.length > 1).map(([heading]) => heading);
    expect(twice.filter((heading) => !(heading in TWICE))).toEqual([]);
    expect(seen.size).toBeGreaterThan(60);
  });
});
