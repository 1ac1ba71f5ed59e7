import { beforeAll, expect, test } from "vitest";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";

/**
 * A chopper aimed into the brittle range of its steel, 230 to 370 °C (the compiled ranges of EVIDENCE), a knife that is
 * not, and a sword aimed under the band of its use.
 */
const LINES = [
  { line: "L1", steel: "5160", aim: 56, use: "Large camp chopper" },
  { line: "L2", steel: "1095", aim: 62, use: "Chef knife thin hard" },
  { line: "L3", steel: "51CrV4", aim: 48, use: "European sword sharp" },
];

const words = (content: unknown) => {
  const held = content as { result?: { value?: unknown }; value?: unknown } | undefined;
  return String(held?.result?.value ?? held?.value ?? "");
};

let sheets: Awaited<ReturnType<typeof readWorkbook>>["workbook"]["sheets"];

beforeAll(async () => {
  const data = exampleData();
  const lines = data.lines.slice(0, LINES.length).map((line, at) => ({ ...line, ...LINES[at] }));
  const file = await planningFile(planningTemplate({ ...data, lines }, LINES.length));
  sheets = (await readWorkbook(file)).workbook.sheets;
}, 60_000);

const cellsOf = (sheet: string) => sheets.find(({ name }) => name === sheet)?.cells ?? [];

test("a traveller says that its temper lies in the brittle range, and of one that does not it says nothing of the kind", () => {
  const cells = cellsOf("Traveller");
  const [chopper, knife] = cells
    .filter(({ content }) => words(content) === "Watch")
    .map((label) => cells.find(({ row, column }) => row === label.row && column === label.column + 1))
    .map((beside) => words(beside?.content));
  expect(chopper).toMatch(/^hardens through; temper lies in the brittle range/);
  expect(knife).not.toBe("");
  expect(knife).not.toContain("brittle");
});

test("a quote tells the customer of an aim beside the band, and only of that", () => {
  const told = cellsOf("Quote").flatMap(({ content }) => /\d+–\d+ HRC.*$/.exec(words(content))?.[0] ?? []);
  expect(told).toEqual(["54–57 HRC", "59–62 HRC", "50–54 HRC, 48 HRC expected: agree first"]);
});
