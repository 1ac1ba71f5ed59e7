import type { TableInput } from "../../../engine/workbook-input";
import type { Rectangle } from "../../../formula/addresses";
import { BLADE_COLORS, CHECK_COLORS } from "../../model/colors";
import { styleOfRole } from "../../model/role-styles";
import { withFittedRows } from "../../model/row-heights";
import type { CellModel, SheetModel, WorkbookModel } from "../../model/sheet-model";
import type { Band, CellContent, CellData, SheetData, WorkbookData } from "../../model/workbook-data";

function contentOf({ content }: CellModel): { content?: CellContent } {
  if (content === "") return {};
  const isFormula = typeof content === "string" && content.startsWith("=");
  return { content: isFormula ? { formula: content } : { value: content } };
}

function cellsOf({ rows }: SheetModel): CellData[] {
  return rows.flatMap((cells, row) =>
    cells.flatMap((cell, column): CellData[] =>
      cell === undefined ? [] : [{ row, column, style: styleOfRole(cell), ...contentOf(cell) }],
    ),
  );
}

const bands = (sizes: Iterable<readonly [number | string, number]>): Map<number, Band> =>
  new Map([...sizes].map(([at, size]) => [Number(at), { size }]));

function columnsOf({ columnWidths, hiddenColumns = [] }: SheetModel): Map<number, Band> {
  return new Map(
    columnWidths.map((size, at) => [at, hiddenColumns.includes(at) ? { size, isHidden: true } : { size }]),
  );
}

function sheetOf(model: SheetModel): SheetData {
  const { name, rowHeights, frozenRows, frozenColumns, lines, print } = model;
  const down = (column: number, [row, lastRow] = lines): Rectangle => ({
    row,
    lastRow,
    column,
    lastColumn: column,
  });
  const colored = (places: readonly number[], words: typeof CHECK_COLORS) =>
    places.flatMap((column) => words.map(([word, fill]) => ({ areas: [down(column)], word, fill })));
  return {
    name,
    isHidden: false,
    cells: cellsOf(model),
    columns: columnsOf(model),
    rows: bands(Object.entries(rowHeights)),
    frozenRows,
    frozenColumns,
    merged: model.merged ?? [],
    offers: model.wordLists.map(({ column, words, rows }) => ({ areas: [down(column, rows)], words })),
    // In the order of the columns: a file keeps the rules of one area together.
    colors: [
      ...colored(model.statusColumns, CHECK_COLORS),
      ...colored(model.bladeStatusColumns ?? [], BLADE_COLORS),
    ].sort((a, b) => (a.areas[0]?.column ?? 0) - (b.areas[0]?.column ?? 0)),
    hidesGridLines: true,
    print: { ...print, landscape: print?.landscape ?? false },
  };
}

function tablesOf({ name: sheet, rows: lines, tables = [] }: SheetModel): TableInput[] {
  return tables.map(({ name, row, column, rows, columns }) => {
    const cells = lines[row]?.slice(column, column + columns) ?? [];
    return { name, sheet, row, column, rows, headings: cells.map((cell) => String(cell?.content ?? "")) };
  });
}

/** A planned workbook as data. */
export function workbookOfModel({ name, sheets }: WorkbookModel): WorkbookData {
  return { title: name, sheets: sheets.map(sheetOf), names: {}, tables: sheets.flatMap(tablesOf) };
}

/** A planned workbook as a grid shows it: rows are as high as what is known before anything is calculated. */
export const shownWorkbook = (model: WorkbookModel): WorkbookData => withFittedRows(workbookOfModel(model));
