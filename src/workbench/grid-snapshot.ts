import {
  BooleanNumber,
  type ICellData,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
} from "@univerjs/core";
import type { CellModel, SheetModel, WorkbookModel } from "../workbook/sheet-model";
import { rulesOf } from "./grid-rules";
import { DEFAULT_STYLE, styleOf } from "./grid-styles";

const SPARE_ROWS = 100;
const SPARE_COLUMNS = 12;
/** Rows higher than this, in pixels, hold several lines of text. */
const TALL = 60;

/** Size of a sheet that a smith adds. */
export const EMPTY_SHEET = { rows: 200, columns: 40 } as const;

function cellData(model: CellModel, tall: boolean): ICellData {
  const { content } = model;
  const style = styleOf(model, tall);
  if (content === "") return { s: style };
  return typeof content === "string" && content.startsWith("=")
    ? { f: content, s: style }
    : { v: content, s: style };
}

function cells({ rows, rowHeights }: SheetModel): IWorksheetData["cellData"] {
  const filled = rows.map((row, index) => {
    const tall = (rowHeights[index] ?? 0) > TALL;
    const entries = row.flatMap((cell, column) =>
      cell === undefined ? [] : [[column, cellData(cell, tall)]],
    );
    return Object.fromEntries(entries) as Record<number, ICellData>;
  });
  return Object.fromEntries(filled.entries());
}

function sheetData(id: string, model: SheetModel): Partial<IWorksheetData> {
  const { name, columnWidths, rowHeights, frozenRows, frozenColumns } = model;
  const heights = Object.entries(rowHeights).map(([row, h]) => [row, { h, ia: BooleanNumber.FALSE }]);
  return {
    id,
    name,
    cellData: cells(model),
    rowCount: model.rows.length + SPARE_ROWS,
    columnCount: columnWidths.length + SPARE_COLUMNS,
    columnData: Object.fromEntries(columnWidths.map((w, column) => [column, { w }])),
    rowData: Object.fromEntries(heights),
    rowHeader: { width: 30 },
    freeze: { xSplit: frozenColumns, ySplit: frozenRows, startRow: frozenRows, startColumn: frozenColumns },
    defaultStyle: DEFAULT_STYLE,
  };
}

/** A workbook model in the form the grid opens. */
export function snapshotOf({ name, sheets }: WorkbookModel): Partial<IWorkbookData> {
  const named = sheets.map((sheet, index) => [`sheet-${index + 1}`, sheet] as const);
  return {
    id: "workbook",
    name,
    locale: LocaleType.EN_US,
    defaultStyle: DEFAULT_STYLE,
    sheetOrder: named.map(([id]) => id),
    sheets: Object.fromEntries(named.map(([id, sheet]) => [id, sheetData(id, sheet)])),
    resources: rulesOf(named),
  };
}
