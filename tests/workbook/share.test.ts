import { readFileSync } from "node:fs";
import { Workbook } from "@cj-tech-master/excelts";
import fc from "fast-check";
import { expect, it } from "vitest";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { handMade, insideSheet, partsOf } from "./hand-made";
import { digestBy, faultsOf } from "./packages";

// What may and may not stand in the parts follows SpreadsheetML (ECMA-376 Part 1, 18) and, for task panes,
// [MS-OWEXML]. Carbon of a grade is what its number says (SAE J402); starts come from the binomial distribution, as
// told in writers.test.ts; all other figures are plain arithmetic.

const file = (name: string) => readFileSync(new URL(`files/${name}`, import.meta.url));
const rows = (xml: string) => `<sheetData>${xml}</sheetData>`;
const SHEET = "xl/worksheets/sheet1.xml";

/** Everything that tells of an add-in, of other files or of formulas, in all parts. */
function traces(bytes: Uint8Array): string[] {
  return Object.entries(partsOf(bytes)).flatMap(([name, text]) =>
    [
      /webextension/i,
      /calcChain/,
      /externalLink/,
      /<(?:\w+:)?f[\s>]/,
      /\scm="/,
      /_xldudf_/i,
      /fullCalcOnLoad/,
    ]
      .filter((trace) => trace.test(name) || trace.test(text))
      .map((trace) => `${name} ${trace}`),
  );
}

const PANES = "http://schemas.microsoft.com/office/2011/relationships/webextensiontaskpanes";
const LINK = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

