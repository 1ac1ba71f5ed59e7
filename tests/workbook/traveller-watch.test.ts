import { expect, test } from "vitest";
import { readWorkbook } from "../../src/workbook/file/read/read-workbook";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";

/** A chopper aimed into the brittle range of its steel, 230 to 370 °C (the compiled ranges of EVIDENCE), and a knife that is not. */
const LINES = [
  { line: "L1", steel: "5160", aim: 56, use: "Large camp chopper" },
  { line: "L2", steel: "1095", aim: 62, use: "Chef knife thin hard" },
];

/** The words beside "Watch", a page each. */
async function watched(): Promise<string[]> {
  const data = exampleData();
  const lines = data.lines.slice(0, LINES.length).map((line, at) => ({ ...line, ...LINES[at] }));
  const { workbook } = await readWorkbook(
    await planningFile(planningTemplate({ ...data, lines }, LINES.length)),
  );
  const cells = workbook.sheets.find(({ name }) => name === "Traveller")?.cells ?? [];
  const words = (content: unknown) => {
    const held = content as { result?: { value?: unknown }; value?: unknown } | undefined;
    return String(held?.result?.value ?? held?.value ?? "");
  };
  return cells
    .filter(({ content }) => words(content) === "Watch")
    .map(({ row, column }) => {
      const beside = cells.find((cell) => cell.row === row && cell.column === column + 1);
      return words(beside?.content);
    });
}

test("a traveller says that its temper lies in the brittle range, and of one that does not it says nothing of the kind", async () => {
  const [chopper, knife] = await watched();
  expect(chopper).toMatch(/^hardens through; temper lies in the brittle range/);
  expect(knife).not.toBe("");
  expect(knife).not.toContain("brittle");
}, 60_000);
