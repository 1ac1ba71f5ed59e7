import type { CellValue } from "../../engine/cell-value";
import { placeOf } from "../../formula/addresses";
import { contentOf } from "../file/cell-content";
import { FileRefusal } from "../file/package/file-refusal";
import type { LiveWorkbook } from "../file/read/live-workbook";
import type { CellModel, SheetModel, WorkbookModel } from "../model/sheet-model";
import { answersSheet, LOG_HEADINGS } from "./answers-sheet";
import { FIRST_ROW, HEADINGS } from "./parts/table-sheet";
import { PlanSheet } from "./plan-sheet";
import { REGISTER, REGISTER_ROWS, registerSheet } from "./register-sheet";
import { LOG_SHEET } from "./sheets-of-the-plan";

type Typed = number | string;

/** What was typed on a sheet of the old plan: constants, not what formulas came to. */
class TypedSheet {
  readonly cells = new Map<number, Typed>();
  lastRow = 0;
  lastColumn = 0;

  at(row: number, column: number): Typed | undefined {
    return this.cells.get(placeOf(row, column));
  }

  put(row: number, column: number, content: CellValue | undefined): void {
    if (content === undefined || "error" in content || content.value === "") return;
    this.cells.set(
      placeOf(row, column),
      typeof content.value === "boolean" ? String(content.value) : content.value,
    );
    this.lastRow = Math.max(this.lastRow, row);
    this.lastColumn = Math.max(this.lastColumn, column);
  }

  /** Column under a heading; -1 where there is none. */
  columnOf(heading: string, row = HEADINGS): number {
    for (let column = 0; column <= this.lastColumn; column += 1)
      if (this.at(row, column) === heading) return column;
    return -1;
  }
}

function typedIn(live: LiveWorkbook): Map<string, TypedSheet> {
  return new Map(
    live.sheets.map(({ listed, stored, formulas }) => {
      const sheet = new TypedSheet();
      for (const cell of stored.rows.flatMap(({ cells }) => cells)) {
        if (formulas.has(placeOf(cell.row, cell.column))) continue;
        sheet.put(cell.row, cell.column, contentOf(cell, live.strings, live.main.from1904));
      }
      return [listed.name, sheet] as const;
    }),
  );
}

const filledBy = (sheet: SheetModel, column: number) => sheet.rows[HEADINGS - 1]?.[column]?.content;
const replaced = (cell: CellModel, content: Typed | undefined): CellModel =>
  content === undefined ? cell : { ...cell, content };

/** A table takes over what stood under the same heading; rows typed under the old table find their place. */
function carriedTable(sheet: SheetModel, old: TypedSheet): SheetModel {
  const [first, last] = sheet.lines;
  const columns = (sheet.rows[HEADINGS] ?? []).map((cell, column) =>
    filledBy(sheet, column) === "calc" ? -1 : old.columnOf(String(cell?.content ?? "")),
  );
  const overflow = Array.from({ length: Math.max(0, old.lastRow - last) }, (_, at) => last + 1 + at);
  if (overflow.some((row) => old.at(row, columns[0] ?? 0) !== undefined))
    throw new FileRefusal(
      `${sheet.name}: the old plan has more rows than ${last - first + 1}: give a larger --lines.`,
    );
  const rows = sheet.rows.map((cells, row) =>
    row < first || row > last
      ? cells
      : cells.map((cell, column) => {
          const from = columns[column] ?? -1;
          return cell === undefined || from < 0 ? cell : replaced(cell, old.at(row, from));
        }),
  );
  return { ...sheet, rows };
}

/** A sheet of fields takes over what stood beside the same label. */
function carriedFields(sheet: SheetModel, old: TypedSheet): SheetModel {
  const labels = new Map<string, number>();
  for (let row = 0; row <= old.lastRow; row += 1) labels.set(String(old.at(row, 0) ?? ""), row);
  const rows = sheet.rows.map((cells) => {
    const [label, value] = cells;
    const from = labels.get(String(label?.content ?? ""));
    if (from === undefined || value?.role !== "typed") return cells;
    return [label, replaced(value, old.at(from, 1)), ...cells.slice(2)];
  });
  return { ...sheet, rows };
}

/** Other sheets take over what was typed in the same row, under the same heading where the column has one. */
function carriedCells(sheet: SheetModel, old: TypedSheet): SheetModel {
  /** Where the old plan has each column: it moves with its heading. */
  const from: number[] = [];
  const rows = sheet.rows.map((cells, row) => {
    cells.forEach((cell, column) => {
      if (cell?.role === "heading") from[column] = old.columnOf(String(cell.content), row);
    });
    return cells.map((cell, column) => {
      const place = from[column] ?? column;
      return cell?.role !== "typed" || place < 0 ? cell : replaced(cell, old.at(row, place));
    });
  });
  return { ...sheet, rows };
}

/** Pieces that an old plan starts, as it shows them: a plan made from it has a row for the readings of each. */
export function startsOf(live: LiveWorkbook): number {
  const found = live.sheets.find(({ listed }) => listed.name === "Lines");
  if (found === undefined) return 0;
  const lines = new PlanSheet(live, found);
  const starts = lines.rowsWith("Line").map((row) => Number(lines.under("Starts", row).value));
  return starts.reduce((sum, count) => sum + (Number.isFinite(count) ? count : 0), 0);
}

/** Room that is left in a register beyond the copies that went out. */
const REGISTER_ROOM = 10;

/** The register has a row a copy, however many lines the plan has: it grows with what stands in it. */
function grownRegister(sheet: SheetModel, old: TypedSheet | undefined): SheetModel {
  const rows = (old?.lastRow ?? 0) - FIRST_ROW + 1 + REGISTER_ROOM;
  return sheet.name === REGISTER && rows > REGISTER_ROWS ? registerSheet(rows).model() : sheet;
}

function carriedSheet(made: SheetModel, old: TypedSheet | undefined): SheetModel {
  const sheet = grownRegister(made, old);
  if (old === undefined) return sheet;
  if (sheet.name === "Cover") return carriedFields(sheet, old);
  const isTable = sheet.tables?.some(({ row }) => row === HEADINGS) && sheet.lines[0] === FIRST_ROW;
  return isTable ? carriedTable(sheet, old) : carriedCells(sheet, old);
}

/** The log of answers, which only a plan that took some has: by it nothing is taken twice. */
function logOf(old: TypedSheet | undefined): SheetModel[] {
  if (old === undefined || old.columnOf(LOG_HEADINGS.copy) < 0) return [];
  return [answersSheet(Math.max(1, old.lastRow - FIRST_ROW + 1)).model()];
}

/**
 * A planning workbook with what was typed in an older one: by heading in tables, by label on the cover, by row
 * and heading elsewhere. What was typed over a worked-out cell stays behind.
 *
 * @throws FileRefusal where a table of the old one has more rows than the new one.
 */
export function carriedOver(model: WorkbookModel, live: LiveWorkbook): WorkbookModel {
  const typed = typedIn(live);
  if (!typed.has("Lines") || !typed.has("Cover"))
    throw new FileRefusal("The file is no planning workbook: it has no sheets Lines and Cover.");
  const sheets = [...model.sheets, ...logOf(typed.get(LOG_SHEET))];
  return { ...model, sheets: sheets.map((sheet) => carriedSheet(sheet, typed.get(sheet.name))) };
}
