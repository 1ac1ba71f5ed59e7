import type { CellValue } from "../../engine/cell-value";
import type { TableInput } from "../../engine/workbook-input";
import type { Rectangle } from "../../formula/addresses";

/** Line styles of borders that files know (ST_BorderStyle, ECMA-376 Part 1, 18.18.3). */
export const EDGE_KINDS = [
  "none",
  "thin",
  "hair",
  "dotted",
  "dashed",
  "dashDot",
  "dashDotDot",
  "double",
  "medium",
  "mediumDashed",
  "mediumDashDot",
  "mediumDashDotDot",
  "slantDashDot",
  "thick",
] as const;

export interface Edge {
  readonly kind: (typeof EDGE_KINDS)[number];
  readonly color: string;
}

export const SIDES = ["left", "right", "top", "bottom"] as const;
export type Side = (typeof SIDES)[number];

/** The style of a cell. Colours as `#rrggbb`; what is left out is as everywhere. */
export interface CellStyle {
  readonly font?: string;
  /** Points. */
  readonly size?: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strike?: boolean;
  readonly color?: string;
  readonly fill?: string;
  readonly edges?: Readonly<Partial<Record<Side, Edge>>>;
  readonly horizontal?: "left" | "center" | "right";
  readonly vertical?: "top" | "center" | "bottom";
  /** Steps of room between the edge and the text. */
  readonly indent?: number;
  readonly wraps?: boolean;
  /** Number format in the spreadsheet notation. */
  readonly format?: string;
  /** True for a cell that may be filled in where its sheet is protected. */
  readonly isUnlocked?: boolean;
}

export interface CellFormula {
  /** As typed, with its equals sign. */
  readonly formula: string;
  /** The cells it may fill; left out for one that gives a single value. */
  readonly fills?: Rectangle;
  /** What it came to, where that is known. */
  readonly result?: CellValue;
  /** What stands in the cells it fills, row by row, where that is known. */
  readonly filled?: readonly (readonly CellValue[])[];
}

/** What stands in a cell: a constant, the code of an error, or a formula. */
export type CellContent = CellValue | CellFormula;

export interface CellData {
  readonly row: number;
  readonly column: number;
  readonly content?: CellContent;
  readonly style?: CellStyle;
  /** Text of a note that shows when the pointer rests on the cell. */
  readonly note?: string;
}

/** Cells that offer words: listed here, or read from a range such as `Lists!$A$1:$A$9`. */
export interface OfferedWords {
  readonly areas: readonly Rectangle[];
  readonly words?: readonly string[];
  readonly range?: string;
}

/** Cells that take a colour where they contain a word, written in these very capitals. */
export interface WordColor {
  readonly areas: readonly Rectangle[];
  readonly word: string;
  readonly fill: string;
}

/** Column or row: size in pixels, and whether it is hidden. */
export interface Band {
  readonly size?: number;
  /** True for a height that was found from the texts of the row, and is found anew as they change. */
  readonly isFitted?: boolean;
  readonly isHidden?: boolean;
}

/** Sizes of paper: A4 with A3, or Letter with Tabloid. */
export type Paper = "A4" | "letter";

/** How a sheet goes to paper: one page wide, unless columns may be repeated. */
export interface PrintSetup {
  /**
   * Whether the sheet is a paper that goes out: nothing of the workbook stands in its margins, and it is narrow enough
   * for full size on A4 and on Letter.
   */
  readonly isPaper?: boolean;
  /** What of the sheet is printed: so many columns, and a formula for how many rows, without its equals sign. */
  readonly printed?: { readonly columns: number; readonly rows: string };
  readonly landscape: boolean;
  /** Sizes of paper of the place; A4, and A3 for wide sheets, unless given. */
  readonly paper?: Paper;
  /** First and last row that stand again on every page. */
  readonly repeatedRows?: readonly [first: number, last: number];
  /**
   * How many of the first columns stand again on every page: such a sheet takes a second page beside the first where
   * its letters would be printed too small.
   */
  readonly repeatedColumns?: number;
  /** The cells that are printed; all that are filled unless given. */
  readonly area?: Rectangle;
  /** Rows after which a new page begins. */
  readonly breaksAfter?: readonly number[];
}

export interface SheetData {
  readonly name: string;
  readonly isHidden: boolean;
  /** Whether only unlocked cells may be changed, as a reminder without a password. */
  readonly isProtected?: boolean;
  readonly cells: readonly CellData[];
  readonly columns: ReadonlyMap<number, Band>;
  readonly rows: ReadonlyMap<number, Band>;
  readonly frozenRows: number;
  readonly frozenColumns: number;
  readonly merged: readonly Rectangle[];
  readonly offers: readonly OfferedWords[];
  readonly colors: readonly WordColor[];
  readonly hidesGridLines?: boolean;
  /** Landscape without breaks unless given. */
  readonly print?: PrintSetup;
}

/** A workbook as data: what a file holds, a grid shows and a planned workbook becomes. */
export interface WorkbookData {
  /** Said in the properties of the file and at the head of every printed page. */
  readonly title?: string;
  readonly sheets: readonly SheetData[];
  /** Names of the whole workbook and what they stand for, without an equals sign. */
  readonly names: Readonly<Record<string, string>>;
  readonly tables: readonly TableInput[];
  /** True where days count from 1904; from 1900 unless said. */
  readonly from1904?: boolean;
}
