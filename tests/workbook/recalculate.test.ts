import { expect, it } from "vitest";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { handMade, insideSheet, partsOf } from "./hand-made";

// What stands in the XML follows SpreadsheetML (ECMA-376 Part 1, 18.3 and 18.17) and, for `cm`, [MS-XLSX] 2.2.4.
// Carbon of a grade is what its number says (SAE J402); all other figures are plain arithmetic.

const rows = (xml: string) => `<sheetData>${xml}</sheetData>`;

async function afterwards(xml: string, more: Partial<Parameters<typeof handMade>[0]> = {}) {
  const done = await recalculate(handMade({ sheets: { Plan: xml }, ...more }));
  return { ...done, xml: insideSheet(done.bytes) };
}

it("writes a value and its type, and nothing else", async () => {
  const before = rows(
    '<row r="1" spans="1:3" ht="20" customHeight="1"><c r="A1" s="4"><v>21</v></c><c r="B1" s="2" t="str"><f>A1*2</f><v>old</v></c>' +
      '<c r="C1"><f>A1&amp;" &lt;mm&gt;"</f></c></row>',
  );
  const { xml, changed, formulas } = await afterwards(before);
  expect(xml).toBe(
    before
      .replace('<c r="B1" s="2" t="str"><f>A1*2</f><v>old</v>', '<c r="B1" s="2"><f>A1*2</f><v>42</v>')
      .replace(
        '<c r="C1"><f>A1&amp;" &lt;mm&gt;"</f>',
        '<c r="C1" t="str"><f>A1&amp;" &lt;mm&gt;"</f><v>21 &lt;mm&gt;</v>',
      ),
  );
  expect([formulas, changed]).toEqual([2, 2]);
});

it("gives back the very same bytes where nothing has to change", async () => {
  const file = handMade({
    sheets: { Plan: rows('<row r="1"><c r="A1"><v>2</v></c><c r="B1"><f>A1*2</f><v>4.0</v></c></row>') },
  });
  const done = await recalculate(file);
  expect(done.isChanged).toBe(false);
  expect(Buffer.from(done.bytes).equals(file)).toBe(true);
});

it("follows shared formulas, fixed and moving references, other sheets", async () => {
  const xml = rows(
    '<row r="1"><c r="A1"><v>10</v></c><c r="B1"><v>3</v></c><c r="C1"><f t="shared" ref="C1:D2" si="0">A1*$B$1+SUM(Other!A$1:A1)</f></c><c r="D1"><f t="shared" si="0"/></c></row>' +
      '<row r="2"><c r="A2"><v>20</v></c><c r="C2"><f t="shared" si="0"/></c><c r="D2"><f t="shared" si="0"/></c></row>',
  );
  const other = rows('<row r="1"><c><v>100</v></c><c><v>5</v></c></row><row r="2"><c><v>200</v></c></row>');
  const done = await recalculate(handMade({ sheets: { Plan: xml, Other: other } }));
  const value = (cell: string) =>
    new RegExp(`r="${cell}"[^>]*>.*?<v>([^<]*)`).exec(insideSheet(done.bytes))?.[1];
  expect(["C1", "D1", "C2", "D2"].map(value)).toEqual(["130", "14", "360", "5"]);
  expect(insideSheet(done.bytes)).toContain('<f t="shared" si="0"/><v>360</v>');
});

it("reads inline, shared and rich text, without phonetic guides, spaces kept", async () => {
  const strings =
    '<si><t>1095</t></si><si><r><t>51</t></r><r><rPr><b/></rPr><t>60</t></r><rPh sb="0" eb="1"><t>no</t></rPh></si>' +
    '<si><t xml:space="preserve">  a_x000D_b </t></si>';
  const xml = rows(
    '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1"><f>_xldudf_BLADE_CARBON(A1)</f></c></row>' +
      '<row r="2"><c r="A2" t="s"><v>1</v></c><c r="B2"><f>_xldudf_BLADE_CARBON(A2)</f></c></row>' +
      '<row r="3"><c r="A3" t="inlineStr"><is><r><t>520</t></r><r><t>x</t></r></is></c><c r="B3"><f>A3&amp;LEN(Z9)</f></c></row>' +
      '<row r="4"><c r="A4" t="s"><v>2</v></c><c r="B4"><f>LEN(A4)</f></c><c r="C4"><f>A4</f></c></row>',
  );
  const done = await afterwards(xml, { strings });
  expect(done.xml).toContain('<c r="B1"><f>_xldudf_BLADE_CARBON(A1)</f><v>0.95</v></c>');
  expect(done.xml).toContain('<c r="B2"><f>_xldudf_BLADE_CARBON(A2)</f><v>0.6</v></c>');
  expect(done.xml).toContain('<c r="B3" t="str"><f>A3&amp;LEN(Z9)</f><v>520x0</v></c>');
  expect(done.xml).toContain("<f>LEN(A4)</f><v>6</v>");
  expect(done.xml).toContain("<f>A4</f><v>  a_x000D_b </v>");
});

