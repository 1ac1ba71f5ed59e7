import { expect, test } from "vitest";
import { freeName, quotedSheet, readReference, splitAddress } from "../../src/formula/sheet-reference";

/** Forms of references: ECMA-376 Part 1, 18.17.2.3 (cell references) and 18.17.2.5 (names). */
test.each([
  ["A2", { sheet: null, place: "A2", kind: "cells" }],
  ["$A$2:B9", { sheet: null, place: "$A$2:B9", kind: "cells" }],
  ["'Smith''s plan'!D7", { sheet: "Smith's plan", place: "D7", kind: "cells" }],
  ["Plan!A:C", { sheet: "Plan", place: "A:C", kind: "whole rows or columns" }],
  ["3:5", { sheet: null, place: "3:5", kind: "whole rows or columns" }],
  ["Kerf", { sheet: null, place: "Kerf", kind: "name" }],
  ["[2]Plan!A1", null],
  ["'[Other book.xlsx]Plan'!A1", null],
  ["'First:Last'!A1", null],
  ["Lines[Temper C]", null],
])("%s", (text, expected) => {
  expect(readReference(text)).toEqual(expected);
});

test("a sheet's name is quoted where it would not be read as one word", () => {
  for (const name of ["Plan", "Run_7", "Steels"]) expect(quotedSheet(name)).toBe(name);
  for (const name of ["Run plan", "7", "A1", "R1C1", "R", "C3", "Größe", "Smith's"]) {
    expect(splitAddress(`${quotedSheet(name)}!B2`)).toEqual({ sheet: name, place: "B2" });
    expect(quotedSheet(name)).toMatch(/^'.*'$/);
  }
});

/** A sheet's name: 31 characters at most, none of \ / ? * [ ] : (Excel's own message when a sheet is renamed, from memory). */
test("a free name keeps to what a sheet may be called", () => {
  expect(freeName("1095", ["1095", "1095 2"])).toBe("1095 3");
  expect(freeName("plan", ["Plan"])).toBe("plan 2");
  const long = freeName("Temper curve of X50CrMoV15/1.4116 [bar]", []);
  expect(long.length).toBeLessThanOrEqual(31);
  expect(long).not.toMatch(/[\\/?*[\]:]/);
});
