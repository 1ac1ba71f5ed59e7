import { beforeAll, describe, expect, it } from "vitest";
import { ANSWER_FORMS, fieldsOf } from "../../../src/workbook/answers/forms";
import { type Plan, planOf } from "../../../src/workbook/answers/lines-asked";
import { type LiveWorkbook, readLiveWorkbook } from "../../../src/workbook/file/read/live-workbook";
import { COLORS } from "../../../src/workbook/model/colors";
import type { SheetData } from "../../../src/workbook/model/workbook-data";
import { Asking } from "../../../src/workbook/share/asking";
import type { Choice } from "../../../src/workbook/share/audience";
import {
  formsAsked,
  linesToAsk,
  namesKnown,
  papersToAsk,
  readRecipient,
  recipientNamed,
  recipientWords,
} from "../../../src/workbook/share/recipient";
import { shareQuestion } from "../../../src/workbook/share/share-question";
import { keptSheets, sharedSheets } from "../../../src/workbook/share/shared-sheets";
import { PRIVATE_SHEETS } from "../../../src/workbook/sheets/sheets-of-the-plan";
import { planR07 } from "../answers/plans";
import { data, live, made, row, text } from "./live";

// Whom the invented run R-07 buys from, sends to and makes for, as its own data says it.

const OLD_QUAY = "Old Quay Metals";
const PAPERS = ["Steel enquiry", "Steel order"];

let bytes: Uint8Array;
let book: LiveWorkbook;
let plan: Plan;

beforeAll(async () => {
  bytes = await planR07();
  book = readLiveWorkbook(bytes);
  const found = planOf(book);
  if (found === undefined) throw new RangeError("the run is no plan");
  plan = found;
}, 300_000);

