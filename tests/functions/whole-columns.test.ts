import { expect, test } from "vitest";
import { functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";
import { withoutEmptyTails } from "../../src/functions/whole-columns";

/** Rows of a sheet: ECMA-376 Part 1, 18.3.1.73 gives a row the index 1 to 1,048,576. */
const ROWS = 1_048_576;

const wholeColumn = (...cells: unknown[]) =>
  Array.from({ length: ROWS }, (_, row) => [row < cells.length ? cells[row] : null]);

test("whole columns are cut at the last row that any of them fills, so that rows stay side by side", () => {
  const [steels, tempers] = withoutEmptyTails([wholeColumn("1095", null, "O1"), wholeColumn(200)]);
  expect(steels).toEqual([["1095"], [null], ["O1"]]);
  expect(tempers).toEqual([[200], [null], [null]]);
});

test("no shorter than a range beside them, and an empty one keeps a cell", () => {
  expect(withoutEmptyTails([wholeColumn("1095"), [[1], [2]]])).toEqual([
    [["1095"], [null]],
    [[1], [2]],
  ]);
  expect(withoutEmptyTails([wholeColumn()])).toEqual([[[null]]]);
});

test("other ranges and single values are left as they are", () => {
  const given = [[["1095"], [null]], 200, undefined];
  expect(withoutEmptyTails(given)).toBe(given);
});

test("a function answers for the rows filled", () => {
  const carbon = functionNamed("CARBON");
  if (carbon === undefined) throw new Error("no CARBON");
  // SAE J403: 1095 has 0.90 to 1.03 % C; the designation encodes 0.95.
  expect(evaluate(carbon, [wholeColumn("1095", "", "1095")])).toEqual([[0.95], [""], [0.95]]);
});
