import type { TableInput } from "../../engine/workbook-input";
import type { Rectangle } from "../file/addresses";
import type { Content } from "../file/cell-content";

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
  readonly colour: string;
}

export const SIDES = ["left", "right", "top", "bottom"] as const;
export type Side = (typeof SIDES)[number];

/** The dress of a cell. Colours as `#rrggbb`; what is left out is as everywhere. */
export interface Look {
  readonly font?: string;
  /** Points. */
  readonly size?: number;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly underline?: boolean;
  readonly strike?: boolean;
  readonly ink?: string;
  readonly fill?: string;
  readonly edges?: Readonly<Partial<Record<Side, Edge>>>;
  readonly across?: "left" | "center" | "right";
  readonly upright?: "top" | "center" | "bottom";
  readonly wraps?: boolean;
  /** Number format in the spreadsheet notation. */
  readonly format?: string;
}

export interface HeldFormula {
  /** As typed, with its equals sign. */
  readonly formula: string;
  /** The cells it may fill; left out for one that gives a single value. */
  readonly fills?: Rectangle;
  /** What it came to, where that is known. */
  readonly result?: Content;
}

/** What stands in a cell: a constant, the code of an error, or a formula. */
export type Held = Content | HeldFormula;

export interface BookCell {
  readonly row: number;
  readonly column: number;
  readonly held?: Held;
  readonly look?: Look;
}

/** Cells that offer words: listed here, or read from a range such as `Lists!$A$1:$A$9`. */
export interface OfferedWords {
  readonly areas: readonly Rectangle[];
  readonly words?: readonly string[];
  readonly range?: string;
}

/** Cells that take a colour where they contain a word. */
export interface WordColour {
  readonly areas: readonly Rectangle[];
  readonly word: string;
  readonly fill: string;
}

/** Column or row: size in pixels, and whether it is hidden. */
export interface Band {
  readonly size?: number;
  readonly isHidden?: boolean;
}

export interface BookSheet {
  readonly name: string;
  readonly isHidden: boolean;
  readonly cells: readonly BookCell[];
  readonly columns: ReadonlyMap<number, Band>;
  readonly rows: ReadonlyMap<number, Band>;
  readonly frozenRows: number;
  readonly frozenColumns: number;
  readonly merged: readonly Rectangle[];
  readonly offers: readonly OfferedWords[];
  readonly colours: readonly WordColour[];
}

/** A workbook as a grid shows it, between a file and the screen. */
export interface Book {
  readonly sheets: readonly BookSheet[];
  /** Names of the whole workbook and what they stand for, without an equals sign. */
  readonly names: Readonly<Record<string, string>>;
  readonly tables: readonly TableInput[];
}
