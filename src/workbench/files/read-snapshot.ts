import {
  BooleanNumber,
  CellValueType,
  type ICellData,
  type IColumnData,
  type IRange,
  type IRowData,
  type IWorkbookData,
  type IWorksheetData,
} from "@univerjs/core";
import { shifted } from "../../formula/references";
import { isErrorCode } from "../../formula/tokens";
import { withFill } from "../../workbook/model/calculated-workbook";
import type {
  Band,
  CellContent,
  CellData,
  CellStyle,
  SheetData,
  WorkbookData,
} from "../../workbook/model/workbook-data";
import { cellStyleOf } from "./grid-styles";
import { namesIn, rectangleOf, rulesIn, tablesIn } from "./snapshot-resources";
import { type KeptBeside, UNTITLED } from "./write-snapshot";

/** The cells that the formula of a cell fills; `undefined` for one that fills none but its own. */
export type SpillAt = (sheet: string, row: number, column: number) => IRange | undefined;

interface Placed {
  readonly row: number;
  readonly column: number;
  readonly data: ICellData;
}

function placedCells({ cellData = {} }: Partial<IWorksheetData>): Placed[] {
  return Object.entries(cellData).flatMap(([row, cells]) =>
    Object.entries(cells ?? {}).map(([column, data]) => ({
      row: Number(row),
      column: Number(column),
      data: data as ICellData,
    })),
  );
}

/** A formula that was filled down stands in its first cell only; the others name it and follow. */
function formulaOf({ row, column, data }: Placed, masters: ReadonlyMap<string, Placed>): string | undefined {
  if (data.f) return data.f;
  const master = masters.get(data.si ?? "");
  const formula = master?.data.f;
  return master && formula ? shifted(formula, row - master.row, column - master.column) : undefined;
}

/** Text of a cell that was typed in several lines or with a style inside. */
function richText({ p }: ICellData): string | undefined {
  return p?.body?.dataStream.replace(/\r?\n$/, "").replaceAll("\r", "\n");
}

function constantOf(data: ICellData): CellContent | undefined {
  const value = richText(data) ?? data.v;
  if (value === undefined || value === null || value === "") return undefined;
  if (data.t === CellValueType.BOOLEAN) return { value: value === 1 || value === true || value === "TRUE" };
  return { value };
}

/** What a cell holds. @param formula - Its formula, where it has one, with the equals sign. */
export function contentOfCell(data: ICellData, formula: string | undefined): CellContent | undefined {
  if (!formula) return constantOf(data);
  return isErrorCode(formula.slice(1)) ? { error: formula.slice(1) } : { formula };
}

function contentBy(
  placed: Placed,
  masters: ReadonlyMap<string, Placed>,
  spill: IRange | undefined,
): CellContent | undefined {
  const formula = formulaOf(placed, masters);
  const content = contentOfCell(placed.data, formula);
  if (formula === undefined || content === undefined || !("formula" in content)) return content;
  return withFill(
    formula,
    placed,
    spill && { rows: spill.endRow - spill.startRow + 1, columns: spill.endColumn - spill.startColumn + 1 },
  );
}

function bandsOf<T extends IRowData & IColumnData>(
  data: Readonly<Record<number, Partial<T>>>,
  sizeOf: (band: Partial<T>) => number | undefined,
): Map<number, Band> {
  const bands = Object.entries(data).flatMap(([at, band]) => {
    const size = sizeOf(band);
    const isHidden = band.hd === BooleanNumber.TRUE;
    if (size === undefined && !isHidden) return [];
    const isFitted = size !== undefined && band.ia === BooleanNumber.TRUE;
    const found: Band = {
      ...(size === undefined ? {} : { size }),
      ...(isFitted && { isFitted }),
      ...(isHidden && { isHidden }),
    };
    return [[Number(at), found] as const];
  });
  return new Map(bands);
}

function cellsOf(
  saved: IWorkbookData,
  id: string,
  styles: (style: ICellData["s"]) => CellStyle | undefined,
  spillAt: SpillAt,
) {
  const placed = placedCells(saved.sheets[id] ?? {});
  const masters = new Map(
    placed.flatMap((cell) => (cell.data.si && cell.data.f ? [[cell.data.si, cell] as const] : [])),
  );
  return placed.flatMap((cell): CellData[] => {
    const { row, column, data } = cell;
    const content = contentBy(cell, masters, spillAt(id, row, column));
    const style = styles(data.s);
    return content || style ? [{ row, column, ...(content && { content }), ...(style && { style }) }] : [];
  });
}

type StyleRef = ICellData["s"];

/** Looks of styles, each read once. */
function lookReader({ styles }: IWorkbookData): (style: StyleRef) => CellStyle | undefined {
  const known = new Map<string, CellStyle | undefined>();
  const read = (style: NonNullable<StyleRef>) => {
    const data = typeof style === "string" ? styles[style] : style;
    return data ? cellStyleOf(data) : undefined;
  };
  return (style) => {
    if (style === undefined || style === null) return undefined;
    const key = typeof style === "string" ? style : JSON.stringify(style);
    if (!known.has(key)) known.set(key, read(style));
    return known.get(key);
  };
}

/**
 * A workbook as the grid saves it, as contents, style and sizes.
 *
 * @param spillAt - Which cells a formula fills, by id of its sheet.
 */
export function workbookOfSnapshot(saved: IWorkbookData, spillAt: SpillAt): WorkbookData {
  const styles = lookReader(saved);
  const sheets = saved.sheetOrder.map((id): SheetData => {
    const sheet = saved.sheets[id] ?? {};
    return {
      name: sheet.name ?? id,
      isHidden: sheet.hidden === BooleanNumber.TRUE,
      cells: cellsOf(saved, id, styles, spillAt),
      columns: bandsOf(sheet.columnData ?? {}, ({ w }) => w),
      rows: bandsOf(sheet.rowData ?? {}, ({ h }) => h),
      frozenRows: sheet.freeze?.ySplit ?? 0,
      frozenColumns: sheet.freeze?.xSplit ?? 0,
      merged: (sheet.mergeData ?? []).map(rectangleOf),
      ...(sheet.showGridlines === BooleanNumber.FALSE && { hidesGridLines: true }),
      ...(sheet.custom as KeptBeside | undefined),
      ...rulesIn(saved, id),
    };
  });
  const title = saved.name === UNTITLED ? {} : { title: saved.name };
  return { ...title, sheets, names: namesIn(saved), tables: tablesIn(saved) };
}
