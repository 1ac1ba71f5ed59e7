import { describe, expect, test } from "vitest";
import { RUN_HEADINGS, RUN_PLAN } from "../../src/functions/run";
import { answer } from "../stock/call";
import { plan, tableOf } from "./run";
import { RUN } from "./run-r07";

describe("headings", () => {
  const one = (headings: readonly unknown[], ...cells: readonly unknown[]) =>
    answer(RUN_PLAN, [headings, cells]);

  test("stand in any order and case, with spaces, brackets and their own unit", () => {
    const [, row = []] = one(
      [" YIELD", "Length (mm)", "Good", "Width mm", "Thickness [mm]", "Steel"],
      0.92,
      "10 in",
      24,
      50,
      3,
      1095,
    );
    expect(row[0]).toBe("");
    expect(row[9]).toBe(28);
    expect(row[1]).toEqual(expect.any(Number));
  });

  test("that are not known are passed on with their cells, behind the line", () => {
    const table = tableOf(RUN.map((line, at) => ({ shelf: `S${at}`, ...line })));
    const [top = [], first = []] = answer(RUN_PLAN, table);
    expect(top.slice(0, 3)).toEqual(["line", "shelf", "mass g"]);
    expect(first.slice(0, 2)).toEqual(["L1", "S0"]);
  });

  test.each([
    [["steel", "good", "yield", "Good"], /^#VALUE! the heading "Good" stands in the table twice/],
    [["steel", "good", "yield", "note", "Note"], /^#VALUE! the heading "Note" stands in the table twice/],
    [
      ["steel", "good", "yield", "length in"],
      /^#VALUE! heading "length in": a bare number in this column counts as mm/,
    ],
    [["steel", "good", "yield", "temper hours min"], /^#VALUE! heading "temper hours min"/],
    [["steel", "good"], /^#VALUE! no heading reads "yield"/],
    [["a", "b"], /^#VALUE! the first row holds none of the headings/],
  ])("%j", (headings, sentence) => {
    expect(answer(RUN_PLAN, [headings, ["1095", 10, 0.9, 1, 1].slice(0, headings.length)])).toEqual([
      [expect.stringMatching(sentence)],
    ]);
  });

  test("blank rows stay blank, those at the end are left out, empty columns too", () => {
    const table = tableOf(RUN.slice(0, 1)).map((row) => [...row, null]);
    const width = table[0]?.length ?? 0;
    const blank = new Array(width).fill(null);
    const zeros = new Array(width).fill(0);
    const rows = answer(RUN_PLAN, [...table.slice(0, 1), blank, zeros, ...table.slice(1), blank, blank]);
    expect(rows.length).toBe(4);
    expect(new Set(rows[1])).toEqual(new Set([""]));
    expect(rows[3]?.[0]).toBe("L1");
    expect(new Set(rows.map((row) => row.length)).size).toBe(1);
  });

  test("a row of marks is no line, and a column headed like a result is not passed on", () => {
    const table = tableOf(RUN.slice(0, 1).map((line) => ({ ...line, Starts: 99, item: "chef" })));
    const marks = (table[0] ?? []).map((_, at) => (at % 2 === 0 ? "type" : "calc"));
    const [top = [], blank = [], row = []] = answer(RUN_PLAN, [
      ...table.slice(0, 1),
      marks,
      ...table.slice(1),
    ]);
    expect(top.slice(0, 3)).toEqual(["line", "item", "mass g"]);
    expect(blank.slice(2)).toEqual(new Array(24).fill(""));
    expect(row.slice(0, 2)).toEqual(["L1", "chef"]);
    expect(row[top.indexOf("starts")]).toBe(28);
  });

  test("a 0 that an empty cell arrived as asks for nothing", () => {
    const zeros = {
      "price kg": 0,
      "hour rate": 0,
      "outside heat": 0,
      margin: 0,
      price: 0,
      "pieces a load": 7,
      "oven h": 0,
    };
    const [line = {}] = plan([{ ...RUN[0], ...zeros }]);
    expect([line.loads, line["unit cost"], line.price, line.margin]).toEqual([4, "", "", ""]);
  });

  test("a table without lines gives its headings", () => {
    expect(answer(RUN_PLAN, [["steel", "good", "yield"]]).length).toBe(1);
  });

  test("listed by RUN_HEADINGS are all read, each in its own unit: none is passed on as unknown", () => {
    const listed = answer(RUN_HEADINGS).map(([heading, unit]) => `${heading} ${unit}`.trim());
    expect(listed.length).toBeGreaterThan(20);
    const [top = []] = answer(RUN_PLAN, [listed, listed.map(() => null)]);
    expect(top.slice(0, top.indexOf("mass g"))).toEqual(["line"]);
  });
});
