import type { CellInput } from "../../src/engine/cell-value";
import type { SheetInput } from "../../src/engine/workbook-input";

export type Typed = number | string | boolean | undefined;

/** A cell as somebody types it: `=` begins a formula, an apostrophe a text whatever follows. */
function typedCell(typed: Typed): CellInput | undefined {
  if (typed === undefined) return undefined;
  if (typeof typed !== "string") return { value: typed };
  if (typed.startsWith("=")) return { formula: typed };
  return { value: typed.startsWith("'") ? typed.slice(1) : typed };
}

/** A sheet as it is typed. */
export const typedSheet = (name: string, rows: readonly (readonly Typed[])[]): SheetInput => ({
  name,
  rows: rows.map((row) => Array.from(row, typedCell)),
});
