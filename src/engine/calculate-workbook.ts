import { placeOf } from "../formula/addresses";
import { catalogue } from "../functions/catalogue";
import type { WorksheetFunction } from "../functions/declare";
import { Calculator, type SheetResults } from "./calculation/calculator";
import type { CellValue } from "./cell-value";
import type { WorkbookInput } from "./workbook-input";

/** The results of a calculated workbook. Rows and columns count from 0. */
export interface CalculatedWorkbook {
  /** What a formula, or one that spills over the cell, came to; `undefined` for a cell without a result. */
  at(sheet: string, row: number, column: number): CellValue | undefined;
  /** Rows and columns that the formula of a cell fills; `undefined` where it does not spill. */
  spillAt(
    sheet: string,
    row: number,
    column: number,
  ): { readonly rows: number; readonly columns: number } | undefined;
}

/**
 * Calculates every formula of a workbook once.
 *
 * @param workbook - Sheets as typed, with defined names and tables.
 * @param functions - The worksheet functions to offer.
 * @param isTimed - Whether it ends after the seconds of the budget: right for a file from anywhere, wrong for a plan
 *   of many lines that one writes oneself.
 * @returns Results in full precision with the sentence of each error. A formula that fails stands as an error in
 *   its own cell.
 * @throws BudgetEnd with a sentence for a workbook that takes more than the budget.
 * @throws RangeError for a table or a question about a sheet that is not in the workbook.
 */
export async function calculateWorkbook(
  workbook: WorkbookInput,
  functions: readonly WorksheetFunction[] = catalogue,
  { isTimed = true } = {},
): Promise<CalculatedWorkbook> {
  const results = resultsOf(workbook, functions, isTimed);
  const resultsOn = (sheet: string) => {
    const found = results.get(sheet);
    if (found === undefined) throw new RangeError(`the workbook has no sheet "${sheet}"`);
    return found;
  };
  return {
    at: (sheet, row, column) => resultsOn(sheet).values.get(placeOf(row, column)),
    spillAt: (sheet, row, column) => resultsOn(sheet).spills.get(placeOf(row, column)),
  };
}

/** Works everything out and keeps the results alone: formulas, their trees and the engine take several times as much. */
function resultsOf(
  workbook: WorkbookInput,
  functions: readonly WorksheetFunction[],
  isTimed: boolean,
): ReadonlyMap<string, SheetResults> {
  const calculator = new Calculator(workbook, functions);
  try {
    calculator.calculateAll({ isTimed });
    return new Map(workbook.sheets.map(({ name }, at) => [name, calculator.resultsOn(at)]));
  } finally {
    calculator.dispose();
  }
}
