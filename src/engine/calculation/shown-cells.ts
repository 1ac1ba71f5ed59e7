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
  /** The cells that the formula in hand changed. */
  private others: ChangedResult[] = [];

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
   * @returns Those of them that show something else.
   */
  show(formula: Formula, area: Area | undefined, rows: Rows, at: number): readonly ChangedResult[] {
    const isBlocked = area !== undefined && this.isBlocked(formula, area);
    const fills = isBlocked ? undefined : area;
    this.others = [];
    this.clear(formula, fills, at);
    formula.fills = fills;
    this.write(formula.place, formula.cell, isBlocked ? SPILL : (rows[0]?.[0] ?? EMPTY));
    if (fills !== undefined) this.fill(formula, fills, rows, at);
    return this.others;
  }

  /** Empties the cells that a formula fills no longer. */
  clear(formula: Formula, kept: Area | undefined, at: number): void {
    const { fills, cell: own } = formula;
    if (fills === undefined) return;
    const sheet = this.sheets[fills.sheet] as SheetCells;
    for (const [row, column] of placesOf(fills)) {
      const cell = sheet.at(row, column);
      if (cell === undefined || cell === own || holdsPlace(kept, row, column)) continue;
      if (cell.filledBy !== formula || !empty(cell)) continue;
      const place = { sheet: fills.sheet, row, column };
      this.note(cell, place);
      this.refilled.push({ area: oneCell(place), at });
    }
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

  private fill(formula: Formula, area: Area, rows: Rows, at: number): void {
    const { sheet } = area;
    for (const [row, column] of placesOf(area)) {
      const cell = (this.sheets[sheet] as SheetCells).make(row, column);
      if (cell === formula.cell) continue;
      const place = { sheet, row, column };
      const isNew = cell.filledBy === undefined;
      cell.filledBy = formula;
      if (isNew) this.refilled.push({ area: oneCell(place), at });
      const isOther = this.write(place, cell, rows[row - area.row]?.[column - area.column] ?? EMPTY);
      // Whoever read it while it was empty may have counted it among the free ones.
      if (isNew && !isOther) this.others.push(place);
    }
  }

  private write(place: ChangedResult, cell: EngineCell, content: ICellData): boolean {
    const isOther = put(cell, content);
    if (isOther) this.note(cell, place);
    return isOther;
  }

  /** Notes a cell that shows something else. */
  private note(cell: EngineCell, place: ChangedResult): void {
    this.mark(cell, place);
    this.others.push(place);
  }
}
