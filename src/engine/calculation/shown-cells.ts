import { CellValueType, type ICellData } from "@univerjs/core";
import { ErrorType } from "@univerjs/engine-formula";
import type { Area } from "./area";
import { empty, holdsPlace, isTaken, placesOf, put, type SheetCells } from "./cells";
import type { EngineCell, Formula } from "./formula";

/** A cell that shows something else than before. */
export interface ChangedResult {
  readonly sheet: number;
  readonly row: number;
  readonly column: number;
}

/** A cell that a formula began or ceased to fill, with the time at which it did. */
export interface Refilled {
  readonly area: Area;
  readonly at: number;
}

type Rows = readonly (readonly ICellData[])[];

const SPILL: ICellData = { v: ErrorType.SPILL, t: CellValueType.STRING };
const EMPTY: ICellData = { v: null };

/** The cells that a formula would fill with such rows; `undefined` for its own alone. */
export function areaFor({ place: { sheet, row, column } }: Formula, rows: Rows): Area | undefined {
  const [height, width] = [rows.length, rows[0]?.length ?? 0];
  if (height <= 1 && width <= 1) return undefined;
  return { sheet, row, column, lastRow: row + height - 1, lastColumn: column + width - 1 };
}

/** A place as an area of its own. */
export const oneCell = ({ sheet, row, column }: ChangedResult): Area => ({
  sheet,
  row,
  column,
  lastRow: row,
  lastColumn: column,
});

/** Writes what formulas come to into their cells, and knows which of those show something else in one calculation. */
export class ShownCells {
  private changed = new Map<EngineCell, ChangedResult>();
  private refilled: Refilled[] = [];

  constructor(private readonly sheets: readonly SheetCells[]) {}

  /** A calculation begins. */
  begin(): void {
    this.changed = new Map();
    this.refilled = [];
  }

  /** The cells that show something else since the calculation began. */
  results(): ChangedResult[] {
    return [...this.changed.values()];
  }

  /** The cells that were filled or freed since they were last taken. */
  takeRefilled(): readonly Refilled[] {
    const taken = this.refilled;
    this.refilled = [];
    return taken;
  }

  /** A cell is to be shown whatever stood there before. */
  mark(cell: EngineCell, place: ChangedResult): void {
    this.changed.set(cell, place);
  }

  markAll({ sheet, ...area }: Area): void {
    for (const [row, column] of placesOf(area)) {
      const cell = this.sheets[sheet]?.at(row, column);
      if (cell) this.mark(cell, { sheet, row, column });
    }
  }

  /**
   * Writes what a formula came to into its cells.
   *
   * @param area - The cells that it would fill if nothing stood in them.
   * @param at - When it was worked out.
   * @returns True where one of them shows something else.
   */
  show(formula: Formula, area: Area | undefined, rows: Rows, at: number): boolean {
    const isBlocked = area !== undefined && this.isBlocked(formula, area);
    const fills = isBlocked ? undefined : area;
    const isCleared = this.clear(formula, fills, at);
    formula.fills = fills;
    const own = isBlocked ? SPILL : (rows[0]?.[0] ?? EMPTY);
    const isOther = this.write(formula.place, formula.cell, own);
    const isFilled = fills !== undefined && this.fill(formula, fills, rows, at);
    return isFilled || isOther || isCleared;
  }

  /** Empties the cells that a formula fills no longer. @returns True where one of them was not empty. */
  clear(formula: Formula, kept: Area | undefined, at: number): boolean {
    const { fills, cell: own } = formula;
    if (fills === undefined) return false;
    const sheet = this.sheets[fills.sheet] as SheetCells;
    let isOther = false;
    for (const [row, column] of placesOf(fills)) {
      const cell = sheet.at(row, column);
      if (cell === undefined || cell === own || holdsPlace(kept, row, column)) continue;
      if (cell.filledBy !== formula || !empty(cell)) continue;
      isOther = true;
      const place = { sheet: fills.sheet, row, column };
      this.mark(cell, place);
      this.refilled.push({ area: oneCell(place), at });
    }
    return isOther;
  }

  private isBlocked(formula: Formula, area: Area): boolean {
    const sheet = this.sheets[area.sheet] as SheetCells;
    if (area.lastRow >= sheet.rows || area.lastColumn >= sheet.columns) return true;
    for (const [row, column] of placesOf(area)) {
      const cell = sheet.at(row, column);
      if (cell !== formula.cell && isTaken(cell, formula)) return true;
    }
    return false;
  }

  private fill(formula: Formula, area: Area, rows: Rows, at: number): boolean {
    const sheet = this.sheets[area.sheet] as SheetCells;
    let isOther = false;
    for (const [row, column] of placesOf(area)) {
      const cell = sheet.make(row, column);
      if (cell === formula.cell) continue;
      const isNew = cell.filledBy === undefined;
      cell.filledBy = formula;
      const place = { sheet: area.sheet, row, column };
      const isChanged = this.write(place, cell, rows[row - area.row]?.[column - area.column] ?? EMPTY);
      isOther ||= isChanged || isNew;
      if (isNew) this.refilled.push({ area: oneCell(place), at });
    }
    return isOther;
  }

  private write(place: ChangedResult, cell: EngineCell, content: ICellData): boolean {
    if (!put(cell, content)) return false;
    this.mark(cell, place);
    return true;
  }
}
