import { describe, expect, test } from "vitest";
import { noSheet } from "../../src/host/no-sheet";
import type { HostPort, HostRows, HostValue } from "../../src/host/port";
import { readTableHere } from "../../src/taskpane/checks/run-reader";
import { selected as selectedCell } from "./sheet-port";

/** Columns as spreadsheets count them: A to Z, AA to AZ and so on. */
function columnNumber(letters: string): number {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

/** A host with one sheet, whose cells are asked for as ranges of at most 20,000 cells. */
function hostWith(sheet: ReadonlyMap<string, readonly HostValue[]>, selected: string): HostPort {
  const rowsOf = (reference: string): HostRows => {
    const [, from = "", first = "", to = "", last = ""] =
      /!([A-Z]+)(\d+):([A-Z]+)(\d+)$/.exec(reference) ?? [];
    const [left, right] = [columnNumber(from), columnNumber(to)];
    const count = Number(last) - Number(first) + 1;
    expect(count * (right - left + 1), reference).toBeLessThanOrEqual(20_000);
    return Array.from({ length: count }, (_, at) =>
      Array.from(
        { length: right - left + 1 },
        (_cell, column) => sheet.get(String(Number(first) + at))?.[left - 1 + column] ?? null,
      ),
    );
  };
  return {
    ...noSheet,
    selection: async () => selectedCell("", "", { address: selected }),
    readValues: async (references) => references.map(rowsOf),
  };
}

const blank = Array.from({ length: 27 }, () => null);
const headings = ["line", "steel", "good", "yield"];

function sheetFrom(rows: Readonly<Record<number, readonly HostValue[]>>): Map<string, readonly HostValue[]> {
  return new Map(Object.entries(rows));
}

describe("the table around the selected cell", () => {
  test("is named as a formula names it, sheet in quotes where it has a space", async () => {
    const rows = { 3: [null, ...headings], 4: [null, "L1", "1084", 12, 0.92], 5: [null, "L2", "1095", 6, 1] };
    const read = await readTableHere(hostWith(sheetFrom(rows), "'Run plan'!C5"));
    expect(read).toMatchObject({ address: "'Run plan'!B3:E5", isCut: false });
    expect(read.rows).toHaveLength(3);
  });

  test("may stand far to the right", async () => {
    const rows = { 1: [...blank, ...headings], 2: [...blank, "L1", "1084", 12, 0.92] };
    expect((await readTableHere(hostWith(sheetFrom(rows), "Plan!A1"))).address).toBe("Plan!AB1:AE2");
  });

  test("says so where it goes on below what is read", async () => {
    const rows = Object.fromEntries(
      Array.from({ length: 2000 }, (_, at) => [at + 2, [`L${at}`, "1084", 1, 1]]),
    );
    const read = await readTableHere(hostWith(sheetFrom({ 1: headings, ...rows }), "Plan!A2"));
    expect(read.isCut).toBe(true);
  });

  test("a sheet without a run is answered with what is looked for", async () => {
    await expect(readTableHere(hostWith(sheetFrom({ 1: ["steel"] }), "Plan!A1"))).rejects.toThrow(
      /steel, good and yield/,
    );
    await expect(readTableHere(noSheet)).rejects.toThrow(/Select a cell/);
  });
});
