import type { WorkbookModel } from "../../model/sheet-model";
import { demoRun } from "../run-r07/run";
import { balanceSheet } from "./balance-sheet";
import { certificatesSheet } from "./certificates-sheet";
import { couponsSheet } from "./coupons-sheet";
import { cutListSheet } from "./cut-list-sheet";
import { historySheet } from "./history-sheet";
import { planningWorkbook } from "./planning-workbook";
import { runPlanSheet } from "./run-plan-sheet";
import { sectionSheet } from "./section-sheet";

/** The invented run as the workbench opens it: planned, with a sheet on each further step of the work. */
export function demoWorkbook(): WorkbookModel {
  const { name, sheets } = planningWorkbook(demoRun);
  const planning = `Run ${demoRun.name}`;
  const balance = balanceSheet();
  const cutList = cutListSheet(demoRun, planning, balance.name);
  const history = historySheet();
  return {
    name,
    sheets: [
      ...sheets,
      certificatesSheet(planning),
      couponsSheet(demoRun, planning),
      sectionSheet(planning),
      balance,
      cutList,
      runPlanSheet(demoRun, { planning, cutList: cutList.name, history: history.name }),
      history,
    ],
  };
}
