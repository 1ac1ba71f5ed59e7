import { describe, expect, test } from "vitest";
import { BUDGET, SENTENCES } from "../../src/engine/budget";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { handMade } from "../workbook/hand-made";

// Workbooks made to hang a program or to fill its memory; each must end in a value, in an error with a sentence, or in
// a refusal. Limits of Excel: 8,192 letters and 64 levels a formula, 1,048,576 rows (its own specification).

const cells = (...formulas: readonly string[]) =>
  `<sheetData><row r="1">${formulas.map((text, at) => `<c r="${String.fromCharCode(65 + at)}1"><f>${text}</f></c>`).join("")}</row></sheetData>`;

const named = (names: Readonly<Record<string, string>>) =>
  `<definedNames>${Object.entries(names)
    .map(([name, text]) => `<definedName name="${name}">${text}</definedName>`)
    .join("")}</definedNames>`;

/** What the cells of the first sheet say: the sentence of an error, or nothing. */
async function said(bytes: Uint8Array): Promise<string> {
  const { errors } = await recalculate(bytes);
  return errors.map(({ text }) => text).join("\n");
}

const plan = (sheet: string, names = "") => handMade({ sheets: { Plan: sheet }, names });

const doubling = Object.fromEntries(
  Array.from({ length: 21 }, (_, at) => [
    `Dub_${at}`,
    at === 0 ? '"xxxxxxxx"' : `Dub_${at - 1}&amp;Dub_${at - 1}`,
  ]),
);

describe("formulas made to run without end", () => {
  test.each([
    ["a name that stands for itself", plan(cells("Zug+1"), named({ Zug: "Zug+1" })), "stands for itself"],
    [
      "names that stand for each other",
      plan(cells("Zug+1"), named({ Zug: "Zag+1", Zag: "Zug+1" })),
      "stands for itself",
    ],
    ["twenty names that double", plan(cells("LEN(Dub_20)"), named(doubling)), "once written out"],
    ["every row", plan(cells("SUM(2:1048576)")), SENTENCES.read],
    ["two thousand brackets", plan(cells(`${"(".repeat(2000)}1${")".repeat(2000)}`)), "one inside the other"],
    ["twenty thousand signs", plan(cells(`${"-".repeat(20_000)}1`)), "letters"],
    ["eight thousand signs", plan(cells(`${"-".repeat(8000)}1`)), "one inside the other"],
    [
      "a product of large matrices",
      plan(cells("SUM(MMULT(ROW(1:3000)*COLUMN(A:CZZ),ROW(1:2704)*COLUMN(A:DZZ)))")),
      "#",
    ],
    ["a list as large as a sheet", plan(cells("SUM(_xlfn.SEQUENCE(1048576,100))")), "#"],
    ["a text too long for a cell", plan(cells('REPT(REPT("x",32767),32767)')), "#VALUE!"],
  ])("%s", async (_what, bytes, words) => {
    expect(await said(bytes)).toContain(words);
  });

  test("a sheet that ends with the last cell of the format is read all over or refused, the others are worked out", async () => {
    const last = '<sheetData><row r="1048576"><c r="XFD1048576"><v>7</v></c></row></sheetData>';
    const bytes = handMade({
      sheets: { Plan: cells("1+1", "SUM(Last!A:XFD)", "SUM(Last!XFD1048576)"), Last: last },
    });
    const { errors } = await recalculate(bytes);
    expect(errors.map(({ cell, text }) => [cell, text])).toEqual([["B1", `#VALUE!: ${SENTENCES.read}`]]);
  });

  test("as much as a formula may hold is worked out", async () => {
    const deep = `${"(".repeat(BUDGET.depth)}1${")".repeat(BUDGET.depth)}`;
    expect(await said(plan(cells(deep, Array.from({ length: 400 }, () => "1").join("+"))))).toBe("");
  });
});

describe("files made to fill memory", () => {
  const refused = (bytes: Uint8Array) => expect(recalculate(bytes)).rejects.toBeInstanceOf(FileRefusal);

  test("more rows than a plan has", async () => {
    const rows = Array.from({ length: 600_000 }, (_, at) => `<row r="${at + 1}"/>`).join("");
    await refused(plan(`<sheetData>${rows}</sheetData>`));
  }, 60_000);

  test("relationships that lead to a folder, to themselves, or to a sheet of another kind", async () => {
    const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument";
    for (const target of ["xl/", "_rels/.rels", "xl/worksheets/sheet1.xml", "", "../.."]) {
      const links = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${office}" Target="${target}"/></Relationships>`;
      await refused(handMade({ sheets: { Plan: "<sheetData/>" }, parts: { "_rels/.rels": links } }));
    }
  });
});
