import {
  BooleanNumber,
  CellValueType,
  type ICellData,
  type IFreeze,
  type IStyleData,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
} from "@univerjs/core";
import type { Band, Book, BookCell, BookSheet, Held, Look } from "../../workbook/model/workbook-data";
import { rangeOf, resourcesOf } from "./book-resources";
import { DEFAULT_STYLE, styleOfLook } from "./look-styles";

const SPARE_ROWS = 100;
const SPARE_COLUMNS = 12;

/** Size of a sheet that a smith adds. */
export const EMPTY_SHEET = { rows: 200, columns: 40 } as const;

/** Gives each look one style of the workbook. */
class StyleList {
  readonly styles: Record<string, IStyleData> = {};
  private readonly ids = new Map<string, string>();

  idOf(look: Look | undefined): { s: string } | undefined {
    if (look === undefined) return undefined;
    const key = JSON.stringify(look);
    const id = this.ids.get(key) ?? `look-${this.ids.size + 1}`;
    this.ids.set(key, id);
    this.styles[id] ??= styleOfLook(look);
    return { s: id };
  }
}

function contentData(held: Held | undefined): ICellData {
  if (held === undefined) return {};
  if ("formula" in held) return { f: held.formula };
  // The grid counts an error as one only where a formula gives it.
  if ("error" in held) return { f: `=${held.error}` };
  const { value } = held;
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: typeof value === "number" ? CellValueType.NUMBER : CellValueType.STRING };
}

function cellData(cells: readonly BookCell[], styles: StyleList): IWorksheetData["cellData"] {
  const rows: Record<number, Record<number, ICellData>> = {};
  for (const { row, column, held, look } of cells) {
    const filled = rows[row] ?? {};
    filled[column] = { ...contentData(held), ...styles.idOf(look) };
    rows[row] = filled;
  }
  return rows;
}

const hidden = ({ isHidden }: Band) => (isHidden ? { hd: BooleanNumber.TRUE } : {});

function bands(found: ReadonlyMap<number, Band>, size: (pixels: number) => object) {
  return Object.fromEntries(
    [...found].map(([at, band]) => [
      at,
      { ...(band.size === undefined ? {} : size(band.size)), ...hidden(band) },
    ]),
  );
}

/** The grid writes -1 where nothing is frozen that way. */
function freezeOf({ frozenRows, frozenColumns }: BookSheet): IFreeze {
  return {
    xSplit: frozenColumns,
    ySplit: frozenRows,
    startRow: frozenRows === 0 ? -1 : frozenRows,
    startColumn: frozenColumns === 0 ? -1 : frozenColumns,
  };
}

const lastOf = (places: Iterable<number>) => [...places].reduce((most, at) => Math.max(most, at), 0);

function sheetData(id: string, sheet: BookSheet, styles: StyleList): Partial<IWorksheetData> {
  const { name, cells, rows, columns, merged, isHidden } = sheet;
  return {
    id,
    name,
    cellData: cellData(cells, styles),
    rowCount: lastOf([...cells.map(({ row }) => row), ...rows.keys()]) + 1 + SPARE_ROWS,
    columnCount: lastOf([...cells.map(({ column }) => column), ...columns.keys()]) + 1 + SPARE_COLUMNS,
    columnData: bands(columns, (w) => ({ w })),
    rowData: bands(rows, (h) => ({ h, ia: BooleanNumber.FALSE })),
    mergeData: merged.map(rangeOf),
    rowHeader: { width: 30 },
    freeze: freezeOf(sheet),
    hidden: isHidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    defaultStyle: DEFAULT_STYLE,
  };
}

/** A workbook in the form the grid opens. */
export function snapshotOf(book: Book): Partial<IWorkbookData> {
  const styles = new StyleList();
  const named = book.sheets.map((sheet, index) => [`sheet-${index + 1}`, sheet] as const);
  const ids = new Map(named.map(([id, { name }]) => [name, id]));
  const sheets = Object.fromEntries(named.map(([id, sheet]) => [id, sheetData(id, sheet, styles)]));
  return {
    id: "workbook",
    name: "workbook",
    locale: LocaleType.EN_US,
    defaultStyle: DEFAULT_STYLE,
    styles: styles.styles,
    sheetOrder: named.map(([id]) => id),
    sheets,
    resources: resourcesOf(book, (sheet) => ids.get(sheet) ?? ""),
  };
}
