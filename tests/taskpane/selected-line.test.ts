import { describe, expect, it } from "vitest";
import { noSheet } from "../../src/host/no-sheet";
import type { FormulaChange, HostRows } from "../../src/host/port";
import { verdictOf } from "../../src/taskpane/parts/follow-line";
import {
  ANSWER_HEADINGS,
  IN_FULL,
  LINE_HEADINGS,
  lineCell,
  selectedLine,
} from "../../src/taskpane/parts/selected-line";
import { HEADINGS } from "../../src/workbook/sheets/parts/table-sheet";
import { planningLines, planningTemplate } from "../../src/workbook/sheets/planning-template";
import { EMPTY_DATA } from "../../src/workbook/sheets/template-data";
import { selected } from "../reading/sheet-port";

/** Rows by their number in the sheet. */
type Rows = Readonly<Record<number, HostRows[number]>>;

const BOOK: Readonly<Record<string, Rows>> = {
  Lines: {
    4: [
      "Line",
      "Item",
      "Steel",
      "Use",
      "Aim HRC",
      "Against the band",
      "Chance of the band",
      "HRC low",
      "HRC high",
    ],
    5: ["L1", "Chef knife", "52100", "Chef knife", 60, "likely inside", 0.874, 59, 62],
    6: ["L2", "Machete", "1075", null, 49],
  },
  Recipe: {
    4: ["Line", "Blade", "Cautions in full"],
    5: ["L1", "Chef knife", "The hardness is an estimate. Temper twice."],
    6: ["L3", "Another line in its row", "Not of this line."],
  },
  Costs: { 4: ["Line", "Cost"], 7: ["L2", 90] },
};

function read(reference: string): HostRows | null {
  const [, sheet = "", first = "", last = ""] =
    /^(\w+)![A-Z]+(\d+):[A-Z]+(\d+)$/.exec(reference.replaceAll("'", "")) ?? [];
  const rows = BOOK[sheet];
  if (rows === undefined) return null;
  return Array.from(
    { length: Number(last) - Number(first) + 1 },
    (_, at) => rows[Number(first) + at] ?? [null],
  );
}

/** A host with a workbook of two sheets and one selected cell. */
const port = (address: string) => ({
  ...noSheet,
  selection: async () => selected("", "", { address }),
  readValues: async (references: readonly string[]) => references.map(read),
});

describe("a cell of the selected line", () => {
  it("is found below its heading and written as a constant", async () => {
    const written: FormulaChange[] = [];
    const writing = {
      ...port("Costs!B7"),
      replaceFormulas: async (changes: readonly FormulaChange[]) => written.push(...changes),
    };
    const cell = await lineCell(writing, "steel");
    expect([cell?.line, cell?.held]).toEqual(["L2", "1075"]);
    await cell?.write("5160");
    // L2 stands in row 6, its steel in the third column; rows and columns count from 0.
    expect(written).toEqual([{ sheet: "Lines", row: 5, column: 2, formula: "5160" }]);
  });

  it("is none off the run", async () => {
    expect(await lineCell(port("Nowhere!A9"), "steel")).toBeNull();
  });
});

describe("the line that the selection stands on", () => {
  it("is the row of the Lines sheet, blank cells left out", async () => {
    expect(await selectedLine(port("Lines!D6"))).toEqual({
      name: "L2",
      facts: { item: "Machete", steel: "1075", target: "49" },
      answers: {},
      cautions: "",
    });
  });

  it("comes with its cautions in full where their sheet has the line in its row", async () => {
    expect((await selectedLine(port("Lines!D5")))?.cautions).toBe(
      "The hardness is an estimate. Temper twice.",
    );
    expect((await selectedLine(port("Lines!D6")))?.cautions).toBe("");
  });

  it("is found by its name from any other sheet of the plan", async () => {
    expect((await selectedLine(port("Costs!B7")))?.name).toBe("L2");
  });

  it("comes with what the sheet answers, as sentences", async () => {
    const line = await selectedLine(port("Lines!A5"));
    expect(line === null ? [] : verdictOf(line)).toEqual([
      "Band: likely inside, chance 87 %",
      "Expected after the temper: 59 to 62 HRC",
    ]);
    const words = { status: "not assessed", low: "not assessed", high: "not assessed" };
    const answers = { ...words, next: "mend the steel", caution: "none" };
    expect(verdictOf({ name: "L9", facts: {}, answers, cautions: "" })).toEqual([
      "Band: not assessed",
      "Next: mend the steel",
    ]);
  });

  it("is none above the table, on a blank row and on a sheet without lines", async () => {
    for (const address of ["Lines!A2", "Lines!A9", "Costs!B8", "Other!B7"]) {
      expect(await selectedLine(port(address)), address).toBeNull();
    }
  });

  it("reads its cautions below a heading of the Recipe sheet", () => {
    const sheet = planningTemplate(EMPTY_DATA).sheets.find(({ name }) => name === IN_FULL.sheet);
    expect(sheet?.rows[HEADINGS]?.map((cell) => cell?.content)).toContain(IN_FULL.heading);
  });

  it("reads headings that the Lines sheet has", () => {
    const headings = planningLines(EMPTY_DATA, 1)
      .model()
      .rows[HEADINGS]?.map((cell) => cell?.content);
    for (const heading of [...Object.values(LINE_HEADINGS), ...Object.values(ANSWER_HEADINGS)])
      expect(headings).toContain(heading);
  });
});
