import { expect, it } from "vitest";
import { csvFiles, csvText } from "../../src/workbook/share/csv";
import { handMade, partsOf } from "./hand-made";

// Quoting follows RFC 4180; the beginnings that run as formulas are those of OWASP's page on CSV injection.

const RUNNING = [
  "=1+1",
  "+1",
  "-1+1",
  "@SUM(1)",
  "\t=1",
  "\r=1",
  "\n=1",
  " =1",
  "\u00a0=1",
  "＝1",
  "＋1",
  "－1",
  "＠A1",
  '=cmd|" /C calc"!A0',
  "=1\n2",
];

it("puts an apostrophe before every text that would run as a formula", () => {
  for (const words of RUNNING) {
    const line = csvText([[words]])
      .replace(/^\ufeff/, "")
      .replace(/\r\n$/, "");
    expect(line.startsWith("\"'"), JSON.stringify(words)).toBe(true);
    expect(line).toBe(`"'${words.replaceAll('"', '""')}"`);
  }
});

it("leaves numbers numbers, and texts that begin otherwise", () => {
  expect(csvText([[-1.5, 0, 1e21, "1095", "a=b", "58-60", "", null, "TRUE"]])).toBe(
    "\ufeff-1.5,0,1e+21,1095,a=b,58-60,,,TRUE\r\n",
  );
});

it("quotes what RFC 4180 asks to quote, with marked line ends and UTF-8", () => {
  expect(csvText([["a,b", 'say "59"', "two\r\nlines"], ["208 °C"]])).toBe(
    '\ufeff"a,b","say ""59""","two\r\nlines"\r\n208 °C\r\n',
  );
});

const STYLES =
  '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><numFmts count="3"><numFmt numFmtId="164" formatCode="dd/mm/yyyy\\ hh:mm"/><numFmt numFmtId="165" formatCode="0.0&quot; mm&quot;"/><numFmt numFmtId="166" formatCode="[h]:mm"/></numFmts>' +
  '<cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="20"/><xf numFmtId="166"/></cellXfs></styleSheet>';

function dated(rows: string, main = ""): Uint8Array {
  const made = handMade({
    sheets: { "Steel order": `<sheetData>${rows}</sheetData>`, Hidden: "<sheetData/>" },
  });
  const parts = partsOf(made);
  const styles = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles";
  return handMade({
    sheets: {},
    parts: {
      ...parts,
      "xl/workbook.xml": (parts["xl/workbook.xml"] ?? "")
        .replace("<sheets>", `${main}<sheets>`)
        .replace('name="Hidden"', 'name="Hidden" state="hidden"'),
      "xl/_rels/workbook.xml.rels": (parts["xl/_rels/workbook.xml.rels"] ?? "").replace(
        "</Relationships>",
        `<Relationship Id="rIdY" Type="${styles}" Target="styles.xml"/></Relationships>`,
      ),
      "xl/styles.xml": STYLES,
    },
  });
}

// DATE(2026,11,25) is 46351 in the 1900 calendar and 44889 in that of 1904, 1462 days later (ECMA-376 Part 1, 18.17.4.1).
const DAYS =
  '<row r="1"><c r="A1" s="1"><v>46351</v></c><c r="B1" s="2"><v>46351.5</v></c><c r="C1" s="3"><v>46351</v></c><c r="D1" s="4"><v>0.75</v></c><c r="E1" s="5"><v>1.5</v></c></row>' +
  '<row r="3"><c r="B3" t="e"><v>#N/A</v></c><c r="C3" t="b"><v>1</v></c><c r="D3"/></row>';

it("writes days and times in the notation of ISO 8601, in their places, without hidden sheets", () => {
  const files = csvFiles(dated(DAYS));
  expect(files).toEqual([
    {
      name: "Steel order.csv",
      text: "\ufeff2026-11-25,2026-11-25T12:00,46351,18:00,1.5\r\n\r\n,#N/A,TRUE\r\n",
    },
  ]);
});

it("counts days from 1904 where the workbook does, and leaves days before the true calendar as they are", () => {
  const [file] = csvFiles(
    dated('<row r="1"><c r="A1" s="1"><v>44889</v></c></row>', '<workbookPr date1904="1"/>'),
  );
  expect(file?.text).toBe("\ufeff2026-11-25\r\n");
  const [early] = csvFiles(
    dated('<row r="1"><c r="A1" s="1"><v>60</v></c><c r="B1" s="1"><v>61</v></c></row>'),
  );
  expect(early?.text).toBe("\ufeff60,1900-03-01\r\n");
});

it("names files so that any system takes them", () => {
  const made = handMade({ sheets: { "Heat &lt;R-07&gt; |": "<sheetData/>" } });
  expect(csvFiles(made).map(({ name }) => name)).toEqual(["Heat _R-07_ _.csv"]);
});
