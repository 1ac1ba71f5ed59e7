import {
  CommandType,
  type ICellData,
  type ICommandInfo,
  ICommandService,
  type IExecutionOptions,
  type Injector,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { FormulaDataModel, handleNumfmtInCell } from "@univerjs/engine-formula";
import type { CellValue } from "../../engine/cell-value";
import { resultData } from "../../engine/workbook-input";
import { placeOf } from "../../formula/addresses";
import type { Answer, HeldCell, HeldWorkbook, ShownCell, ShownSheet } from "../calculation/messages";
import { RemoteCalculation } from "../calculation/remote-calculation";
import { contentOfCell } from "../files/read-snapshot";
import { CellResults } from "./cell-results";
import { fitRows } from "./fitted-rows";
import { isRearrangement } from "./grid-edits";
import { heldSnapshot, typedContent } from "./held-cells";

const SET_VALUES = "sheet.mutation.set-range-values";
/** A mutation of the grid that changes what cells hold otherwise than by writing them. */
const MOVING = new Set([
  "sheet.mutation.move-range",
  "formula.mutation.set-defined-name",
  "formula.mutation.remove-defined-name",
]);
/** Keys of a cell's data that change its content; a style does not. */
const CONTENT = ["v", "f", "si", "p", "t"] as const;

/** The marks of a change that the grid itself does not take for an edit. */
const RESULT: IExecutionOptions = { onlyLocal: true, fromFormula: true };

interface WrittenValues {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly cellValue: Readonly<Record<number, Readonly<Record<number, ICellData | null>>>>;
}

type Rows = Record<number, Record<number, ICellData>>;

function put(rows: Rows, row: number, column: number, data: ICellData): void {
  rows[row] ??= {};
  (rows[row] as Record<number, ICellData>)[column] = data;
}

function placesIn(values: WrittenValues["cellValue"]): (readonly [number, number])[] {
  const hasContent = (data: ICellData | null | undefined) =>
    !data || CONTENT.some((key) => data[key] !== undefined);
  return Object.entries(values).flatMap(([row, cells]) =>
    Object.entries(cells ?? {}).flatMap(([column, data]) =>
      hasContent(data) ? [[Number(row), Number(column)] as const] : [],
    ),
  );
}

/** Told which cells of a sheet became others, by an edit or by a result. */
export type ChangedCells = (sheetId: string, places: readonly (readonly [number, number])[]) => void;

/**
 * Keeps the grid's formulas calculated by a worker: tells it every edit as it is made and writes what it answers.
 * The grid's own engine never runs.
 */
export class GridCalculation {
  readonly results = new CellResults();
  private readonly remote: RemoteCalculation;
  private readonly commands: ICommandService;
  private readonly listeners: (() => void)[] = [];
  private readonly changeListeners: ChangedCells[] = [];
  /** The message that told of the last edit of a cell: an answer that does not know of it comes too late. */
  private readonly edited = new Map<string, number>();
  private loaded = 0;
  private reload: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly injector: Injector) {
    this.remote = new RemoteCalculation(
      (answer) => this.take(answer),
      (reason) => {
        throw new Error(`the calculation stopped: ${reason}`);
      },
    );
    this.commands = injector.get(ICommandService);
    this.commands.onCommandExecuted((command, options) => this.follow(command, options));
  }

  /** Calls back once results stand in the grid. */
  onResults(listener: () => void): void {
    this.listeners.push(listener);
  }

  onChangedCells(listener: ChangedCells): void {
    this.changeListeners.push(listener);
  }

  /** Begins with another workbook, which the grid shows already; what its formulas came to may come with it. */
  begin(workbook: HeldWorkbook): void {
    clearTimeout(this.reload);
    this.reload = undefined;
    this.results.forgetAll();
    this.edited.clear();
    this.loaded = this.remote.load(workbook);
  }

  private get workbook(): Workbook | null {
    const instances = this.injector.get(IUniverInstanceService);
    return instances.getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET) ?? null;
  }

  private follow(command: Readonly<ICommandInfo>, options: IExecutionOptions | undefined): void {
    if (command.type !== CommandType.MUTATION || options?.fromFormula === true) return;
    if (command.id === SET_VALUES) this.tell(command.params as WrittenValues);
    else if (MOVING.has(command.id) || isRearrangement({ id: command.id, type: CommandType.MUTATION }))
      this.beginSoon();
  }

  /** Works every formula out anew. */
  recalculate(): void {
    this.beginSoon();
  }

  /** Rows, columns, sheets, tables or names became others: the whole workbook is told anew. */
  private beginSoon(): void {
    clearTimeout(this.reload);
    this.reload = setTimeout(() => {
      const saved = this.workbook?.save();
      if (saved === undefined) return;
      this.clearFilled();
      this.begin(heldSnapshot(saved));
    }, 0);
  }

  private tell({ unitId, subUnitId, cellValue }: WrittenValues): void {
    const workbook = this.workbook;
    const sheet = workbook?.getUnitId() === unitId ? workbook.getSheetBySheetId(subUnitId) : undefined;
    const places = sheet ? placesIn(cellValue) : [];
    if (!sheet || places.length === 0) return;
    const matrix = sheet.getCellMatrix();
    const model = this.injector.get(FormulaDataModel);
    const cells = places.map(([row, column]): HeldCell => {
      const data = (matrix.getValue(row, column) ?? {}) as ICellData;
      const text = data.si ? model.getFormulaStringByCell(row, column, subUnitId, unitId) : data.f;
      const content = contentOfCell(data, text ?? undefined);
      return { row, column, content: content && typedContent(content, data.t) };
    });
    this.forgetFilled(unitId, subUnitId, places);
    const number = this.remote.change(subUnitId, cells);
    for (const [row, column] of places) this.edited.set(`${subUnitId} ${placeOf(row, column)}`, number);
    this.announce(subUnitId, places);
  }

  /** What a formula filled goes with it at once: the worker no longer knows of it. */
  private forgetFilled(
    unitId: string,
    sheetId: string,
    places: readonly (readonly [number, number])[],
  ): void {
    for (const [row, column] of places) {
      for (const [r, c] of this.results.forget(sheetId, row, column))
        this.setFilled(unitId, sheetId, r, c, undefined);
      this.setFilled(unitId, sheetId, row, column, undefined);
      this.setRange(unitId, sheetId, row, column, undefined);
    }
  }

  private take({ number, sheets }: Answer): void {
    const workbook = this.workbook;
    if (workbook === null || number < this.loaded || this.reload !== undefined) return;
    for (const [cell, at] of this.edited) if (at <= number) this.edited.delete(cell);
    for (const sheet of sheets) this.write(workbook, sheet);
    for (const told of this.listeners) told();
  }

  private write(workbook: Workbook, { id, cells }: ShownSheet): void {
    const unitId = workbook.getUnitId();
    const matrix = workbook.getSheetBySheetId(id)?.getCellMatrix();
    if (matrix === undefined) return;
    const current = cells.filter(({ row, column }) => !this.edited.has(`${id} ${placeOf(row, column)}`));
    const cellValue: Rows = {};
    for (const cell of current) {
      const { row, column, result, isFilled } = cell;
      this.keep(unitId, id, cell);
      const isOwn = !isFilled && result !== undefined;
      const old = matrix.getValue(row, column) as ICellData | undefined;
      // A cell that is written as it stands: the grid draws it anew.
      put(cellValue, row, column, isOwn ? styled(old, cell, result, workbook) : {});
    }
    this.commands.syncExecuteCommand(SET_VALUES, { unitId, subUnitId: id, cellValue }, { ...RESULT });
    fitRows(this.commands, workbook, id, Object.keys(cellValue).map(Number));
    this.announce(
      id,
      current.map(({ row, column }) => [row, column] as const),
    );
  }

  /** What the grid's own data has no place for. */
  private keep(unitId: string, id: string, cell: ShownCell): void {
    const { row, column, result, isFilled } = cell;
    this.results.set(id, row, column, result);
    this.setFilled(unitId, id, row, column, isFilled && result ? resultData(result) : undefined);
    if (cell.fills !== undefined) this.setFills(unitId, id, cell);
  }

  private setFills(unitId: string, sheetId: string, { row, column, fills = null, result }: ShownCell): void {
    this.results.setSpill(sheetId, row, column, fills);
    this.setRange(unitId, sheetId, row, column, fills === null ? undefined : rangeOf(fills));
    if (fills !== null && result !== undefined)
      this.setFilled(unitId, sheetId, row, column, resultData(result));
  }

  private announce(sheetId: string, places: readonly (readonly [number, number])[]): void {
    for (const told of this.changeListeners) told(sheetId, places);
  }

  private clearFilled(): void {
    const model = this.injector.get(FormulaDataModel);
    model.setArrayFormulaCellData({});
    model.setArrayFormulaRange({});
  }

  /** The grid keeps what formulas fill apart from what cells hold. */
  private setFilled(
    unitId: string,
    sheetId: string,
    row: number,
    column: number,
    data: ICellData | undefined,
  ): void {
    const all = this.injector.get(FormulaDataModel).getArrayFormulaCellData() as Parts<ICellData>;
    setPart(all, [unitId, sheetId, row, column], data);
  }

  private setRange(
    unitId: string,
    sheetId: string,
    row: number,
    column: number,
    range: object | undefined,
  ): void {
    const all = this.injector.get(FormulaDataModel).getArrayFormulaRange() as Parts<object>;
    setPart(all, [unitId, sheetId, row, column], range);
  }
}

const rangeOf = ({ row, column, lastRow, lastColumn }: NonNullable<ShownCell["fills"]>) => ({
  startRow: row,
  endRow: lastRow,
  startColumn: column,
  endColumn: lastColumn,
});

type Parts<T> = Record<string, Record<string, Record<number, Record<number, T>>>>;

function setPart<T>(
  all: Parts<T>,
  [unit, sheet, row, column]: [string, string, number, number],
  part: T | undefined,
): void {
  if (part === undefined) {
    const cells = all[unit]?.[sheet]?.[row];
    if (cells !== undefined) delete cells[column];
    return;
  }
  all[unit] ??= {};
  const sheets = all[unit];
  sheets[sheet] ??= {};
  const rows = sheets[sheet];
  rows[row] ??= {};
  rows[row][column] = part;
}

/** A result with the number format that came with it, unless the cell has one of its own. */
function styled(
  old: ICellData | undefined,
  { format }: ShownCell,
  result: CellValue,
  workbook: Workbook,
): ICellData {
  const data = resultData(result);
  if (format === undefined) return data;
  return handleNumfmtInCell(
    old,
    { ...data, s: { n: { pattern: format } } },
    workbook.getStyles(),
  ) as ICellData;
}
