import { describe, expect, test } from "vitest";
import { BUDGET, SENTENCES, secondsFor } from "../../src/engine/budget";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { handMade } from "../workbook/hand-made";
import { cells, HOSTILE_FORMULAS, named, plan } from "./hostile-set";

/** What the cells of the first sheet say: the sentence of an error, or nothing. */
async function said(bytes: Uint8Array): Promise<string> {
  const { errors } = await recalculate(bytes);
  return errors.map(({ text }) => text).join("\n");
}

describe("formulas made to run without end", () => {
  test.each(HOSTILE_FORMULAS)("$what", async ({ bytes, words }) => {
    expect(await said(bytes())).toContain(words);
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

test("a workbook of many formulas may take longer, a small one never", () => {
  expect([0, 1, 50_000, 120_000].map(secondsFor)).toEqual(Array.from({ length: 4 }, () => BUDGET.seconds));
  expect(secondsFor(360_000)).toBe(180);
});

describe("files made to fill memory", () => {
  const refused = (bytes: Uint8Array) => expect(recalculate(bytes)).rejects.toBeInstanceOf(FileRefusal);

  test("more rows than a plan has", async () => {
    const rows = Array.from({ length: 600_000 }, (_, at) => `<row r="${at + 1}"/>`).join("");
    await refused(plan(`<sheetData>${rows}</sheetData>`));
  }, 60_000);

  test("more names than a plan has", async () => {
    const names = (count: number) =>
      named(Object.fromEntries(Array.from({ length: count }, (_, at) => [`Name_${at}`, "Plan!$A$1"])));
    await expect(recalculate(plan(cells("1+1"), names(5001)))).rejects.toThrow(
      "The file defines more than 5,000 names; no more are read.",
    );
    expect((await recalculate(plan(cells("Name_7+1"), names(100)))).errors.length).toBeLessThan(2);
  });

  test("relationships that lead to a folder, to themselves, or to a sheet of another kind", async () => {
    const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument";
    for (const target of ["xl/", "_rels/.rels", "xl/worksheets/sheet1.xml", "", "../.."]) {
      const links = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${office}" Target="${target}"/></Relationships>`;
      await refused(handMade({ sheets: { Plan: "<sheetData/>" }, parts: { "_rels/.rels": links } }));
    }
  });
});
