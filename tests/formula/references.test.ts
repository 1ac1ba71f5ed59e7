import fc from "fast-check";
import { expect, test } from "vitest";
import { rectangleName } from "../../src/formula/addresses";
import {
  mentionsOf,
  namesManySheets,
  namesOtherFile,
  readReference,
  referencesIn,
  shifted,
  splitAddress,
  withSheetsRenamed,
  withSpillsNamed,
} from "../../src/formula/references";
import { freeSheetName, quotedSheet } from "../../src/formula/sheet-names";

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
  expect(freeSheetName("1095", ["1095", "1095 2"])).toBe("1095 3");
  expect(freeSheetName("plan", ["Plan"])).toBe("plan 2");
  const long = freeSheetName("Temper curve of X50CrMoV15/1.4116 [bar]", []);
  expect(long.length).toBeLessThanOrEqual(31);
  expect(long).not.toMatch(/[\\/?*[\]:]/);
});

test.each([
  ["A1+$B$2:B3", 1, 1, "B2+$B$2:C4"],
  ["SUM(A:C,$1:2)", 2, 1, "SUM(B:D,$1:4)"],
  // What leaves the sheet comes in again at the other side.
  ["A1", -1, -1, "XFD1048576"],
  [
    "LOG10(A1)&\"A1\"&'A1 b'!A1&Lines[A1]&[2]Plan!A1",
    1,
    0,
    "LOG10(A2)&\"A1\"&'A1 b'!A2&Lines[A1]&[2]Plan!A2",
  ],
  ["R1C1+ZDP189", 5, 5, "R1C1+ZDP189"],
])("%s filled %i down and %i across is %s", (formula, rows, columns, expected) => {
  expect(shifted(formula, rows, columns)).toBe(expected);
});

test("moved there and back a formula is what it was, away from the edges", () => {
  const place = fc.integer({ min: 0, max: 50 });
  fc.assert(
    fc.property(place, place, (rows, columns) => {
      const formula = "A1+$B$2*SUM(Plan!C3:$D9,E:F,7:$8)";
      expect(shifted(shifted(formula, rows, columns), -rows, -columns)).toBe(formula);
    }),
  );
});

test("cells that a formula names, with their sheet", () => {
  const names = (formula: string) =>
    referencesIn(formula, "Own").map(({ sheet, area }) => `${sheet} ${rectangleName(area)}`);
  expect(names("A1+'Run (old)'!$B$2:C3&\"D4\"&Lines[E5]")).toEqual(["Own A1", "Run (old) B2:C3"]);
  expect(names("SUM(Plan!A1:Plan!B2,INDEX(A1:A9,1):C3)")).toEqual(["Plan A1:B2", "Own A1:A9", "Own C3"]);
  expect(names("[2]Plan!A1+'[Book.xlsx]Plan'!A1+Jan:Mar!A1+A:A+LOG10(1)")).toEqual([]);
});

test("other workbooks and several sheets are told from ranges", () => {
  for (const formula of ["[2]Plan!A1", "'[Book.xlsx]Run 1'!A1", "[2]!Kerf"])
    expect([namesOtherFile(formula), namesManySheets(formula)], formula).toEqual([true, false]);
  for (const formula of ["Jan:Mar!A1", "'Run 1:Run 9'!A1"])
    expect([namesOtherFile(formula), namesManySheets(formula)], formula).toEqual([false, true]);
  for (const formula of ["Plan!A1:Plan!B2", "A1:Plan!B2", '"[2]Plan!A1"', "Lines[2]", "Lines[[a]:[b]]"])
    expect([namesOtherFile(formula), namesManySheets(formula)], formula).toEqual([false, false]);
});

test("a sheet is renamed where it is named, and nowhere else", () => {
  const changed = new Map([
    ["plan/1", "Plan 1"],
    ["old", "New"],
  ]);
  expect(withSheetsRenamed("'Plan/1'!A1+old!B2+\"old!\"+Lines[old!]+'old:x'!C3+[2]old!D4", changed)).toBe(
    "'Plan 1'!A1+New!B2+\"old!\"+Lines[old!]+'New:x'!C3+[2]old!D4",
  );
});

test("a mention of a sheet is found, also in a text that INDIRECT may read", () => {
  const mentions = mentionsOf(["Prices"]);
  for (const formula of ["prices!A1", "'Prices'!$A$1:$B$2", "INDIRECT(\"'Prices'!A1\")", "Costs:Prices!A1"])
    expect(mentions(formula), formula).toBe(true);
  for (const formula of ["Old_Prices!A1", "Prices", '"Prices"', "Lines[Prices]"])
    expect(mentions(formula), formula).toBe(false);
});

test("a spill is named by the cells that it fills", () => {
  const filled = ({ sheet }: { readonly sheet: string }) =>
    sheet === "Plan" ? { row: 1, column: 0, lastRow: 3, lastColumn: 1 } : undefined;
  const named = (formula: string) => withSpillsNamed(formula, "Own", filled);
  expect(named('SUM(_xlfn.ANCHORARRAY(Plan!A2),"ANCHORARRAY(A2)")')).toBe(
    'SUM(Plan!A2:B4,"ANCHORARRAY(A2)")',
  );
  expect(named("ANCHORARRAY(A2)")).toBe("A2");
});
