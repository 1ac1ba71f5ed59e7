import { callsOurs } from "../formula/functions-called";
import { loneCell } from "../formula/references";
import type { CellValue } from "./cell-value";

/**
 * A grade typed without quotes may be a cell address (O1, D2, A2). Where there is no sheet that cell is empty, so
 * the function stays empty too, and nobody would be told why.
 *
 * @returns The error to show instead of nothing, or `undefined` where the answer is not empty or names no cell.
 */
export function unquotedGrade(
  formula: string,
  rows: readonly (readonly CellValue[])[],
): CellValue | undefined {
  const isEmpty = rows.every((row) => row.every((cell) => "value" in cell && cell.value === ""));
  if (!isEmpty || !callsOurs(formula)) return undefined;
  const address = loneCell(formula);
  if (address === undefined) return undefined;
  return {
    error: "#VALUE!",
    message: `${address} is read as the address of a cell, and that cell is empty: put a grade in quotes, "${address}"`,
  };
}
