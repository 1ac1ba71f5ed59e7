import {
  BooleanNumber,
  type ICellData,
  type IFreeze,
  type IStyleData,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
} from "@univerjs/core";
import { cellData } from "../../engine/workbook-input";
import { holds } from "../../formula/addresses";
import { rowsAsHighAsTheirTexts } from "../../workbook/model/row-heights";
import type {
  Band,
  CellData,
  CellStyle,
  PrintSetup,
  SheetData,
  WorkbookData,
} from "../../workbook/model/workbook-data";
import { DEFAULT_STYLE, gridStyleOf } from "./grid-styles";
import { rangeOf, resourcesOf } from "./snapshot-resources";

const SPARE_ROWS = 100;
const SPARE_COLUMNS = 12;

/** Size of a sheet that a smith adds. */
export const EMPTY_SHEET = { rows: 200, columns: 40 } as const;

/** What the grid calls a workbook without a title. */
export const UNTITLED = "workbook";

/** Gives each style one style of the workbook. */
class StyleList {
  readonly styles: Record<string, IStyleData> = {};
  private readonly ids = new Map<string, string>();
  /** Cells of a file that look alike have one and the same style. */
  private readonly known = new WeakMap<CellStyle, { s: string }>();

  idOf(style: CellStyle | undefined): { s: string } | undefined {
    if (style === undefined) return undefined;
    const known = this.known.get(style) ?? this.listed(style);
    this.known.set(style, known);
    return known;
  }

  private listed(style: CellStyle): { s: string } {
    const key = JSON.stringify(style);
    const id = this.ids.get(key) ?? `style-${this.ids.size + 1}`;
    this.ids.set(key, id);
    this.styles[id] ??= gridStyleOf(style);
    return { s: id };
  }
}

/** A list keeps room for its arrow: an indent beside it would break its words, so there it is left out. */
function styleOf({ row, column, style }: CellData, offers: SheetData["offers"]): CellStyle | undefined {
  if (style?.indent === undefined) return style;
  const isOffered = offers.some(({ areas }) => areas.some((area) => holds(area, row, column)));
  const { indent, ...rest } = style;
  return isOffered ? rest : style;
}

function filledCells({ cells, offers }: SheetData, styles: StyleList): IWorksheetData["cellData"] {
  const rows: Record<number, Record<number, ICellData>> = {};
  for (const cell of cells) {
    const { row, column, content } = cell;
    const filled = rows[row] ?? {};
    filled[column] = { ...(content && cellData(content)), ...styles.idOf(styleOf(cell, offers)) };
    rows[row] = filled;
  }
  return rows;
}

const hidden = ({ isHidden }: Band) => (isHidden ? { hd: BooleanNumber.TRUE } : {});

function bands(found: ReadonlyMap<number, Band>, size: (pixels: number, at: number) => object) {
  return Object.fromEntries(
    [...found].map(([at, band]) => [
      at,
      { ...(band.size === undefined ? {} : size(band.size, at)), ...hidden(band) },
    ]),
  );
}

/** Rows as high as their texts grow with results that arrive later; others keep the height that they were given. */
function rowBands(sheet: SheetData) {
  const fitted = rowsAsHighAsTheirTexts(sheet);
  return bands(sheet.rows, (h, row) => ({
    h,
    ia: fitted.has(row) ? BooleanNumber.TRUE : BooleanNumber.FALSE,
  }));
}

/** The grid writes -1 where nothing is frozen that way. */
function freezeOf({ frozenRows, frozenColumns }: SheetData): IFreeze {
  return {
    xSplit: frozenColumns,
    ySplit: frozenRows,
    startRow: frozenRows === 0 ? -1 : frozenRows,
    startColumn: frozenColumns === 0 ? -1 : frozenColumns,
  };
}

const lastOf = (places: Iterable<number>) => [...places].reduce((most, at) => Math.max(most, at), 0);

/** How a sheet is printed and locked: it goes through the grid unseen. */
export interface KeptBeside {
  readonly print?: PrintSetup;
  readonly isProtected?: boolean;
}

const keptBeside = ({ print, isProtected }: SheetData): KeptBeside => ({
  ...(print !== undefined && { print }),
  ...(isProtected !== undefined && { isProtected }),
});

function sheetData(id: string, sheet: SheetData, styles: StyleList): Partial<IWorksheetData> {
  const { name, cells, rows, columns, merged, isHidden } = sheet;
  return {
    id,
    name,
    cellData: filledCells(sheet, styles),
    rowCount: lastOf([...cells.map(({ row }) => row), ...rows.keys()]) + 1 + SPARE_ROWS,
    columnCount: lastOf([...cells.map(({ column }) => column), ...columns.keys()]) + 1 + SPARE_COLUMNS,
    columnData: bands(columns, (w) => ({ w })),
    rowData: rowBands(sheet),
    mergeData: merged.map(rangeOf),
    rowHeader: { width: 30 },
    freeze: freezeOf(sheet),
    hidden: isHidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    showGridlines: sheet.hidesGridLines ? BooleanNumber.FALSE : BooleanNumber.TRUE,
    // The grid keeps what it has no use for as it is.
    custom: keptBeside(sheet),
    defaultStyle: DEFAULT_STYLE,
  };
}

/** A workbook in the form the grid opens. */
export function snapshotOf(workbook: WorkbookData): IWorkbookData {
  const styles = new StyleList();
  const named = workbook.sheets.map((sheet, index) => [`sheet-${index + 1}`, sheet] as const);
  const ids = new Map(named.map(([id, { name }]) => [name, id]));
  const sheets = Object.fromEntries(named.map(([id, sheet]) => [id, sheetData(id, sheet, styles)]));
  return {
    id: "workbook",
    name: workbook.title ?? UNTITLED,
    appVersion: "",
    locale: LocaleType.EN_US,
    defaultStyle: DEFAULT_STYLE,
    styles: styles.styles,
    sheetOrder: named.map(([id]) => id),
    sheets,
    resources: resourcesOf(workbook, (sheet) => ids.get(sheet) ?? ""),
  };
}
