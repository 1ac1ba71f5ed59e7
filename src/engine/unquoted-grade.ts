import { withoutTexts } from "../formula/unknown-names";
import { NAMESPACE } from "../functions/catalogue";
import type { CellValue } from "./cell-value";

const CELL_ADDRESS = /(?<![\p{L}\p{N}_.$!:])\$?[A-Z]{1,3}\$?[1-9]\d{0,6}(?![\p{L}\p{N}_.(!:])/iu;

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
  const bare = withoutTexts(formula);
  if (!isEmpty || !bare.toUpperCase().includes(`${NAMESPACE}.`)) return undefined;
  const address = CELL_ADDRESS.exec(bare)?.[0].replaceAll("$", "");
  if (address === undefined) return undefined;
  return {
    error: "#VALUE!",
    message: `${address} is read as the address of a cell, and that cell is empty: put a grade in quotes, "${address}"`,
  };
}
