import { describe, expect, it } from "vitest";
import { ANSWER_FORMS } from "../../../src/workbook/answers/forms";
import type { SheetData } from "../../../src/workbook/model/workbook-data";
import { enquiryPages } from "../../../src/workbook/share/enquiry-pages";
import { forAll, forOne } from "../../../src/workbook/share/for-one";
import { withRows } from "../../../src/workbook/share/kept-rows";
import { withAnswerBy, withItemBoxes } from "../../../src/workbook/share/letter-cells";
import { ownQuote } from "../../../src/workbook/share/own-quote";
import { addressee, pagesOf, withPages } from "../../../src/workbook/share/paper-pages";
import type { AskedForm } from "../../../src/workbook/share/recipient";
import { paper, shownIn } from "./paper-cells";

// What whom concerns is plain from the papers written out here; sums are plain arithmetic.

/** Three pages: two of one supplier, one of another. */
const LETTER: SheetData = paper(
  "Steel enquiry",
  [
    ["Enquiry", "", "Page", "1 of 3"],
    ["To", "Old Quay Metals"],
    ["Item L1", "51CrV4"],
    ["Section", "8 × 30 mm"],
    ["", ""],
    ["Item L2", "1095"],
    ["Section", "3 × 40 mm"],
    ["For the forge", "", "For the supplier"],
    ["Enquiry", "", "Page", "2 of 3"],
    ["To", "Brackwater Steel Yard"],
    ["Item L3", "1075"],
    ["Section", "2.5 × 60 mm"],
    ["For the forge", "", "For Brackwater Steel Yard"],
    ["Enquiry", "", "Page", "3 of 3"],
    ["To", "old quay metals "],
    ["Item L4", "52100"],
    ["Section", "3 × 50 mm"],
  ],
  {
    print: {
      landscape: false,
      breaksAfter: [12, 7, 40],
      area: { row: 0, column: 0, lastRow: 30, lastColumn: 3 },
    },
    rows: new Map([
      [2, { size: 33 }],
      [10, { size: 44 }],
    ]),
    merged: [
      { row: 1, column: 1, lastRow: 1, lastColumn: 3 },
      { row: 9, column: 1, lastRow: 9, lastColumn: 3 },
      { row: 11, column: 0, lastRow: 14, lastColumn: 0 },
    ],
  },
);

describe("the pages of a paper", () => {
  const ends = (sheet: SheetData) => pagesOf(sheet).map(({ first, last }) => [first, last]);

  it("reach from break to break, in the order of the rows, and to the last cell", () => {
    expect(ends(LETTER)).toEqual([
      [0, 7],
      [8, 12],
      [13, 16],
    ]);
    expect(ends(paper("One", [["a"], ["b"]]))).toEqual([[0, 1]]);
    // A break behind the last row begins no page.
    expect(ends(paper("Two", [["a"], ["b"]], { print: { landscape: false, breaksAfter: [1] } }))).toEqual([
      [0, 1],
    ]);
  });

  it("hold the cells of their rows, each cell once", () => {
    const held = pagesOf(LETTER).map(({ cells }) => cells.map(({ row }) => row));
    expect(held.map((rows) => [Math.min(...rows), Math.max(...rows)])).toEqual(ends(LETTER));
    expect(pagesOf(LETTER).flatMap(({ cells }) => cells)).toEqual(LETTER.cells);
  });

  it("are addressed to whoever stands beside To", () => {
    expect(pagesOf(LETTER).map((page) => addressee(page.cells))).toEqual([
      "Old Quay Metals",
      "Brackwater Steel Yard",
      "old quay metals ",
    ]);
    expect(addressee(paper("None", [["From", "Tern Hollow Forge"]]).cells)).toBe("");
    expect(addressee(paper("None", [["To"], ["", "Old Quay Metals"]]).cells)).toBe("");
  });

  it("close up where others are left out: rows, heights, merged cells, breaks and the area that is printed", () => {
    const noted = { ...LETTER, cells: LETTER.cells.map((cell) => ({ ...cell, note: "=Costs!A9" })) };
    const [left, kept] = withPages(noted, [
      [8, 9, 10, 11, 12],
      [13, 14, 15, 16],
    ]);
    expect(shownIn(left)[0]).toEqual(["Enquiry", "Page", "2 of 3"]);
    expect(shownIn(left)[5]).toEqual(["Enquiry", "Page", "3 of 3"]);
    expect(shownIn(left)).toHaveLength(9);
    expect([kept.get(8), kept.get(16), kept.get(7)]).toEqual([0, 8, undefined]);
    expect(left.print).toEqual({
      landscape: false,
      breaksAfter: [4],
      area: { row: 0, column: 0, lastRow: 8, lastColumn: 3 },
    });
    expect([...left.rows]).toEqual([[2, { size: 44 }]]);
    expect(left.merged).toEqual([
      { row: 1, column: 1, lastRow: 1, lastColumn: 3 },
      { row: 3, column: 0, lastRow: 6, lastColumn: 0 },
    ]);
    // Formulas name the old rows.
    expect(left.cells.filter(({ note }) => note !== undefined)).toEqual([]);
  });

  it("keep no merged cells of which one end is left out, and stay on their side of the paper", () => {
    const kept = new Map([[11, 0]]);
    expect(withRows(LETTER, kept).merged).toEqual([]);
    const wide = { ...LETTER, print: { landscape: true } };
    expect(withPages(wide, [[0, 1]])[0].print).toEqual({ landscape: true, breaksAfter: [] });
    const bare = paper("Bare", [["a"], ["b"]]);
    const { print: _, ...without } = bare;
    expect(withPages(without, [[1]])[0].print).toEqual({ landscape: false, breaksAfter: [] });
    expect(withPages(LETTER, [[]])[0].print?.area?.lastRow).toBe(0);
  });
});

