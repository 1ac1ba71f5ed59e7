import { type CalculatedWorkbook, calculateWorkbook } from "../../src/engine/calculate-workbook";
import type { CellInput } from "../../src/engine/cell-value";
import type { CellModel, WorkbookModel } from "../../src/workbook/model/sheet-model";

function input(cell: CellModel | undefined): CellInput | undefined {
  if (cell === undefined || cell.content === "") return undefined;
  const { content } = cell;
  return typeof content === "string" && content.startsWith("=") ? { formula: content } : { value: content };
}

/** Calculates a workbook model without a screen. */
export function calculated({ sheets }: WorkbookModel): Promise<CalculatedWorkbook> {
  return calculateWorkbook({
    sheets: sheets.map(({ name, rows }) => ({ name, rows: rows.map((row) => row.map(input)) })),
  });
}

/** The model with one cell changed. */
export function changed(
  workbook: WorkbookModel,
  sheet: string,
  [row, column]: readonly [number, number],
  content: number | string,
): WorkbookModel {
  const sheets = workbook.sheets.map((model) => {
    if (model.name !== sheet) return model;
    const rows = model.rows.map((cells, r) =>
      r === row
        ? cells.map((cell, c) => (c === column && cell !== undefined ? { ...cell, content } : cell))
        : cells,
    );
    return { ...model, rows };
  });
  return { ...workbook, sheets };
}

/** What a cell shows, counted from 0; an error as its code and sentence. */
export function shownIn(
  workbook: CalculatedWorkbook,
  sheet: string,
  row: number,
  column: number,
): number | string | boolean | undefined {
  const found = workbook.at(sheet, row, column);
  if (found === undefined) return undefined;
  return "error" in found ? `${found.error} ${found.message}` : found.value;
}
