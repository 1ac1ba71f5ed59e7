import { errorIn, mayBeUnknownName, OF_ERRORS } from "./excel-errors";
import { knows, oneUndoStep, writing } from "./excel-run";
import type { FormulaChange, FormulaPart, Work } from "./port";

/** Cells read or written between two looks at how far the work is. */
const CELLS_AT_ONCE = 5000;
const CHANGES_AT_ONCE = 200;

/** The used part of one sheet. */
interface UsedPart {
  readonly sheet: string;
  readonly isProtected: boolean;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

async function usedParts(): Promise<UsedPart[]> {
  return Excel.run(async (context) => {
    const { worksheets } = context.workbook;
    worksheets.load("items/name,items/protection/protected");
    await context.sync();
    const used = worksheets.items.map((sheet) => ({ sheet, range: sheet.getUsedRangeOrNullObject(true) }));
    for (const { range } of used) range.load(["rowIndex", "columnIndex", "rowCount", "columnCount"]);
    await context.sync();
    return used
      .filter(({ range }) => !range.isNullObject)
      .map(({ sheet, range }) => ({
        sheet: sheet.name,
        isProtected: sheet.protection.protected,
        row: range.rowIndex,
        column: range.columnIndex,
        rows: range.rowCount,
        columns: range.columnCount,
      }));
  });
}

const texts = (rows: readonly (readonly unknown[])[]) => rows.map((row) => row.map(String));

async function readPart(part: UsedPart, from: number, rows: number) {
  return Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem(part.sheet);
    const range = sheet.getRangeByIndexes(part.row + from, part.column, rows, part.columns);
    const hasKinds = knows("1.16");
    range.load(["formulas", ...OF_ERRORS, ...(hasKinds ? (["valuesAsJson"] as const) : [])]);
    await context.sync();
    const unknownNames = range.valueTypes.map((cells, row) =>
      cells.map((_, column) => mayBeUnknownName(errorIn(range, row, column, hasKinds))),
    );
    return { formulas: texts(range.formulas), unknownNames };
  });
}

/** Every formula of the workbook, some thousand cells at a time. */
export async function* formulas(): AsyncGenerator<FormulaPart> {
  const parts = await usedParts();
  const all = parts.reduce((sum, { rows, columns }) => sum + rows * columns, 0);
  let read = 0;
  for (const part of parts) {
    const step = Math.max(1, Math.floor(CELLS_AT_ONCE / part.columns));
    for (let from = 0; from < part.rows; from += step) {
      const rows = Math.min(step, part.rows - from);
      const cells = await readPart(part, from, rows);
      read += rows * part.columns;
      const { sheet, isProtected, row, column } = part;
      yield { sheet, isProtected, row: row + from, column, ...cells, done: read / all };
    }
  }
}

/** Writes some formulas; a cell that another formula fills would cut that one off, so it is left alone. */
async function writeSome(context: Excel.RequestContext, changes: readonly FormulaChange[]): Promise<number> {
  const cells = changes.map(({ sheet, row, column, formula }) => {
    const cell = context.workbook.worksheets.getItem(sheet).getCell(row, column);
    const parent = knows("1.12") ? cell.getSpillParentOrNullObject() : null;
    cell.load("address");
    parent?.load("address");
    return { cell, parent, formula };
  });
  await context.sync();
  const own = cells.filter(
    ({ cell, parent }) => parent === null || parent.isNullObject || parent.address === cell.address,
  );
  for (const { cell, formula } of own) cell.formulas = [[formula]];
  await context.sync();
  return own.length;
}

/** Writes formulas anew; see the port. */
export async function replaceFormulas(changes: readonly FormulaChange[], work: Work): Promise<number> {
  const task = () =>
    Excel.run(oneUndoStep(), async (context) => {
      let written = 0;
      for (let from = 0; from < changes.length && !work.signal.aborted; from += CHANGES_AT_ONCE) {
        written += await writeSome(context, changes.slice(from, from + CHANGES_AT_ONCE));
        work.progress(Math.min(1, (from + CHANGES_AT_ONCE) / changes.length));
      }
      return written;
    });
  return writing("the formulas", task);
}
