import { describe, expect, test } from "vitest";
import { evaluateFormulas } from "../../src/engine/evaluate-formulas";
import { catalogue } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";
import { walkXml } from "../../src/workbook/file/package/xml";
import { recalculate } from "../../src/workbook/file/patch/recalculate";
import { handMade, insideSheet } from "../workbook/hand-made";

/** Texts that a program would run, after the list of OWASP ("CSV Injection"), and markup. */
const HOSTILE = [
  "=1+1",
  '=HYPERLINK("http://localhost/x","open")',
  "+1+1",
  "-1+1",
  "@SUM(A1)",
  "\t=1+1",
  "=cmd|' /C calc'!A0",
  "<script>alert(1)</script>",
  "]]>&amp;</v></c>",
  "'=1+1",
];

const history = (item: string) =>
  `=BLADE.HISTORY({"item","started","good";"${item.replaceAll('"', '""')}",10,9})`;

describe("a name that looks like a formula", () => {
  test("stays a text in the engine, blanks before it taken away", async () => {
    const answers = await evaluateFormulas(HOSTILE.map(history));
    const names = answers.map(({ rows }) => rows[0]?.[0]);
    expect(names).toEqual(HOSTILE.map((value) => ({ value: value.trim() })));
  });

  test.each(HOSTILE)("is written to a file as a text: %s", async (item) => {
    const escaped = item.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
    const row = (cells: string) => `<row>${cells}</row>`;
    const text = (value: string) => `<c t="inlineStr"><is><t xml:space="preserve">${value}</t></is></c>`;
    const sheet = `<sheetData>${row(text("item") + text("started") + text("good"))}${row(
      `${text(escaped)}<c><v>10</v></c><c><v>9</v></c>`,
    )}${row("<c><f>_xldudf_BLADE_HISTORY(A1:C2)</f></c>")}</sheetData>`;
    const done = await recalculate(handMade({ sheets: { Plan: sheet } }));
    const xml = insideSheet(done.bytes);
    // Three formulas would mean that a text had become one.
    expect(xml.match(/<f[ >]/g)).toHaveLength(1);
    const read: string[] = [];
    walkXml("sheet", `<worksheet>${xml}</worksheet>`, { text: (value) => read.push(value) });
    expect(read.join("")).toContain(item.trim());
    expect(xml).toMatch(/<c[^>]* t="str"[^>]*><f>_xldudf_BLADE_HISTORY/);
  });
});

describe("words of the language in place of names", () => {
  const WORDS = ["__proto__", "constructor", "toString", "hasOwnProperty", "prototype", "valueOf"];

  test.each(catalogue.map((fn) => [fn.name, fn] as const))("%s finds nothing under them", (_name, fn) => {
    const width = Object.keys(fn.parameters).length;
    for (const word of WORDS) {
      const answer = JSON.stringify(
        evaluate(
          fn,
          Array.from({ length: width }, () => word),
        ),
      );
      expect(answer).not.toMatch(/native code|\[object|function /);
    }
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test("a key of a table adds nothing to objects", async () => {
    await evaluateFormulas(['=BLADE.HISTORY({"item","started","good","__proto__";"a",10,9,"polluted"})']);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

describe("long texts made to keep a pattern searching", () => {
  const LENGTH = 20_000;
  const TEXTS = ["1", " ", "9.", "1-", "a ", "C 0.", "(", "'", "1 1/", "\u00a0"].map((piece) =>
    piece.repeat(LENGTH / piece.length),
  );
  test.each(
    catalogue
      .filter(({ parameters }) => Object.keys(parameters).length > 0)
      .map((fn) => [fn.name, fn] as const),
  )("%s answers", (_name, fn) => {
    const width = Object.keys(fn.parameters).length;
    for (const text of TEXTS)
      evaluate(
        fn,
        Array.from({ length: width }, () => `${text}!`),
      );
  });
});
