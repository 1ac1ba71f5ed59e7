import type { WorkbookData } from "../../workbook/model/workbook-data";
import { demoWorkbook } from "../../workbook/sheets/demo/demo-workbook";
import { shownWorkbook } from "../../workbook/sheets/parts/workbook-of-model";

/** The invented run that the page opens with. */
export const demoData = (): WorkbookData => shownWorkbook(demoWorkbook());

const template = () => import(/* webpackChunkName: "template" */ "../../workbook/sheets/planning-template");

/** A new run: the planning template with empty lines. It is large, so it is loaded apart. */
export async function blankData(): Promise<WorkbookData> {
  const { planningTemplate } = await template();
  return shownWorkbook(planningTemplate());
}

/** Fetches the template ahead, so that a new run can be begun without the network. Where it fails, asking tries again. */
export function fetchTemplateAhead(): void {
  template().catch(() => undefined);
}
