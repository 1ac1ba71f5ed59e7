import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { FileRefusal } from "../../src/workbook/file/package/file-refusal";
import { Package } from "../../src/workbook/file/package/package";
import { walkXml } from "../../src/workbook/file/package/xml";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { readLiveWorkbook } from "../../src/workbook/file/read/live-workbook";
import { handMade, partsOf } from "../workbook/hand-made";

const SHEET = "<sheetData/>";

describe("names that lead out of the folder (zip slip)", () => {
  const NAMES = [
    "../../outside.txt",
    "/etc/outside.txt",
    "..\\..\\outside.txt",
    "C:\\outside.txt",
    "xl/../../outside.txt",
  ];

  test.each(NAMES)("%s: nothing is written anywhere", async (name) => {
    const folder = mkdtempSync(join(tmpdir(), "slip-"));
    const before = process.cwd();
    try {
      process.chdir(folder);
      writeFileSync("plan.xlsx", handMade({ sheets: { Plan: SHEET }, parts: { [name]: "x" } }));
      await recalculate(handMade({ sheets: { Plan: SHEET }, parts: { [name]: "x" } })).catch(
        (thrown: unknown) => expect(thrown).toBeInstanceOf(FileRefusal),
      );
      expect(readdirSync(folder)).toEqual(["plan.xlsx"]);
    } finally {
      process.chdir(before);
      rmSync(folder, { recursive: true });
    }
  });

  test("a sheet that is said to lie outside the file is a missing part, not a file on disk", () => {
    const links = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="../../../../etc/passwd"/></Relationships>`;
    const file = handMade({ sheets: { Plan: SHEET }, parts: { "xl/_rels/workbook.xml.rels": links } });
    expect(() => readLiveWorkbook(file)).toThrow(FileRefusal);
  });
});

describe("a document type", () => {
  const TYPE = '<!DOCTYPE a [<!ENTITY b "c">]>';
  const sample = partsOf(
    readFileSync(new URL("../workbook/files/written-by-xlsxwriter.xlsx", import.meta.url)),
  );
  const parts = Object.keys(sample).filter((name) => /\.(?:xml|rels)$/.test(name));
  const withType = (part: string, before: string) => {
    const text = sample[part] ?? "";
    const at = text.indexOf("?>") + 2;
    const changed = text.slice(0, at) + before + text.slice(at);
    return zipSync(
      Object.fromEntries(
        Object.entries({ ...sample, [part]: changed }).map(([name, of]) => [name, strToU8(of)]),
      ),
    );
  };

  test.each([TYPE, TYPE.toLowerCase(), `\n<!-- <a> -->\n${TYPE}`, `<?a <b> ?>${TYPE}`])(
    "is refused in every part that is read: %s",
    (before) => {
      expect(parts.length).toBeGreaterThan(8);
      for (const part of parts)
        expect(() => new Package(withType(part, before)).text(part), part).toThrow("entities of its own");
    },
  );

  test("never costs more than the sentence: a workbook with one in a part that nobody reads opens", () => {
    for (const part of parts) {
      try {
        expect(readLiveWorkbook(withType(part, TYPE)).sheets.length, part).toBeGreaterThan(0);
      } catch (thrown) {
        expect(thrown, part).toBeInstanceOf(FileRefusal);
        expect(String(thrown), part).toContain(`Part ${part} of the file cannot be read`);
      }
    }
  });

  test("in a comment, in a text or behind the first element is none", () => {
    for (const before of [`<!-- ${TYPE} -->`, ""]) {
      const part = "xl/workbook.xml";
      expect(new Package(withType(part, before)).text(part)).toContain("<workbook");
    }
  });

  test("a comment without an end in front of a megabyte takes no time to speak of", () => {
    const part = "xl/workbook.xml";
    for (const before of [
      `<!--${"-".repeat(1e6)}`,
      `<!-- -->${" ".repeat(1e6)}`.repeat(2),
      "<?a?>".repeat(2e5),
    ])
      expect(() => new Package(withType(part, before)).text(part)).not.toThrow();
  });
});

describe("XML made to exhaust the reader", () => {
  const read = (xml: string) => () => walkXml("part", xml, {});

  test("entities that multiply (a billion laughs) are refused before they are counted", () => {
    const levels = Array.from({ length: 9 }, (_, n) => `<!ENTITY e${n + 1} "${`&e${n};`.repeat(10)}">`);
    expect(read(`<!DOCTYPE a [<!ENTITY e0 "ha">${levels.join("")}]><a>&e9;</a>`)).toThrow(
      "entities of its own",
    );
  });

  test("a long entity named often (quadratic) is refused", () => {
    const body = "&a;".repeat(50_000);
    expect(read(`<!DOCTYPE a [<!ENTITY a "${"x".repeat(50_000)}">]><a>${body}</a>`)).toThrow(
      "entities of its own",
    );
  });

  test.each([
    ["a file on disk", '<!DOCTYPE a [<!ENTITY f SYSTEM "file:///etc/passwd">]><a>&f;</a>'],
    ["an address", '<!DOCTYPE a [<!ENTITY f SYSTEM "http://localhost:9/x">]><a>&f;</a>'],
    ["parameters", "<!DOCTYPE a [<!ENTITY % p \"<!ENTITY q 'r'>\">%p;]><a/>"],
  ])("entities from %s are refused", (_what, xml) => {
    expect(read(xml)).toThrow("entities of its own");
  });

  test.each([
    ["an entity nobody defined", "<a>&nobody;</a>"],
    ["a character that XML forbids", "<a>&#0;</a>"],
    ["a character beyond all letters", "<a>&#x110000;</a>"],
    ["a tag that never ends", `<a ${'b="c" '.repeat(10_000)}`],
  ])("%s is refused in a sentence", (_what, xml) => {
    expect(read(xml)).toThrow(FileRefusal);
  });

  test("a hundred thousand elements one inside the other are read or refused, never a fault", () => {
    const deep = 100_000;
    let seen = 0;
    walkXml("part", `${"<a>".repeat(deep)}${"</a>".repeat(deep)}`, {
      open: () => {
        seen += 1;
      },
    });
    expect(seen).toBe(deep);
  });
});

describe("sheets made to exhaust the reader", () => {
  test.each([
    [
      "a cell past the last row",
      '<sheetData><row r="9999999"><c r="A9999999"><v>1</v></c></row></sheetData>',
    ],
    ["a cell past the last column", '<sheetData><row r="1"><c r="ZZZZ1"><v>1</v></c></row></sheetData>'],
    ["a row that is no number", '<sheetData><row r="-1"><c r="A-1"><v>1</v></c></row></sheetData>'],
    [
      "a text that is not there",
      '<sheetData><row r="1"><c r="A1" t="s"><v>99999999</v></c></row></sheetData>',
    ],
    ["a number that is none", '<sheetData><row r="1"><c r="A1"><v>1e999</v></c></row></sheetData>'],
    [
      "a formula shared with nobody",
      '<sheetData><row r="1"><c r="A1"><f t="shared" si="7"/><v>1</v></c></row></sheetData>',
    ],
    [
      "a formula over the whole sheet",
      '<sheetData><row r="1"><c r="A1"><f t="array" ref="A1:XFD1048576">BLADE.VERSION()</f></c></row></sheetData>',
    ],
  ])("%s: a workbook or a sentence", async (_what, sheet) => {
    const file = handMade({ sheets: { Plan: sheet } });
    const outcome = await recalculate(file).catch((thrown: unknown) => thrown);
    if (outcome instanceof Error) expect(outcome).toBeInstanceOf(FileRefusal);
    else expect(outcome).toHaveProperty("bytes");
  });
});

test("a small part that says it is large is refused before memory is taken", () => {
  const file = Buffer.from(zipSync({ "xl/a.xml": [strToU8("a".repeat(5_000_000)), { level: 9 }] }));
  const record = file.indexOf(Buffer.from("PK\u0001\u0002", "latin1"));
  file.writeUInt32LE(0xfffffff0, record + 24);
  expect(() => new Package(file)).toThrow("would unpack to");
});
