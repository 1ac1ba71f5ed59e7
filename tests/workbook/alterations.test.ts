import { expect, it } from "vitest";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { newKeyPair, signerFrom } from "../../src/workbook/share/signature";
import { verifyCopy } from "../../src/workbook/share/verify/verify-copy";
import { handMade, partsOf } from "./hand-made";
import { provenancePart, resealed, withPart } from "./packages";

// Alterations of a shared copy that make it say another thing than was sent, each by the rules of SpreadsheetML
// (ECMA-376 Part 1, 18). The one who alters makes the SHA-256 fit where it can be made to.

const STYLES =
  '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="1"><numFmt numFmtId="170" formatCode="0.0"/></numFmts><fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders><cellXfs count="2"><xf numFmtId="0" fontId="0"/><xf numFmtId="170" fontId="0"/></cellXfs></styleSheet>';

function plan(): Uint8Array {
  const sheets = {
    Order:
      '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>HRC</t></is></c><c r="B1" s="1"><f>50+8</f></c><c r="C1" s="1"><f>B1+2</f></c></row>' +
      '<row r="2"><c r="A2" t="inlineStr"><is><t>pieces</t></is></c><c r="B2" s="1"><v>24</v></c></row>' +
      '<row r="3"><c r="A3" t="inlineStr"><is><t>remark</t></is></c><c r="B3" t="inlineStr"><is><t>one heat a line</t></is></c></row></sheetData>',
  };
  const made = handMade({ sheets });
  const parts = partsOf(made);
  const links = (parts["xl/_rels/workbook.xml.rels"] ?? "").replace(
    "</Relationships>",
    '<Relationship Id="rIdT" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>',
  );
  return handMade({
    sheets: {},
    parts: { ...parts, "xl/_rels/workbook.xml.rels": links, "xl/styles.xml": STYLES },
  });
}

const live = plan();
const { bytes: copy } = await shareCopy(live, { date: "29 November", source: "plan.xlsx" });
const SHEET = "xl/worksheets/sheet1.xml";
const CELLS = [
  ["Order", "A1", "string", "HRC"],
  ["Order", "B1", "number", "58"],
  ["Order", "C1", "number", "60"],
  ["Order", "A2", "string", "pieces"],
  ["Order", "B2", "number", "24"],
  ["Order", "A3", "string", "remark"],
  ["Order", "B3", "string", "one heat a line"],
];

const inSheet = (change: (xml: string) => string) => withPart(copy, SHEET, change);
const inProvenance = (change: (xml: string) => string) =>
  resealed(withPart(copy, provenancePart(copy), change), CELLS);
const behindData = (xml: string) => inSheet((text) => text.replace("</sheetData>", `</sheetData>${xml}`));
const cellOf = (name: string) => new RegExp(`<c r="${name}"[^>]*>.*?</c>`);

