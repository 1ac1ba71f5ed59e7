import { type CalculatedWorkbook, calculateWorkbook } from "../../engine/calculate-workbook";
import type { SheetInput, Typed } from "../../engine/workbook-input";
import { functionNamed, NAMESPACE } from "../../functions/catalogue";
import { calledNames, isOneCallOfOurs } from "../../functions/stored-names";
import { placeOf, type Rectangle } from "../file/addresses";
import { contentFrom } from "../file/cell-content";
import { bodyOf } from "../file/patch/calculation";
import type { Book, BookCell, BookSheet, Held, HeldFormula } from "./workbook-data";

/** Letters that would make a formula or a mark of a text that begins with them. */
const NEEDS_MARK = /^[='#]/;

function typedOf(held: Held): Typed {
  if ("formula" in held) return held.formula;
  if ("error" in held) return `=${held.error}`;
  return typeof held.value === "string" && NEEDS_MARK.test(held.value) ? `'${held.value}` : held.value;
}

function inputOf({ name, cells }: BookSheet): SheetInput {
  const rows: Typed[][] = [];
  for (const { row, column, held } of cells) {
    if (held === undefined) continue;
    const filled = rows[row] ?? [];
    filled[column] = typedOf(held);
    rows[row] = filled;
  }
  return { name, rows };
}

/** True for a formula that may give several values although it gives one or an error now. */
function mayFill(formula: string): boolean {
  const typed = formula.slice(1);
  if (!isOneCallOfOurs(typed)) return false;
  const [name = ""] = calledNames(typed);
  const called = functionNamed(name.slice(NAMESPACE.length + 1));
  return called !== undefined && called.shape !== "scalar";
}

/** A formula with the cells it fills; unchanged where it gives a single value by its nature. */
export function withFill(
  formula: string,
  { row, column }: { readonly row: number; readonly column: number },
  spill: { readonly rows: number; readonly columns: number } | undefined,
): HeldFormula {
  if (spill === undefined && !mayFill(formula)) return { formula };
  const { rows, columns } = spill ?? { rows: 1, columns: 1 };
  const fills: Rectangle = { row, column, lastRow: row + rows - 1, lastColumn: column + columns - 1 };
  return { formula, fills };
}

/** The cells of a sheet with what their formulas come to, and the cells that formulas fill beside their own. */
function calculatedCells({ name, cells }: BookSheet, done: CalculatedWorkbook): BookCell[] {
  const known = new Map(cells.map((cell) => [placeOf(cell.row, cell.column), cell]));
  const resultAt = (row: number, column: number) => contentFrom(done.at(name, row, column) ?? { value: 0 });
  for (const { row, column, held, look } of cells) {
    if (held === undefined || !("formula" in held)) continue;
    const filled = withFill(held.formula, { row, column }, done.spillAt(name, row, column));
    known.set(placeOf(row, column), {
      row,
      column,
      held: { ...filled, result: resultAt(row, column) },
      ...(look && { look }),
    });
    for (const [r, c] of filled.fills === undefined ? [] : bodyOf(filled.fills)) {
      const place = placeOf(r, c);
      known.set(place, { ...known.get(place), row: r, column: c, held: resultAt(r, c) });
    }
  }
  return [...known.values()];
}

/** The workbook calculated: each formula with its result and the cells it fills. */
export async function calculatedBook(book: Book): Promise<Book> {
  const { names, tables } = book;
  const done = await calculateWorkbook({ sheets: book.sheets.map(inputOf), names, tables });
  const sheets = book.sheets.map((sheet) => ({ ...sheet, cells: calculatedCells(sheet, done) }));
  return { ...book, sheets };
}
