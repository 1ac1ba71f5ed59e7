import { expect, it } from "vitest";
import { shownDifferently } from "../../../src/workbook/share/verify/shown";
import { data, figure, links, live, row, text } from "./live";

// What a sheet shows beside its values, by the rules of SpreadsheetML (ECMA-376 Part 1, 18); each case changes one thing.

const style = (font: string, fill: string, format = 0) =>
  `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="2"><numFmt numFmtId="170" formatCode="0.0\\ &quot;HRC&quot;"/><numFmt numFmtId="171" formatCode="0.0 HRC"/></numFmts><fonts count="2"><font><sz val="11"/></font><font>${font}</font></fonts><fills count="3"><fill/><fill/><fill>${fill}</fill></fills><borders count="1"><border/></borders><cellXfs count="2"><xf numFmtId="0" fontId="0" fillId="0"/><xf numFmtId="${format}" fontId="1" fillId="2" applyFill="1"/></cellXfs></styleSheet>`;
const solid = (color: string) => `<patternFill patternType="solid"><fgColor rgb="FF${color}"/></patternFill>`;
const PLAIN = style('<sz val="11"/>', "");

interface Case {
  readonly sheet?: string;
  readonly styles?: string;
  readonly parts?: Readonly<Record<string, string>>;
}

const CELLS = data(
  row(1, text("A1", "HRC"), figure("B1", 58, ' s="1"')),
  row(2, text("A2", "pieces"), figure("B2", 24), '<c r="C2" s="1"/>', text("D2", "")),
);
const book = ({ sheet = CELLS, styles = PLAIN, parts = {} }: Case) =>
  live({ sheets: { Order: sheet, Other: data() }, styles, parts });

/** What is found of a copy in which one thing is otherwise, as `place: as made → in the copy`. */
function found(copy: Case, made: Case = {}): string[] {
  return shownDifferently(book(made), book(copy)).map(
    ({ sheet, cell, text: words }) =>
      `${sheet} ${cell}: ${words.replace("as made: ", "").replace("; in the copy: ", " → ")}`,
  );
}

const changed = (from: string | RegExp, to: string): Case => {
  const sheet = CELLS.replace(from, to);
  if (sheet === CELLS) throw new RangeError(`nothing changed: ${from}`);
  return { sheet };
};

it("is nothing where nothing is otherwise, and styles of empty cells do not count", () => {
  expect(found({})).toEqual([]);
  expect(found(changed('<c r="C2" s="1"/>', ""))).toEqual([]);
  const colored = { styles: style("", solid("00FF00")) };
  expect(found({ ...changed('<c r="C2" s="1"/>', '<c r="C2"/>'), ...colored }, colored)).toEqual([]);
});

it("is the number format of a filled cell, told alike however a program spells it", () => {
  const spelt = [170, 171].map((format) => style('<sz val="11"/>', "", format));
  expect(found({ styles: spelt[0] ?? "" })).toEqual(["Order B1 look: format general → format 0.0 hrc"]);
  expect(found({ styles: spelt[0] ?? "" }, { styles: spelt[1] ?? "" })).toEqual([]);
});

it("is its colour, letters struck out, and letters that cannot be seen", () => {
  const looks = (font: string, fill: string) => found({ styles: style(font, fill) });
  expect(looks('<sz val="11"/>', solid("F9DCD3"))).toEqual([
    "Order B1 look: format general → format general, colour #f9dcd3",
  ]);
  expect(looks('<sz val="11"/>', solid("FFFFFF"))).toEqual([]);
  expect(looks('<strike/><sz val="11"/>', "")).toEqual([
    "Order B1 look: format general → format general, struck out",
  ]);
  expect(looks('<sz val="11"/><color rgb="FFFFFFFF"/>', "")).toEqual([
    "Order B1 look: format general → format general, letters that cannot be seen",
  ]);
  expect(looks('<sz val="2"/>', "")).toEqual([
    "Order B1 look: format general → format general, letters that cannot be seen",
  ]);
});

it("is a cell that is filled in one of the two", () => {
  expect(found(changed("<v>24</v>", ""))).toEqual(["Order B2 look: format general → nothing"]);
  expect(found(changed('<c r="C2" s="1"/>', figure("C2", 1)))).toEqual([
    "Order C2 look: nothing → format general",
  ]);
});

it("is a hidden row with something in it, a hidden column, a hidden sheet and merged cells", () => {
  expect(found(changed('<row r="2">', '<row r="2" hidden="1">'))).toEqual(["Order row 2: nothing → hidden"]);
  expect(found(changed('<row r="2">', '<row r="2" ht="0" customHeight="1">'))).toEqual([
    "Order row 2: nothing → hidden",
  ]);
  expect(found(changed('<row r="2">', '<row r="2" ht="30" customHeight="1">'))).toEqual([]);
  expect(found(changed("</sheetData>", '<row r="9" hidden="1"/></sheetData>'))).toEqual([]);
  expect(found({ sheet: `<cols><col min="2" max="3" hidden="1" width="9"/></cols>${CELLS}` })).toEqual([
    "Order column B: nothing → hidden",
    "Order column C: nothing → hidden",
  ]);
  // Everything to the right of a paper may be hidden: only the first thousand columns are told one by one.
  const wide = found({ sheet: `<cols><col min="5" max="16384" hidden="1" width="9"/></cols>${CELLS}` });
  expect([wide.length, wide.at(-1)]).toEqual([997, "Order column ALM: nothing → hidden"]);
  expect(found({ sheet: `<cols><col min="1001" max="1002" hidden="1" width="9"/></cols>${CELLS}` })).toEqual(
    [],
  );
  expect(found({ sheet: `${CELLS}<mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells>` })).toEqual([
    "Order cells A1:B1: nothing → merged",
  ]);
  const main = live({ sheets: { Order: CELLS, Other: data() } }).file.text("xl/workbook.xml");
  const hidden = main.replace('<sheet name="Order"', '<sheet state="hidden" name="Order"');
  expect(found({ parts: { "xl/workbook.xml": hidden } })).toEqual(["Order the sheet: nothing → hidden"]);
});

