import { describe, expect, test } from "vitest";
import { isTextTable, readDelimited } from "../../src/workbook/file/read/read-delimited";

const bytes = (text: string) => new TextEncoder().encode(text);
const cells = (text: string, file = "rack.csv") =>
  readDelimited(bytes(text), file).sheets[0]?.cells.map(({ row, column, content }) => [
    row,
    column,
    content && "value" in content ? content.value : undefined,
  ]);

describe("a text table", () => {
  test("has commas, semicolons or tabs between its cells, quotes as RFC 4180 has them", () => {
    const wanted = [
      [0, 0, "Steel"],
      [0, 1, "kg"],
      [1, 0, 'bar, "flat"'],
      [1, 1, 2.5],
    ];
    expect(cells('Steel,kg\r\n"bar, ""flat""",2.5\r\n')).toEqual(wanted);
    expect(cells('Steel;kg\n"bar, ""flat""";2.5')).toEqual(wanted);
    expect(cells('Steel\tkg\n"bar, ""flat"""\t2.5', "rack.tsv")).toEqual(wanted);
  });

  test("figures count, leading zeros and long numbers stay as they are written", () => {
    expect(cells("1095,007,-1.5e3,12345678901234567890,+2")).toEqual([
      [0, 0, 1095],
      [0, 1, "007"],
      [0, 2, -1500],
      [0, 3, "12345678901234567890"],
      [0, 4, 2],
    ]);
  });

  test("a day in the order of ISO 8601 is a day", () => {
    // 1 January 2000 is day 36526 of the 1900 calendar (ECMA-376 Part 1, 18.17.4.1).
    const cell = readDelimited(bytes("2000-01-01,2000-13-01"), "days.csv").sheets[0]?.cells;
    expect(cell?.[0]).toMatchObject({ content: { value: 36526 }, style: { format: "yyyy-mm-dd" } });
    expect(cell?.[1]).toMatchObject({ content: { value: "2000-13-01" } });
  });

  test("nothing in it runs: a formula is a text", () => {
    expect(cells("=1+1,@SUM(A1)")).toEqual([
      [0, 0, "=1+1"],
      [0, 1, "@SUM(A1)"],
    ]);
  });

  test("empty tables and files that are no text are refused with a sentence", () => {
    expect(() => cells("\n\n")).toThrow("rack.csv: the table is empty.");
    expect(() => cells("a\0b,c")).toThrow(/rack\.csv: no text/);
  });

  test("a workbook with the name of a text is none", () => {
    expect(isTextTable(new Uint8Array([0x50, 0x4b, 3, 4]), "plan.csv")).toBe(false);
    expect(isTextTable(bytes("a,b"), "plan.xlsx")).toBe(false);
    expect(isTextTable(bytes("a,b"), "plan.TSV")).toBe(true);
  });
});