const form = (name: string) => {
  const found = ANSWER_FORMS.find((each) => each.name === name);
  if (found === undefined) throw new RangeError(name);
  return found;
};
const asked = (name: string, ...lines: string[]): AskedForm => ({
  form: form(name),
  lines: lines.map((line) => ({ line, whom: "", told: {} })),
});

describe("papers for one", () => {
  it("are the pages addressed to that one, however the name is spelt, and no other sheet", () => {
    const sheets = [LETTER, paper("Lines", [["all lines"]])];
    const own = forOne(
      sheets,
      { word: "supplier", name: "Old Quay Metals" },
      [asked("Answer to enquiry", "L1/51CrV4")],
      false,
    );
    expect(own.sheets.map(({ name }) => name)).toEqual(["Steel enquiry"]);
    const words = JSON.stringify(own.sheets.map(shownIn));
    expect(words).toContain("Item L1");
    expect(words).toContain("Item L4");
    expect(words).not.toContain("Brackwater");
    expect([own.moved("Steel enquiry", "B3"), own.moved("Steel enquiry", "B16")]).toEqual(["B3", "B11"]);
    for (const [sheet, cell] of [
      ["Steel enquiry", "B10"],
      ["Lines", "A1"],
      ["Steel enquiry", "no address"],
    ] as const)
      expect(own.moved(sheet, cell)).toBeUndefined();
  });

  it("are none where no page is addressed to that one", () => {
    const none = forOne(
      [LETTER],
      { word: "supplier", name: "Grey Heron Steel" },
      [asked("Answer to enquiry")],
      false,
    );
    expect(none.sheets).toEqual([]);
  });

  it("are all where nobody is named", () => {
    const all = forOne([LETTER], { word: "supplier" }, [], true);
    expect(all.sheets).toEqual([LETTER]);
    expect(all.moved("Steel enquiry", "B10")).toBe("B10");
    expect(forAll([LETTER]).moved("Lines", "A1")).toBe("A1");
  });

  it("of an enquiry carry the lines asked about, on pages numbered anew and addressed to that one", () => {
    const [left, kept] = enquiryPages(LETTER, "Grey Heron Steel", new Set(["L2/1095", "L3/1075"]));
    expect(shownIn(left)).toEqual([
      ["Enquiry", "Page", "1 of 1"],
      ["To", "Grey Heron Steel"],
      ["Item L2", "1095"],
      ["Section", "3 × 40 mm"],
      ["Item L3", "1075"],
      ["Section", "2.5 × 60 mm"],
      ["For the forge", "For the supplier"],
    ]);
    // Lines of two pages stand on one, where they fit.
    expect(left.print?.breaksAfter).toEqual([]);
    expect([kept.get(5), kept.get(2), kept.get(3), kept.get(4)]).toEqual([
      2,
      undefined,
      undefined,
      undefined,
    ]);
    const own = forOne(
      [LETTER],
      { word: "supplier", name: "Grey Heron Steel", enquiry: ["L3"] },
      [asked("Answer to enquiry", "L3/1075")],
      false,
    );
    expect(own.sheets.map((sheet) => shownIn(sheet).length)).toEqual([5]);
  });

  it("of an enquiry leave out pages without an addressee, and a place for a line that is empty", () => {
    const sheet = paper(
      "Steel enquiry",
      [
        ["To", ""],
        ["Item L1", "x"],
        ["To", "Somebody"],
        ["Item L1", "x"],
        ["", "of no line"],
        ["Item L2", "y"],
        ["Section", "2 mm"],
      ],
      { print: { landscape: false, breaksAfter: [1] } },
    );
    const [left] = enquiryPages(sheet, "One", new Set(["L2/y"]));
    expect(shownIn(left)).toEqual([
      ["To", "One"],
      ["Item L2", "y"],
      ["Section", "2 mm"],
    ]);
  });
});

