import { Workbook } from "@cj-tech-master/excelts";
import { unzipSync } from "fflate";
import { beforeAll, expect, it } from "vitest";
import { readRowKey } from "../../../src/workbook/answers/copy-number";
import { type ShareCopy, shareCopy } from "../../../src/workbook/share/share-copy";
import { verifyCopy } from "../../../src/workbook/share/verify/verify-copy";
import { planningFile } from "../../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../../src/workbook/sheets/planning-template";
import { exampleData } from "../../../src/workbook/sheets/template-data";
import { faultsOf } from "../packages";
import { planR07 } from "./plans";

// Copies that ask for answers, read by another .xlsx library and by a zip library, not by ours.

const LONG = 300_000;
const SUPPLIERS = ["Brackwater Steel Yard", "Old Quay Metals"];

let r07: Uint8Array;

beforeAll(async () => {
  r07 = await planR07();
}, LONG);

const copyFor = (plan: Uint8Array, whom: string, name?: string): Promise<ShareCopy> =>
  shareCopy(plan, { choice: { kind: "for", whom, ...(name && { name }) }, by: "2026-10-01" });

async function read(bytes: Uint8Array): Promise<Workbook> {
  const workbook = new Workbook();
  await workbook.xlsx.load(bytes);
  return workbook;
}

/** All that a file says, its parts unpacked. */
const wordsIn = (bytes: Uint8Array) =>
  Object.values(unzipSync(bytes))
    .map((part) => new TextDecoder().decode(part))
    .join("\n");

/** The cells of an .xlsx that are not locked, as the other library sees it. */
function unlocked(workbook: Workbook): string[] {
  return workbook.worksheets.flatMap((sheet) =>
    Array.from({ length: sheet.rowCount }, (_, row) =>
      Array.from({ length: sheet.columnCount }, (__, column) => sheet.getCell(row + 1, column + 1)),
    )
      .flat()
      .filter(({ protection }) => protection?.locked === false)
      .map(({ address }) => `${sheet.name}!${address}`),
  );
}

it(
  "asks a supplier about that one's lines alone, in cells that are the only ones not locked",
  async () => {
    const { bytes, travels } = await copyFor(r07, "supplier", "old quay metals");
    expect(faultsOf(bytes)).toEqual([]);
    const workbook = await read(bytes);
    // The papers stand upright; a table of a dozen columns is read across.
    expect(workbook.worksheets.slice(0, 4).map(({ pageSetup }) => pageSetup?.orientation)).toEqual([
      "portrait",
      "portrait",
      "landscape",
      "landscape",
    ]);
    expect(workbook.worksheets.map(({ name }) => name)).toEqual([
      "Steel enquiry",
      "Steel order",
      "Answer to enquiry",
      "Answer to order",
      "Provenance",
    ]);
    const parts = Object.entries(unzipSync(bytes)).filter(([name]) => name.startsWith("xl/worksheets/sheet"));
    for (const [name, part] of parts)
      expect(new TextDecoder().decode(part), name).toContain('<sheetProtection sheet="1"');
    const order = workbook.getWorksheet("Answer to order");
    const lines = [5, 6].map((row) => order?.getCell(row, 2).value);
    // Of R-07's lines L4 and L5 are bought from that supplier; L6 is cut from the bars that L5 leaves.
    expect(lines).toEqual(["L4", "L5"]);
    const open = unlocked(workbook);
    expect(open.filter((cell) => !cell.startsWith("Answer to"))).toEqual([]);
    // Of the head the name's three cells, merged, and the day on each sheet; then eight and twenty columns of two lines.
    expect(open).toHaveLength(2 * (3 + 1) + 2 * (8 + 20));
    expect(travels.join("\n")).toContain("Cells for an answer: 56 in 4 lines");
    expect(String(order?.getCell("C2").value)).toContain("by 2026-10-01");
    expect(order?.getCell("I4").note).toBeDefined();
  },
  LONG,
);

it(
  "tells a copy by a number that is the same whenever it is made again, and each line by its key",
  async () => {
    const [first, again] = [
      await copyFor(r07, "heat-treater", "Salt Lane Heat Treatment"),
      await copyFor(r07, "heat-treater", "Salt Lane Heat Treatment"),
    ];
    expect(again.digest).toBe(first.digest);
    const workbook = await read(first.bytes);
    const keys = ["Answer to heat treatment", "Readings by piece"].flatMap((name) => {
      const sheet = workbook.getWorksheet(name);
      return Array.from({ length: (sheet?.rowCount ?? 4) - 4 }, (_, at) =>
        String(sheet?.getCell(at + 5, 1).value),
      );
    });
    const read_ = keys.map((key) => readRowKey(key));
    expect(read_.every((key) => key !== undefined)).toBe(true);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(read_.map((key) => key?.number)).size).toBe(1);
    const provenance = workbook.getWorksheet("Provenance");
    const words = JSON.stringify(provenance?.getSheetValues());
    for (const key of keys) expect(words).toContain(key);
    expect(words).toContain(read_[0]?.number);
  },
  LONG,
);

// Figures that only the smith may know, each with digits that stand nowhere else in a file.
const MARKED = {
  hourRate: 48.31707,
  overheadRate: 17.31711,
  energyPrice: 0.3171317,
} as const;
const MARKED_MARGIN = 0.3531719;
const MARKED_PRICE = 7.317231;

function markedPlan(): Promise<Uint8Array> {
  const data = exampleData();
  return planningFile(
    planningTemplate({
      ...data,
      cover: { ...data.cover, ...MARKED },
      costs: data.costs.map((row) => [...row.slice(0, 7), MARKED_MARGIN]),
      prices: data.prices.map(([, date]) => [MARKED_PRICE, date ?? null]),
    }),
  );
}

it(
  "lets no private figure and nobody else's name travel, and the copy made for one verifies",
  async () => {
    const plan = await markedPlan();
    const marks = [...Object.values(MARKED), MARKED_MARGIN, MARKED_PRICE].map(String);
    const everybody = [...SUPPLIERS, "Salt Lane Heat Treatment", "Marrow", "Low Meadow Guild"];
    expect(marks.filter((mark) => wordsIn(plan).includes(mark))).toEqual(marks);
    const asked = [
      ["supplier", "Brackwater Steel Yard"],
      ["supplier", "Old Quay Metals"],
      ["heat-treater", "Salt Lane Heat Treatment"],
      ["customer", "Marrow & Kettle Provisions"],
      ["customer", "Low Meadow Guild"],
    ] as const;
    for (const [whom, name] of asked) {
      const { bytes } = await copyFor(plan, whom, name);
      expect(faultsOf(bytes)).toEqual([]);
      const words = wordsIn(bytes);
      expect(
        marks.filter((mark) => words.includes(mark)),
        name,
      ).toEqual([]);
      const others = everybody.filter((other) => !name.startsWith(other) && words.includes(other));
      expect(others, name).toEqual([]);
      if (name === "Low Meadow Guild" || whom === "heat-treater")
        expect(await verifyCopy(plan, bytes)).toMatchObject({ isSound: true, isAltered: false, answers: 0 });
    }
  },
  LONG,
);

it("says whom the plan knows where somebody else is named", async () => {
  await expect(copyFor(r07, "heat-treater", "Nobody Ltd")).rejects.toThrow(
    'The plan has nothing for a heat treater called "Nobody Ltd". It knows: Salt Lane Heat Treatment.',
  );
});
