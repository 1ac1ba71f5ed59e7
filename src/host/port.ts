/** What one cell holds, as the host hands it over; `null` is an empty cell. */
export type HostValue = number | string | boolean | null | HostError;

/** An error in a cell, in a form that worksheet functions read too. */
export interface HostError {
  readonly type: "Error";
  /** Its code: `#N/A`. */
  readonly basicValue: string;
}

/** A rectangle of cells. */
export type HostRows = readonly (readonly HostValue[])[];

/** The cell a smith has selected. */
export interface SelectedCell {
  /** With its sheet, as the host writes it: `Plan!D7`. */
  readonly address: string;
  /** The formula with its equals sign, or the constant as typed; empty for an empty cell. */
  readonly formula: string;
  /** The formula as this reader's program shows it, with its own separators and decimal sign. */
  readonly shown: string;
  /** What the cell shows, in the reader's own way of writing figures. */
  readonly value: string;
  /** What it shows where that is a plain number, with `.` as decimal point; empty for anything else. */
  readonly figure: string;
  /** The English code of the error it holds (`#NAME?`), whatever language it is shown in; empty where there is none. */
  readonly error: string;
  /** The cell whose formula fills this one too; `null` where it stands for itself. */
  readonly filledBy: FilledBy | null;
  /** The sentence behind an error; empty where there is none or the host does not hand it out. */
  readonly sentence: string;
}

/** A formula that fills more cells than its own. */
export interface FilledBy {
  readonly address: string;
  readonly formula: string;
  /** Rows and columns from the formula's own cell to the selected one. */
  readonly row: number;
  readonly column: number;
}

/** Cells to write below and beside a first one. A text that begins with `=` is a formula. */
export interface Block {
  readonly rows: readonly (readonly (number | string)[])[];
  /** The row with headings, from 0; what stands above it is the title. */
  readonly heading: number;
}

/** Where a block would go. */
export interface Place {
  readonly address: string;
  /** How many of its cells hold something already. */
  readonly filled: number;
}

/** Lines over columns of a block, named by its headings. */
export interface LineChart {
  readonly title: string;
  readonly horizontal: string;
  readonly vertical: string;
  /** Columns of the block, from 0: first the horizontal axis, then each line. */
  readonly columns: readonly number[];
  /** First and last row of figures, from 0. */
  readonly rows: readonly [first: number, last: number];
}

/** Formulas of a part of a sheet, row by row; rows and columns count from 0. */
export interface FormulaPart {
  readonly sheet: string;
  readonly isProtected: boolean;
  readonly row: number;
  readonly column: number;
  readonly formulas: readonly (readonly string[])[];
  /** True for each cell whose formula calls a name that the host does not know, whatever language it says so in. */
  readonly unknownNames: readonly (readonly boolean[])[];
  /** Share of the workbook that has been read with this part, 0 to 1. */
  readonly done: number;
}

/** A formula to write anew. */
export interface FormulaChange {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  /** With its equals sign; without one it is a constant. */
  readonly formula: string;
}

/** How work that takes its time tells how far it is, and is told to stop. */
export interface Work {
  readonly signal: AbortSignal;
  /** @param done - Share of the work, 0 to 1. */
  progress(done: number): void;
}

/** How this reader writes formulas. Files and the host's interface always have `,` and `.`. */
export interface Separators {
  readonly decimal: string;
  /** Between arguments. */
  readonly list: string;
}

/** As files have them, and English settings. */
export const ENGLISH: Separators = { decimal: ".", list: "," };

/** High contrast is not among them: the browser reports it by itself (`forced-colors`). */
export type Theme = "light" | "dark";

/** Stops a subscription. */
export type Unsubscribe = () => void;

/**
 * All that the task pane may ask of the program it sits in. Excel and the workbench each have an
 * adapter; the pane itself names neither. What writes is one step for the host's undo wherever the
 * host allows it, and throws an error with a sentence for the smith where nothing could be written.
 */
export interface HostPort {
  /** As sentences call it: "Excel", "the workbench". */
  readonly name: string;

  /** False where there is no sheet: the pane then only shows figures. */
  readonly hasSheet: boolean;

  /** True where the host draws charts of its own. */
  readonly hasCharts: boolean;

  /** How a sheet that is shown is printed: no host lets the pane do it. */
  readonly printHint: string;

  /** Names of the sheets that can be seen, in their order. */
  sheetNames(): Promise<readonly string[]>;

  /** Shows a sheet. @throws where there is none of that name. */
  showSheet(name: string): Promise<void>;

  /** `undefined` leaves it to the browser's own setting. */
  theme(): Theme | undefined;

  /** The selected cell, or `null` where nothing is selected. */
  selection(): Promise<SelectedCell | null>;

  /**
   * Calls back after every change of selection.
   *
   * @returns A function that ends the subscription.
   */
  onSelection(changed: () => void): Unsubscribe;

  /**
   * Values of cells, ranges and names as a formula writes them: `A2`, `Plan!$A$2:$A$9`, `Kerf`.
   *
   * @param beside - Address of the cell with the formula: its sheet is meant where none is written.
   * @returns In the same order; `null` for what is not there or too large to be read here.
   */
  readValues(references: readonly string[], beside: string): Promise<readonly (HostRows | null)[]>;

  /**
   * Writes a formula into the selected cell.
   *
   * @param formula - In English function names with `,` between arguments and `.` as decimal point.
   * @returns The address written to.
   */
  insertFormula(formula: string): Promise<string>;

  /** Where a block would go with its first cell in the selected one; `null` where nothing is selected. */
  placeFor(block: Block): Promise<Place | null>;

  /**
   * Writes a block with its first cell in the selected one, over whatever stands there.
   *
   * @returns The address written to.
   */
  writeBlock(block: Block, chart?: LineChart): Promise<string>;

  /**
   * Puts a block on a new sheet and shows it.
   *
   * @param name - Wanted name; where it is taken a number is put behind it.
   * @returns The name of the sheet.
   */
  addSheet(name: string, block: Block, chart?: LineChart): Promise<string>;

  /** How formulas are written here. */
  separators(): Promise<Separators>;

  /** Works every formula of the workbook out anew, those too whose inputs stayed the same. */
  recalculate(): Promise<void>;

  /** What is running, as names with values: the program, its version, what of the interface it knows. */
  health(): Promise<readonly (readonly [name: string, value: string])[]>;

  /** Every formula of the workbook, part by part, so that a long reading can be shown and left. */
  formulas(): AsyncIterable<FormulaPart>;

  /**
   * Writes formulas anew in their cells; cells that another formula fills are left alone.
   *
   * @returns How many were written before the end or a stop.
   */
  replaceFormulas(changes: readonly FormulaChange[], work: Work): Promise<number>;
}
