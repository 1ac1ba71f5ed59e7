import type { FRange } from "@univerjs/sheets/facade";
import { sentenceOf } from "../../core/refusal";
import { cellName, readCellName } from "../../formula/addresses";
import { numberedSheetName, quotedSheet } from "../../formula/sheet-names";
import type { Block, FilledBy, LineChart, Place } from "../../host/port";
import { lineCell } from "../../workbook/sheets/lines-sheet";
import { demoData } from "../files/new-runs";
import { EMPTY_SHEET } from "../files/write-snapshot";
import type { CellView, Grid, SheetView } from "./grid";
import { GridCells } from "./grid-cells";
import { readEntry, typedForm } from "./grid-entries";
import { GridFormat } from "./grid-format";
import { GridRows } from "./grid-rows";
import { type StartedGrid, startGrid } from "./grid-start";
import { type GridState, GridWorkbook } from "./grid-workbook";

/** An entry is made of many small steps; listeners hear of them once, with its results where those come sooner. */
const SETTLE_MS = 40;
/** Commands inside the editor of a cell: they change nothing that the page shows beside the grid. */
const IN_EDITOR = "doc.";

const formatOf = (cell: FRange) => cell.getCellStyleData()?.n?.pattern;

class UniverGrid implements Grid {
  private readonly listeners: (() => void)[] = [];
  private readonly refusalListeners: ((sentence: string) => void)[] = [];
  private pending: ReturnType<typeof setTimeout> | undefined;
  readonly cells: GridCells;
  readonly workbook: GridWorkbook;
  readonly rows: GridRows;
  readonly format: GridFormat;

  constructor(private readonly started: StartedGrid) {
    const { api, calculation } = started;
    this.cells = new GridCells(() => this.activeWorkbook, calculation.results);
    this.workbook = new GridWorkbook(started);
    this.rows = new GridRows(started.injector, () => this.activeWorkbook, calculation.results);
    this.format = new GridFormat(
      () => this.activeWorkbook,
      (command, params) => api.syncExecuteCommand(command, params),
    );
    api.addEvent(api.Event.CommandExecuted, ({ id }) => {
      if (!id.startsWith(IN_EDITOR)) this.announce();
    });
    api.addEvent(api.Event.BeforeCommandExecute, (event) => this.takeOver(event));
    api.addEvent(api.Event.SelectionChanged, () => this.announce());
    // What the page says of them is drawn with them, in one frame.
    calculation.onResults(() => this.tell());
  }

  private get activeWorkbook() {
    const workbook = this.started.api.getActiveWorkbook();
    if (workbook === null) throw new Error("the grid has no workbook");
    return workbook;
  }

  private get sheet() {
    return this.activeWorkbook.getActiveSheet();
  }

  private announce(): void {
    clearTimeout(this.pending);
    this.pending = setTimeout(() => this.tell(), SETTLE_MS);
  }

  private tell(): void {
    clearTimeout(this.pending);
    for (const changed of this.listeners) changed();
  }

  /** Rows of a table are put in and taken out with all sheets that repeat them, also from the grid's own menu. */
  private takeOver(event: {
    readonly id: string;
    readonly params?: object | undefined;
    cancel?: boolean;
  }): void {
    const { value = 1 } = (event.params ?? {}) as { value?: number };
    try {
      if (this.rows.takeOver(event.id, Number(value) || 1)) event.cancel = true;
    } catch (fault) {
      event.cancel = true;
      for (const refused of this.refusalListeners) refused(sentenceOf(fault));
    }
  }

  onRefusal(refused: (sentence: string) => void): void {
    this.refusalListeners.push(refused);
  }

  onChange(changed: () => void): void {
    this.listeners.push(changed);
  }

  sheetNames(): readonly string[] {
    const shown = this.activeWorkbook.getSheets().filter((sheet) => !sheet.isSheetHidden());
    return shown.map((sheet) => sheet.getSheetName());
  }

  private allNames(): readonly string[] {
    return this.activeWorkbook.getSheets().map((sheet) => sheet.getSheetName());
  }

  activeSheet(): string {
    return this.sheet.getSheetName();
  }

  showSheet(name: string): void {
    const sheet = this.activeWorkbook.getSheetByName(name);
    if (sheet !== null) this.activeWorkbook.setActiveSheet(sheet);
  }

  addSheet(): void {
    const sheet = this.activeWorkbook.create(
      numberedSheetName("Sheet", this.allNames(), 1),
      EMPTY_SHEET.rows,
      EMPTY_SHEET.columns,
    );
    this.activeWorkbook.setActiveSheet(sheet);
  }

  selected(): CellView | null {
    const cell = this.sheet.getActiveCell() ?? this.sheet.getActiveRange();
    return cell === null ? null : this.view(cell);
  }

