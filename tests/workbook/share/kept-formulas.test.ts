import { expect, it } from "vitest";
import { KeptSheets } from "../../../src/workbook/share/kept-sheets";
import { keptSheets } from "../../../src/workbook/share/shared-sheets";
import { data, figure, formula, links, live, row, text } from "./live";

// A formula goes along as the text of a note where all that it names and reads can be seen in the copy.

const STYLES =
  '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="1"><numFmt numFmtId="172" formatCode=";;;"/></numFmts><fonts count="1"><font/></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="172"/></cellXfs></styleSheet>';
const TABLE = (id: number, name: string) =>
  `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="${id}" name="${name}" displayName="${name}" ref="A1:B2"><tableColumns count="2"><tableColumn id="1" name="steel"/><tableColumn id="2" name="pieces"/></tableColumns></table>`;

const NAMES = {
  Aim: "Plan!$B$1",
  Area: "Plan!$B$1:$C$3",
  Quoted: "'Plan'!$B$1",
  Wide: "'My plan'!AB12",
  Hidden_row: "Plan!$A$4",
  Rate: "48.3",
  Word: '"secret"',
  Sum_name: "SUM(Plan!$B$1:$B$2)",
  Cost: "Costs!$A$1",
  Bare: "$B$1",
  Columns_name: "Plan!$B:$B",
  Itself: "Itself",
};

/** What of the sheets Plan and My plan is shared may travel with a formula on Plan; Plan hides a row and a cell. */
function travels(typed: string, hides: boolean, kept: readonly string[] = ["Plan", "My plan"]): boolean {
  const rows = [
    row(1, text("A1", "steel"), figure("B1", 58), formula("C1", typed)),
    row(2, figure("B2", 2)),
    ...(hides
      ? ['<row r="4" hidden="1"><c r="A4"><v>4</v></c></row>', row(5, figure("A5", 7, ' s="1"'))]
      : []),
  ];
  const book = live({
    sheets: {
      Plan: data(...rows),
      "My plan": data(row(12, figure("AB12", 3))),
      Costs: data(row(1, figure("A1", 9))),
    },
    names: NAMES,
    styles: STYLES,
    parts: {
      "xl/worksheets/_rels/sheet1.xml.rels": links(["rId1", "table", "../tables/table1.xml"]),
      "xl/worksheets/_rels/sheet3.xml.rels": links(["rId1", "table", "../tables/table2.xml"]),
      "xl/tables/table1.xml": TABLE(1, "Blades"),
      "xl/tables/table2.xml": TABLE(2, "Rates"),
    },
  });
  const [found] = book.sheets[0]?.formulas.values() ?? [];
  if (found === undefined) throw new RangeError("no formula");
  return new KeptSheets(book, keptSheets(book, kept)).mayTravel(found);
}

it.each([
  ["B1*2", true],
  ["SUM(B1:B2)+'My plan'!AB12", true],
  ["plan!B1", true],
  ["Costs!A1", false],
  ["Costs!A1:A2", false],
  ["SUM(Costs!A:A)", false],
  ["SUM(Costs!1:1)", false],
  ["SUM(B:B)", true],
  ["SUM(1:1)", true],
  ["SUM(Plan:Costs!A1)", false],
  ["[1]Prices!A1", false],
  // Names stand for cells that are shared, or stay behind with what they hold.
  ["Aim*2", true],
  ["aim*2", true],
  ["SUM(Area)", true],
  ["Quoted", true],
  ["Wide", true],
  ["Rate*2", false],
  ["Word", false],
  ["Sum_name", false],
  ["Cost", false],
  ["Bare", false],
  ["SUM(Columns_name)", false],
  ["Itself", false],
  ["Nobody", false],
  ["IF(TRUE,1,FALSE)", true],
  ["if(true,1,false)", true],
  ["TRUELY", false],
  ["NOTTRUE", false],
  ["Rate(1)", false],
  ["_xlfn.LET(_xlpm.x,B1,_xlpm.x*2)", true],
  // Tables.
  ["SUM(Blades[pieces])", true],
  ["SUM(blades[pieces])", true],
  ["SUM(Rates[pieces])", false],
  // Texts name no sheet that stays behind.
  ['"see costs"&B1', false],
  ['"see COSTS"', false],
  ['"see cost"', true],
  // What reads wherever a text tells it may read what stays behind.
  ['INDIRECT("B1")', false],
  ["OFFSET(B1,1,0)", false],
  ["FORMULATEXT(B1)", false],
  ['CELL("address",B1)', false],
] as const)("=%s: %s", (typed, may) => {
  expect(travels(typed, false)).toBe(may);
});

it.each([
  ["B1*2", true],
  ["SUM(A1:B2)", true],
  ["A4+1", false],
  ["SUM(A1:A9)", false],
  ["SUM(Hidden_row)", false],
  ["A5*2", false],
  ["SUM(A5:A6)", false],
  ["SUM(A6:A7)", true],
  // Of a sheet that hides something, whole rows, columns and tables may hold it.
  ["SUM(B:B)", false],
  ["SUM(1:1)", false],
  ["SUM(Blades[pieces])", false],
  ["SUM('My plan'!B:B)", true],
  ["SUM('My plan'!2:3)", true],
  ["'My plan'!AB12", true],
] as const)("beside a hidden row and a cell that shows nothing, =%s: %s", (typed, may) => {
  expect(travels(typed, true)).toBe(may);
});

it("where every sheet is shared with nothing hidden, what reads anywhere reads what is shared", () => {
  const all = ["Plan", "My plan", "Costs"];
  expect(travels('INDIRECT("B1")', false, all)).toBe(true);
  expect(travels('"see costs"&Costs!A1', false, all)).toBe(true);
  expect(travels("Cost+SUM(Rates[pieces])", false, all)).toBe(true);
  expect(travels("Rate", false, all)).toBe(false);
  expect(travels('INDIRECT("B1")', true, all)).toBe(false);
});
