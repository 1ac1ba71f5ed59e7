import { openAsNew, workbookFile } from "../host/excel-file";
import type { PaneFiles } from "./pane-files";

/** Reading and writing of workbooks, and the formula engine with it: fetched when it is first asked for. */
const maker = () => import(/* webpackChunkName: "workbook-files" */ "../workbook/made-files");

/** Share copy and planning workbook in Excel: each opens as a new workbook, the present one is left as it is. */
export const excelFiles: PaneFiles = {
  async share({ date, sheets }) {
    const { name, bytes } = await workbookFile();
    const { copyForSharing, shareReport } = await maker();
    const wishes = sheets.length === 0 ? { date, source: name } : { date, source: name, sheets };
    const copy = await copyForSharing(bytes, wishes);
    await openAsNew(copy.bytes);
    return shareReport("The share copy is open as a new workbook: save it under a name of its own", copy);
  },
  async plan() {
    const { planningWorkbook } = await maker();
    await openAsNew(await planningWorkbook());
    return {
      sentence: "The planning workbook is open as a new workbook: fill in the shaded cells and save it.",
      remarks: [],
    };
  },
};
