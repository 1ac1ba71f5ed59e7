import { expect, test } from "vitest";
import { InvalidValue } from "../../src/core";
import {
  type Cell,
  evaluate,
  evaluateRecords,
  functionNamed,
  type WorksheetFunction,
} from "../../src/functions";

const fn = (name: string) => functionNamed(name) as WorksheetFunction;

test("a function is found with its namespace, in any case", () => {
  expect(functionNamed("BLADE.CARBON")).toBe(functionNamed("carbon"));
  expect(functionNamed("blade.Carbon")?.name).toBe("CARBON");
  expect(functionNamed("BLADE.")).toBeUndefined();
});

test("a function that there is not is told, and not as a fault of ours", () => {
  const [[told]] = evaluate(fn("CARBONN"), ["1095"]) as [[Cell]];
  expect(told).toBeInstanceOf(InvalidValue);
  expect((told as InvalidValue).message).toMatch(/^no worksheet function is given/);
  expect(evaluateRecords(fn("CARBONN"), ["1095"])).toEqual([{ answer: told }]);
});

test("records hold the answer by the labels of its columns", () => {
  const [rows] = [evaluate(fn("TEMPERED_RANGE"), ["1095", "400 °F"])];
  const [record] = evaluateRecords(fn("TEMPERED_RANGE"), ["1095", "400 °F"]);
  // README: 59 to 64 HRC, likely 62.
  expect(record).toMatchObject({ low: 59, likely: 62, high: 64 });
  expect(Object.values(record ?? {})).toEqual(rows[0]);
  // 0.95: the last digits of 1095 are hundredths of a per cent (SAE J402).
  expect(evaluateRecords(fn("CARBON"), [[["1095", "1060"]]])).toEqual([{ carbon: 0.95, "carbon 2": 0.6 }]);
  expect(evaluateRecords(fn("CARBON"), [[["1095"], ["1060"]]])).toEqual([{ carbon: 0.95 }, { carbon: 0.6 }]);
});
