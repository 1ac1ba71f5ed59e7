import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { verifyCopy } from "../../src/workbook/share/verify/verify-copy";
import { handMade } from "./hand-made";
import { provenancePart, resealed, withPart } from "./packages";

// Carbon of a grade is what its number says (SAE J402); all other figures are plain arithmetic.

const SHEET = "xl/worksheets/sheet1.xml";
const text = (cell: string, words: string) => `<c r="${cell}" t="inlineStr"><is><t>${words}</t></is></c>`;
const formula = (cell: string, typed: string) => `<c r="${cell}"><f>${typed}</f></c>`;

/** A steel, its carbon, that doubled, pieces, blades; a second sheet of costs. */
const live = handMade({
  sheets: {
    Plan: `<sheetData><row r="1">${text("A1", "1095")}${formula("B1", "_xldudf_BLADE_CARBON(A1)")}${formula("C1", "B1*2")}<c r="D1"><v>24</v></c>${formula("E1", "D1+4")}</row></sheetData>`,
    Costs: `<sheetData><row r="1"><c r="A1"><v>9.5</v></c>${formula("B1", "A1*Plan!E1")}</row></sheetData>`,
  },
});
const copy = (await shareCopy(live, { date: "2026-11-25" })).bytes;
const provenance = "xl/worksheets/sheet3.xml";

const CELLS = [
  ["Costs", "A1", "number", "9.5"],
  ["Costs", "B1", "number", "266"],
  ["Plan", "A1", "string", "1095"],
  ["Plan", "B1", "number", "0.95"],
  ["Plan", "C1", "number", "1.9"],
  ["Plan", "D1", "number", "24"],
  ["Plan", "E1", "number", "28"],
];

/** The cells with another content in one of them. */
const cellsWith = (at: string, other: string) =>
  CELLS.map(([sheet = "", cell = "", kind = "", content = ""]) => [
    sheet,
    cell,
    kind,
    `${sheet}!${cell}` === at ? other : content,
  ]);

async function found(ofLive: Uint8Array, ofCopy: Uint8Array, tolerance?: number) {
  const done = await verifyCopy(ofLive, ofCopy, tolerance === undefined ? {} : { tolerance });
  const differences = done.differences.map(({ sheet, cell, cause }) => `${sheet}!${cell} ${cause}`);
  return { ...done, differences };
}

it("finds a faithful copy sound", async () => {
  expect(await found(live, copy)).toMatchObject({
    isSound: true,
    digest: "as stated",
    isThisVersion: true,
    date: "2026-11-25",
    cells: 7,
    differences: [],
  });
});

it.each([["written-by-xlsxwriter.xlsx"], ["written-by-openpyxl.xlsx"], ["saved-by-libreoffice.xlsx"]])(
  "finds the copy of %s sound, though the file holds stale values",
  async (name) => {
    const bytes = readFileSync(new URL(`files/${name}`, import.meta.url));
    expect(await found(bytes, (await shareCopy(bytes)).bytes)).toMatchObject({ isSound: true });
  },
);

it("finds a value that was changed in the copy, by itself and by the SHA-256", async () => {
  const changed = withPart(copy, SHEET, (xml) => xml.replace("<v>0.95</v>", "<v>0.85</v>"));
  expect(await found(live, changed)).toMatchObject({
    isSound: false,
    digest: "not as stated",
    differences: ["Plan!B1 unexplained"],
  });
});

it("finds it too where the SHA-256 was made to fit, which anyone can reckon", async () => {
  const changed = withPart(copy, SHEET, (xml) => xml.replace("<v>0.95</v>", "<v>0.85</v>"));
  const forged = resealed(changed, cellsWith("Plan!B1", "0.85"));
  expect(await found(live, forged)).toMatchObject({
    isSound: false,
    digest: "as stated",
    differences: ["Plan!B1 unexplained"],
  });
});

it("tells what was typed otherwise from what follows, across sheets, and from what does not follow", async () => {
  const later = withPart(live, SHEET, (xml) => xml.replace("<v>24</v>", "<v>30</v>").replace("1095", "5160"));
  expect(await found(later, copy)).toMatchObject({
    digest: "as stated",
    differences: [
      "Plan!A1 typed",
      "Plan!D1 typed",
      "Plan!B1 follows",
      "Plan!C1 follows",
      "Plan!E1 follows",
      "Costs!B1 follows",
    ],
  });
  const changed = withPart(copy, SHEET, (xml) => xml.replace("<v>1.9</v>", "<v>1.8</v>"));
  expect((await found(later, changed)).differences).toContain("Plan!C1 unexplained");
});

it("tells a formula that was changed, and what follows from it", async () => {
  const later = withPart(live, SHEET, (xml) => xml.replace("<f>D1+4</f>", "<f>D1+5</f>"));
  expect((await found(later, copy)).differences).toEqual(["Plan!E1 formula", "Costs!B1 follows"]);
});