/** A workbook that holds all that a copy must not: a task pane that opens itself, another file, the order of calculation. */
function liveOne(): Uint8Array {
  const plain = handMade({
    sheets: {
      Plan:
        rows(
          '<row r="1"><c r="A1" t="inlineStr"><is><t>1095</t></is></c><c r="B1" s="0" cm="1"><f t="array" ref="B1">_xldudf_BLADE_CARBON(A1)</f></c><c r="C1"><f>B1*2</f></c></row>',
        ) +
        '<conditionalFormatting sqref="B1"><cfRule type="expression" priority="1"><formula>_xldudf_BLADE_CARBON($A1)&gt;0.9</formula></cfRule></conditionalFormatting>' +
        '<conditionalFormatting sqref="C1"><cfRule type="cellIs" priority="2" operator="greaterThan"><formula>1</formula></cfRule></conditionalFormatting>' +
        '<dataValidations count="2"><dataValidation type="custom" sqref="A1"><formula1>_xldudf_BLADE_CARBON(A1)&gt;0</formula1></dataValidation><dataValidation type="list" sqref="A2"><formula1>"yes,no"</formula1></dataValidation></dataValidations>',
      "Heat-treat order": rows('<row r="1"><c r="A1"><f>Plan!C1</f></c></row>'),
    },
    names:
      '<definedNames><definedName name="Live">_xldudf_BLADE_CARBON(Plan!$A$1)</definedName>' +
      '<definedName name="_xlnm.Print_Area" localSheetId="1">\'Heat-treat order\'!$A$1</definedName></definedNames><calcPr calcId="1" fullCalcOnLoad="1"/>',
  });
  const parts = partsOf(plain);
  const more = (name: string, text: string) =>
    (parts[name] ?? "").replace(/<\/(Relationships|Types)>$/, `${text}</$1>`);
  return handMade({
    sheets: {},
    parts: {
      ...parts,
      "_rels/.rels": more(
        "_rels/.rels",
        `<Relationship Id="rId9" Type="${PANES}" Target="xl/webextensions/taskpanes.xml"/>`,
      ),
      "xl/_rels/workbook.xml.rels": more(
        "xl/_rels/workbook.xml.rels",
        `<Relationship Id="rId7" Type="${LINK}/calcChain" Target="calcChain.xml"/><Relationship Id="rId8" Type="${LINK}/externalLink" Target="externalLinks/externalLink1.xml"/><Relationship Id="rId9" Type="${LINK}/sheetMetadata" Target="metadata.xml"/>`,
      ),
      "[Content_Types].xml": more(
        "[Content_Types].xml",
        '<Override PartName="/xl/webextensions/webextension1.xml" ContentType="application/vnd.ms-office.webextension+xml"/>',
      ),
      "xl/webextensions/taskpanes.xml": "<taskpanes/>",
      "xl/webextensions/_rels/taskpanes.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.microsoft.com/office/2011/relationships/webextension" Target="webextension1.xml"/></Relationships>`,
      "xl/webextensions/webextension1.xml":
        '<webextension><properties><property name="Office.AutoShowTaskpaneWithDocument" value="true"/></properties></webextension>',
      "xl/calcChain.xml": "<calcChain/>",
      "xl/externalLinks/externalLink1.xml": "<externalLink/>",
      "xl/metadata.xml": "<metadata/>",
    },
  });
}

it("leaves nothing of an add-in, of other files or of formulas, and a whole package", async () => {
  const live = liveOne();
  expect(traces(live).length).toBeGreaterThan(8);
  const { bytes, formulas } = await shareCopy(live);
  expect(traces(bytes)).toEqual([]);
  expect(faultsOf(bytes)).toEqual([]);
  expect(formulas).toBe(3);
  expect(insideSheet(bytes, 2)).toContain('<c r="B1"><v>0.95</v></c><c r="C1"><v>1.9</v></c>');
});

it("holds no rules, lists and names: colours by a word become the colour of the cell", async () => {
  const { bytes } = await shareCopy(liveOne());
  expect(insideSheet(bytes, 2)).not.toMatch(/<cfRule|<dataValidation/);
  expect(partsOf(bytes)["xl/workbook.xml"]).not.toContain('name="Live"');
  const colored = new Workbook();
  const sheet = colored.addWorksheet("Plan");
  sheet.getCell("A1").value = "HIGH by 2";
  sheet.getCell("A2").value = "high by 2";
  sheet.addConditionalFormatting({
    ref: "A1:A2",
    rules: [
      {
        type: "expression",
        priority: 1,
        formulae: ['ISNUMBER(FIND("HIGH",A1))'],
        style: { fill: { type: "pattern", pattern: "solid", bgColor: { argb: "FFF9DCD3" } } },
      },
    ],
  });
  const copy = await shareCopy(new Uint8Array(await colored.xlsx.writeBuffer()));
  const read = new Workbook();
  await read.xlsx.load(copy.bytes);
  const fillOf = (cell: string) => JSON.stringify(read.getWorksheet("Plan")?.getCell(cell).fill ?? {});
  expect(fillOf("A1")).toContain("FFF9DCD3");
  expect(fillOf("A2")).not.toContain("FFF9DCD3");
});

it("puts the heat-treat order first, its print area with it, and opens there", async () => {
  const { bytes } = await shareCopy(liveOne());
  const main = partsOf(bytes)["xl/workbook.xml"] ?? "";
  const names = [...main.matchAll(/<sheet name="([^"]*)"/g)].map(([, name]) => name);
  expect(names).toEqual(["Heat-treat order", "Plan", "Provenance"]);
  expect(main).toContain('name="_xlnm.Print_Area" localSheetId="0"');
});

it("opens on the first sheet that can be seen, and takes hidden ones by name only", async () => {
  const made = handMade({ sheets: { "Steel order": "<sheetData/>", Lines: "<sheetData/>" } });
  const parts = partsOf(made);
  const main = (parts["xl/workbook.xml"] ?? "").replace(
    '<sheet name="Steel order"',
    '<sheet state="hidden" name="Steel order"',
  );
  const plan = handMade({ sheets: {}, parts: { ...parts, "xl/workbook.xml": main } });
  const listed = (bytes: Uint8Array) =>
    [...(partsOf(bytes)["xl/workbook.xml"] ?? "").matchAll(/<sheet name="([^"]*)"/g)].map(([, name]) => name);
  const all = await shareCopy(plan);
  expect([listed(all.bytes), all.hidden]).toEqual([["Lines", "Provenance"], []]);
  const named = await shareCopy(plan, { choice: { kind: "sheets", names: ["Steel order", "Lines"] } });
  expect([listed(named.bytes), named.hidden]).toEqual([
    ["Lines", "Steel order", "Provenance"],
    ["Steel order"],
  ]);
  expect(insideSheet(named.bytes, 1)).toContain("tabSelected");
  expect(named.travels.join()).toContain("Hidden sheets, which whoever gets the copy can show: Steel order");
});

const EXPECTED = {
  B2: 0.95,
  B3: 0.6,
  B5: 1,
  C2: 1.9,
  D2: "carbon 0.95",
  D4: "not known",
  E2: 24,
  F2: 28,
  F3: 46,
  F6: 96,
};

it.each([["written-by-xlsxwriter.xlsx"], ["written-by-openpyxl.xlsx"], ["saved-by-libreoffice.xlsx"]])(
  "makes a copy of %s that another reader finds right, each formula in a note",
  async (name) => {
    const { bytes } = await shareCopy(file(name), { date: "2026-11-25", source: name });
    expect(faultsOf(bytes)).toEqual([]);
    const workbook = new Workbook();
    await workbook.xlsx.load(bytes);
    const sheet = workbook.getWorksheet("Plan lines");
    for (const [cell, value] of Object.entries(EXPECTED)) {
      const found = sheet?.getCell(cell);
      if (typeof value === "number") expect(found?.value, cell).toBeCloseTo(value, 12);
      else expect(found?.value, cell).toBe(value);
      expect(found?.formula, cell).toBeUndefined();
    }
    expect(sheet?.getCell("B4").value).toEqual({ error: "#N/A" });
    expect(JSON.stringify(sheet?.getCell("F2").note)).toContain("=BLADE.STARTS(E2,0.92)");
    expect(JSON.stringify(sheet?.getCell("B4").note)).toContain("is not in the grade table");
    const origin = workbook.getWorksheet("Provenance");
    const words = JSON.stringify(origin?.getSheetValues());
    for (const said of ["Blade Metallurgy", "data edition", "2026-11-25", name, '"E2","24"'])
      expect(words).toContain(said);
  },
);

const NO_FILL = JSON.stringify({ type: "pattern", pattern: "none" });

it("keeps looks, widths, frozen heads and print set-up of the sheets", async () => {
  const before = file("written-by-xlsxwriter.xlsx");
  const [old, now] = [new Workbook(), new Workbook()];
  await old.xlsx.load(new Uint8Array(before));
  await now.xlsx.load((await shareCopy(before)).bytes);
  const [a, b] = [old, now].map((book) => book.getWorksheet("Plan lines"));
  for (const cell of ["A1", "B1", "F1", "B2"]) {
    expect(b?.getCell(cell).font?.bold, cell).toBe(a?.getCell(cell).font?.bold);
    expect(b?.getCell(cell).numFmt, cell).toBe(a?.getCell(cell).numFmt);
    const [now, before] = [b, a].map((sheet) => JSON.stringify(sheet?.getCell(cell).fill) ?? NO_FILL);
    expect(now, cell).toBe(before);
  }
  expect(JSON.stringify(b?.views[0])).toContain('"ySplit":1');
  expect(b?.pageSetup.orientation).toBe("portrait");
});

it("holds the values of a spill, and its note says which cells it filled", async () => {
  const { bytes } = await shareCopy(file("written-by-xlsxwriter.xlsx"));
  const sheet = partsOf(bytes)[SHEET] ?? "";
  for (const cell of [/<c r="J2"[^>]*><v>40<\/v>/, /<c r="J3"[^>]*><v>24<\/v>/, /<c r="J5"[^>]*><v>6<\/v>/])
    expect(sheet).toMatch(cell);
  expect(partsOf(bytes)["xl/comments1.xml"]).toContain("\nfilled J2:J5");
});

it("leaves notes written by hand behind", async () => {
  const noted = new Workbook();
  const sheet = noted.addWorksheet("Plan");
  sheet.getCell("A1").value = { formula: "1+1" };
  sheet.getCell("A1").note = "ask Wednesday";
  const { bytes } = await shareCopy(new Uint8Array(await noted.xlsx.writeBuffer()));
  const read = new Workbook();
  await read.xlsx.load(bytes);
  expect(JSON.stringify(read.getWorksheet("Plan")?.getCell("A1").note)).not.toContain("ask Wednesday");
  expect(JSON.stringify(read.getWorksheet("Plan")?.getCell("A1").note)).toContain("=1+1");
});

it("keeps only the notes on our functions where there are thousands of formulas", async () => {
  const many = Array.from(
    { length: 5000 },
    (_, n) => `<row r="${n + 2}"><c r="A${n + 2}"><f>1+${n}</f></c></row>`,
  );
  const ours = '<row r="1"><c r="A1"><f>_xldudf_BLADE_CARBON("1095")</f></c></row>';
  const { bytes, formulas } = await shareCopy(handMade({ sheets: { Plan: rows(ours + many.join("")) } }));
  expect(formulas).toBe(5001);
  const notes = partsOf(bytes)["xl/comments1.xml"] ?? "";
  expect([...notes.matchAll(/<comment ref="([^"]*)"/g)].map(([, cell]) => cell)).toEqual(["A1"]);
  expect(partsOf(bytes)["xl/worksheets/sheet2.xml"]).toContain("notes keep 1 of them");
});

it("gives the same bytes each time, and the SHA-256 of the values", async () => {
  const plan = handMade({
    sheets: { Plan: rows('<row r="1"><c r="A1"><v>2</v></c><c r="B1"><f>A1*2</f></c></row>') },
  });
  const [one, two] = [await shareCopy(plan), await shareCopy(plan)];
  expect(Buffer.from(one.bytes).equals(two.bytes)).toBe(true);
  const cells = [
    ["Plan", "A1", "number", "2"],
    ["Plan", "B1", "number", "4"],
  ];
  expect(one.digest).toBe(digestBy(one.bytes, cells));
});

it("shares some sheets with nothing of the others", async () => {
  const before = file("written-by-xlsxwriter.xlsx");
  const { bytes, leftOut } = await shareCopy(before, { choice: { kind: "sheets", names: [" totals "] } });
  expect(leftOut).toBe(1);
  expect(faultsOf(bytes)).toEqual([]);
  const parts = partsOf(bytes);
  expect(parts["xl/worksheets/sheet1.xml"]).toMatch(/<c r="A1"[^>]*><v>30.5<\/v><\/c>/);
  for (const [name, text] of Object.entries(parts))
    expect(text, name).not.toMatch(/heat TH-2290|no such steel|1095|'Plan lines'!\$E/);
});

it("leaves pivot tables and charts behind with what they hold of other sheets", async () => {
  const sheets = { Orders: "<sheetData/>", Costs: "<sheetData/>" };
  const share = (part: string, text: string) =>
    shareCopy(handMade({ sheets, parts: { [part]: text } }), {
      choice: { kind: "sheets", names: ["Orders"] },
    });
  for (const [part, text] of [
    ["xl/pivotCache/pivotCacheRecords1.xml", "<a/>"],
    ["xl/charts/chart1.xml", "<a><f>Costs!$A$1</f></a>"],
  ] as const)
    expect(Object.keys(partsOf((await share(part, text)).bytes))).not.toContain(part);
  await expect(
    shareCopy(handMade({ sheets }), { choice: { kind: "sheets", names: ["Prices"] } }),
  ).rejects.toThrow("It has: Orders, Costs.");
});

it("chooses the sheets that concern somebody, and says so where there are none", async () => {
  const sheets = { Cover: "<sheetData/>", "Heat-treat order": "<sheetData/>", Quote: "<sheetData/>" };
  const names = async (whom: string) => {
    const { bytes } = await shareCopy(handMade({ sheets }), { choice: { kind: "for", whom } });
    return [...(partsOf(bytes)["xl/workbook.xml"] ?? "").matchAll(/<sheet name="([^"]*)"/g)].map(
      ([, name]) => name,
    );
  };
  expect(await names("heat-treater")).toEqual(["Heat-treat order", "Provenance"]);
  expect(await names("customer")).toEqual(["Quote", "Provenance"]);
  await expect(names("supplier")).rejects.toThrow("no sheet for the steel supplier");
  await expect(names("everybody")).rejects.toThrow("give supplier, heat-treater, customer");
});

it("refuses a copy of a copy", async () => {
  const plan = handMade({ sheets: { Plan: "<sheetData/>" } });
  const { bytes } = await shareCopy(plan);
  await expect(shareCopy(bytes)).rejects.toThrow("copy itself");
});

it("takes a text that merely looks like a stored function", async () => {
  const text = '<row r="1"><c r="A1" t="inlineStr"><is><t>_xldudf_BLADE_CARBON(1)</t></is></c></row>';
  const { bytes } = await shareCopy(handMade({ sheets: { Plan: rows(text) } }));
  expect(insideSheet(bytes)).toContain(">_xldudf_BLADE_CARBON(1)</t>");
});

it("answers any damage with a sentence or with a copy, never with a fault, and leaves the bytes alone", async () => {
  const sample = file("written-by-openpyxl.xlsx");
  const place = fc.record({ at: fc.nat(sample.length - 1), byte: fc.nat(255) });
  const damage = fc.record({
    places: fc.array(place, { maxLength: 4 }),
    length: fc.integer({ min: 0, max: sample.length }),
    isCut: fc.boolean(),
  });
  await fc.assert(
    fc.asyncProperty(damage, async ({ places, length, isCut }) => {
      const bytes = Uint8Array.from(sample.subarray(0, isCut ? length : sample.length));
      for (const { at, byte } of places) if (at < bytes.length) bytes[at] = byte;
      const before = Uint8Array.from(bytes);
      const thrown = await shareCopy(bytes).then(
        () => undefined,
        (problem: unknown) => problem,
      );
      if (thrown !== undefined) expect(thrown).toBeInstanceOf(FileRefusal);
      expect(Buffer.from(bytes).equals(before)).toBe(true);
    }),
    { numRuns: 60 },
  );
}, 120_000);

it("prints the sheet of the origin on the paper of the workbook", async () => {
  const setUp = (number: number) => `<sheetData/><pageSetup paperSize="${number}" orientation="portrait"/>`;
  // ST_PaperSize: 1 is Letter, 9 is A4 (ECMA-376 Part 1, 18.3.1.63).
  for (const number of [1, 9]) {
    const { bytes } = await shareCopy(handMade({ sheets: { Plan: setUp(number) } }));
    expect(partsOf(bytes)["xl/worksheets/sheet2.xml"]).toContain(`paperSize="${number}"`);
  }
});