describe("a recipient", () => {
  it("is told in words and read from them again", () => {
    for (const [one, words] of [
      [{ word: "supplier" }, "Steel supplier"],
      [{ word: "supplier", name: OLD_QUAY }, "Steel supplier: Old Quay Metals"],
      [{ word: "heat-treater", name: "Salt: Lane" }, "Heat treater: Salt: Lane"],
      [{ word: "customer" }, "Customer"],
    ] as const) {
      expect(recipientWords(one)).toBe(words);
      expect(readRecipient(words)).toEqual(one);
    }
    expect(recipientWords({ word: "nobody" })).toBe("nobody");
    expect(readRecipient("Steel supplier: A", "all")).toEqual({ word: "supplier", name: "A", enquiry: [] });
    expect(readRecipient("Steel supplier: A", "L1, L4")).toEqual({
      word: "supplier",
      name: "A",
      enquiry: ["L1", "L4"],
    });
    for (const words of [
      "sheets chosen by name",
      "",
      "A Steel supplier",
      "Steel suppliers",
      "Steel supplier:A",
    ])
      expect(readRecipient(words), words).toBeUndefined();
  });

  it("is whom the plan names, spelt as it is there", () => {
    expect(namesKnown(plan, "supplier").sort()).toEqual(["Brackwater Steel Yard", OLD_QUAY]);
    expect(namesKnown(plan, "heat-treater")).toEqual(["Salt Lane Heat Treatment"]);
    expect(namesKnown(plan, "nobody")).toEqual([]);
    expect(recipientNamed(plan, "supplier", { name: " OLD quay metals " }, PAPERS)).toEqual({
      word: "supplier",
      name: OLD_QUAY,
    });
    expect(recipientNamed(plan, "supplier", { name: "old quay metals", enquiry: ["L1"] }, PAPERS)).toEqual({
      word: "supplier",
      name: OLD_QUAY,
      enquiry: ["L1"],
    });
  });

  it("whom the plan does not buy from gets an enquiry, about all lines unless some are named", () => {
    const named = (name: string, enquiry?: readonly string[], papers = PAPERS) =>
      recipientNamed(plan, "supplier", { name, ...(enquiry && { enquiry }) }, papers);
    expect(named(" Grey Heron Steel ")).toEqual({ word: "supplier", name: "Grey Heron Steel", enquiry: [] });
    expect(named("Grey Heron Steel", ["L2"])).toEqual({
      word: "supplier",
      name: "Grey Heron Steel",
      enquiry: ["L2"],
    });
    expect(() => named("  ")).toThrow('nothing for a steel supplier called "". It knows: ');
    // An order alone asks nobody.
    expect(() => named("Grey Heron Steel", undefined, ["Steel order"])).toThrow(
      /The plan has nothing for a steel supplier called "Grey Heron Steel"\. It knows: .*Old Quay Metals/,
    );
    expect(() => named("A", ["L1"], ["Steel order"])).toThrow(
      "Lines are chosen for an enquiry to a steel supplier",
    );
    expect(() => recipientNamed(plan, "customer", { name: "A", enquiry: ["L1"] }, ["Quote"])).toThrow(
      "not for a customer",
    );
    expect(() => recipientNamed(undefined, "customer", { name: "A" }, ["Quote"])).toThrow(
      "Lines of one customer alone can be told only in a planning workbook",
    );
    const bare = { ...plan, sheets: new Map() };
    expect(() => recipientNamed(bare, "heat-treater", { name: "A" }, [])).toThrow("It names nobody.");
  });

  it("gets the forms of the papers that travel, with the lines that concern that one", () => {
    const asked = (name: string | undefined, papers: readonly string[], enquiry?: readonly string[]) =>
      formsAsked(plan, { word: "supplier", ...(name && { name }), ...(enquiry && { enquiry }) }, papers).map(
        ({ form, lines }) => `${form.name}: ${lines.map(({ line }) => line).join(" ")}`,
      );
    expect(asked(OLD_QUAY, PAPERS)).toEqual([
      "Answer to enquiry: L4/S4 L5/S5",
      "Answer to order: L4/S4 L5/S5",
    ]);
    expect(asked(OLD_QUAY, ["Steel order"])).toEqual(["Answer to order: L4/S4 L5/S5"]);
    expect(asked(undefined, ["Steel enquiry"])).toEqual(["Answer to enquiry: L1/S1 L2/S2 L3/S3 L4/S4 L5/S5"]);
    expect(asked("Grey Heron Steel", PAPERS)).toEqual([]);
    expect(asked("Grey Heron Steel", PAPERS, [])).toEqual([
      "Answer to enquiry: L1/S1 L2/S2 L3/S3 L4/S4 L5/S5",
    ]);
    expect(asked(OLD_QUAY, PAPERS, [" l1 ", "L4"])).toEqual(["Answer to enquiry: L1/S1 L4/S4"]);
    expect(asked(OLD_QUAY, ["Quote"])).toEqual([]);
    expect(() => asked(OLD_QUAY, PAPERS, ["L1", " L9"])).toThrow(
      'The plan buys no steel for a line "L9". It does for: L1, L2, L3, L4, L5.',
    );
    const [enquiry] = ANSWER_FORMS;
    const bare = { ...plan, sheets: new Map() };
    expect(enquiry?.name).toBe("Answer to enquiry");
    expect(() => formsAsked(bare, { word: "supplier", enquiry: ["L1"] }, PAPERS)).toThrow(
      "It buys none at all.",
    );
  });

  it("of a kind can be asked about lines with the papers that ask anybody", () => {
    expect(linesToAsk(plan, "supplier", PAPERS)).toEqual(["L1", "L2", "L3", "L4", "L5"]);
    expect(linesToAsk(plan, "supplier", ["Steel order"])).toEqual([]);
    expect(linesToAsk(plan, "customer", ["Quote"])).toEqual([]);
    expect(papersToAsk("supplier", PAPERS)).toEqual(["Steel enquiry"]);
    expect(papersToAsk("heat-treater", PAPERS)).toEqual([]);
  });
});

