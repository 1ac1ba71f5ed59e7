import fc from "fast-check";
import { expect, test } from "vitest";
import {
  cellName,
  columnLetters,
  columnOf,
  readCellName,
  readRectangle,
  rectangleName,
  SHEET_COLUMNS,
  SHEET_ROWS,
} from "../../src/formula/addresses";

const row = fc.integer({ min: 0, max: SHEET_ROWS - 1 });
const column = fc.integer({ min: 0, max: SHEET_COLUMNS - 1 });
const fixed = fc.constantFrom("both", "row", "column", "none");

/** Base 26 without a nought, by hand: AA follows Z, and Excel's last column is XFD (its own limit, from memory). */
test.each([
  [0, "A"],
  [25, "Z"],
  [26, "AA"],
  [701, "ZZ"],
  [702, "AAA"],
  [16_383, "XFD"],
])("column %i has the letters %s", (place, letters) => {
  expect(columnLetters(place)).toBe(letters);
  expect(columnOf(letters.toLowerCase())).toBe(place);
});

test("every address on a sheet is read as it was written", () => {
  fc.assert(
    fc.property(row, column, fixed, (r, c, kept) => {
      expect(readCellName(cellName(r, c, kept))).toEqual({ row: r, column: c });
    }),
  );
});

test("every block is read as it was written, its corners in any order", () => {
  fc.assert(
    fc.property(row, column, row, column, fixed, (r, c, r2, c2, kept) => {
      const area = {
        row: Math.min(r, r2),
        column: Math.min(c, c2),
        lastRow: Math.max(r, r2),
        lastColumn: Math.max(c, c2),
      };
      expect(readRectangle(rectangleName(area, kept))).toEqual(area);
      expect(readRectangle(`${cellName(r, c2)}:${cellName(r2, c)}`)).toEqual(area);
    }),
  );
});

test.each(["", "A", "1", "A0", "A01", "XFE1", "A1048577", "AAAA1", "R1C1", "Plan!A1", "A1:B2", "A1x"])(
  "%s is the address of no cell",
  (text) => {
    expect(readCellName(text)).toBeUndefined();
  },
);
