import type { CellValue } from "../../../engine/cell-value";

import { plainContent, type Values } from "../values";

/** How far two numbers may lie apart and still agree: the part of the larger one, and at the least of 1. */
export const TOLERANCE = 1e-9;

/** A cell that holds one thing in the live workbook and another in the copy; `undefined` for an empty cell. */
export interface CellPair {
  readonly sheet: string;
  readonly cell: string;
  readonly live: CellValue | undefined;
  readonly shared: CellValue | undefined;
}

function isNear(a: number, b: number, tolerance: number): boolean {
  return Math.abs(a - b) <= tolerance * Math.max(1, Math.abs(a), Math.abs(b));
}

/** True where two contents agree: numbers within the tolerance, anything else in every letter. */
export function agree(a: CellValue | undefined, b: CellValue | undefined, tolerance: number): boolean {
  const [x, y] = [a, b].map((content) => content && "value" in content && content.value);
  if (typeof x === "number" && typeof y === "number") return isNear(x, y, tolerance);
  return typeof x === typeof y && plainContent(a) === plainContent(b);
}

/** The cells in which two workbooks differ, sheet by sheet, on the sheets that both have. */
export function differingCells(live: Values, shared: Values, tolerance: number): CellPair[] {
  return [...live].flatMap(([sheet, ours]) => {
    const theirs = shared.get(sheet);
    if (theirs === undefined) return [];
    const cells = new Set([...ours.keys(), ...theirs.keys()]);
    return [...cells].flatMap((cell): CellPair[] => {
      const pair = { sheet, cell, live: ours.get(cell), shared: theirs.get(cell) };
      return agree(pair.live, pair.shared, tolerance) ? [] : [pair];
    });
  });
}
