import { type CalculatedWorkbook, calculateWorkbook } from "../../engine/calculate-workbook";
import type { CellInput } from "../../engine/cell-value";
import type { SheetInput } from "../../engine/workbook-input";
import { placeOf, type Rectangle } from "../../formula/addresses";
import { wholeCallOfOurs } from "../../formula/functions-called";
import { functionNamed } from "../../functions/catalogue";
import { contentFrom } from "../file/cell-content";
import { bodyOf } from "../file/patch/calculation";
import type { CellData, CellFormula, SheetData, WorkbookData } from "./workbook-data";

function inputOf({ name, cells }: SheetData): SheetInput {
  const rows: CellInput[][] = [];
  for (const { row, column, content } of cells) {
    if (content === undefined) continue;
    const filled = rows[row] ?? [];
    filled[column] = content;
    rows[row] = filled;
  }
  return { name, rows };
}

/** True for a formula that may give several values although it gives one or an error now. */
function mayFill(formula: string): boolean {
  const called = functionNamed(wholeCallOfOurs(formula) ?? "");
  return called !== undefined && called.shape !== "scalar";
}

/** A formula with the cells it fills; unchanged where it gives a single value by its nature. */
export function withFill(
  formula: string,
  { row, column }: { readonly row: number; readonly column: number },
  spill: { readonly rows: number; readonly columns: number } | undefined,
): CellFormula {
  if (spill === undefined && !mayFill(formula)) return { formula };
  const { rows, columns } = spill ?? { rows: 1, columns: 1 };
  const fills: Rectangle = { row, column, lastRow: row + rows - 1, lastColumn: column + columns - 1 };
  return { formula, fills };
}

/** The cells of a sheet with what their formulas come to, and the cells that formulas fill beside their own. */
function calculatedCells({ name, cells }: SheetData, done: CalculatedWorkbook): CellData[] {
  const known = new Map(cells.map((cell) => [placeOf(cell.row, cell.column), cell]));
  const resultAt = (row: number, column: number) => contentFrom(done.at(name, row, column) ?? { value: 0 });
  for (const { row, column, content, style } of cells) {
    if (content === undefined || !("formula" in content)) continue;
    const filled = withFill(content.formula, { row, column }, done.spillAt(name, row, column));
    known.set(placeOf(row, column), {
      row,
      column,
      content: { ...filled, result: resultAt(row, column) },
      ...(style && { style }),
    });
    for (const [r, c] of filled.fills === undefined ? [] : bodyOf(filled.fills)) {
      const place = placeOf(r, c);
      known.set(place, { ...known.get(place), row: r, column: c, content: resultAt(r, c) });
    }
  }
  return [...known.values()];
}

/** The workbook calculated: each formula with its result and the cells it fills. */
export async function calculatedWorkbook(workbook: WorkbookData): Promise<WorkbookData> {
  const { names, tables } = workbook;
  const hasFormulas = workbook.sheets.some(({ cells }) =>
    cells.some(({ content }) => content && "formula" in content),
  );
  if (!hasFormulas) return workbook;
  const input = { sheets: workbook.sheets.map(inputOf), names, tables };
  const done = await calculateWorkbook(input, undefined, { isTimed: false });
  const sheets = workbook.sheets.map((sheet) => ({ ...sheet, cells: calculatedCells(sheet, done) }));
  return { ...workbook, sheets };
}
