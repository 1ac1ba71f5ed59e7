import { planningFile } from "../../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../../src/workbook/sheets/planning-template";
import { exampleData } from "../../../src/workbook/sheets/template-data";
import { kept } from "../../kept";
import { eightLines } from "../eight-lines";

/** The invented run R-07 as a planning workbook. */
export const planR07 = () => kept("plan R-07", () => planningFile(planningTemplate(exampleData())));

/** The run of eight lines as a planning workbook. */
export const planOfEight = () => kept("plan T-08", () => planningFile(planningTemplate(eightLines())));
