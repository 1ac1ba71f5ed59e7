import { describe, expect, test } from "vitest";
import { pastedRows } from "../../src/taskpane/checks/pasted-table";
import { runTableAround } from "../../src/taskpane/checks/run-table";

describe("a run's table among the cells of a sheet", () => {
  const sheet = [
    ["Run R-07", null, null, null, null, null],
    [null, null, null, null, null, null],
    ["Line", "Steel", "Good wanted", "Yield", null, "line"],
    ["type", "type", "type", "type", null, null],
    ["L1", "1084", 12, 0.92, null, "L1"],
    [null, null, null, null, null, null],
    ["cut on Friday", null, null, null, null, null],
  ];

  test("begins at its headings and ends at a blank row and a blank column", () => {
    for (const at of [0, 3, 4, 6]) {
      expect(runTableAround(sheet, at)).toEqual({
        row: 2,
        column: 0,
        rows: sheet.slice(2, 5).map((row) => row.slice(0, 4)),
      });
    }
  });

  test("a table of results that follows without a gap is not part of it", () => {
    const rows = [
      ["", "line", "steel", "good", "yield", "line", "mass g"],
      ["", "L1", "1084", 12, 0.92, "L1", 407],
    ];
    expect(runTableAround(rows, 1)).toMatchObject({
      column: 1,
      rows: [["line", "steel", "good", "yield"], {}],
    });
  });

  test("of two tables one above the other the nearer above counts", () => {
    const headings = ["line", "steel", "good", "yield"];
    const rows = [headings, ["A1", "1084", 1, 1], [], headings, ["B1", "1084", 1, 1]];
    expect(runTableAround(rows, 1)?.row).toBe(0);
    expect(runTableAround(rows, 4)?.row).toBe(3);
  });

  test("cells without such headings hold no run", () => {
    expect(
      runTableAround(
        [
          ["steel", "good"],
          ["1084", 12],
        ],
        0,
      ),
    ).toBeNull();
    expect(runTableAround([], 0)).toBeNull();
  });
});

/** The quoting of RFC 4180, with tabs as sheets put them on the clipboard. */
describe("pasted rows", () => {
  test("tabs, semicolons or commas between cells", () => {
    const rows = [
      ["steel", "good"],
      ["1084", "12"],
    ];
    for (const sign of ["\t", ";", ","]) {
      expect(pastedRows(rows.map((row) => row.join(sign)).join("\r\n"))).toEqual(rows);
    }
  });

  test("quotes keep separators, quotes and line breaks in a cell", () => {
    expect(pastedRows('a,"b, ""c""\nd",e\n1,,3\n')).toEqual([
      ["a", 'b, "c"\nd', "e"],
      ["1", "", "3"],
    ]);
    expect(pastedRows("a\t\tc\n")).toEqual([["a", "", "c"]]);
    expect(pastedRows(" \n ")).toEqual([]);
  });

  test("a decimal comma stays in its cell where tabs or semicolons part them", () => {
    expect(pastedRows("good;yield\n12;0,92")).toEqual([
      ["good", "yield"],
      ["12", "0,92"],
    ]);
  });

  test("an opened quote that never closes ends all the same", () => {
    expect(pastedRows('a,"b\nc').flat().join("")).toContain("a");
  });
});
