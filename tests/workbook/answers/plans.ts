import { planningFile } from "../../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../../src/workbook/sheets/planning-template";
import { exampleData } from "../../../src/workbook/sheets/template-data";
import { eightLines } from "../eight-lines";

const made = new Map<string, Promise<Uint8Array>>();

function once(name: string, make: () => Promise<Uint8Array>): Promise<Uint8Array> {
  const known = made.get(name) ?? make();
  made.set(name, known);
  return known;
}

/** The invented run R-07 as a planning workbook. */
export const planR07 = () => once("R-07", () => planningFile(planningTemplate(exampleData())));

/** The run of eight lines as a planning workbook. */
export const planOfEight = () => once("T-08", () => planningFile(planningTemplate(eightLines())));
