import { expect, it } from "vitest";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { heading, helperSheet, typed, worked } from "../../src/workbook/sheets/parts/sheet-parts";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { partsOf } from "./hand-made";

const looks = { columnWidths: [90, 90], rowHeights: {} };

// Carbon is what the grade's number says (SAE J402). Excel keeps the name History for itself.
const workbook = {
  name: "Two sheets & a spill",
  sheets: [
    helperSheet("History", [[heading("Steel")], [typed("1095")], [typed("5160")], [typed("'tis")]], looks),
    helperSheet(
      "Plan/1",
      [
        [worked("=BLADE.CARBON(History!A2:A3)")],
        [],
        [worked("=SUM('Plan/1'!A1:A2)")],
        [worked('=BLADE.CARBON("none")')],
      ],
      { ...looks, wordLists: [{ column: 1, words: ["oil, fast", "water"] }] },
    ),
  ],
};

it("writes spills as dynamic arrays, errors as errors, and names that Excel takes", async () => {
  const bytes = await planningFile(workbook);
  const parts = partsOf(bytes);
  const names = [...(parts["xl/workbook.xml"] ?? "").matchAll(/<sheet name="([^"]+)"/g)].map(
    ([, name]) => name,
  );
  expect(names).toEqual(["History of lots", "Plan 1", "Lists"]);
  const plan = parts["xl/worksheets/sheet2.xml"] ?? "";
  expect(plan).toMatch(
    /<c r="A1"[^>]* cm="1"[^>]*><f t="array" ref="A1:A2">_xldudf_BLADE_CARBON\((?:'|&apos;)History of lots(?:'|&apos;)!A2:A3\)<\/f><v>0\.95<\/v>/,
  );
  expect(plan).toMatch(/<c r="A2"[^>]*><v>0\.6<\/v>/);
  expect(plan).toMatch(/<c r="A4"[^>]* t="e"[^>]*><f>[^<]*<\/f><v>#N\/A<\/v>/);
  expect(parts["xl/metadata.xml"]).toContain('name="XLDAPR"');
  expect(parts["[Content_Types].xml"]).toContain("/xl/metadata.xml");
  expect(parts["xl/worksheets/sheet1.xml"]).toMatch(
    /<c r="A4"[^>]*t="inlineStr"><is><t[^>]*>(?:'|&apos;)tis<\/t>/,
  );
  const again = await recalculate(bytes);
  expect(again).toMatchObject({ isChanged: false, left: [], cutShort: [] });
});

it("gives the same bytes for the same workbook", async () => {
  const [first, second] = [await planningFile(workbook), await planningFile(workbook)];
  expect(Buffer.compare(first, second)).toBe(0);
});
