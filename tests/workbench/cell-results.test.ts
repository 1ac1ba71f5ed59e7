import { beforeEach, expect, test } from "vitest";
import { CellResults } from "../../src/workbench/grid/cell-results";

const at = (row: number, column = 0) => ({ unitId: "u", sheetId: "s", row, column });
let results: CellResults;

beforeEach(() => {
  results = new CellResults();
  results.set("s", 0, 0, { value: 1 });
  results.set("s", 1, 0, { error: "#N/A", message: "no such steel" });
  results.setSpill("s", 0, 0, { row: 0, column: 0, lastRow: 1, lastColumn: 0 });
});

test("each cell has its result and its sentence, filled ones too", () => {
  expect(results.at(at(0))).toEqual({ value: 1 });
  expect(results.sentenceAt(at(1))).toBe("no such steel");
  expect(results.sentenceAt(at(1), "#VALUE!")).toBeUndefined();
  expect(results.sentenceAt({ ...at(1), sheetId: "other" })).toBeUndefined();
});

test("a filled cell names the formula that fills it, and that formula its cells", () => {
  expect(results.filling(at(1))).toEqual(at(0));
  expect(results.filling(at(0))).toBeUndefined();
  expect(results.spillOf(at(0))).toEqual({ startRow: 0, endRow: 1, startColumn: 0, endColumn: 0 });
});

test("a formula that is forgotten takes what it filled with it", () => {
  expect(results.forget("s", 0, 0)).toEqual([[1, 0]]);
  expect([results.at(at(0)), results.at(at(1)), results.spillOf(at(0))]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
});

test("a cell that shows a value again has no sentence", () => {
  results.set("s", 1, 0, { value: 2 });
  expect(results.sentenceAt(at(1))).toBeUndefined();
});
