import type { Block, FilledBy, LineChart, Place } from "../../host/port";
import type { GridCells } from "./grid-cells";
import type { GridFormat } from "./grid-format";
import type { GridRows } from "./grid-rows";
import type { GridWorkbook } from "./grid-workbook";

/** A cell of the grid as words: what stands in it and what it says. */
export interface CellView {
  readonly sheet: string;
  /** Without its sheet: `D7`. */
  readonly address: string;
  /** The formula with its equals sign, or the constant as typed; empty for an empty cell. */
  readonly formula: string;
  /** What the cell shows. */
  readonly value: string;
  /** The sentence behind an error; empty where there is none. */
  readonly sentence: string;
}

/** What a sheet shows, from its first cell to its last filled one. */
export type SheetView = readonly (readonly CellView[])[];

/** The grid as the page sees it. One adapter knows which program draws it. */
export interface Grid {
  /** Of the sheets that are not hidden, in their order. */
  sheetNames(): readonly string[];
  activeSheet(): string;
  showSheet(name: string): void;
  /** Adds an empty sheet under a free name and shows it. */
  addSheet(): void;
  selected(): CellView | null;
  /** The formula of another cell that fills the selected one; `null` where there is none. */
  filledBy(): FilledBy | null;
  /** The workbook as a whole. */
  readonly workbook: GridWorkbook;
  /** Reading and writing beyond the selected cell. */
  readonly cells: GridCells;
  /** Rows of tables as wholes. */
  readonly rows: GridRows;
  readonly format: GridFormat;
  /** Writes a block of cells with its first cell in the selected one, its picture beside it; gives the address written to. */
  writeBlock(block: Block, chart?: LineChart): string;
  /** Where such a block would go. */
  placeFor(block: Block): Place;
  /**
   * Selects a cell of the active sheet.
   *
   * @returns False where the sheet has no such cell.
   */
  select(address: string): boolean;
  /** Writes a constant or, with an equals sign in front, a formula into the selected cell. */
  write(text: string): void;
  sheetView(): SheetView;
  /** What each cell of a sheet shows. */
  shownText(sheet: string): (row: number, column: number) => string;
  /** Works every formula out anew. */
  recalculate(): void;
  undo(): void;
  redo(): void;
  /** Calls back with a sentence where a command of the grid's own menu cannot be carried out. */
  onRefusal(refused: (sentence: string) => void): void;
  /** Calls back after every change of selection, content or result; several changes may come as one. */
  onChange(changed: () => void): void;
}
