import type { Injector } from "@univerjs/core";
import {
  FormulaDataModel,
  ICalculateFormulaService,
  IDefinedNamesService,
  ISuperTableService,
} from "@univerjs/engine-formula";
import { placeOf } from "../formula/addresses";
import { catalogue } from "../functions/catalogue";
import type { WorksheetFunction } from "../functions/declare";
import type { CellValue } from "./cell-value";
import { startEngine } from "./headless";
import { type OwnCells, ownCells } from "./own-cells";
import type { Results } from "./results";
import { watchResults } from "./watch";
import { sheetId, type TableInput, UNIT, type WorkbookInput, workbookData } from "./workbook-input";

/** The results of a calculated workbook. Rows and columns count from 0. */
export interface CalculatedWorkbook {
  /** What a formula, or one that spills over the cell, came to; `undefined` for a cell without a result. */
  at(sheet: string, row: number, column: number): CellValue | undefined;
  /** Rows and columns that the formula of a cell fills; `undefined` where it does not spill. */
  spillAt(
    sheet: string,
    row: number,
    column: number,
  ): { readonly rows: number; readonly columns: number } | undefined;
}

function registerNames(injector: Injector, names: Readonly<Record<string, string>>): void {
  const service = injector.get(IDefinedNamesService);
  for (const [name, formulaOrRefString] of Object.entries(names)) {
    service.registerDefinedName(UNIT, { id: name, name, formulaOrRefString });
  }
}

function registerTable(injector: Injector, table: TableInput, id: string): void {
  injector.get(ISuperTableService).registerTable(UNIT, table.name, {
    sheetId: id,
    titleMap: new Map(table.headings.map((heading, position) => [heading, position])),
    range: {
      startRow: table.row,
      endRow: table.row + table.rows - 1,
      startColumn: table.column,
      endColumn: table.column + table.headings.length - 1,
    },
  });
}

/** Runs one forced calculation of everything and waits for its end. */
export function calculateOnce(injector: Injector): Promise<void> {
  const model = injector.get(FormulaDataModel);
  const service = injector.get(ICalculateFormulaService);
  return new Promise((resolve, reject) => {
    const done = service.executionCompleteListener$.subscribe(() => {
      done.unsubscribe();
      resolve();
    });
    service
      .execute({
        formulaData: model.getFormulaData(),
        arrayFormulaCellData: model.getArrayFormulaCellData(),
        arrayFormulaRange: model.getArrayFormulaRange(),
        forceCalculate: true,
        dirtyRanges: [],
        dirtyNameMap: {},
        dirtyDefinedNameMap: {},
        dirtyUnitFeatureMap: {},
        dirtyUnitOtherFormulaMap: {},
      })
      .catch(reject);
  });
}

function read(
  results: Results,
  idOf: ReadonlyMap<string, string>,
  own: ReadonlyMap<string, OwnCells["values"]>,
): CalculatedWorkbook {
  const address = (sheet: string, row: number, column: number) => {
    const id = idOf.get(sheet);
    if (id === undefined) throw new RangeError(`the workbook has no sheet "${sheet}"`);
    return { unitId: UNIT, sheetId: id, row, column };
  };
  return {
    at: (sheet, row, column) =>
      own.get(sheet)?.get(placeOf(row, column)) ?? results.at(address(sheet, row, column)),
    spillAt(sheet, row, column) {
      const range = results.spillOf(address(sheet, row, column));
      if (range === undefined) return undefined;
      return {
        rows: range.endRow - range.startRow + 1,
        columns: range.endColumn - range.startColumn + 1,
      };
    },
  };
}

/**
 * Calculates every formula of a workbook once.
 *
 * @param workbook - Sheets as typed, with defined names and tables.
 * @param functions - The worksheet functions to offer.
 * @returns Results in full precision with the sentence of each error. A formula that fails stands as an error in
 *   its own cell.
 * @throws RangeError for a table or a question about a sheet that is not in the workbook.
 */
export async function calculateWorkbook(
  workbook: WorkbookInput,
  functions: readonly WorksheetFunction[] = catalogue,
): Promise<CalculatedWorkbook> {
  const idOf = new Map(workbook.sheets.map(({ name }, position) => [name, sheetId(position)]));
  const own = ownCells(workbook.sheets, functions);
  const sheets = own.map(({ sheet }) => sheet);
  const engine = startEngine(workbookData({ ...workbook, sheets }), functions);
  try {
    registerNames(engine.injector, workbook.names ?? {});
    for (const table of workbook.tables ?? []) {
      const id = idOf.get(table.sheet);
      if (id === undefined) throw new RangeError(`table ${table.name}: no sheet "${table.sheet}"`);
      registerTable(engine.injector, table, id);
    }
    const results = watchResults(engine.injector);
    await calculateOnce(engine.injector);
    return read(results, idOf, new Map(own.map(({ sheet, values }) => [sheet.name, values])));
  } finally {
    engine.dispose();
  }
}
