import { type Injector, IUniverInstanceService, UniverInstanceType, type Workbook } from "@univerjs/core";
import { SheetsDataValidationValidatorService } from "@univerjs/preset-sheets-data-validation";

/**
 * The grid puts off its checks of what lists offer. Where another workbook took the place of theirs meanwhile, it
 * would report a fault; there is nothing left to check.
 */
export function guardValidation(injector: Injector): void {
  const service = injector.get(SheetsDataValidationValidatorService);
  const check = service.validatorRanges.bind(service);
  service.validatorRanges = async (unitId, sheetId, ranges) => {
    const workbook = injector
      .get(IUniverInstanceService)
      .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    return workbook?.getSheetBySheetId(sheetId) ? check(unitId, sheetId, ranges) : [];
  };
}