describe("what a copy asks", () => {
  const sheetsOf = (names: readonly string[]) => sharedSheets(book, keptSheets(book, names), new Map());
  const asking = (
    choice: Choice,
    more: { readonly by?: string; readonly date?: string } = {},
    papers = PAPERS,
  ) => new Asking(book, papers, { choice, ...more });
  const forOne: Choice = { kind: "for", whom: "supplier", name: "old quay metals" };
  const words = (sheets: readonly SheetData[]) => JSON.stringify(sheets.map(({ cells }) => cells));

  it("is known by its audience and its enquiry", () => {
    const told = (choice: Choice) => {
      const { audience, enquiry, hasMovedRows } = asking(choice);
      return [audience, enquiry, hasMovedRows];
    };
    expect(told({ kind: "all" })).toEqual(["", "", false]);
    expect(told({ kind: "sheets", names: PAPERS })).toEqual(["", "", false]);
    expect(told({ kind: "for", whom: "supplier" })).toEqual(["Steel supplier", "", false]);
    expect(told(forOne)).toEqual(["Steel supplier: Old Quay Metals", "", true]);
    expect(told({ ...forOne, enquiry: ["L1", "L4"] } as Choice)).toEqual([
      "Steel supplier: Old Quay Metals",
      "L1, L4",
      true,
    ]);
    expect(told({ kind: "for", whom: "supplier", name: "Grey Heron Steel" })).toEqual([
      "Steel supplier: Grey Heron Steel",
      "all",
      true,
    ]);
    const given = new Asking(book, PAPERS, { choice: { kind: "all" }, recipient: { word: "supplier" } });
    expect(given.audience).toBe("Steel supplier");
  });

  it("stands on papers with that one's rows, the day by which an answer is wanted, and boxes", () => {
    const all = sheetsOf([...PAPERS, "Lines"]);
    const own = asking(forOne, { by: "2026-12-04" }).ownSheets(all);
    expect(own.sheets.map(({ name }) => name)).toEqual(PAPERS);
    expect(words(own.sheets)).toContain("2026-12-04");
    expect(words(own.sheets)).not.toContain("Brackwater");
    expect(words(asking(forOne).ownSheets(all).sheets)).toContain("within a week");
    // Without a name every row of every sheet travels.
    expect(asking({ kind: "for", whom: "supplier" }).ownSheets(all).sheets).toHaveLength(3);
    expect(asking({ kind: "all" }).ownSheets(all).sheets).toBe(all);
  });

  it("is asked in tables, with every other cell locked and without the shade of cells to fill in", async () => {
    const shaded = sheetsOf(PAPERS).map((sheet) => ({
      ...sheet,
      cells: [
        ...sheet.cells,
        { row: 900, column: 0, style: { fill: COLORS.yours, bold: true } },
        { row: 901, column: 0, style: { fill: "#123456" } },
        { row: 902, column: 0 },
      ],
    }));
    const choice = asking(forOne, { by: "2026-12-04" });
    const { sheets, asked } = await choice.withTables(shaded);
    expect(sheets.map(({ name, isProtected }) => [name, isProtected])).toEqual([
      ["Steel enquiry", true],
      ["Steel order", true],
      ["Answer to enquiry", true],
      ["Answer to order", true],
    ]);
    const styleAt = (at: number) => sheets[0]?.cells.find((cell) => cell.row === at)?.style;
    expect(styleAt(900)).toEqual({ bold: true });
    expect(styleAt(901)).toEqual({ fill: "#123456" });
    expect(sheets[0]?.cells.find((cell) => cell.row === 902)).toEqual({ row: 902, column: 0 });
    const whom = (of: readonly SheetData[]) =>
      of.flatMap(({ cells }) =>
        cells.flatMap(({ row: at, content }) =>
          content !== undefined && "value" in content && content.value === "Asked of" ? [at] : [],
        ),
      );
    expect(whom(sheets).length).toBe(2);
    expect(words(sheets.slice(2))).toContain(OLD_QUAY);
    const all = await asking({ kind: "for", whom: "supplier" }).withTables(shaded);
    expect(words(all.sheets.slice(2))).not.toContain(OLD_QUAY);
    expect(asked?.by).toBe("2026-12-04");
    expect(asked?.number).toMatch(/^[0-9A-Z]{8}$/);
    const counts = ["Answer to enquiry", "Answer to order"].map((name) => {
      const form = ANSWER_FORMS.find((each) => each.name === name);
      return form === undefined ? 0 : fieldsOf(form, plan.elements).length;
    });
    const key = (mark: string, line: string) => `${mark}-${asked?.number}/${line}`;
    expect(asked?.lines).toEqual([
      [key("E", "L4/S4"), "Answer to enquiry", counts[0]],
      [key("E", "L5/S5"), "Answer to enquiry", counts[0]],
      [key("O", "L4/S4"), "Answer to order", counts[1]],
      [key("O", "L5/S5"), "Answer to order", counts[1]],
    ]);
    expect(words(sheets)).toContain(OLD_QUAY);
  });

  it("has a number that another day, another date or other values change", async () => {
    const sheets = sheetsOf(PAPERS);
    const number = async (more: { by?: string; date?: string }, of = sheets, choice: Choice = forOne) =>
      (await asking(choice, more).withTables(of)).asked?.number;
    const first = await number({});
    expect(await number({})).toBe(first);
    const [one, ...rest] = sheets;
    const other = one === undefined ? [] : [{ ...one, cells: one.cells.slice(1) }, ...rest];
    const numbers = [
      await number({ by: "2026-12-04" }),
      await number({ date: "2026-11-29" }),
      await number({}, other),
      await number({}, sheets, { kind: "for", whom: "supplier" }),
      await number({}, sheets, { kind: "for", whom: "supplier", name: "Brackwater Steel Yard" }),
    ];
    expect(new Set([first, ...numbers]).size).toBe(6);
  });

  it("is nothing where sheets are chosen by name, or the workbook is no plan", async () => {
    const sheets = sheetsOf(PAPERS);
    expect(await asking({ kind: "sheets", names: PAPERS }).withTables(sheets)).toEqual({ sheets });
    const plain = live({ sheets: { "Steel order": data(row(1, text("A1", "bars"))) } });
    const none = new Asking(plain, ["Steel order"], { choice: { kind: "for", whom: "supplier" } });
    expect([none.audience, (await none.withTables([])).asked]).toEqual(["Steel supplier", undefined]);
    expect(none.ownSheets(sheets).sheets).toBe(sheets);
  });
});

