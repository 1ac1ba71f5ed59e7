import type { TableInput } from "../../../engine/workbook-input";
import type { Rectangle } from "../../../formula/addresses";
import { heightOf, type ShownCell } from "../../model/row-heights";
import type { CellModel, Role, SheetModel, WorkbookModel } from "../../model/sheet-model";
import type {
  Band,
  CellContent,
  CellData,
  CellStyle,
  Edge,
  SheetData,
  WorkbookData,
} from "../../model/workbook-data";

const INK = "#1c2126";
const MUTED = "#565e66";
const HEAD = "#e8ebee";
/** The shade of cells a smith fills in; the word in the row of marks says the same. */
const YOURS = "#fdf3d8";

const line: Edge = { kind: "thin", color: "#c3c9cf" };
const edges = { bottom: line, right: line };
const base: CellStyle = { font: "Arial", size: 10, vertical: "center", color: INK };

const ROLES: Readonly<Partial<Record<Role, CellStyle>>> = {
  title: { ...base, bold: true, size: 11 },
  note: { ...base, color: MUTED, size: 9 },
  heading: { ...base, bold: true, size: 9, fill: HEAD, edges },
  mark: { ...base, italic: true, size: 9, color: MUTED, fill: HEAD, edges },
  label: { ...base, bold: true, fill: YOURS, edges },
  typed: { ...base, fill: YOURS, edges },
  worked: { ...base, edges },
  words: { ...base, size: 9, edges },
};

/** Colour comes on top of the words; each status reads without it. */
const STATUS_COLOURS = [
  ["HIGH", "#f9dcd3"],
  ["LOW", "#dce6f7"],
  ["DOUBTFUL", "#e3e3de"],
] as const;

/** Rows higher than this, in pixels, hold several lines of text. */
const TALL = 60;

/** Figures stand right, words left; in a tall row all stands at the top, so that the first words of a caution show. */
function styleOfRole({ role, format, wrap }: CellModel, isTall: boolean): CellStyle {
  return {
    ...(ROLES[role] ?? base),
    ...(isTall ? { vertical: "top" } : {}),
    ...(wrap ? { wraps: true } : {}),
    ...(format === undefined ? { horizontal: "left" } : { format, horizontal: "right" }),
  };
}

function contentBy({ content }: CellModel): { content?: CellContent } {
  if (content === "") return {};
  const isFormula = typeof content === "string" && content.startsWith("=");
  return { content: isFormula ? { formula: content } : { value: content } };
}

function cellsOf({ rows, rowHeights }: SheetModel): CellData[] {
  return rows.flatMap((cells, row) =>
    cells.flatMap((cell, column): CellData[] => {
      if (cell === undefined) return [];
      return [{ row, column, style: styleOfRole(cell, (rowHeights[row] ?? 0) > TALL), ...contentBy(cell) }];
    }),
  );
}

const bands = (sizes: Iterable<readonly [number | string, number]>): Map<number, Band> =>
  new Map([...sizes].map(([at, size]) => [Number(at), { size }]));

/** Heights that are given, and those that headings and labels of several lines need; what formulas come to is not known yet. */
function rowBands({ rows, rowHeights, columnWidths }: SheetModel): Map<number, Band> {
  const needed = rows.flatMap((cells, row): [number, number][] => {
    const shown = cells.flatMap((model, column): ShownCell[] => {
      if (model === undefined || String(model.content).startsWith("=")) return [];
      return [{ model, text: String(model.content), width: columnWidths[column] ?? 64 }];
    });
    const height = heightOf(shown);
    return height === undefined ? [] : [[row, height]];
  });
  return bands([...needed, ...Object.entries(rowHeights)]);
}

function sheetOf(model: SheetModel): SheetData {
  const { name, columnWidths, frozenRows, frozenColumns, lines, wordLists, statusColumns } = model;
  const down = (column: number, [row, lastRow] = lines): Rectangle => ({
    row,
    lastRow,
    column,
    lastColumn: column,
  });
  return {
    name,
    isHidden: false,
    cells: cellsOf(model),
    columns: bands(columnWidths.entries()),
    rows: rowBands(model),
    frozenRows,
    frozenColumns,
    merged: [],
    offers: wordLists.map(({ column, words, rows }) => ({ areas: [down(column, rows)], words })),
    colors: statusColumns.flatMap((column) =>
      STATUS_COLOURS.map(([word, fill]) => ({ areas: [down(column)], word, fill })),
    ),
  };
}

function tablesOf({ name: sheet, rows: lines, tables = [] }: SheetModel): TableInput[] {
  return tables.map(({ name, row, column, rows, columns }) => {
    const cells = lines[row]?.slice(column, column + columns) ?? [];
    return { name, sheet, row, column, rows, headings: cells.map((cell) => String(cell?.content ?? "")) };
  });
}

/** A planned workbook in its style. */
export function workbookOfModel({ sheets }: WorkbookModel): WorkbookData {
  return { sheets: sheets.map(sheetOf), names: {}, tables: sheets.flatMap(tablesOf) };
}