it("is a note that says another thing, blanks around it aside, cut where it is long", () => {
  const noted = (words: string, cell = "B1"): Case => ({
    parts: {
      "xl/worksheets/_rels/sheet1.xml.rels": links(["rId1", "comments", "../comments1.xml"]),
      "xl/comments1.xml": `<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author/></authors><commentList><comment ref="${cell}" authorId="0"><text><t xml:space="preserve">${words}</t></text></comment></commentList></comments>`,
    },
  });
  expect(found(noted("=51+7"), noted("=50+8"))).toEqual(["Order B1 note: =50+8 → =51+7"]);
  expect(found(noted(" =50+8\n"), noted("=50+8"))).toEqual([]);
  expect(found(noted("48 agreed", "B2"))).toEqual(["Order B2 note: nothing → 48 agreed"]);
  const [at60, at61] = ["x".repeat(60), "x".repeat(61)];
  expect(found(noted(at60))).toEqual([`Order B1 note: nothing → ${at60}`]);
  expect(found(noted(at61))).toEqual([`Order B1 note: nothing → ${"x".repeat(59)}…`]);
});

it("is a row or a cell that stands twice, without its address, or in the row of another", () => {
  const twice = '<row r="2"><c r="B2"><v>99</v></c></row>';
  expect(found(changed("</sheetData>", `${twice}</sheetData>`))).toEqual([
    "Order row 2: nothing → stands twice",
    "Order B2 twice: nothing → stands twice",
  ]);
  expect(found(changed('<row r="2">', "<row>"))).toEqual([
    "Order row 2 bare: nothing → stands without its number",
  ]);
  expect(found(changed('<row r="2">', '<row r = "2">'))).toEqual([]);
  expect(found(changed('<c r="B2">', "<c>"))).toEqual([
    "Order B2 bare: nothing → stands without its address",
  ]);
  expect(found(changed('<c r="B2">', '<c attr="2">'))).toEqual([
    "Order B2 bare: nothing → stands without its address",
  ]);
  expect(found(changed("</sheetData>", '<row r="4"><c r="B3"><v>1</v></c></row></sheetData>'))).toEqual([
    "Order B3 look: nothing → format general",
    "Order B3 row: nothing → stands in row 4",
  ]);
});

it("is a rule, a list, a filter, a link, an object or a control, counted", () => {
  const rule = (sqref: string) =>
    `<conditionalFormatting sqref="${sqref}"><cfRule type="expression" priority="1"><formula>TRUE</formula></cfRule></conditionalFormatting>`;
  expect(found({ sheet: CELLS + rule("B1") })).toEqual(["Order rules for colours and formats: nothing → 1"]);
  expect(found({ sheet: CELLS + rule("B1") + rule("B2") }, { sheet: CELLS + rule("B1") })).toEqual([
    "Order rules for colours and formats: 1 → 2",
  ]);
  const more =
    '<dataValidations><dataValidation type="list" sqref="B1"/></dataValidations><autoFilter ref="A1:B2"><filterColumn colId="0"/></autoFilter><hyperlinks><hyperlink ref="A1" location="x"/></hyperlinks><oleObjects><oleObject/></oleObjects><controls><control/></controls>';
  expect(found({ sheet: CELLS + more })).toEqual([
    "Order rules for what may be typed: nothing → 1",
    "Order filters: nothing → 1",
    "Order links: nothing → 1",
    "Order objects: nothing → 1",
    "Order controls: nothing → 1",
  ]);
});

it("is a picture, a chart or a box laid over the cells", () => {
  const drawn = (anchors: string): Case => ({
    parts: {
      "xl/worksheets/_rels/sheet1.xml.rels": links(
        ["rId1", "drawing", "../drawings/drawing1.xml"],
        ["rId2", "drawing", "../drawings/none.xml"],
        ["rId3", "vmlDrawing", "../drawings/vml.xml"],
      ),
      "xl/drawings/drawing1.xml": `<d>${anchors}</d>`,
      "xl/drawings/vml.xml": "<d><twoCellAnchor/><oneCellAnchor/></d>",
    },
  });
  expect(found(drawn("<twoCellAnchor/><absoluteAnchor/><anchorLock/>"))).toEqual([
    "Order pictures, charts and boxes: nothing → 2",
  ]);
  expect(found(drawn(""))).toEqual([]);
});

it("is told of the sheets that both have", () => {
  const copy = live({ sheets: { Extra: CELLS, Order: CELLS } });
  expect(shownDifferently(live({ sheets: { Order: CELLS, Other: CELLS } }), copy)).toEqual([]);
});
