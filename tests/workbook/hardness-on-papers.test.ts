import { beforeAll, expect, test } from "vitest";
import { printedSheet } from "../../src/workbench/print/printed-pages";
import { ANSWER_FORMS } from "../../src/workbook/answers/forms";
import { linesAsked, planOf } from "../../src/workbook/answers/lines-asked";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";

/** Steels with an aim that no temper of theirs reaches, but for 1095. The last two lines are hardened outside. */
const WANTED: readonly (readonly [steel: string, aim: number])[] = [
  ["O1", 67],
  ["420", 60],
  ["316", 50],
  ["1095", 60],
  ["420", 60],
  ["O1", 67],
];
const CAN_BE_HAD = 3;

function planFile(): Promise<Uint8Array> {
  const data = exampleData();
  const lines = data.lines.slice(0, WANTED.length).map((line, at) => {
    const [steel = "", aim = 0] = WANTED[at] ?? [];
    return { ...line, line: `L${at + 1}`, item: `Knife ${steel}`, steel, aim, use: "Chef knife thin hard" };
  });
  return planningFile(planningTemplate({ ...data, lines }, 6));
}

/** What a cell shows: its value, or what its formula came to. */
function shownText(content: unknown): string {
  const held = content as { result?: { value?: unknown; error?: string }; value?: unknown } | undefined;
  return String(held?.result?.value ?? held?.result?.error ?? held?.value ?? "");
}

/** Texts of a sheet, a row a line. */
async function papersIn(bytes: Uint8Array): Promise<ReadonlyMap<string, readonly string[]>> {
  const read = await readWorkbook(bytes);
  return new Map(
    read.workbook.sheets.map(({ name, cells }) => {
      const rows: string[] = [];
      for (const { row, content } of cells) rows[row] = `${rows[row] ?? ""} | ${shownText(content)}`;
      return [name, rows.filter((row) => row !== undefined)];
    }),
  );
}

let file: Uint8Array;
let sheets: ReadonlyMap<string, readonly string[]>;

beforeAll(async () => {
  file = await planFile();
  sheets = await papersIn(file);
}, 120_000);

test("no quote promises a hardness that the tool does not answer for", () => {
  const quote = (sheets.get("Quote") ?? []).filter((row) => row.includes("Knife "));
  const promised = quote.map((row) => /\d+–\d+ HRC/.exec(row)?.[0]);
  expect(promised).toEqual(WANTED.map((_, at) => (at === CAN_BE_HAD ? "59–62 HRC" : undefined)));
  expect(quote.filter((row) => row.includes("hardness to be agreed"))).toHaveLength(WANTED.length - 1);
});

test("no traveller asks for one", () => {
  const pages = (sheets.get("Traveller") ?? [])
    .join("\n")
    .split(/ \| Line \| /)
    .slice(1);
  const fields = pages.map((page) =>
    ["HRC low to high", "Aim HRC"].map((name) => page.split(` | ${name} | `)[1]?.split(" | ")[0]?.trim()),
  );
  const open = ["hardness to be agreed", "to be agreed"];
  expect(fields).toEqual(WANTED.map((_, at) => (at === CAN_BE_HAD ? ["59–62", "60"] : open)));
});

test("no order to the heat treater asks for one", () => {
  const rows = sheets.get("Heat-treat order") ?? [];
  const asked = rows.flatMap(
    (row) => / \| (?:HRC low to high|Aim HRC) \| ([^|]+) /.exec(row)?.[1]?.trim() ?? [],
  );
  const filled = asked.filter((words) => words !== "");
  expect(filled.length).toBeGreaterThan(1);
  for (const words of filled) expect(words).toMatch(/^(?:hardness )?to be agreed$/);
});

test("no table on which the heat treater answers asks for one", () => {
  const plan = planOf(readLiveWorkbook(file));
  if (plan === undefined) throw new RangeError("the file is no plan");
  for (const name of ["Answer to heat treatment", "Readings by piece"]) {
    const form = ANSWER_FORMS.find((each) => each.name === name);
    const asked = form === undefined ? [] : linesAsked(plan, form).map(({ told }) => told["HRC asked"]);
    expect(asked.length, name).toBeGreaterThan(1);
    expect(new Set(asked), name).toEqual(new Set(["to be agreed"]));
  }
});

test("an order asks for the blades back on a day to be agreed, not on the day of the customer", () => {
  const days = (sheets.get("Heat-treat order") ?? []).flatMap(
    (row) => / \| Due back \| ([^|]+) /.exec(row)?.[1]?.trim() ?? [],
  );
  expect(new Set(days.filter((day) => day !== ""))).toEqual(new Set(["to be agreed"]));
});

test("labels inside a print area are no inputs of a copy", async () => {
  const copy = await shareCopy(file, { choice: { kind: "for", whom: "heat-treater" } });
  expect(copy.travels.join(" ")).toContain(", 0 typed inputs and 0 errors");
}, 120_000);

/** A hardness that words ask for or promise: a figure with the scale behind it, or beside a label that ends in it. */
const HARDNESS = /\d+(?:[.,–-]\d+)*\s*HRC|(?:HRC|HRC low to high)\s*\|\s*\d{2}(?:[.,–-]\d+)*/g;
/** What a steel reaches is an answer of the tool, and no hardness that is asked for. */
const REACHED = /reaches \d+ to \d+ HRC/g;
const hardnessIn = (rows: readonly string[]) => rows.join("\n").replace(REACHED, "").match(HARDNESS) ?? [];

test("no copy for a supplier, a heat treater or a customer asks for one or promises one", async () => {
  for (const [whom, sheet, own] of [
    ["supplier", "Steel order", []],
    ["heat-treater", "Heat-treat order", []],
    ["customer", "Quote", ["59–62 HRC"]],
  ] as const) {
    const { bytes } = await shareCopy(file, { choice: { kind: "for", whom } });
    const copied = await papersIn(bytes);
    expect([...copied.keys()], whom).toContain(sheet);
    const found = [...copied].flatMap(([, rows]) => hardnessIn(rows));
    expect([...new Set(found)], whom).toEqual(own);
  }
}, 240_000);

test("no paper that the page prints asks for one or promises one, whichever of its pages", async () => {
  const { workbook } = await readWorkbook(file);
  for (const [name, own] of [
    ["Steel enquiry", []],
    ["Steel order", []],
    ["Heat-treat order", []],
    ["Traveller", ["HRC low to high | 59–62", "HRC | 60"]],
    ["Quote", ["59–62 HRC"]],
  ] as const) {
    const sheet = workbook.sheets.find((each) => each.name === name);
    if (sheet === undefined) throw new RangeError(name);
    const shown = new Map(
      sheet.cells.map(({ row, column, content }) => [`${row} ${column}`, shownText(content)]),
    );
    const { pages } = printedSheet(sheet, (row, column) => shown.get(`${row} ${column}`) ?? "");
    const rows = pages.flatMap((page) =>
      page.rows.map(({ cells }) => cells.map(({ text }) => text).join(" | ")),
    );
    expect(rows.length, name).toBeGreaterThan(3);
    const asked = hardnessIn(rows).map((words) => words.replace(/\s+/g, " "));
    expect([...new Set(asked)], name).toEqual(own);
  }
});
