import type { ICellData, IWorkbookData } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import { EditedCells, withCells } from "../../src/workbench/grid/edited-cells";

const set = (subUnitId: string, cellValue: object) => ({
  id: "sheet.mutation.set-range-values",
  params: { subUnitId, cellValue },
});
const none = () => null;

describe("cells that were edited since a moment", () => {
  it("are none before it, and each once after it, sheet by sheet", () => {
    const edited = new EditedCells();
    edited.note(set("a", { 0: { 0: {} } }));
    expect(edited.areAll).toBe(false);
    edited.begin();
    edited.note(set("a", { 3: { 1: {}, 16383: null } }));
    edited.note(set("b", { 3: { 1: {} } }));
    edited.note(set("a", { 3: { 1: {} } }));
    expect(edited.areAll).toBe(true);
    expect(edited.cells(none).map(({ sheetId, row, column }) => [sheetId, row, column])).toEqual([
      ["a", 3, 1],
      ["a", 3, 16383],
      ["b", 3, 1],
    ]);
  });

  it("do not tell all once something else than cells was changed, or too many", () => {
    const edited = new EditedCells();
    edited.begin();
    edited.note({ id: "sheet.mutation.insert-row", params: {} });
    expect(edited.areAll).toBe(false);
    edited.begin();
    const column = Object.fromEntries(Array.from({ length: 1001 }, (_, row) => [row, { 0: {} }]));
    edited.note(set("a", column));
    expect(edited.areAll).toBe(false);
  });

  it("go back into the workbook as it was kept, emptied ones too", () => {
    const cellData: Record<number, Record<number, ICellData>> = { 0: { 0: { v: 1 }, 1: { v: 2 } } };
    const snapshot = { sheets: { a: { cellData } } } as unknown as IWorkbookData;
    const changed = withCells(snapshot, [
      { sheetId: "a", row: 0, column: 0, data: null },
      { sheetId: "a", row: 0, column: 1, data: { v: 5 } },
      { sheetId: "a", row: 7, column: 2, data: { f: "=A1" } },
      { sheetId: "gone", row: 7, column: 2, data: { v: 9 } },
    ]);
    expect(changed.sheets).toEqual({ a: { cellData: { 0: { 1: { v: 5 } }, 7: { 2: { f: "=A1" } } } } });
  });
});