describe("the question before a copy is made", () => {
  it("offers everybody whom the plan has papers for, each by name and all of a kind, and never all sheets", () => {
    const { offers, enquiries, sheets } = shareQuestion(bytes, "plan.xlsx");
    expect(offers.map(({ label }) => label)).toEqual([
      ...namesKnown(plan, "supplier").map((name) => `Steel supplier ${name} alone`),
      "Steel supplier",
      "Heat treater Salt Lane Heat Treatment alone",
      "Heat treater",
      ...namesKnown(plan, "customer").map((name) => `Customer ${name} alone`),
      "Customer",
    ]);
    for (const { word, sheets: own } of offers)
      expect(own).toEqual(
        { supplier: PAPERS, "heat-treater": ["Heat-treat order"], customer: ["Quote"] }[word],
      );
    expect(offers.filter(({ name }) => name === undefined)).toHaveLength(3);
    expect(enquiries).toEqual([
      {
        word: "supplier",
        label: "Steel supplier",
        sheets: ["Steel enquiry"],
        lines: ["L1", "L2", "L3", "L4", "L5"],
      },
    ]);
    expect(sheets).toContain("Traveller");
    expect(sheets.filter((name) => PRIVATE_SHEETS.has(name.toLowerCase()))).toEqual([]);
    expect(PRIVATE_SHEETS.size).toBeGreaterThan(0);
  });

  it("offers nobody where a workbook has no paper, and makes the copy of the sheets that are chosen", async () => {
    const question = shareQuestion(
      made({ sheets: { Plan: data(row(1, text("A1", "x"))), More: data() } }),
      "a.xlsx",
    );
    expect([question.offers, question.enquiries, question.sheets]).toEqual([[], [], ["Plan", "More"]]);
    const copy = await question.copy({ kind: "sheets", names: ["Plan"] }, "2026-11-29");
    expect(copy.sheets).toEqual(["Plan"]);
    expect(copy.travels.at(-1)).toContain('name of the workbook "a.xlsx", date "2026-11-29"');
  });
});
