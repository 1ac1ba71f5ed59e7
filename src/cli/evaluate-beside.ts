import { calculateWorkbook } from "../engine/calculate-workbook";
import type { CellInput } from "../engine/cell-value";
import type { Evaluation } from "../engine/evaluate-formulas";
import { columnLetters } from "../formula/addresses";

const TABLE_SHEET = "table";
const ANSWER_SHEET = "answer";
/** Rows that a result may have beyond those of its table. */
const SPARE_ROWS = 2000;

/**
 * Answers one formula beside a table, which the name TABLE stands for.
 *
 * @param formula - With or without its `=`.
 * @param table - The rows, headings first.
 */
export async function evaluateBeside(
  formula: string,
  table: readonly (readonly (CellInput | undefined)[])[],
): Promise<Evaluation> {
  const text = formula.trim().startsWith("=") ? formula.trim() : `=${formula.trim()}`;
  const columns = Math.max(1, ...table.map((row) => row.length));
  const spare = Array.from({ length: table.length + SPARE_ROWS }, (): CellInput[] => []);
  const workbook = await calculateWorkbook({
    sheets: [
      { name: TABLE_SHEET, rows: table },
      { name: ANSWER_SHEET, rows: [[{ formula: text }], ...spare] },
    ],
    names: { TABLE: `${TABLE_SHEET}!$A$1:$${columnLetters(columns - 1)}$${table.length}` },
  });
  const { rows, columns: width } = workbook.spillAt(ANSWER_SHEET, 0, 0) ?? { rows: 1, columns: 1 };
  const at = (row: number, column: number) => workbook.at(ANSWER_SHEET, row, column) ?? { value: "" };
  return {
    formula,
    rows: Array.from({ length: rows }, (_, row) =>
      Array.from({ length: width }, (_, column) => at(row, column)),
    ),
  };
}