it("tells a copy of another version or data edition, and what follows from its values", async () => {
  const older = resealed(
    withPart(copy, provenance, (xml) => xml.replace(/data edition [\d-]+/, "data edition 2025-01")),
    CELLS,
  );
  expect(await found(live, older)).toMatchObject({ isSound: true, isThisVersion: false });
  const other = withPart(older, SHEET, (xml) =>
    xml.replace("<v>0.95</v>", "<v>0.9</v>").replace("<v>1.9</v>", "<v>1.8</v>"),
  );
  expect((await found(live, other)).differences).toEqual(["Plan!B1 version", "Plan!C1 follows"]);
  const altered = withPart(other, SHEET, (xml) => xml.replace("<v>28</v>", "<v>27</v>"));
  expect((await found(live, altered)).differences).toContain("Plan!E1 unexplained");
});

it("tells a formula that asks for the time, and one that is not calculated here", async () => {
  const sheets = {
    Plan: `<sheetData><row r="1">${formula("A1", "TODAY()")}<c r="B1"><f>[1]Prices!A1</f><v>7</v></c></row></sheetData>`,
  };
  const bytes = handMade({ sheets });
  const shared = (await shareCopy(bytes)).bytes;
  const later = withPart(shared, SHEET, (xml) =>
    xml.replace(/<v>\d{5}<\/v>/, "<v>40000</v>").replace("<v>7</v>", "<v>8</v>"),
  );
  expect((await found(bytes, later)).differences.sort()).toEqual(["Plan!A1 clock", "Plan!B1 stored"]);
});

it("takes numbers within the tolerance as the same", async () => {
  const near = withPart(copy, SHEET, (xml) => xml.replace("<v>28</v>", "<v>28.01</v>"));
  expect((await found(live, near)).differences).toEqual(["Plan!E1 unexplained"]);
  expect((await found(live, near, 0.001)).differences).toEqual([]);
  expect((await found(live, near, 0.0001)).differences).toHaveLength(1);
  const last = withPart(copy, SHEET, (xml) => xml.replace("<v>28</v>", "<v>28.00000000001</v>"));
  expect((await found(live, last)).differences).toEqual([]);
});

it("never takes a text for a number, nor an empty cell for nought", async () => {
  const words = withPart(copy, SHEET, (xml) => xml.replace('<c r="E1"><v>28</v></c>', text("E1", "28")));
  expect((await found(live, words)).differences).toEqual(["Plan!E1 unexplained"]);
  const empty = withPart(copy, SHEET, (xml) => xml.replace('<c r="E1"><v>28</v></c>', '<c r="E1"/>'));
  expect((await found(live, empty)).differences).toEqual(["Plan!E1 unexplained"]);
});

it("names formulas typed into the copy, and sheets that one of the two lacks", async () => {
  const typed = withPart(copy, SHEET, (xml) => xml.replace('<c r="E1"><v>', '<c r="E1"><f>20+8</f><v>'));
  expect(await found(live, typed)).toMatchObject({
    isSound: false,
    digest: "as stated",
    formulas: [{ sheet: "Plan", cell: "E1", text: "=20+8" }],
  });
  const renamed = withPart(copy, "xl/workbook.xml", (xml) => xml.replace('name="Costs"', 'name="Kosten"'));
  expect(await found(live, renamed)).toMatchObject({
    isSound: false,
    sheetsOfLive: ["Costs"],
    sheetsOfCopy: ["Kosten"],
  });
});

it("finds a copy of some sheets sound, but not one from which a sheet was taken later", async () => {
  const some = (await shareCopy(live, { choice: { kind: "sheets", names: ["Plan"] } })).bytes;
  expect(await found(live, some)).toMatchObject({
    isSound: true,
    leftOut: 1,
    sheetsOfLive: ["Costs"],
    cells: 5,
  });
  const claim = withPart(some, provenancePart(some), (xml) => xml.replace(/(Sheets left out.*?<v>)1/, "$10"));
  expect(await found(live, claim)).toMatchObject({ isSound: false });
});

it("says so where the copy states nothing of itself", async () => {
  expect(await found(live, live)).toMatchObject({
    isSound: false,
    digest: "not stated",
    computedBy: undefined,
  });
});

it("follows a spill that was longer when the copy was made", async () => {
  const spill = (count: number) =>
    handMade({
      sheets: {
        Plan: `<sheetData><row r="1"><c r="A1"><v>${count}</v></c><c r="B1" cm="1"><f t="array" ref="B1">_xlfn.SEQUENCE(A1)</f></c></row></sheetData>`,
      },
    });
  const { bytes } = await shareCopy(spill(3));
  expect((await found(spill(3), bytes)).isSound).toBe(true);
  expect((await found(spill(2), bytes)).differences).toEqual(["Plan!A1 typed", "Plan!B3 follows"]);
});

it("refuses a damaged file of either kind with a sentence", async () => {
  for (const length of [0, 100, copy.length - 30]) {
    await expect(verifyCopy(live, copy.subarray(0, length))).rejects.toThrow(FileRefusal);
    await expect(verifyCopy(live.subarray(0, Math.min(length, live.length - 30)), copy)).rejects.toThrow(
      FileRefusal,
    );
  }
});
