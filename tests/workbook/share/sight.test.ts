import { describe, expect, it } from "vitest";
import { readRectangle } from "../../../src/formula/addresses";
import type { Layout } from "../../../src/workbook/file/read/read-layout";
import {
  cannotBeRead,
  isOutOfSight,
  outOfSightOn,
  reachesOutOfSight,
} from "../../../src/workbook/share/sight";

const area = (name: string) => {
  const found = readRectangle(name);
  if (found === undefined) throw new RangeError(name);
  return found;
};

const hidden = outOfSightOn({
  rows: new Map([
    [3, { isHidden: true }],
    [5, { size: 0 }],
    [6, { size: 20, isHidden: false }],
    [7, {}],
  ]),
  hiddenColumns: [[4, 5]],
  merged: [area("B9:D10")],
} as unknown as Layout);

describe("what nobody sees on a sheet", () => {
  it("is hidden rows and columns, rows without height, and cells under merged ones", () => {
    expect([...hidden.rows]).toEqual([3, 5]);
    const seen = (row: number, column: number) => !isOutOfSight(hidden, row, column);
    expect([seen(2, 0), seen(3, 0), seen(4, 0), seen(5, 0), seen(6, 0)]).toEqual([
      true,
      false,
      true,
      false,
      true,
    ]);
    expect([seen(0, 3), seen(0, 4), seen(0, 5), seen(0, 6)]).toEqual([true, false, false, true]);
    // B9 shows what the merged cells hold.
    const merged = ["B9", "C9", "D10", "B10", "A9", "E9", "B8", "B11"].map((name) => {
      const { row, column } = area(name);
      return isOutOfSight({ ...hidden, columns: [] }, row, column);
    });
    expect(merged).toEqual([false, true, true, true, false, false, false, false]);
  });

  it("is reached by an area that holds some of it", () => {
    const reached = (name: string) => reachesOutOfSight(hidden, area(name));
    expect(["A1:C3", "A1:C4", "A4:A9", "A5", "A6", "A7:C8"].map(reached)).toEqual([
      false,
      true,
      true,
      false,
      true,
      false,
    ]);
    expect(["D1:D2", "D1:E2", "F1:H2", "G1:H2"].map(reached)).toEqual([false, true, true, false]);
    // With the first cell of merged ones the whole of them is read as it is seen.
    expect(["B9", "A9:D10", "B9:D10", "C9", "C10:D10", "B10", "A10:A11", "B11:D12"].map(reached)).toEqual([
      false,
      false,
      false,
      true,
      true,
      true,
      false,
      false,
    ]);
  });
});

describe("a style in which nobody can read", () => {
  it("has letters of the colour behind them", () => {
    expect(cannotBeRead({})).toBe(false);
    expect(cannotBeRead({ color: "#FFFFFF" })).toBe(true);
    expect(cannotBeRead({ color: "#ffffff", fill: "#1f4e79" })).toBe(false);
    expect(cannotBeRead({ color: "#AA0000", fill: "#aa0000" })).toBe(true);
    expect(cannotBeRead({ fill: "#000000" })).toBe(true);
  });

  it("has letters under 4 points, or a number format that shows nothing", () => {
    expect([3.9, 4, 11].map((size) => cannotBeRead({ size }))).toEqual([true, false, false]);
    // A format has parts for positive, negative, nought and text (ECMA-376 Part 1, 18.8.31); empty ones show nothing.
    const formats = [";;;", " ; ; ", ";", "", "0;;", ";0", "0.0", 'x";;;"'];
    expect(formats.map((format) => cannotBeRead({ format }))).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
      false,
      false,
    ]);
  });
});
