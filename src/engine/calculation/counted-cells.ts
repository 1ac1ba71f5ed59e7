import type { ICellData } from "@univerjs/core";
import { type BaseReferenceObject, ERROR_TYPE_SET, type ErrorType } from "@univerjs/engine-formula";
import { FUNCTION, isNamed, isRange, OPERATOR, PREFIX, type TreeNode, VALUE } from "./tree-nodes";

/**
 * Cells of a range that are counted by what they are: SUMPRODUCT(--ISERROR(range)), and so the cells without a
 * formula. A plan's sheet of checks asks it of whole tables with every edit. The engine makes four lists of the range
 * for it, with an object for each cell; here each cell is looked at once.
 */

type Test = (cell: ICellData | undefined | null) => boolean;

const TESTS: Readonly<Partial<Record<string, Test>>> = {
  ISERROR: (cell) => ERROR_TYPE_SET.has(cell?.v as ErrorType),
  "NOT ISFORMULA": (cell) => !cell?.f && !cell?.si,
};

/** What is counted, and the node of its range. */
export interface Counting {
  readonly range: TreeNode;
  readonly test: Test;
}

const only = (node: TreeNode | undefined): TreeNode | undefined => {
  const children = node?.getChildren() ?? [];
  return children.length === 1 ? children[0] : undefined;
};

/** What stands behind two signs of minus, which turn yes and no into figures. */
function behindSigns(node: TreeNode | undefined): TreeNode | undefined {
  const [zero, sign] = node?.getChildren() ?? [];
  if (!isNamed(node, OPERATOR, "-") || !isNamed(zero, VALUE, "0") || !isNamed(sign, PREFIX, "-"))
    return undefined;
  return only(sign);
}

/** @returns Nothing for a node that counts no cells of one range. */
export function countingOf(node: TreeNode): Counting | undefined {
  if (!isNamed(node, FUNCTION, "SUMPRODUCT")) return undefined;
  const names: string[] = [];
  let inner = behindSigns(only(node));
  for (; inner?.nodeType === FUNCTION; inner = only(inner)) names.push(inner.getToken().trim().toUpperCase());
  const test = TESTS[names.join(" ")];
  return test !== undefined && inner !== undefined && isRange(inner) ? { range: inner, test } : undefined;
}

/** How many cells of a range pass; nothing where only the engine knows what the range is. */
export function cellsThatPass(range: BaseReferenceObject, test: Test): number | undefined {
  const { startRow, endRow, startColumn, endColumn } = range.getRangePosition();
  const isCertain = startRow >= 0 && startColumn >= 0 && endRow >= startRow && endColumn >= startColumn;
  const isSheetThere = range.getForcedSheetName() === "" || Boolean(range.getForcedSheetId());
  if (!isCertain || !isSheetThere) return undefined;
  let passed = 0;
  for (let row = startRow; row <= endRow; row += 1)
    for (let column = startColumn; column <= endColumn; column += 1)
      if (test(range.getCellData(row, column) as ICellData | undefined)) passed += 1;
  return passed;
}
