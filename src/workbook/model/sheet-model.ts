import type { Rectangle } from "../../formula/addresses";
import type { Role } from "./role-styles";
import type { PrintSetup } from "./workbook-data";

export type { Role };

/** One filled cell of a planned sheet. */
export interface CellModel {
  /** A number, a text, or a formula with its equals sign. */
  readonly content: number | string;
  readonly role: Role;
  /** Number format in the spreadsheet notation. */
  readonly format?: string;
  /** Long words break into lines instead of running into the next cell. */
  readonly wrap?: boolean;
  /** A heading in front of a value: it begins at the top, as the value does. */
  readonly isInFront?: boolean;
}

/** A column of typed cells that offers a list of words. Other words may still be typed. */
export interface WordList {
  readonly column: number;
  readonly words: readonly string[];
  /** First and last row that offer the words; the lines of the sheet where none are given. */
  readonly rows?: readonly [first: number, last: number];
}

/** A block with filters, its headings in the first row: a table of the spreadsheet. */
export interface SheetTable {
  /** Letters, digits and underscores; no other table of the workbook has it. */
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** Rows with the headings counted. */
  readonly rows: number;
  readonly columns: number;
}

/** A sheet as plain data. Rows and columns count from 0. */
export interface SheetModel {
  readonly name: string;
  readonly rows: readonly (readonly (CellModel | undefined)[])[];
  /** Pixels, in order of the columns. */
  readonly columnWidths: readonly number[];
  /** Pixels, for the rows whose height is not the usual one. */
  readonly rowHeights: Readonly<Record<number, number>>;
  readonly frozenRows: number;
  readonly frozenColumns: number;
  /** First and last row that hold a line of the run. */
  readonly lines: readonly [first: number, last: number];
  readonly wordLists: readonly WordList[];
  /** Columns in which the words of a check (OK, HIGH, FAIL ...) are picked out by colour. */
  readonly statusColumns: readonly number[];
  /** Columns in which the words about a blade's band and hardening are. */
  readonly bladeStatusColumns?: readonly number[];
  readonly tables?: readonly SheetTable[];
  /** Columns that are not shown: a chart draws what stands in them. */
  readonly hiddenColumns?: readonly number[];
  /** Cells that are one cell. */
  readonly merged?: readonly Rectangle[];
  readonly print?: Partial<PrintSetup>;
}

export interface WorkbookModel {
  readonly name: string;
  readonly sheets: readonly SheetModel[];
}
