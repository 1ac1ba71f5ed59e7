import { expect, it } from "vitest";
import { WorkbookFile } from "../../src/workbook/file/patch/workbook-file";
import { shareCopy } from "../../src/workbook/share/share-copy";
import { verifyCopy } from "../../src/workbook/share/verify/verify-copy";
import { handMade } from "./hand-made";

const plan = () =>
  handMade({
    sheets: {
      Plan: '<sheetData><row r="1"><c r="A1"><v>6</v></c><c r="B1"><f>A1*7</f><v>0</v></c></row></sheetData>',
    },
  });

it("is calculated once for all who ask, and apart from a file that only reads alike", async () => {
  const bytes = plan();
  const before = bytes.slice();
  const [first, again] = [
    await WorkbookFile.of(bytes).calculated(),
    await WorkbookFile.of(bytes).calculated(),
  ];
  expect(again.current).toBe(first.current);
  expect(first.current.sheets[0]?.stored.rows[0]?.cells[1]?.raw).toBe("42");
  expect((await WorkbookFile.of(bytes.slice()).calculated()).current).not.toBe(first.current);
  expect(bytes).toEqual(before);
});

it("is the same for the next copy as for a first one", async () => {
  const bytes = plan();
  const copies = [await shareCopy(bytes), await shareCopy(bytes), await shareCopy(bytes.slice())];
  expect(copies[1]?.bytes).toEqual(copies[0]?.bytes);
  expect(copies[2]?.bytes).toEqual(copies[0]?.bytes);
  const done = await verifyCopy(bytes.slice(), copies[1]?.bytes ?? bytes);
  expect(done).toMatchObject({ isSound: true, differences: [] });
});

it("that cannot be read says so each time", () => {
  const bytes = new TextEncoder().encode("no workbook");
  for (const _ of [1, 2]) expect(() => WorkbookFile.of(bytes)).toThrow("The file is not an .xlsx workbook.");
});
