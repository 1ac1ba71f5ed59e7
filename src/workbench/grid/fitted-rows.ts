import {
  BooleanNumber,
  type ICellData,
  type ICommandService,
  type Workbook,
  type Worksheet,
  WrapStrategy,
} from "@univerjs/core";
import { neededHeights } from "../../workbook/model/row-heights";
import type { Band, CellData } from "../../workbook/model/workbook-data";

const AUTO_HEIGHT = "sheet.mutation.set-worksheet-row-auto-height";

/** The cells of a row whose texts break into lines. */
function wrappedCells(workbook: Workbook, sheetId: string, row: number): CellData[] {
  const cells = workbook.getSheetBySheetId(sheetId)?.getCellMatrix().getRow(row) ?? {};
  return Object.entries(cells).flatMap(([column, data]): CellData[] => {
    const { v, s } = (data ?? {}) as ICellData;
    const style = workbook.getStyles().get(s);
    if (v === undefined || v === null || v === "" || style?.tb !== WrapStrategy.WRAP) return [];
    const bold = style.bl === BooleanNumber.TRUE;
    return [{ row, column: Number(column), content: { value: v }, style: { wraps: true, bold } }];
  });
}

/** A height of its own, from a file or set by hand, is what a row keeps. */
const hasOwnHeight = (sheet: Worksheet, row: number) =>
  sheet.getRowManager().getRow(row)?.ia === BooleanNumber.FALSE;

/**
 * Makes rows as high as the results that arrived in them: the grid itself looks at a row only when it is typed into.
 * Rows with a height of their own keep it, and none becomes lower.
 */
export function fitRows(
  commands: ICommandService,
  workbook: Workbook,
  sheetId: string,
  rows: Iterable<number>,
): void {
  const sheet = workbook.getSheetBySheetId(sheetId);
  if (!sheet) return;
  const fitting = [...new Set(rows)].filter((row) => !hasOwnHeight(sheet, row));
  const cells = fitting.flatMap((row) => wrappedCells(workbook, sheetId, row));
  const columns = new Map<number, Band>(
    [...new Set(cells.map(({ column }) => column))].map((column) => [
      column,
      { size: sheet.getColumnWidth(column) },
    ]),
  );
  const rowsAutoHeightInfo = [...neededHeights({ cells, columns })]
    .filter(([row, height]) => height > sheet.getRowHeight(row))
    .map(([row, autoHeight]) => ({ row, autoHeight }));
  if (rowsAutoHeightInfo.length === 0) return;
  const params = { unitId: workbook.getUnitId(), subUnitId: sheetId, rowsAutoHeightInfo };
  commands.syncExecuteCommand(AUTO_HEIGHT, params, { onlyLocal: true });
}
