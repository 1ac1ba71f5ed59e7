import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { addSheet } from "../../src/workbook/file/patch/add-sheet";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { handMade, insideSheet, partsOf } from "./hand-made";

/** Namespaces of the transitional form and those of the strict one (ISO/IEC 29500-1 Annex A). */
const STRICT: readonly (readonly [string, string])[] = [
  [
    "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
    "http://purl.oclc.org/ooxml/spreadsheetml/main",
  ],
  [
    "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
    "http://purl.oclc.org/ooxml/officeDocument/relationships",
  ],
];

/** The same file in the strict form, as a spreadsheet program saves it. */
function strict(file: Uint8Array): Uint8Array {
  const parts = Object.entries(partsOf(file)).map(([name, text]) => {
    const named = STRICT.reduce((done, [from, to]) => done.replaceAll(from, to), text);
    return [name, strToU8(named.replace("<workbook ", '<workbook conformance="strict" '))] as const;
  });
  return zipSync(Object.fromEntries(parts));
}

// A date of the strict form is written as ISO 8601 (ISO/IEC 29500-1, 18.18.11); 2026-10-01 is day 46296.
const PLAN = handMade({
  sheets: {
    Plan:
      '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>1095</t></is></c><c r="B1" t="d"><v>2026-10-01</v></c>' +
      '<c r="C1"><f>_xldudf_BLADE_STARTS(24,0.92,0.9)</f></c><c r="D1"><f>B1+1</f></c></row></sheetData>',
  },
});

describe("a workbook in the strict form", () => {
  it("is recalculated like the other, and keeps its form", async () => {
    const { bytes } = await recalculate(strict(PLAN));
    // 24 good at 0.92, 90 % sure, are 28 starts by the binomial distribution.
    expect(insideSheet(bytes)).toContain("<v>28</v>");
    expect(insideSheet(bytes)).toContain("<v>46297</v>");
    expect(insideSheet(bytes)).toBe(insideSheet((await recalculate(PLAN)).bytes));
    for (const text of Object.values(partsOf(bytes))) {
      for (const [transitional] of STRICT) expect(text).not.toContain(transitional);
    }
  });

  it("is shared as an ordinary copy", async () => {
    const { bytes } = await shareCopy(strict(PLAN));
    const all = Object.values(partsOf(bytes)).join("");
    expect(all).not.toContain("purl.oclc.org");
    expect(insideSheet(bytes)).toContain("<v>28</v>");
    expect(insideSheet(bytes)).toContain("<v>46296</v>");
  });

  it("takes a further sheet in its own form", () => {
    const live = readLiveWorkbook(strict(PLAN));
    addSheet(live, "Further", [12]);
    const again = readLiveWorkbook(live.file.save());
    expect(again.main.listed).toEqual(["Plan", "Further"]);
    const parts = partsOf(live.file.save());
    expect(Object.values(parts).join("")).not.toContain(STRICT[0]?.[0]);
    expect(parts["xl/_rels/workbook.xml.rels"]).not.toContain(STRICT[1]?.[0]);
  });
});