  filledBy(): FilledBy | null {
    const cell = this.sheet.getActiveCell();
    if (cell === null) return null;
    const place = { unitId: cell.getUnitId(), sheetId: cell.getSheetId() };
    const [row, column] = [cell.getRow(), cell.getColumn()];
    const filling = this.started.calculation.results.filling({ ...place, row, column });
    if (filling === undefined) return null;
    const own = this.sheet.getRange(filling.row, filling.column);
    return {
      address: this.addressOf(own),
      formula: own.getFormula(),
      row: row - filling.row,
      column: column - filling.column,
    };
  }

  private addressOf(range: FRange): string {
    return `${quotedSheet(range.getSheetName())}!${range.getA1Notation()}`;
  }

  private get firstCell(): FRange {
    return this.sheet.getActiveCell() ?? this.sheet.getRange(0, 0);
  }

  placeFor(block: Block): Place {
    return this.cells.room(this.firstCell, block);
  }

  writeBlock(block: Block, chart?: LineChart): string {
    const range = this.cells.place(this.firstCell, block);
    this.cells.write(range, block);
    this.cells.picture(range, block, chart);
    return this.addressOf(range);
  }

  select(address: string): boolean {
    const place = readCellName(address);
    if (place === undefined) return false;
    const { row, column } = place;
    if (row >= this.sheet.getMaxRows() || column >= this.sheet.getMaxColumns()) return false;
    const cell = this.sheet.getRange(row, column);
    cell.activate();
    // Unlike the facade's own call, this one leaves the view alone where the cell is in sight already.
    this.started.api.syncExecuteCommand("sheet.operation.scroll-to-range", { range: cell.getRange() });
    return true;
  }

  write(text: string): void {
    const cell = this.firstCell;
    if (text === "") cell.clearContent();
    else if (text.startsWith("=")) cell.setValue({ f: text });
    else {
      const { value, format } = readEntry(text, formatOf(cell));
      cell.setValue(format === undefined ? value : { v: value, s: { n: { pattern: format } } });
    }
  }

  sheetView(): SheetView {
    const { rows, columns } = this.extent();
    const place = (count: number) => Array.from({ length: count }, (_, index) => index);
    return place(rows).map((row) =>
      place(columns).map((column) => this.view(this.sheet.getRange(row, column))),
    );
  }

  shownText(name: string): (row: number, column: number) => string {
    const sheet = this.activeWorkbook.getSheetByName(name);
    const [rows, columns] = [sheet?.getMaxRows() ?? 0, sheet?.getMaxColumns() ?? 0];
    return (row, column) =>
      row < rows && column < columns ? (sheet?.getRange(row, column).getDisplayValue() ?? "") : "";
  }

  /** Rows and columns in use. The grid's own count leaves out the cells that formulas fill beside themselves. */
  private extent(): { rows: number; columns: number } {
    let rows = this.sheet.getLastRow() + 1;
    let columns = this.sheet.getLastColumn() + 1;
    const place = { unitId: this.activeWorkbook.getId(), sheetId: this.sheet.getSheetId() };
    this.sheet.getDataRange().forEach((row, column) => {
      const spill = this.started.calculation.results.spillOf({ ...place, row, column });
      if (spill === undefined) return;
      rows = Math.max(rows, spill.endRow + 1);
      columns = Math.max(columns, spill.endColumn + 1);
    });
    return { rows, columns };
  }

  recalculate(): void {
    this.started.calculation.recalculate();
  }

  undo(): void {
    this.activeWorkbook.undo();
  }

  redo(): void {
    this.activeWorkbook.redo();
  }

  private view(cell: FRange): CellView {
    const row = cell.getRow();
    const column = cell.getColumn();
    const value = cell.getDisplayValue() ?? "";
    const formula = cell.getFormula();
    const address = { unitId: cell.getUnitId(), sheetId: cell.getSheetId(), row, column };
    return {
      sheet: cell.getSheetName(),
      address: cellName(row, column),
      formula: formula === "" ? typedForm(cell.getRawValue(), formatOf(cell)) : formula,
      value,
      sentence: this.started.sentenceOf(address, value, formula),
    };
  }
}

/**
 * Draws the grid into an element and opens in it what was kept, or else the demo run.
 *
 * @returns The grid, and whether what was kept could be put back.
 */
export async function openGrid(
  container: HTMLElement,
  kept: GridState | undefined,
): Promise<{ readonly grid: Grid; readonly isRestored: boolean }> {
  const started = startGrid(container);
  const grid = new UniverGrid(started);
  const isRestored = kept !== undefined && restored(grid, kept);
  if (!isRestored) grid.workbook.show(demoData());
  await started.drawn();
  grid.select(lineCell(0, "steel"));
  return { grid, isRestored };
}

function restored(grid: UniverGrid, kept: GridState): boolean {
  try {
    grid.workbook.restore(kept);
    return true;
  } catch {
    return false;
  }
}
