import type { CellInput, CellValue } from "../../engine/cell-value";
import type { TableInput } from "../../engine/workbook-input";
import type { Rectangle } from "../../formula/addresses";

/** What a cell holds from now on; nothing empties it. */
export interface HeldCell {
  readonly row: number;
  readonly column: number;
  readonly content: CellInput | undefined;
}

export interface HeldSheet {
  readonly id: string;
  readonly name: string;
  readonly cells: readonly HeldCell[];
}

/** A workbook to keep calculated. */
export interface HeldWorkbook {
  readonly sheets: readonly HeldSheet[];
  readonly names: Readonly<Record<string, string>>;
  readonly tables: readonly TableInput[];
}

/** What the page tells the worker. Numbers count up: an answer says up to which message it knows of. */
export type Order =
  | { readonly kind: "load"; readonly number: number; readonly workbook: HeldWorkbook }
  | {
      readonly kind: "change";
      readonly number: number;
      readonly sheet: string;
      readonly cells: readonly HeldCell[];
    };

/** What a cell shows; no result where a formula fills it no longer. */
export interface ShownCell {
  readonly row: number;
  readonly column: number;
  readonly result: CellValue | undefined;
  /** Number format that came with the value, as that of a date. */
  readonly format?: string;
  /** For the formula's own cell: the cells that it fills, `null` for its own alone. */
  readonly fills?: Rectangle | null;
  /** True where the formula of another cell fills it. */
  readonly isFilled: boolean;
}

/** What changed on one sheet. */
export interface ShownSheet {
  readonly id: string;
  readonly cells: readonly ShownCell[];
}

/** What the worker answers: the cells that show something else than before. */
export interface Answer {
  readonly number: number;
  readonly sheets: readonly ShownSheet[];
}
