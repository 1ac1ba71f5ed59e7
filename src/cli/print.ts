import type { CellValue } from "../engine/cell-value";
import type { Evaluation } from "../engine/evaluate-formulas";

type JsonCell = number | string | boolean | { readonly error: string; readonly message: string | undefined };

/** Spreadsheet programs keep 15 figures of a number; the last bits behind them mean nothing. */
const FIGURES = 15;
const shown = (value: number | string | boolean) =>
  typeof value === "number" ? Number(value.toPrecision(FIGURES)) : value;

const jsonCell = (cell: CellValue): JsonCell =>
  "error" in cell ? { error: cell.error, message: cell.message } : shown(cell.value);

/** The only cell of an answer that does not spill. */
function single({ rows }: Evaluation): CellValue | undefined {
  return rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : undefined;
}

/** True where any cell of the answer is an error. */
export function hasError({ rows }: Evaluation): boolean {
  return rows.some((row) => row.some((cell) => "error" in cell));
}

function plainCell(cell: CellValue): string {
  if ("error" in cell) return cell.message === undefined ? cell.error : `${cell.error}: ${cell.message}`;
  if (typeof cell.value === "boolean") return cell.value ? "TRUE" : "FALSE";
  return String(shown(cell.value));
}

/** The cells of a row; a sentence that stands in several of them is written in the first. */
function plainRow(row: readonly CellValue[]): string {
  const said = new Set<string | undefined>();
  const cells = row.map((cell) => {
    if (!("error" in cell)) return jsonCell(cell);
    if (said.has(cell.message)) return { error: cell.error };
    said.add(cell.message);
    return jsonCell(cell);
  });
  return JSON.stringify(cells);
}

/** One value as it is; a spilled result as one JSON array a row, one row a line. */
export function plainText(answer: Evaluation): string {
  const cell = single(answer);
  return cell === undefined ? answer.rows.map(plainRow).join("\n") : plainCell(cell);
}

/** One JSON object: formula and value, rows of values, or error and message. */
export function jsonText(answer: Evaluation): string {
  const { formula } = answer;
  const cell = single(answer);
  if (cell === undefined)
    return JSON.stringify({ formula, value: answer.rows.map((row) => row.map(jsonCell)) });
  return JSON.stringify("error" in cell ? { formula, ...cell } : { formula, value: shown(cell.value) });
}
