import type { CellValue } from "../../engine/cell-value";
import { placeOf } from "../../formula/addresses";
import { contentOf } from "../file/cell-content";
import type { LiveSheet, LiveWorkbook } from "../file/read/live-workbook";
import { FIRST_ROW, HEADINGS } from "./parts/table-sheet";

/** A cell as a file holds it. */
export interface HeldCell {
  readonly value: number | string | boolean | undefined;
  readonly isFormula: boolean;
}

export const BLANK: HeldCell = { value: undefined, isFormula: false };

/** A constant, or what a formula came to; nothing for an error and an empty text. */
function valueIn(content: CellValue | undefined): HeldCell["value"] {
  if (content === undefined || "error" in content || content.value === "") return undefined;
  return content.value;
}

/** One sheet of a planning workbook, read by its headings. */
export class PlanSheet {
  private readonly cells = new Map<number, HeldCell>();
  private readonly columns = new Map<string, number>();
  /** Rows with a formula under more than one heading: a guard below the table has one only. */
  private readonly workingRows: ReadonlySet<number>;
  private lastRow = 0;

  constructor(live: LiveWorkbook, { stored, formulas }: LiveSheet) {
    for (const cell of stored.rows.flatMap(({ cells }) => cells)) {
      const place = placeOf(cell.row, cell.column);
      const value = valueIn(contentOf(cell, live.strings, live.main.from1904));
      this.cells.set(place, { value, isFormula: formulas.has(place) });
      if (cell.row === HEADINGS && value !== undefined) this.columns.set(String(value), cell.column);
      this.lastRow = Math.max(this.lastRow, cell.row);
    }
    const counts = new Map<number, number>();
    for (const { cell } of formulas.values()) counts.set(cell.row, (counts.get(cell.row) ?? 0) + 1);
    this.workingRows = new Set([...counts].flatMap(([row, count]) => (count > 1 ? [row] : [])));
  }

  /** Rows of the table, filled or free: those in which some column works something out. */
  get tableRows(): number[] {
    return Array.from(
      { length: Math.max(0, this.lastRow - FIRST_ROW + 1) },
      (_, at) => FIRST_ROW + at,
    ).filter((row) => this.workingRows.has(row));
  }

  /** Headings of the table, from left to right. */
  get headings(): string[] {
    return [...this.columns].sort(([, a], [, b]) => a - b).map(([heading]) => heading);
  }

  /** The column under a heading; `undefined` where there is none. */
  columnOf(heading: string): number | undefined {
    return this.columns.get(heading);
  }

  cell(row: number, column: number): HeldCell {
    return this.cells.get(placeOf(row, column)) ?? BLANK;
  }

  under(heading: string, row: number): HeldCell {
    const column = this.columns.get(heading);
    return column === undefined ? BLANK : this.cell(row, column);
  }

  /** Rows in which a heading has a value. */
  rowsWith(heading: string): number[] {
    const rows = Array.from({ length: Math.max(0, this.lastRow - FIRST_ROW + 1) }, (_, at) => FIRST_ROW + at);
    return rows.filter((row) => this.under(heading, row).value !== undefined);
  }

  /** The first row whose first cell holds a word; `undefined` where none does. */
  rowBeginning(word: string): number | undefined {
    for (let row = 0; row <= this.lastRow; row += 1) if (String(this.cell(row, 0).value) === word) return row;
    return undefined;
  }

  /** The figure beside a label in the first column. */
  beside(label: string): HeldCell {
    const row = this.rowBeginning(label);
    return row === undefined ? BLANK : this.cell(row, 1);
  }
}
