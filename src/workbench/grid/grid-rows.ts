import {
  type ICellData,
  ICommandService,
  type Injector,
  IResourceManagerService,
  IUndoRedoService,
  UniverInstanceType,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { FWorkbook, FWorksheet } from "@univerjs/sheets/facade";
import { InvalidValue } from "../../core/refusal";
import {
  type MovedCell,
  type RowOrder,
  reorderedRows,
  type TableRows,
  tablesTogether,
} from "../../workbook/rows/reordered-rows";
import { type SortValue, sortedBy, withoutRow, withRowAt } from "../../workbook/rows/row-orders";
import { type TableArea, tableAreas } from "../files/snapshot-resources";
import type { CellResults } from "./cell-results";

const SET_VALUES = "sheet.mutation.set-range-values";

/** Every part of a cell's data: what a change does not name would stay as it was. */
const BLANK: ICellData = { v: null, f: null, si: null, p: null, t: null, s: null };

const isBlank = ({ v, p }: ICellData) => String(v ?? "") === "" && !p;

type Values = Record<number, Record<number, ICellData>>;

/** The table that the selected cell stands in. */
interface Selected {
  readonly table: TableRows<ICellData>;
  readonly row: number;
  readonly column: number;
}

/** Where a filter or an order is to be. */
export interface ColumnValues {
  readonly heading: string;
  /** What the filled rows show, each text once, in order. */
  readonly values: readonly string[];
}

/** Commands of the grid's own menu, which know nothing of the sheets that repeat a row. */
const INSERTING = new Set([
  "sheet.command.insert-row-before",
  "sheet.command.insert-row-after",
  "sheet.command.insert-multi-rows-above",
  "sheet.command.insert-multi-rows-after",
]);
const REMOVING = new Set(["sheet.command.remove-row", "sheet.command.remove-row-confirm"]);

/** What is done with rows of a table as wholes: a blank one in between, one less, another order, some out of sight. */
export class GridRows {
  constructor(
    private readonly injector: Injector,
    private readonly workbook: () => FWorkbook,
    private readonly results: CellResults,
  ) {}

  /**
   * Does in the rows of a table what a command of the grid's menu would do.
   *
   * @returns False for other commands, and where no row of a table is selected.
   * @throws InvalidValue as `insert` does.
   */
  takeOver(command: string, count: number): boolean {
    const isInserting = INSERTING.has(command);
    if ((!isInserting && !REMOVING.has(command)) || this.found() === undefined) return false;
    const below = command.endsWith("after") ? 1 : 0;
    const rows = isInserting ? count : (this.workbook().getActiveSheet().getActiveRange()?.getHeight() ?? 1);
    this.inOneStep(() => {
      for (let row = 0; row < rows; row += 1) {
        if (isInserting) this.insert(below);
        else this.remove();
      }
    });
    return true;
  }

  /**
   * Puts a blank row in the place of the selected one, or so many rows below it.
   *
   * @throws InvalidValue where the selected cell stands in no table, or the table is full.
   */
  insert(below = 0): void {
    const { table, row: selected } = this.selected();
    const row = Math.min(table.last, selected + below);
    if (tablesTogether(this.tables(), table, isBlank).some((each) => this.isTyped(each, each.last)))
      throw new InvalidValue(
        `The table is full: its last row (of ${table.last - table.first + 1}) is filled. Make the plan larger first: "More rows".`,
      );
    this.reorder(table, withRowAt(table.last - table.first + 1, row - table.first));
  }

  remove(): void {
    const { table, row } = this.selected();
    this.reorder(table, withoutRow(table.last - table.first + 1, row - table.first));
  }

  sort(direction: "up" | "down"): void {
    const { table, column } = this.selected();
    const rows = this.rowsOf(table);
    const values = rows.map((row) => this.valueAt(table.sheet, row, column));
    this.reorder(
      table,
      sortedBy(values, (at) => this.isFilled(table, table.first + at), direction),
    );
  }

  columnValues(): ColumnValues {
    const { table, column } = this.selected();
    const sheet = this.sheetOf(table.sheet);
    const shown = this.rowsOf(table)
      .filter((row) => this.isFilled(table, row))
      .map((row) => this.shown(sheet, row, column));
    const heading = this.shown(sheet, table.first - 1, column);
    return { heading, values: [...new Set(shown)].sort(new Intl.Collator("en", { numeric: true }).compare) };
  }

  /** Shows only the rows that hold one of these in the selected column. @returns How many of how many are shown. */
  filter(kept: ReadonlySet<string>): readonly [shown: number, all: number] {
    const { table, column } = this.selected();
    const sheet = this.sheetOf(table.sheet);
    const filled = this.rowsOf(table).filter((row) => this.isFilled(table, row));
    const hidden = filled.filter((row) => !kept.has(this.shown(sheet, row, column)));
    this.hideOnly(table, new Set(hidden));
    return [filled.length - hidden.length, filled.length];
  }

  showAll(): void {
    this.hideOnly(this.selected().table, new Set());
  }

  /** Of the rows of a table hides these alone; a row that is as it should be is left alone, so that undo brings back all. */
  private hideOnly(table: TableRows<ICellData>, hidden: ReadonlySet<number>): void {
    const sheet = this.sheetOf(table.sheet);
    this.inOneStep(() => {
      for (const row of this.rowsOf(table)) {
        const isHidden = !sheet.getSheet().getRowRawVisible(row);
        if (isHidden && !hidden.has(row)) sheet.showRows(row);
        if (!isHidden && hidden.has(row)) sheet.hideRows(row);
      }
    });
  }

  private inOneStep(work: () => void): void {
    const batching = this.injector.get(IUndoRedoService).__tempBatchingUndoRedo(this.workbook().getId());
    try {
      work();
    } finally {
      batching.dispose();
    }
  }

  private rowsOf = ({ first, last }: TableRows<unknown>) =>
    Array.from({ length: last - first + 1 }, (_, at) => first + at);

  private shown(sheet: FWorksheet, row: number, column: number): string {
    return sheet.getRange(row, column).getDisplayValue() ?? "";
  }

  private sheetOf(name: string): FWorksheet {
    const sheet = this.workbook().getSheetByName(name);
    if (sheet === null) throw new Error(`no sheet ${name}`);
    return sheet;
  }

  private valueAt(sheetName: string, row: number, column: number): SortValue {
    const sheet = this.sheetOf(sheetName);
    const place = { unitId: this.workbook().getId(), sheetId: sheet.getSheetId(), row, column };
    const result = this.results.at(place);
    if (result !== undefined) return "value" in result ? result.value : "";
    return (sheet.getSheet().getCellMatrix().getValue(row, column)?.v as SortValue | null | undefined) ?? "";
  }

  private isFilled({ sheet }: TableRows<unknown>, row: number): boolean {
    return String(this.valueAt(sheet, row, 0)).trim() !== "";
  }

  /** Whether anything stands in a row but formulas. */
  private isTyped({ at, columns }: TableRows<ICellData>, row: number): boolean {
    return Array.from({ length: columns }, (_, column) => at(row, column)).some(
      (cell) => cell?.data !== undefined && cell.formula === undefined && !isBlank(cell.data),
    );
  }

  private tables(): TableRows<ICellData>[] {
    const unitId = this.workbook().getId();
    const resources = this.injector
      .get(IResourceManagerService)
      .getResources(unitId, UniverInstanceType.UNIVER_SHEET);
    return tableAreas(resources).flatMap((area) => this.rowsIn(area) ?? []);
  }

  private rowsIn({ sheetId, row, rows, column, columns }: TableArea): TableRows<ICellData> | undefined {
    const sheet = this.workbook().getSheetBySheetId(sheetId)?.getSheet();
    // What repeats a row begins with the name of its line in the first column of the sheet.
    if (sheet === undefined || column !== 0 || rows < 2) return undefined;
    const matrix = sheet.getCellMatrix();
    const model = this.injector.get(FormulaDataModel);
    return {
      sheet: sheet.getName(),
      first: row + 1,
      last: row + rows - 1,
      columns,
      at: (atRow, atColumn) => {
        const data = matrix.getValue(atRow, atColumn) as ICellData | undefined;
        if (data === undefined || data === null) return undefined;
        const formula = data.si
          ? model.getFormulaStringByCell(atRow, atColumn, sheetId, this.workbook().getId())
          : data.f;
        return { data, ...(formula && { formula }) };
      },
    };
  }

  private selected(): Selected {
    const found = this.found();
    if (found === undefined)
      throw new InvalidValue("Select a cell in a row of a table first, below its headings.");
    return found;
  }

  private found(): Selected | undefined {
    const sheet = this.workbook().getActiveSheet();
    const cell = sheet.getActiveCell() ?? sheet.getActiveRange();
    const [row, column] = [cell?.getRow() ?? -1, cell?.getColumn() ?? -1];
    const table = this.tables().find(
      ({ sheet: name, first, last, columns }) =>
        name === sheet.getSheetName() && row >= first && row <= last && column < columns,
    );
    return table && { table, row, column };
  }

  /** Gives the rows of a table, and of all that repeat them, another order: one step to undo. */
  private reorder(asked: TableRows<ICellData>, order: RowOrder): void {
    const unitId = this.workbook().getId();
    const redo = new Map<string, Values>();
    const undo = new Map<string, Values>();
    for (const cell of reorderedRows(tablesTogether(this.tables(), asked, isBlank), order)) {
      const sheet = this.sheetOf(cell.sheet);
      const old = (sheet.getSheet().getCellMatrix().getValue(cell.row, cell.column) ?? {}) as ICellData;
      put(undo, sheet.getSheetId(), cell, { ...BLANK, ...structuredClone(old) });
      put(redo, sheet.getSheetId(), cell, dataOf(cell, old));
    }
    const [redoMutations, undoMutations] = [mutations(unitId, redo), mutations(unitId, undo)];
    const commands = this.injector.get(ICommandService);
    for (const { id, params } of redoMutations) commands.syncExecuteCommand(id, params);
    this.injector.get(IUndoRedoService).pushUndoRedo({ unitID: unitId, redoMutations, undoMutations });
  }
}

/** The style goes with what stands in the row; a blank row has that of its place. */
function dataOf({ formula, data, from }: MovedCell<ICellData>, old: ICellData): ICellData {
  const s = (from === undefined ? old : data)?.s ?? null;
  if (formula !== undefined) return { ...BLANK, f: formula, s };
  return from === undefined ? { ...BLANK, s } : { ...BLANK, ...structuredClone(data ?? {}), s };
}

const mutations = (unitId: string, bySheet: ReadonlyMap<string, Values>) =>
  [...bySheet].map(([subUnitId, cellValue]) => ({
    id: SET_VALUES,
    params: { unitId, subUnitId, cellValue },
  }));

function put(
  bySheet: Map<string, Values>,
  sheetId: string,
  { row, column }: { readonly row: number; readonly column: number },
  data: ICellData,
): void {
  const values = bySheet.get(sheetId) ?? {};
  values[row] ??= {};
  (values[row] as Record<number, ICellData>)[column] = data;
  bySheet.set(sheetId, values);
}
