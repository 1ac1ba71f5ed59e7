import { expect, test } from "vitest";
import { frozenNames, namesNow } from "./frozen-names";

/*
 * A formula in a workbook knows a function by its name and an argument by its place. A new function, or a
 * new argument that may be left out at the end, is frozen by `npm run freeze`; anything else
 * that this test shows breaks workbooks.
 */
const frozen = frozenNames();
const now = namesNow();

test("no function that was promised has gone", () => {
  expect(Object.keys(frozen).filter((name) => now[name] === undefined)).toEqual([]);
});

test.each(Object.keys(frozen))("%s: names, order, units, defaults and results as promised", (name) => {
  expect(now[name]).toEqual(frozen[name]);
});

test("every function is promised", () => {
  expect(Object.keys(now).filter((name) => frozen[name] === undefined)).toEqual([]);
});