/** A quote of four lines for two customers; one amount is still open. */
const QUOTE: SheetData = paper("Quote", [
  ["Quote"],
  ["For", "all customers", "12"],
  ["Address", "3 Mill Lane"],
  ["Line", "Description", "Pieces", "Price each", "Amount"],
  ["L1", "Knife", 4, 25, 100],
  ["L2", "Cleaver", 2, 30, 60],
  ["L3", "Sickle", 5, 8, 40],
  ["L4", "Axe", 1, "to agree", "to agree"],
  ["Together", "1 of the lines above not counted: still open", "", "", 200],
  ["Line", "of the terms", "", "", 7],
]);
const customer = (name: string, hasOthers: boolean, ...lines: string[]) => ({
  name,
  hasOthers,
  lines: new Set(lines),
});

describe("a quote for one customer", () => {
  it("holds that one's lines, their sum, that one's name, and another's address nowhere", () => {
    const [left, kept] = ownQuote(QUOTE, customer("Low Meadow Guild", true, "L1", "L3"));
    expect(shownIn(left)).toEqual([
      ["Quote"],
      ["For", "Low Meadow Guild", "12"],
      ["Address", "to be agreed"],
      ["Line", "Description", "Pieces", "Price each", "Amount"],
      ["L1", "Knife", 4, 25, 100],
      ["L3", "Sickle", 5, 8, 40],
      ["Together", 140],
      ["Line", "of the terms", 7],
    ]);
    expect([kept.get(6), kept.get(5)]).toEqual([5, undefined]);
    expect(left.cells.find(({ row, column }) => row === 6 && column === 1)?.content).toBeUndefined();
  });

  it("says how many of the lines are still open, and keeps the address of an only customer", () => {
    const [left] = ownQuote(QUOTE, customer("Low Meadow Guild", false, "L2", "L4"));
    expect(shownIn(left).slice(1, 3)).toEqual([
      ["For", "Low Meadow Guild", "12"],
      ["Address", "3 Mill Lane"],
    ]);
    expect(shownIn(left).at(6)).toEqual(["Together", "1 of the lines above not counted: still open", 60]);
  });

  it("is no sheet where it is laid out otherwise", () => {
    for (const rows of [[["Line"]], [["Together"]], [["Together"], ["Line"]], []]) {
      const [left, kept] = ownQuote(paper("Quote", rows), customer("A", true, "L1"));
      expect([left.cells, [...kept]]).toEqual([[], []]);
    }
    const own = forOne(
      [paper("Quote", [["Line"]]), QUOTE],
      { word: "customer", name: "Low Meadow Guild" },
      [asked("Answer to quote", "L1")],
      true,
    );
    expect(own.sheets).toHaveLength(1);
    expect(own.moved("Quote", "E9")).toBe("E6");
  });
});

describe("the cells of a letter", () => {
  it("name the day by which an answer is wanted, where the sender gave one", () => {
    const letter = paper("Steel enquiry", [
      ["Answer by", "within a week", "x"],
      ["", "Answer by", "open"],
      ["To", "a"],
    ]);
    expect(shownIn(withAnswerBy(letter, "2026-12-04"))).toEqual([
      ["Answer by", "2026-12-04", "x"],
      ["Answer by", "2026-12-04"],
      ["To", "a"],
    ]);
    expect(withAnswerBy(letter, "")).toBe(letter);
  });

  it("have boxes around the points of a line, and none around what stands between lines", () => {
    const order = paper("Heat-treat order", [
      ["Order", "of R-07"],
      ["Item L1", "knife"],
      ["Grade", "1095", "HRC", "60"],
      ["", "between"],
      ["Remarks", "none"],
      ["Item L2", "axe"],
      ["Grade", "1075"],
    ]);
    // The row between two lines has its empty cell, as rows of papers have.
    const boxed = withItemBoxes({ ...order, cells: [...order.cells, { row: 3, column: 0 }] });
    const edged = (row: number) =>
      boxed.cells.filter((cell) => cell.row === row).map(({ style }) => style?.edges?.left !== undefined);
    expect([0, 1, 2, 3, 4, 5, 6].map(edged)).toEqual([
      [false, false],
      [false, false],
      [true, true, true, true],
      [false, false],
      [false, false],
      [false, false],
      [true, true],
    ]);
    const bold = boxed.cells.filter(({ row }) => row === 2).map(({ style }) => style?.bold === true);
    expect(bold).toEqual([true, false, true, false]);
  });

  it("end the boxes of a line where other boxes begin, in whatever order the cells come", () => {
    const sheet = paper("Order", [["Item L1"], ["Grade", "1095"], ["Table", "x"], ["Below", "y"]]);
    const edges = { left: { kind: "thin", color: "#000000" } } as const;
    const cells = sheet.cells
      .map((cell) => (cell.row === 2 ? { ...cell, style: { edges } } : cell))
      .reverse();
    const boxed = withItemBoxes({ ...sheet, cells });
    const rows = boxed.cells.filter(({ style }) => style?.wraps === true).map(({ row }) => row);
    expect([...new Set(rows)]).toEqual([1]);
  });
});
