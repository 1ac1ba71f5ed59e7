import {
  ICommandService,
  type Injector,
  type IRange,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { SheetsDataValidationValidatorService } from "@univerjs/preset-sheets-data-validation";

const SHEET_SHOWN = "sheet.operation.set-worksheet-active";

/** Ranges that are to be checked once their sheets are shown, each once. */
class Waiting {
  private readonly sheets = new Map<string, Map<string, IRange>>();

  add(sheet: string, ranges: readonly IRange[]): void {
    const known = this.sheets.get(sheet) ?? new Map<string, IRange>();
    for (const range of ranges) known.set(JSON.stringify(range), range);
    this.sheets.set(sheet, known);
  }

  take(sheet: string): IRange[] {
    const ranges = [...(this.sheets.get(sheet)?.values() ?? [])];
    this.sheets.delete(sheet);
    return ranges;
  }

  forget(): void {
    this.sheets.clear();
  }
}

/**
 * Checks what lists offer on the sheet that is shown, and on another one once it is shown: as published the grid checks
 * every cell of every list as soon as a workbook is opened, though all that comes of it is a mark in the cell. Where
 * another workbook took the place of the one to be checked meanwhile, it would report a fault; there is nothing left
 * to check.
 */
export function guardValidation(injector: Injector): void {
  const service = injector.get(SheetsDataValidationValidatorService);
  const instances = injector.get(IUniverInstanceService);
  const check = service.validatorRanges.bind(service);
  const waiting = new Waiting();
  let current = "";
  service.validatorRanges = async (unitId, sheetId, ranges) => {
    const workbook = instances.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    if (!workbook?.getSheetBySheetId(sheetId)) return [];
    if (unitId !== current) waiting.forget();
    current = unitId;
    if (workbook.getActiveSheet()?.getSheetId() === sheetId) return check(unitId, sheetId, ranges);
    waiting.add(sheetId, ranges);
    return [];
  };
  injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    if (id !== SHEET_SHOWN) return;
    const { unitId, subUnitId } = params as { readonly unitId: string; readonly subUnitId: string };
    const ranges = unitId === current ? waiting.take(subUnitId) : [];
    if (ranges.length > 0) void service.validatorRanges(unitId, subUnitId, ranges);
  });
}