it("reads booleans, errors, dates in words and texts that look like formulas", async () => {
  const xml = rows(
    '<row r="1"><c r="A1" t="b"><v>1</v></c><c r="B1"><f>IF(A1,7,8)</f></c><c r="C1" t="e"><v>#N/A</v></c><c r="D1"><f>IFERROR(C1,9)</f></c>' +
      '<c r="E1" t="d"><v>2026-11-25</v></c><c r="F1"><f>E1+0</f></c><c r="G1" t="inlineStr"><is><t>=1+1</t></is></c><c r="H1"><f>LEN(G1)</f></c><c r="I1"><f>1/0</f></c></row>',
  );
  const { xml: after, errors } = await afterwards(xml);
  for (const part of ["<f>IF(A1,7,8)</f><v>7</v>", "<f>IFERROR(C1,9)</f><v>9</v>", "<f>LEN(G1)</f><v>4</v>"])
    expect(after).toContain(part);
  // 25 November 2026 is day 46351 of the 1900 calendar (DATE of any spreadsheet).
  expect(after).toContain("<f>E1+0</f><v>46351</v>");
  expect(after).toContain('<c r="I1" t="e"><f>1/0</f><v>#DIV/0!</v></c>');
  expect(errors).toEqual([{ sheet: "Plan", cell: "I1", text: "#DIV/0!" }]);
});

it("lets a spill grow into empty cells and new rows, and says so where the file does", async () => {
  const xml =
    '<dimension ref="A1:B2"/>' +
    rows(
      '<row r="1" spans="1:2"><c r="A1"><v>1</v></c><c r="B1" cm="1" vm="3"><f t="array" ref="B1:B2">A1:A3*{1,2}</f><v>9</v></c></row>' +
        '<row r="2" spans="1:2"><c r="A2"><v>2</v></c><c r="B2" s="5"/></row>' +
        '<row r="4"><c r="A4"><v>4</v></c></row>',
    );
  const { xml: after } = await afterwards(xml);
  expect(after).toBe(
    '<dimension ref="A1:C4"/>'.replace("C4", "C3") +
      rows(
        '<row r="1" spans="1:3"><c r="A1"><v>1</v></c><c r="B1" cm="1"><f t="array" ref="B1:C3">A1:A3*{1,2}</f><v>1</v></c><c r="C1"><v>2</v></c></row>' +
          '<row r="2" spans="1:3"><c r="A2"><v>2</v></c><c r="B2" s="5"><v>2</v></c><c r="C2"><v>4</v></c></row>' +
          '<row r="3"><c r="B3"><v>0</v></c><c r="C3"><v>0</v></c></row>' +
          '<row r="4"><c r="A4"><v>4</v></c></row>',
      ),
  );
});

it("lets a spill shrink, leaving the dress of the cells it leaves", async () => {
  const { xml } = await afterwards(
    rows(
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:B2">{1,2}</f><v>1</v></c><c r="B1"><v>2</v></c></row>' +
        '<row r="2"><c r="A2" s="7" t="str"><v>x</v></c><c r="B2"><v>4</v></c><c r="C2"><v>5</v></c></row>',
    ),
  );
  expect(xml).toBe(
    rows(
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1:B1">{1,2}</f><v>1</v></c><c r="B1"><v>2</v></c></row>' +
        '<row r="2"><c r="A2" s="7"/><c r="C2"><v>5</v></c></row>',
    ),
  );
});

it("never writes over what stands in the way of a spill", async () => {
  const { xml, errors } = await afterwards(
    rows(
      '<row r="1"><c r="A1" cm="1"><f t="array" ref="A1">{1;2}</f><v>1</v></c></row><row r="2"><c r="A2" t="inlineStr"><is><t>mine</t></is></c></row>',
    ),
  );
  expect(xml).toContain('<c r="A1" cm="1" t="e"><f t="array" ref="A1">{1;2}</f><v>#VALUE!</v></c>');
  expect(xml).toContain('<c r="A2" t="inlineStr"><is><t>mine</t></is></c>');
  expect(errors[0]?.text).toContain("#SPILL!");
});

