import { expect, it } from "vitest";
import { cellName } from "../../../src/formula/addresses";
import { picturedWords } from "../../../src/workbook/model/table-curves";
import type { CellData, SheetData } from "../../../src/workbook/model/workbook-data";
import {
  keptSheets,
  sharedSheets,
  staysBehind,
  unseenCells,
} from "../../../src/workbook/share/shared-sheets";
import { data, figure, links, live, row, text } from "./live";

// What of a sheet is in its copy, by the rules of SpreadsheetML (ECMA-376 Part 1, 18).

const STYLES = `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="1"><numFmt numFmtId="172" formatCode=";;;"/></numFmts><fonts count="3"><font><sz val="11"/></font><font><b/><sz val="11"/></font><font><sz val="11"/><color rgb="FFFFFFFF"/></font></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellXfs count="4"><xf numFmtId="0" fontId="0"/><xf numFmtId="0" fontId="1" applyFont="1"/><xf numFmtId="0" fontId="2" applyFont="1"/><xf numFmtId="172" fontId="0" applyNumberFormat="1"/></cellXfs><dxfs count="2"><dxf><fill><patternFill><bgColor rgb="FFF9DCD3"/></patternFill></fill></dxf><dxf><fill><patternFill><bgColor rgb="FFD3F9DC"/></patternFill></fill></dxf></dxfs></styleSheet>`;
const rule = (sqref: string, word: string, cell: string, dxf: number) =>
  `<conditionalFormatting sqref="${sqref}"><cfRule type="expression" priority="${dxf + 1}" dxfId="${dxf}"><formula>ISNUMBER(FIND("${word}",${cell}))</formula></cfRule></conditionalFormatting>`;

function shared(sheet: string, notes = new Map<string, ReadonlyMap<number, string>>(), parts = {}) {
  const book = live({ sheets: { Order: sheet }, styles: STYLES, parts });
  const kept = keptSheets(book, ["Order", "Nowhere"]);
  const [copy] = sharedSheets(book, kept, notes);
  if (copy === undefined) throw new RangeError("no sheet");
  return { copy, behind: staysBehind(book, kept), unseen: unseenCells(book, kept), kept };
}
const cells = ({ cells: all }: SheetData, tell: (cell: CellData) => unknown) =>
  Object.fromEntries(all.map((cell) => [cellName(cell.row, cell.column), tell(cell)]));

it("holds contents with no more figures than count, and the notes given", () => {
  const { copy, kept } = shared(
    data(
      row(
        1,
        text("A1", "1095"),
        figure("B1", 0.1 + 0.2),
        '<c r="C1" t="b"><v>1</v></c>',
        '<c r="D1" t="e"><v>#N/A</v></c>',
      ),
      row(2, text("A2", ""), '<c r="B2"/>', '<c r="C2" s="1"/>', text("D2", "x", ' s="1"')),
    ),
    new Map([
      [
        "Order",
        new Map([
          [0, "=Lines!A1"],
          [16_384 + 1, "=B9"],
        ]),
      ],
    ]),
  );
  expect(kept).toHaveLength(1);
  expect(cells(copy, ({ content }) => content)).toEqual({
    A1: { value: "1095" },
    B1: { value: 0.3 },
    C1: { value: true },
    D1: { error: "#N/A" },
    A2: undefined,
    B2: undefined,
    C2: undefined,
    D2: { value: "x" },
  });
  expect(cells(copy, ({ note }) => note)).toMatchObject({ A1: "=Lines!A1", B1: undefined, B2: "=B9" });
  expect(cells(copy, ({ style }) => style?.bold)).toMatchObject({ A1: undefined, C2: true, D2: true });
});

it("shows nothing of what cannot be read, but keeps how its cell looks", () => {
  const { copy, unseen } = shared(
    data(
      row(
        1,
        text("A1", "white", ' s="2"'),
        figure("B1", 7, ' s="3"'),
        text("C1", "seen"),
        '<c r="D1" s="2"/>',
      ),
    ),
  );
  expect(cells(copy, ({ content }) => content)).toMatchObject({
    A1: undefined,
    B1: undefined,
    C1: { value: "seen" },
  });
  expect(cells(copy, ({ style }) => [style?.color, style?.format])).toMatchObject({
    A1: ["#ffffff", undefined],
    B1: [undefined, ";;;"],
  });
  expect(unseen).toEqual(["cells that are hidden or cannot be read: 2 on Order, the first Order!A1"]);
});

it("holds nothing of hidden rows and columns and under merged cells, and names the first of what stays", () => {
  const { copy, unseen } = shared(
    `<cols><col min="3" max="3" hidden="1" width="9"/></cols>${data(
      row(1, text("A1", "a"), text("C1", "hidden column"), text("D1", "merged"), text("E1", "under it")),
      '<row r="2" hidden="1"><c r="A2"><v>1</v></c></row>',
      row(3, '<c r="C3"/>', text("A3", "b")),
    )}<mergeCells count="1"><mergeCell ref="D1:E1"/></mergeCells>`,
  );
  const filled = copy.cells.filter(({ content }) => content !== undefined);
  expect(filled.map(({ row: at, column }) => cellName(at, column))).toEqual(["A1", "D1", "A3"]);
  expect(unseen).toEqual(["cells that are hidden or cannot be read: 3 on Order, the first Order!C1"]);
  expect(shared(data(row(1, text("A1", "a")))).unseen).toEqual([]);
});

