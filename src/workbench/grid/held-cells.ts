import { CellValueType, type ICellData, type IWorkbookData } from "@univerjs/core";
import type { CellInput } from "../../engine/cell-value";
import type { WorkbookData } from "../../workbook/model/workbook-data";
import type { HeldWorkbook } from "../calculation/messages";
import { workbookOfSnapshot } from "../files/read-snapshot";

const NUMBER = /^\s*[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*$/i;

/** A content as it is calculated with: the grid keeps some figures as texts and says so beside them. */
export function typedContent(content: CellInput, type: ICellData["t"]): CellInput {
  if (!("value" in content) || typeof content.value !== "string") return content;
  const isFigure =
    type === CellValueType.NUMBER || ((type === undefined || type === null) && NUMBER.test(content.value));
  return isFigure ? { value: Number(content.value) } : content;
}

/** The contents of a workbook, for the calculation. @param ids - Of its sheets, in their order. */
export function heldWorkbook({ sheets, names, tables }: WorkbookData, ids: readonly string[]): HeldWorkbook {
  return {
    sheets: sheets.map(({ name, cells }, at) => ({
      id: ids[at] ?? name,
      name,
      cells: cells.flatMap(({ row, column, content }) =>
        content === undefined ? [] : [{ row, column, content }],
      ),
    })),
    names,
    tables,
  };
}

/** The contents of a workbook as the grid saves it. */
export const heldSnapshot = (saved: IWorkbookData): HeldWorkbook =>
  heldWorkbook(
    workbookOfSnapshot(saved, () => undefined),
    saved.sheetOrder,
  );
