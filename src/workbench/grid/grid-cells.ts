import { BooleanNumber } from "@univerjs/core";
import type { FRange, FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import type { CellValue } from "../../engine/cell-value";
import { cellName, readRectangle } from "../../formula/addresses";
import { readReference } from "../../formula/references";
import { freeSheetName, quotedSheet } from "../../formula/sheet-names";
import type {
  Block,
  FormulaChange,
  FormulaPart,
  HostRows,
  HostValue,
  LineChart,
  Place,
} from "../../host/port";
import { PICTURE, picturedWords } from "../../workbook/model/table-curves";
import { HEADINGS } from "../../workbook/sheets/parts/table-sheet";
import type { ShownWorkbook } from "../../workbook/sheets/run-progress";
import type { CellResults } from "./cell-results";

/** More cells than this are not read for an explanation. */
const MAX_CELLS = 20_000;
const SPARE_ROWS = 40;
const SPARE_COLUMNS = 6;

/** A range of cells by its first one, from 0, and its size. */
interface Corners {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

const plain = (result: CellValue): HostValue =>
  "value" in result ? result.value : { type: "Error", basicValue: result.error };

/** What the pane reads and writes in the grid beyond the selected cell. */
export class GridCells {
  constructor(
    private readonly workbook: () => FWorkbook,
    private readonly results: CellResults,
  ) {}

  /** Values of a reference; `null` where there is none such or it is too large. */
  read(text: string, ownSheet: string): HostRows | null {
    const reference = readReference(text);
    if (reference?.kind === "name") return this.readName(reference.place, ownSheet);
    const sheet = this.workbook().getSheetByName(reference?.sheet ?? ownSheet);
    if (reference?.kind !== "cells" || sheet === null) return null;
    const area = readRectangle(reference.place);
    if (area === undefined) return null;
    const { row, column, lastRow, lastColumn } = area;
    const [rows, columns] = [lastRow - row + 1, lastColumn - column + 1];
    return rows * columns > MAX_CELLS ? null : this.valuesIn(sheet, { row, column, rows, columns });
  }

  private readName(name: string, ownSheet: string): HostRows | null {
    const defined = this.workbook().getDefinedName(name)?.getFormulaOrRefString() ?? "";
    return readReference(defined)?.kind === "cells" ? this.read(defined, ownSheet) : null;
  }

  private valuesIn(sheet: FWorksheet, { row, column, rows, columns }: Corners): HostRows {
    const own = { unitId: this.workbook().getId(), sheetId: sheet.getSheetId() };
    const value = (atRow: number, atColumn: number): HostValue => {
      const result = this.results.at({ ...own, row: atRow, column: atColumn });
      if (result !== undefined) return plain(result);
      const inside = atRow < sheet.getMaxRows() && atColumn < sheet.getMaxColumns();
      return inside ? (sheet.getRange(atRow, atColumn).getRawValue() ?? null) : null;
    };
    return Array.from({ length: rows }, (_, down) =>
      Array.from({ length: columns }, (_, across) => value(row + down, column + across)),
    );
  }

  /** The cells from a first one on that a block takes; widens the sheet where it is too small. */
  place(first: FRange, { rows }: Block): FRange {
    const sheet = this.workbook().getActiveSheet();
    const [row, column, columns] = [first.getRow(), first.getColumn(), rows[0]?.length ?? 1];
    if (row + rows.length > sheet.getMaxRows()) sheet.setRowCount(row + rows.length);
    if (column + columns > sheet.getMaxColumns()) sheet.setColumnCount(column + columns);
    return sheet.getRange(row, column, rows.length, columns);
  }

  /** Where a block would go, and how many cells there hold something or are filled by a formula; changes nothing. */
  room(first: FRange, { rows }: Block): Place {
    const sheet = this.workbook().getActiveSheet();
    const [row, column, columns] = [first.getRow(), first.getColumn(), rows[0]?.length ?? 1];
    const held = this.valuesIn(sheet, { row, column, rows: rows.length, columns }).flat();
    const last = cellName(row + rows.length - 1, column + columns - 1);
    return {
      address: `${quotedSheet(sheet.getSheetName())}!${cellName(row, column)}:${last}`,
      filled: held.filter((value) => value !== null && value !== "").length,
    };
  }

  /** Title and headings stand out. */
  write(range: FRange, { rows, heading }: Block): void {
    const bold = { s: { bl: BooleanNumber.TRUE } };
    const content = (cell: number | string) =>
      typeof cell === "string" && cell.startsWith("=") ? { f: cell } : { v: cell };
    range.setValues(
      rows.map((row, at) => row.map((cell) => ({ ...content(cell), ...(at <= heading ? bold : {}) }))),
    );
  }

  /** Puts the picture of a block right of it, where the cells there are free; it is drawn from the block's cells. */
  picture(range: FRange, block: Block, chart: LineChart | undefined): void {
    if (chart === undefined) return;
    const [row, column] = [range.getRow() + block.heading, range.getColumn() + range.getWidth() + 1];
    const free: Block = {
      rows: Array.from({ length: PICTURE.rows }, () => Array(PICTURE.columns).fill("")),
      heading: 0,
    };
    const sheet = this.workbook().getActiveSheet();
    const last = Math.max(...chart.columns);
    const from = cellName(row, range.getColumn() + Math.min(...chart.columns));
    const table = `${from}:${cellName(range.getRow() + chart.rows[1], range.getColumn() + last)}`;
    const corner = this.place(sheet.getRange(row, column), free);
    if (this.room(sheet.getRange(row, column), free).filled > 0) return;
    corner.merge();
    sheet.getRange(row, column).setValue({ v: picturedWords(table) });
  }

  /** Puts a block on a new sheet and shows it. */
  addSheet(wanted: string, block: Block, chart?: LineChart): string {
    const workbook = this.workbook();
    const name = freeSheetName(
      wanted,
      workbook.getSheets().map((sheet) => sheet.getSheetName()),
    );
    const columns = (block.rows[0]?.length ?? 1) + SPARE_COLUMNS;
    const sheet = workbook.create(name, block.rows.length + SPARE_ROWS, columns);
    workbook.setActiveSheet(sheet);
    const range = this.place(sheet.getRange(0, 0), block);
    this.write(range, block);
    this.picture(range, block, chart);
    return name;
  }

  /** Every sheet's formulas. */
  *formulas(): Generator<FormulaPart> {
    const sheets = this.workbook().getSheets();
    for (const [at, sheet] of sheets.entries()) {
      const range = sheet.getDataRange();
      const { startRow: row, startColumn: column } = range.getRange();
      const corners = { row, column, rows: range.getHeight(), columns: range.getWidth() };
      const unknownNames = this.valuesIn(sheet, corners).map((cells) => cells.map(isUnknownName));
      yield {
        sheet: sheet.getSheetName(),
        isProtected: false,
        row,
        column,
        formulas: range.getFormulas(),
        unknownNames,
        done: (at + 1) / sheets.length,
      };
    }
  }

  /** Sheets of the workbook as their progress is read; cells come straight from the sheet, without a range for each. */
  shownWorkbook(sheets: readonly string[]): ShownWorkbook {
    const workbook = this.workbook();
    const found = sheets.map(
      (name) => [name, workbook.getSheetByName(name)?.getSheet().getCellMatrix()] as const,
    );
    const matrices = new Map(found);
    return {
      sheets,
      // The columns of a table end where its headings do.
      size: (name) => {
        const matrix = matrices.get(name);
        const columns = Object.keys(matrix?.getRow(HEADINGS) ?? {}).map(Number);
        return { rows: matrix?.getLength() ?? 0, columns: Math.max(-1, ...columns) + 1 };
      },
      shown: (name, row, column) => String(matrices.get(name)?.getValue(row, column)?.v ?? ""),
    };
  }

  /** Writes one formula anew. */
  replace({ sheet, row, column, formula }: FormulaChange): void {
    this.workbook()
      .getSheetByName(sheet)
      ?.getRange(row, column)
      .setValue(formula.startsWith("=") ? { f: formula } : { v: formula, f: null });
  }
}

function isUnknownName(value: HostValue): boolean {
  return typeof value === "object" && value?.basicValue === "#NAME?";
}
