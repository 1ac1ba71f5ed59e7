import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";

/** A planning workbook with every line filled in: the lines of the invented run in turn, each under a name of its own. */
export function filledPlan(lines: number): Promise<Uint8Array> {
  const data = exampleData();
  const kinds = data.lines;
  const filled = Array.from({ length: lines }, (_, at) => {
    const line = kinds[at % kinds.length];
    if (line === undefined) throw new Error("the invented run has no lines");
    return { ...line, line: `L${at + 1}` };
  });
  return planningFile(planningTemplate({ ...data, lines: filled }, lines));
}
