import { writeWorkbook } from "../file/write/write-workbook";
import type { WorkbookModel } from "../model/sheet-model";
import { workbookOfModel } from "./parts/workbook-of-model";

/** A planned workbook as an .xlsx file, every formula with its value. */
export const planningFile = (model: WorkbookModel): Promise<Uint8Array> =>
  writeWorkbook(workbookOfModel(model), { fitsRows: true });
