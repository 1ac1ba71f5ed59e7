import type { WorkbookModel } from "../../model/sheet-model";
import { demoRun, type Run } from "../run-r07/run";
import { planningSheet } from "./planning-sheet";
import { steelsSheet } from "./steels-sheet";

/** The workbook of a run: the planning sheet, and a helper sheet on its steels. */
export function planningWorkbook(run: Run = demoRun): WorkbookModel {
  const plan = planningSheet(run);
  return { name: `Run ${run.name}`, sheets: [plan, steelsSheet(run, plan.name)] };
}
