import type { Rectangle } from "../../../formula/addresses";

/** A formula as a file holds it. */
export interface StoredFormula {
  /** Without the equals sign; empty in a cell that shares the formula of another. */
  readonly text: string;
  readonly kind: "normal" | "shared" | "array" | "dataTable";
  /** Cells an array formula fills, or that share a formula. */
  readonly area: Rectangle | undefined;
  readonly sharedIndex: string | undefined;
  /** Opening tag in the text of the part. */
  readonly start: number;
  readonly tagEnd: number;
  /** Where its closing tag begins, and where it ends. */
  readonly closeStart: number;
  readonly end: number;
}

/** A cell as a file holds it, with its place in the text of the part. */
export interface StoredCell {
  readonly row: number;
  readonly column: number;
  /** The `t` attribute: `n`, `s`, `str`, `b`, `e`, `d` or `inlineStr`. */
  readonly type: string;
  readonly style: string | undefined;
  /** True where the formula is marked as a dynamic array (`cm`). */
  readonly isDynamic: boolean;
  readonly formula: StoredFormula | undefined;
  /** Text of `<v>` or `<is>`; `undefined` where neither stands. */
  readonly raw: string | undefined;
  /** The `<v>` or `<is>` element. */
  readonly valueStart: number;
  readonly valueEnd: number;
  readonly start: number;
  readonly tagEnd: number;
  readonly end: number;
}

export interface StoredRow {
  readonly row: number;
  readonly start: number;
  readonly tagEnd: number;
  /** Where its closing tag begins; its end where it is empty. */
  readonly closeStart: number;
  readonly end: number;
  readonly cells: readonly StoredCell[];
}

/** The cells of a worksheet part, with what is needed to write values back in their places. */
export interface StoredSheet {
  readonly xml: string;
  /** Prefix of the part's elements, with its colon; usually none. */
  readonly prefix: string;
  readonly rows: readonly StoredRow[];
  /** `<sheetData>`: its opening tag and its closing tag. */
  readonly data: { readonly start: number; readonly tagEnd: number; readonly closeStart: number };
  /** `<dimension>`, where there is one. */
  readonly dimension: { readonly start: number; readonly end: number; readonly area: Rectangle } | undefined;
  readonly isProtected: boolean;
}
