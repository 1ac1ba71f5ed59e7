import { rowOfLines } from "../../model/row-heights";
import type { SheetModel, WorkbookModel } from "../../model/sheet-model";
import { FIRST_ROW } from "../parts/table-sheet";
import { planningLines, planningTemplate } from "../planning-template";
import { exampleData } from "../template-data";
import { balanceSheet } from "./balance-sheet";
import { couponsSheet } from "./coupons-sheet";
import { sectionSheet } from "./section-sheet";

/** Sheets of the planning workbook that the demo shows, in this order: the planning, not the papers that go out. */
const CHOSEN = [
  "Lines",
  "Recipe",
  "Steel and heats",
  "Steel choice",
  "Certificate check",
  "Stations",
  "Cut list",
  "Standard route",
  "Route",
  "Heat batches",
  "Hardness readings",
  "Inspection",
  "Lots received",
  "Shipping",
  "Costs",
  "Price breaks",
  "Past lots",
  "Enquiry",
  "Checks",
  "Cover",
] as const;

/** Pixels of a line: three lines of a caution show, and the whole run still fits on a small screen. */
const LINE_HEIGHT = rowOfLines(3);

function onScreen(sheet: SheetModel, count: number): SheetModel {
  if (sheet.name !== CHOSEN[0]) return sheet;
  const heights = Array.from({ length: count }, (_, line) => [FIRST_ROW + line, LINE_HEIGHT]);
  return { ...sheet, rowHeights: { ...sheet.rowHeights, ...Object.fromEntries(heights) } };
}

/** The invented run as the workbench opens it: planned, with a sheet on each further step of the work. */
export function demoWorkbook(): WorkbookModel {
  const data = exampleData();
  const { name, sheets } = planningTemplate(data, data.lines.length, CHOSEN);
  const lines = planningLines(data, data.lines.length);
  const chosen = CHOSEN.flatMap((wanted) => sheets.filter((sheet) => sheet.name === wanted));
  return {
    name,
    sheets: [
      ...chosen.map((sheet) => onScreen(sheet, data.lines.length)),
      couponsSheet(data.lines, lines),
      sectionSheet(lines),
      balanceSheet(),
    ],
  };
}