it("gives a cell the colour that a rule gave its word, inside the rule's cells and nowhere else", () => {
  const words = ["A1", "B2", "C3", "B4", "D2", "B1", "A2"].map(
    (cell) => [cell, text(cell, "HIGH by 2")] as const,
  );
  const all = [1, 2, 3, 4].map((at) =>
    row(at, ...words.filter(([cell]) => cell.endsWith(String(at))).map(([, xml]) => xml)),
  );
  const { copy } = shared(data(...all) + rule("B2:C3 A9:A9", "HIGH", "B2", 0));
  expect(cells(copy, ({ style }) => style?.fill)).toEqual({
    A1: undefined,
    B1: undefined,
    A2: undefined,
    B2: "#f9dcd3",
    C3: "#f9dcd3",
    D2: undefined,
    B4: undefined,
  });
});

it("takes the first rule whose word stands in the cell, in these very capitals, and none for a figure", () => {
  const { copy } = shared(
    data(
      row(
        1,
        text("A1", "LOW"),
        text("B1", "high"),
        figure("C1", 3),
        '<c r="D1" t="e"><v>#N/A</v></c>',
        text("E1", "LOW, HIGH"),
      ),
    ) +
      rule("A1:E1", "HIGH", "A1", 0) +
      rule("A1:E1", "LOW", "A1", 1),
  );
  expect(cells(copy, ({ style }) => style?.fill)).toEqual({
    A1: "#d3f9dc",
    B1: undefined,
    C1: undefined,
    D1: undefined,
    E1: "#f9dcd3",
  });
});

it("says in words what stays behind, each kind once", () => {
  const parts = {
    "xl/worksheets/_rels/sheet1.xml.rels": links(
      ["rId1", "hyperlink", "https://a.invalid/"],
      ["rId2", "hyperlink", "https://b.invalid/"],
      ["rId3", "comments", "../comments1.xml"],
      ["rId4", "drawing", "../drawings/drawing1.xml"],
      ["rId5", "printerSettings", "../printerSettings/printerSettings1.bin"],
      ["rId6", "pivotTable", "../pivotTables/pivotTable1.xml"],
      ["rId7", "threadedComment", "../threadedComments/threadedComment1.xml"],
    ),
    "xl/drawings/drawing1.xml": '<d><cNvPr name="Logo"/></d>',
    "xl/comments1.xml": "<comments/>",
  };
  const { behind } = shared(
    `${data()}<conditionalFormatting sqref="A1"><cfRule type="cellIs" priority="1" operator="equal" dxfId="0"><formula>1</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="list" sqref="A1"><formula1>"a,b"</formula1></dataValidation></dataValidations>`,
    undefined,
    parts,
  );
  expect(behind).toEqual([
    "links",
    "notes written by hand",
    "pictures, charts and boxes",
    "pivot tables",
    "comments",
    "colours by rules other than a word in the cell",
    "drop-down lists",
  ]);
  expect(shared(data()).behind).toEqual([]);
});

it("drops cells without a content where too many have a style alone", () => {
  const styled = (count: number) =>
    Array.from({ length: count / 100 }, (_, at) =>
      row(at + 1, ...Array.from({ length: 100 }, (__, column) => `<c r="${cellName(at, column)}" s="1"/>`)),
    );
  const many = shared(data(...styled(50_100), row(900, text("A900", "x")))).copy;
  expect(many.cells.map(({ content }) => content)).toEqual([{ value: "x" }]);
  const few = shared(data(...styled(500), row(900, text("A900", "x")))).copy;
  expect(few.cells).toHaveLength(501);
});

it("shows the hidden columns that a curve on the sheet is drawn from, since it shows what stands in them, and no others", () => {
  const drawn = (...names: readonly string[]) =>
    shared(
      `<cols><col min="3" max="4" hidden="1" width="9"/><col min="6" max="8" hidden="1" width="9"/></cols>${data(
        row(
          1,
          text("A1", "a"),
          figure("C1", 1),
          figure("D1", 2),
          figure("F1", 3),
          figure("G1", 4),
          figure("H1", 5),
        ),
      )}`,
      undefined,
      {
        "xl/worksheets/_rels/sheet1.xml.rels": links(["rId1", "drawing", "../drawings/drawing1.xml"]),
        "xl/drawings/drawing1.xml": `<d>${names.map((name) => `<cNvPr name="${name}"/>`).join("")}</d>`,
      },
    );
  const travels = ({ copy }: ReturnType<typeof shared>) =>
    copy.cells
      .filter(({ content }) => content !== undefined)
      .map(({ row: at, column }) => cellName(at, column));
  const hiddenIn = ({ copy }: ReturnType<typeof shared>) =>
    [...copy.columns].filter(([, { isHidden }]) => isHidden === true).map(([at]) => at);
  const curve = drawn(picturedWords("F:G"));
  expect(travels(curve)).toEqual(["A1", "F1", "G1"]);
  expect(hiddenIn(curve)).toEqual([2, 3, 7]);
  expect(curve.behind).toEqual([]);
  expect(curve.unseen).toEqual(["cells that are hidden or cannot be read: 3 on Order, the first Order!C1"]);
  const picture = drawn("Picture 1");
  expect(travels(picture)).toEqual(["A1"]);
  expect(hiddenIn(picture)).toEqual([2, 3, 5, 6, 7]);
  expect(picture.behind).toEqual(["pictures, charts and boxes"]);
  expect(drawn(picturedWords("F:G"), "Picture 1").behind).toEqual(["pictures, charts and boxes"]);
});
