import { CellValueType, type ICellData, type IRange, type Nullable, ObjectMatrix } from "@univerjs/core";
import { ERROR_TYPE_SET, ErrorType, type IAllRuntimeData } from "@univerjs/engine-formula";
import type { CellValue } from "./cell-value";
import { carriedSentence } from "./refused-value";

/** A calculated cell, rows and columns counted from 0. */
export interface CellAddress {
  readonly unitId: string;
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

type EachCell = (address: CellAddress, cell: Nullable<ICellData>) => void;

function eachCell(units: IAllRuntimeData["unitData"], visit: EachCell): void {
  for (const [unitId, sheets] of Object.entries(units)) {
    for (const [sheetId, matrix] of Object.entries(sheets ?? {})) {
      matrix.forValue((row, column, cell) => {
        visit({ unitId, sheetId, row, column }, cell);
      });
    }
  }
}

function isErrorCode(value: unknown): value is ErrorType {
  return ERROR_TYPE_SET.has(value as ErrorType);
}

/** Reads the data the engine leaves for a cell. An empty result counts as 0, as a spreadsheet shows it. */
export function resultOf(cell: Nullable<ICellData>): CellValue {
  const value = cell?.v ?? 0;
  if (isErrorCode(value)) return { error: value, message: carriedSentence(cell?.custom) };
  return { value: cell?.t === CellValueType.BOOLEAN ? value === 1 : value };
}

function keyOf({ unitId, sheetId, row, column }: CellAddress): string {
  return JSON.stringify([unitId, sheetId, row, column]);
}

/**
 * The latest result of every formula and of every cell it spills into. The grid's own data keeps neither
 * the full precision of spilled figures nor, reliably, the sentence of an error; this does.
 */
export class Results {
  private readonly cells = new Map<string, CellValue>();
  private readonly spills = new Map<string, IRange>();

  /** Takes in one calculation; whatever it touched replaces what was known before. */
  record(run: Pick<IAllRuntimeData, "unitData" | "arrayFormulaRange" | "arrayFormulaCellData">): void {
    eachCell(run.unitData, (anchor) => this.forgetSpill(anchor));
    eachCell(run.unitData, (address, cell) => this.keep(address, cell));
    eachCell(run.arrayFormulaCellData, (address, cell) => this.keep(address, cell));
    for (const [unitId, sheets] of Object.entries(run.arrayFormulaRange)) {
      for (const [sheetId, ranges] of Object.entries(sheets ?? {})) {
        new ObjectMatrix<IRange>(ranges ?? {}).forValue((row, column, range) => {
          const anchor = { unitId, sheetId, row, column };
          if (!this.isBlocked(anchor)) this.spills.set(keyOf(anchor), range);
        });
      }
    }
  }

  /** The result in a cell, a formula's own or one that spilled there; `undefined` where nothing was calculated. */
  at(address: CellAddress): CellValue | undefined {
    return this.cells.get(keyOf(address));
  }

  /** The sentence behind the error that a cell shows. */
  sentenceAt(address: CellAddress, shown?: string): string | undefined {
    const result = this.at(address);
    if (result === undefined || !("error" in result)) return undefined;
    return shown === undefined || shown === result.error ? result.message : undefined;
  }

  /** The cells that a formula fills, itself included; `undefined` for a formula of one cell. */
  spillOf(anchor: CellAddress): IRange | undefined {
    return this.spills.get(keyOf(anchor));
  }

  /** The cell whose formula fills a cell from elsewhere; `undefined` where none does. */
  filling({ unitId, sheetId, row, column }: CellAddress): CellAddress | undefined {
    for (const [key, range] of this.spills) {
      const [unit, sheet, ownRow, ownColumn] = JSON.parse(key) as [string, string, number, number];
      if (unit !== unitId || sheet !== sheetId || (ownRow === row && ownColumn === column)) continue;
      const inRows = row >= range.startRow && row <= range.endRow;
      const inColumns = column >= range.startColumn && column <= range.endColumn;
      if (inRows && inColumns) return { unitId, sheetId, row: ownRow, column: ownColumn };
    }
    return undefined;
  }

  /** Forgets everything, where another workbook takes the place of the present one. */
  forgetAll(): void {
    this.cells.clear();
    this.spills.clear();
  }

  /** The engine lists the cells a formula would have filled even where something stood in the way. */
  private isBlocked(anchor: CellAddress): boolean {
    const result = this.at(anchor);
    return result !== undefined && "error" in result && result.error === ErrorType.SPILL;
  }

  private keep(address: CellAddress, cell: Nullable<ICellData>): void {
    if (cell) this.cells.set(keyOf(address), resultOf(cell));
    else this.cells.delete(keyOf(address));
  }

  /** A formula that fills fewer cells than before must leave no sentence behind. */
  private forgetSpill(anchor: CellAddress): void {
    const range = this.spillOf(anchor);
    if (range === undefined) return;
    this.spills.delete(keyOf(anchor));
    for (let row = range.startRow; row <= range.endRow; row += 1) {
      for (let column = range.startColumn; column <= range.endColumn; column += 1) {
        this.cells.delete(keyOf({ ...anchor, row, column }));
      }
    }
  }
}
