import type { Injector, IWorkbookData } from "@univerjs/core";
import {
  IDefinedNamesService,
  IFormulaCurrentConfigService,
  ISuperTableService,
} from "@univerjs/engine-formula";
import { sheetId, type TableInput, UNIT } from "../workbook-input";
import type { SheetCells } from "./cells";

/** The workbook as the engine starts with it: the very cells that are calculated. */
export function engineWorkbook(sheets: readonly SheetCells[]): Partial<IWorkbookData> {
  const entries = sheets.map(
    ({ id, name, cells }) => [id, { id, name, cellData: cells.getMatrix() }] as const,
  );
  return { id: UNIT, sheetOrder: entries.map(([id]) => id), sheets: Object.fromEntries(entries) };
}

/** Tells the engine where the cells stand that formulas read. A sheet grows: its size is asked for each time. */
export function enterSheets(injector: Injector, sheets: readonly SheetCells[]): void {
  const units = Object.fromEntries(
    sheets.map((sheet) => [
      sheet.id,
      {
        cellData: sheet.cells,
        get rowCount() {
          return sheet.rows;
        },
        get columnCount() {
          return sheet.columns;
        },
        rowData: {},
        columnData: {},
      },
    ]),
  );
  injector.get(IFormulaCurrentConfigService).registerUnitData({ [UNIT]: units } as never);
}

export function enterNames(injector: Injector, names: Readonly<Record<string, string>>): void {
  const service = injector.get(IDefinedNamesService);
  for (const [name, formulaOrRefString] of Object.entries(names))
    service.registerDefinedName(UNIT, { id: name, name, formulaOrRefString });
}

/** @param at - Position of the sheet that the table stands on; `undefined` where there is none of its name. */
export function enterTable(injector: Injector, table: TableInput, at: number | undefined): void {
  if (at === undefined) throw new RangeError(`table ${table.name}: no sheet "${table.sheet}"`);
  injector.get(ISuperTableService).registerTable(UNIT, table.name, {
    sheetId: sheetId(at),
    titleMap: new Map(table.headings.map((heading, position) => [heading, position])),
    range: {
      startRow: table.row,
      endRow: table.row + table.rows - 1,
      startColumn: table.column,
      endColumn: table.column + table.headings.length - 1,
    },
  });
}