const ALTERATIONS: Readonly<Record<string, () => Uint8Array>> = {
  "a figure": () => inSheet((xml) => xml.replace("<v>58</v>", "<v>59</v>")),
  "a figure, with the SHA-256 made to fit": () =>
    resealed(
      inSheet((xml) => xml.replace("<v>58</v>", "<v>59</v>")),
      CELLS.map((line) => (line[1] === "B1" ? ["Order", "B1", "number", "59"] : line)),
    ),
  "a word": () => inSheet((xml) => xml.replace("one heat a line", "any heat")),
  "a figure emptied": () => inSheet((xml) => xml.replace("<v>24</v>", "")),
  "a formula that gives the same": () => inSheet((xml) => xml.replace("<v>58</v>", "<f>29*2</f><v>58</v>")),
  "a number format that shows another figure": () =>
    withPart(copy, "xl/styles.xml", (xml) =>
      xml.replace('formatCode="0.0"', 'formatCode="&quot;61.0&quot;"'),
    ),
  "another style for a cell": () => inSheet((xml) => xml.replace(/(<c r="B2") s="\d+"/, '$1 s="0"')),
  "white letters": () =>
    withPart(copy, "xl/styles.xml", (xml) =>
      xml.replace(/<font>(?!.*<font>)(.*?)<name/, '<font><color rgb="FFFFFFFF"/>$1<name'),
    ),
  "a rule that shows another figure": () =>
    behindData(
      '<conditionalFormatting sqref="B1"><cfRule type="expression" dxfId="0" priority="1"><formula>TRUE</formula></cfRule></conditionalFormatting>',
    ),
  "a hidden row": () => inSheet((xml) => xml.replace('<row r="3"', '<row r="3" hidden="1"')),
  "a row without height": () =>
    inSheet((xml) => xml.replace('<row r="3"', '<row r="3" ht="0" customHeight="1"')),
  "a hidden column": () =>
    inSheet((xml) =>
      xml.replace("<sheetData>", '<cols><col min="2" max="2" width="9" hidden="1"/></cols><sheetData>'),
    ),
  "merged cells that cover a figure": () =>
    behindData('<mergeCells count="1"><mergeCell ref="A1:C1"/></mergeCells>'),
  "a note": () => withPart(copy, "xl/comments1.xml", (xml) => xml.replace("=50+8", "=51+7")),
  "a note more": () =>
    withPart(copy, "xl/comments1.xml", (xml) =>
      xml.replace(
        "</commentList>",
        '<comment ref="B2" authorId="0"><text><t>48 agreed</t></text></comment></commentList>',
      ),
    ),
  "the date on Provenance": () =>
    withPart(copy, provenancePart(copy), (xml) => xml.replace("29 November", "1 December")),
  "the count of formulas on Provenance": () =>
    inProvenance((xml) =>
      xml.replace(/(Formulas replaced by values<\/t><\/is><\/c><c r="B\d+"><v>)2/, "$13"),
    ),
  "an input on Provenance": () =>
    inProvenance((xml) => xml.replace("Follow local codes", "Forget local codes")),
  "a line more on Provenance": () =>
    inProvenance((xml) =>
      xml.replace(
        "</sheetData>",
        '<row r="90"><c r="A90" t="inlineStr"><is><t>Price agreed</t></is></c></row></sheetData>',
      ),
    ),
  "a cell that stands twice": () =>
    inSheet((xml) => xml.replace(cellOf("B1"), (cell) => `${cell.replace("<v>58</v>", "<v>61</v>")}${cell}`)),
  "a row that stands twice": () =>
    inSheet((xml) =>
      xml.replace(/<row r="2">.*?<\/row>/, (row) => `${row.replace("<v>24</v>", "<v>99</v>")}${row}`),
    ),
  "a cell without an address": () => inSheet((xml) => xml.replace(/<c r="B2"/, "<c")),
  "a row without a number": () => inSheet((xml) => xml.replace('<row r="2"', "<row")),
  "a cell in the row of another": () =>
    inSheet((xml) =>
      xml.replace(cellOf("B2"), "").replace(/(<row r="3">.*?)(<\/row>)/, '$1<c r="B2" s="1"><v>24</v></c>$2'),
    ),
  "a sheet more": () =>
    withPart(copy, "xl/workbook.xml", (xml) =>
      xml.replace("</sheets>", '<sheet name="Extra" sheetId="9" r:id="rId1"/></sheets>'),
    ),
  "a sheet renamed": () =>
    withPart(copy, "xl/workbook.xml", (xml) => xml.replace('name="Order"', 'name="Ordre"')),
  "a sheet hidden": () =>
    withPart(copy, "xl/workbook.xml", (xml) =>
      xml.replace('<sheet name="Order"', '<sheet state="hidden" name="Order"'),
    ),
  "a list to type from": () =>
    behindData(
      '<dataValidations count="1"><dataValidation type="list" sqref="B1"><formula1>"58,59"</formula1></dataValidation></dataValidations>',
    ),
};

it("finds the copy sound as it was made", async () => {
  expect(await verifyCopy(live, copy)).toMatchObject({ isSound: true, shown: [], provenance: [] });
});

it.each(Object.keys(ALTERATIONS))("finds %s altered", async (name) => {
  const altered = ALTERATIONS[name]?.() ?? copy;
  expect((await verifyCopy(live, altered)).isSound).toBe(false);
});

it("finds a signature that does not fit, one of another key, and one that was taken away", async () => {
  const [mine, other] = [await newKeyPair(), await newKeyPair()];
  const signed = (await shareCopy(live, { signer: await signerFrom(mine.privateText) })).bytes;
  const found = async (bytes: Uint8Array, key?: string) => {
    const { isSound, signatureFound } = await verifyCopy(live, bytes, key === undefined ? {} : { key });
    return [isSound, signatureFound];
  };
  expect(await found(signed)).toEqual([true, "good"]);
  expect(await found(signed, mine.publicKey)).toEqual([true, "good"]);
  expect(await found(signed, other.publicKey)).toEqual([false, "another key"]);
  expect(await found(copy, mine.publicKey)).toEqual([false, "wrong"]);
  const part = provenancePart(signed);
  const taken = withPart(signed, part, (xml) =>
    xml.replace(/<row r="\d+"><c r="A\d+"[^>]*><is><t[^>]*>Signature.*?<\/row>/, ""),
  );
  expect(await found(taken)).toEqual([false, "wrong"]);
  // Whoever alters a figure can reckon the SHA-256, but not sign it.
  const changed = withPart(signed, SHEET, (xml) => xml.replace("<v>24</v>", "<v>25</v>"));
  const forged = resealed(
    changed,
    CELLS.map((line) => (line[1] === "B2" ? ["Order", "B2", "number", "25"] : line)),
  );
  const verdict = await verifyCopy(
    withPart(live, SHEET, (xml) => xml.replace("<v>24</v>", "<v>25</v>")),
    forged,
  );
  expect([verdict.digest, verdict.signatureFound, verdict.isSound]).toEqual(["as stated", "wrong", false]);
});
