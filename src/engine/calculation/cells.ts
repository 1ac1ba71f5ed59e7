import { CellValueType, type ICellData, ObjectMatrix } from "@univerjs/core";
import type { Rectangle } from "../../formula/addresses";
import type { CellInput } from "../cell-value";
import type { Area } from "./area";
import type { EngineCell, Formula } from "./formula";

/** Room below and beside what is filled, so that results can spill. */
const SPARE_ROWS = 2000;
const SPARE_COLUMNS = 200;

/** One sheet of a workbook that is being calculated. */
export class SheetCells {
  readonly cells = new ObjectMatrix<EngineCell>({});
  rows = SPARE_ROWS;
  columns = SPARE_COLUMNS;

  constructor(
    readonly id: string,
    readonly name: string,
  ) {}

  at(row: number, column: number): EngineCell | undefined {
    return this.cells.getValue(row, column) as EngineCell | undefined;
  }

  /** The cell at a place; made empty where there is none yet. */
  make(row: number, column: number): EngineCell {
    const found = this.at(row, column);
    if (found !== undefined && found !== null) return found;
    const made: EngineCell = {};
    this.cells.setValue(row, column, made);
    this.rows = Math.max(this.rows, row + SPARE_ROWS);
    this.columns = Math.max(this.columns, column + SPARE_COLUMNS);
    return made;
  }

  /** The part of an area that holds cells. */
  filledPart(area: Rectangle): Rectangle {
    const lastRow = Math.min(area.lastRow, this.rows - 1);
    return { ...area, lastRow, lastColumn: Math.min(area.lastColumn, this.columns - 1) };
  }
}

/** Whether a cell keeps a formula of another cell from filling it. */
export function isTaken(cell: EngineCell | undefined, by: Formula): boolean {
  if (cell === undefined || cell === null) return false;
  if (cell.filledBy !== undefined) return cell.filledBy !== by;
  return cell.formula !== undefined || (cell.v !== undefined && cell.v !== null && cell.v !== "");
}

/** Puts a value into a cell. @returns True where it shows something else than before. */
export function put(cell: EngineCell, { v, t, s, custom }: ICellData): boolean {
  const isSame = cell.v === v && cell.t === t && sentenceOf(cell) === sentenceOf({ custom } as ICellData);
  cell.v = v as never;
  cell.t = t as never;
  if (custom !== undefined) cell.custom = custom;
  else if (cell.custom !== undefined) cell.custom = undefined as never;
  if (s !== undefined) cell.s = s;
  return !isSame;
}

const sentenceOf = ({ custom }: ICellData) => (custom as { refusal?: string } | undefined | null)?.refusal;

/** Takes the value out of a cell. @returns False where there was none. */
export function empty(cell: EngineCell): boolean {
  const wasFilled = cell.v !== undefined && cell.v !== null;
  cell.v = undefined as never;
  cell.t = undefined as never;
  cell.custom = undefined as never;
  cell.filledBy = undefined;
  return wasFilled;
}

/** Puts a constant into a cell, the code of an error among them. */
export function putConstant(cell: EngineCell, content: Exclude<CellInput, { formula: string }>): boolean {
  if ("error" in content) return put(cell, { v: content.error, t: CellValueType.STRING });
  const { value } = content;
  if (typeof value === "boolean") return put(cell, { v: value ? 1 : 0, t: CellValueType.BOOLEAN });
  return put(cell, { v: value, t: typeof value === "number" ? CellValueType.NUMBER : CellValueType.STRING });
}

/** Every place of an area. */
export function* placesOf({
  row,
  column,
  lastRow,
  lastColumn,
}: Rectangle): Generator<readonly [number, number]> {
  for (let r = row; r <= lastRow; r += 1) for (let c = column; c <= lastColumn; c += 1) yield [r, c];
}

export const holdsPlace = (area: Area | undefined, row: number, column: number): boolean =>
  area !== undefined &&
  row >= area.row &&
  row <= area.lastRow &&
  column >= area.column &&
  column <= area.lastColumn;