it("fills a fixed array as it stands: one row repeats, what is missing is #N/A", async () => {
  const { xml } = await afterwards(
    rows(
      '<row r="1"><c r="A1"><f t="array" ref="A1:B2">{1,2}</f></c><c r="B1"/></row><row r="2"><c r="A2"/><c r="B2"/></row>' +
        '<row r="4"><c r="A4"><f t="array" ref="A4:A6">{7;8}</f></c></row><row r="5"><c r="A5"/></row><row r="6"><c r="A6"/></row>',
    ),
  );
  const values = [...xml.matchAll(/<v>([^<]*)<\/v>/g)].map(([, value]) => value);
  expect(values).toEqual(["1", "2", "1", "2", "7", "8", "#N/A"]);
});

it("follows a spill named by its first cell when it changes size", async () => {
  const { xml } = await afterwards(
    rows(
      '<row r="1"><c r="A1"><v>3</v></c><c r="B1" cm="1"><f t="array" ref="B1:B2">_xlfn.SEQUENCE(A1)</f><v>1</v></c><c r="C1"><f>SUM(_xlfn.ANCHORARRAY(B1))</f></c></row>' +
        '<row r="2"><c r="B2"><v>2</v></c></row>',
    ),
  );
  expect(xml).toContain("<f>SUM(_xlfn.ANCHORARRAY(B1))</f><v>6</v>");
});

it("repairs every broken form of our names, but not a text that looks like one", async () => {
  const forms = [
    '_xldudf_blade_carbon("1095")',
    '[2]!_xldudf_BLADE_CARBON("1095")',
    'BLADE.CARBON("1095")',
    "'C:\\a b\\[x.xlam]'!_xldudf_BLADE_Carbon(\"1095\")",
  ];
  const cells = forms.map((form, n) => `<c r="${"ABCD"[n]}1" t="e"><f>${form}</f><v>#NAME?</v></c>`).join("");
  const text = '<c r="E1"><f>"blade.carbon(1)"</f></c>';
  const { xml, repaired } = await afterwards(rows(`<row r="1">${cells}${text}</row>`));
  const right = [..."ABCD"]
    .map((letter) => `<c r="${letter}1"><f>_xldudf_BLADE_CARBON(&quot;1095&quot;)</f><v>0.95</v></c>`)
    .join("");
  expect(xml).toContain(right);
  expect(xml).toContain('<f>"blade.carbon(1)"</f><v>blade.carbon(1)</v>');
  expect(repaired).toBe(4);
});

it("keeps the value of what it cannot calculate, and names it", async () => {
  const formulas = [
    "[1]Sheet1!A1",
    'GETPIVOTDATA("a",B9)',
    "_xldudf_OTHER_RATE(1)",
    "_xldudf_BLADE_NOSUCH(1)",
    "SUM(Plan:Other!A1)",
    "Rate*2",
  ];
  const cells = formulas.map((formula, n) => `<c r="${"ABCDEF"[n]}1"><f>${formula}</f><v>${n + 1}</v></c>`);
  const more = '<c r="H1"><f>SUM(A1:F1)</f></c>';
  const done = await afterwards(rows(`<row r="1">${cells.join("")}${more}</row>`), {
    names: '<definedNames><definedName name="Rate">[1]Prices!$A$1</definedName></definedNames>',
  });
  for (const cell of cells) expect(done.xml).toContain(cell);
  expect(done.xml).toContain("<f>SUM(A1:F1)</f><v>21</v>");
  expect(done.left.map(({ cell, text }) => `${cell} ${text}`)).toEqual([
    "A1 it reads another workbook",
    "B1 the function GETPIVOTDATA is not calculated here",
    "C1 the function _XLDUDF_OTHER_RATE is not calculated here",
    "D1 this version has no function BLADE.NOSUCH",
    "E1 it reads through several sheets at once",
    "F1 the name Rate is not calculated here",
  ]);
});

it("keeps the prefix and the byte-order mark of a part, and calculates names and tables", async () => {
  const sheet =
    '\ufeff<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row r="1"><x:c r="A1"><x:v>4</x:v></x:c><x:c r="B1"><x:f>A1*Twice</x:f></x:c></x:row></x:sheetData></x:worksheet>';
  const done = await recalculate(
    handMade({
      sheets: { Plan: "" },
      names: '<definedNames><definedName name="Twice">2</definedName></definedNames>',
      parts: { "xl/worksheets/sheet1.xml": sheet },
    }),
  );
  const bytes = partsOf(done.bytes)["xl/worksheets/sheet1.xml"];
  expect(bytes).toBe(sheet.replace("</x:f>", "</x:f><x:v>8</x:v>"));
});
