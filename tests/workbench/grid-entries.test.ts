import { expect, test } from "vitest";
import { readEntry, typedForm } from "../../src/workbench/grid/grid-entries";

/** 1 January 2000 is day 36526 of the 1900 calendar (ECMA-376 Part 1, 18.17.4.1). */
const DAY = 36526;

test("a day is shown for typing over as a day, a figure as a figure", () => {
  expect(typedForm(DAY, "yyyy-mm-dd")).toBe("2000-01-01");
  expect(typedForm(DAY, "d mmm yy")).toBe("2000-01-01");
  expect(typedForm(DAY + 0.5, "yyyy-mm-dd hh:mm")).toBe("2000-01-01T12:00");
  expect(typedForm(DAY, "0.00")).toBe(String(DAY));
  expect(typedForm(undefined, "yyyy-mm-dd")).toBe("");
  expect(typedForm("K2", "yyyy-mm-dd")).toBe("K2");
});

test("a day typed into a cell of days is one, in the order of ISO 8601 it is one everywhere", () => {
  expect(readEntry("1 January 2000", "yyyy-mm-dd")).toEqual({ value: DAY });
  expect(readEntry("2000-01-01", "yyyy-mm-dd")).toEqual({ value: DAY });
  expect(readEntry("2000-01-01", undefined)).toEqual({ value: DAY, format: "yyyy-mm-dd" });
  // Two days read alike: it stays a text, and whatever reads it asks.
  expect(readEntry("2/3/2000", "yyyy-mm-dd")).toEqual({ value: "2/3/2000" });
  expect(readEntry("1 January 2000", undefined)).toEqual({ value: "1 January 2000" });
});

test("figures are figures, in cells of text they are not", () => {
  expect(readEntry(" 1.5e3 ", undefined)).toEqual({ value: 1500 });
  expect(readEntry("1095", "@")).toEqual({ value: "1095" });
});
