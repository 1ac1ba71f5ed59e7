import type { IRange } from "@univerjs/core";
import type { CellValue } from "../../engine/cell-value";
import type { CellAddress } from "../../engine/results";
import { cellsOf, placeOf, type Rectangle } from "../../formula/addresses";

interface Sheet {
  readonly cells: Map<number, CellValue>;
  /** Cells that a formula fills, by the place of the formula. */
  readonly spills: Map<number, { readonly row: number; readonly column: number; readonly area: Rectangle }>;
}

const rangeOf = ({ row, column, lastRow, lastColumn }: Rectangle): IRange => ({
  startRow: row,
  endRow: lastRow,
  startColumn: column,
  endColumn: lastColumn,
});

/**
 * The latest result of every formula and of every cell it fills. The grid's own data keeps neither the full
 * precision of filled cells nor the sentence of an error; this does.
 */
export class CellResults {
  private readonly sheets = new Map<string, Sheet>();

  private sheet(id: string): Sheet {
    const found = this.sheets.get(id);
    if (found !== undefined) return found;
    const made: Sheet = { cells: new Map(), spills: new Map() };
    this.sheets.set(id, made);
    return made;
  }

  /** The result in a cell, a formula's own or one that fills it; `undefined` where nothing was calculated. */
  at({ sheetId, row, column }: CellAddress): CellValue | undefined {
    return this.sheets.get(sheetId)?.cells.get(placeOf(row, column));
  }

  /** The sentence behind the error that a cell shows. */
  sentenceAt(address: CellAddress, shown?: string): string | undefined {
    const result = this.at(address);
    if (result === undefined || !("error" in result)) return undefined;
    return shown === undefined || shown === result.error ? result.message : undefined;
  }

  /** The cells that a formula fills, itself included; `undefined` for a formula of one cell. */
  spillOf({ sheetId, row, column }: Omit<CellAddress, "unitId">): IRange | undefined {
    const spill = this.sheets.get(sheetId)?.spills.get(placeOf(row, column));
    return spill && rangeOf(spill.area);
  }

  /** The cell whose formula fills a cell from elsewhere; `undefined` where none does. */
  filling({ unitId, sheetId, row, column }: CellAddress): CellAddress | undefined {
    for (const { area, ...own } of this.sheets.get(sheetId)?.spills.values() ?? []) {
      const inRows = row >= area.row && row <= area.lastRow;
      const inColumns = column >= area.column && column <= area.lastColumn;
      const isOwn = own.row === row && own.column === column;
      if (inRows && inColumns && !isOwn) return { unitId, sheetId, ...own };
    }
    return undefined;
  }

  /** Keeps what a cell shows; nothing where it holds no result any longer. */
  set(sheetId: string, row: number, column: number, result: CellValue | undefined): void {
    const { cells } = this.sheet(sheetId);
    if (result === undefined) cells.delete(placeOf(row, column));
    else cells.set(placeOf(row, column), result);
  }

  /** Keeps which cells a formula fills; nothing for its own alone. */
  setSpill(sheetId: string, row: number, column: number, area: Rectangle | null): void {
    const { spills } = this.sheet(sheetId);
    if (area === null) spills.delete(placeOf(row, column));
    else spills.set(placeOf(row, column), { row, column, area });
  }

  /** Forgets a formula with all that it fills. @returns The cells that it filled beside its own. */
  forget(sheetId: string, row: number, column: number): (readonly [number, number])[] {
    const { cells, spills } = this.sheet(sheetId);
    const area = spills.get(placeOf(row, column))?.area;
    cells.delete(placeOf(row, column));
    spills.delete(placeOf(row, column));
    const filled = area === undefined ? [] : [...cellsOf(area)].filter(([r, c]) => r !== row || c !== column);
    for (const [r, c] of filled) cells.delete(placeOf(r, c));
    return filled;
  }

  /** Forgets everything, where another workbook takes the place of the present one. */
  forgetAll(): void {
    this.sheets.clear();
  }
}
