import { readFileSync } from "node:fs";
import fc from "fast-check";
import { deflateSync, zipSync } from "fflate";
import { expect, it } from "vitest";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { Package } from "../../src/workbook/file/package/package";
import { LIMITS } from "../../src/workbook/file/package/zip-directory";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { handMade, WORKBOOK_TYPE } from "./hand-made";

const sample = readFileSync(new URL("files/written-by-xlsxwriter.xlsx", import.meta.url));
const plain = { sheets: { Plan: "<sheetData/>" } };
const refusal = (bytes: Uint8Array) => () => readLiveWorkbook(bytes);

/** A compound file: its signature ([MS-CFB] 2.2) and the name of a stream inside. */
function compound(stream: string): Uint8Array {
  return Buffer.concat([
    Buffer.from("d0cf11e0a1b11ae1", "hex"),
    Buffer.alloc(504),
    Buffer.from(stream, "utf16le"),
  ]);
}

it.each([
  ["one locked with a password", compound("EncryptedPackage"), "password"],
  ["an old .xls", compound("Workbook"), ".xls"],
  ["an empty file", new Uint8Array(), "not an .xlsx"],
  ["a text", Buffer.from("item;steel\n"), "not an .xlsx"],
  [
    "an OpenDocument file",
    zipSync({ mimetype: Buffer.from("application/vnd.oasis.opendocument.spreadsheet") }),
    "OpenDocument",
  ],
  ["some other zip", zipSync({ "a.txt": Buffer.from("a") }), "not an .xlsx"],
  ["one with macros", handMade({ ...plain, parts: { "xl/vbaProject.bin": "x" } }), "macros"],
  ["a binary workbook", handMade({ ...plain, type: "application/vnd.ms-excel.sheet.binary.main" }), ".xlsb"],
  [
    "a text document",
    handMade({
      ...plain,
      type: "application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml",
    }),
    "not a workbook",
  ],
  ["XML that is not well-formed", handMade({ sheets: { Plan: "<sheetData><row>" } }), "cannot be read"],
  [
    "entities of its own",
    handMade({
      ...plain,
      parts: {
        "xl/worksheets/sheet1.xml": '<!DOCTYPE a [<!ENTITY b "c">]><worksheet><sheetData/></worksheet>',
      },
    }),
    "entities",
  ],
  [
    "a part that is not UTF-8",
    handMade({ ...plain, parts: { "xl/worksheets/sheet1.xml": "\ufffe" } }),
    "Part xl/worksheets/sheet1.xml",
  ],
])("refuses %s with a sentence", (_, bytes, words) => {
  expect(refusal(bytes)).toThrow(FileRefusal);
  expect(refusal(bytes)).toThrow(words);
});

it("opens a file that may hold macros and holds none", () => {
  const type = "application/vnd.ms-excel.sheet.macroEnabled.main+xml";
  expect(readLiveWorkbook(handMade({ ...plain, type })).main.listed).toEqual(["Plan"]);
});

it("refuses a formula that claims a whole sheet", () => {
  const claim = (area: string) =>
    handMade({
      sheets: {
        Plan: `<sheetData><row r="1"><c r="A1"><f t="array" ref="${area}">1</f></c></row></sheetData>`,
      },
    });
  expect(refusal(claim("A1:XFD1048576"))).toThrow("Plan!A1 fills 17179869184 cells");
  expect(refusal(claim("A1:B100000"))).not.toThrow();
});

it("takes a workbook of the plain type", () => {
  expect(readLiveWorkbook(handMade({ ...plain, type: WORKBOOK_TYPE })).sheets).toHaveLength(1);
});

/** A zip whose directory names any size for its only part. */
function bomb(size: number): Uint8Array {
  const file = Buffer.from(zipSync({ "a.xml": [new Uint8Array(10), { level: 0 }] }));
  const record = file.indexOf(Buffer.from("PK\u0001\u0002", "latin1"));
  file.writeUInt32LE(size, record + 24);
  return file;
}

it("refuses sizes that no workbook has, before unpacking", () => {
  expect(() => new Package(bomb(LIMITS.part + 1))).toThrow("would unpack to 96 MB");
  const many = Object.fromEntries(Array.from({ length: 20_001 }, (_, n) => [`${n}`, new Uint8Array()]));
  expect(() => new Package(zipSync(many))).toThrow(FileRefusal);
});

it("refuses a part that unpacks to more than its directory says", () => {
  const honest = Buffer.from(zipSync({ "xl/a.xml": Buffer.alloc(100_000, 65) }));
  const record = honest.indexOf(Buffer.from("PK\u0001\u0002", "latin1"));
  honest.writeUInt32LE(10, record + 24);
  expect(deflateSync(Buffer.alloc(100_000, 65)).length).toBeLessThan(1000);
  expect(() => new Package(honest).bytes("xl/a.xml")).toThrow("damaged");
});

it("refuses parts that share their bytes", () => {
  const file = Buffer.from(zipSync({ "a.xml": Buffer.from("aa"), "b.xml": Buffer.from("bb") }));
  const first = file.indexOf(Buffer.from("PK\u0001\u0002", "latin1"));
  const second = file.indexOf(Buffer.from("PK\u0001\u0002", "latin1"), first + 1);
  file.writeUInt32LE(file.readUInt32LE(first + 42), second + 42);
  expect(() => new Package(file)).toThrow(FileRefusal);
});

it("refuses a file cut short anywhere", () => {
  for (let length = 0; length < sample.length; length += 37)
    expect(refusal(sample.subarray(0, length)), `${length} bytes`).toThrow(FileRefusal);
});

it("answers any damage with a sentence or with a workbook, never with a fault, and leaves the bytes alone", () => {
  const place = fc.record({ at: fc.nat(sample.length - 1), byte: fc.integer({ min: 0, max: 255 }) });
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 8 }), (damage) => {
      const bytes = Uint8Array.from(sample);
      for (const { at, byte } of damage) bytes[at] = byte;
      const before = Uint8Array.from(bytes);
      try {
        readLiveWorkbook(bytes);
      } catch (thrown) {
        expect(thrown).toBeInstanceOf(FileRefusal);
      }
      expect(Buffer.from(bytes).equals(before)).toBe(true);
    }),
    { numRuns: 400 },
  );
});
