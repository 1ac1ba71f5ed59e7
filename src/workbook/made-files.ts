import { planningFile } from "./sheets/planning-file";
import { planningTemplate } from "./sheets/planning-template";
import { exampleData } from "./sheets/template-data";

export { answersQuestion } from "./answers/answers-question";
export { shareQuestion } from "./share/share-question";
export { shareList, shareReport } from "./share/share-report";

/** The planning workbook with empty lines, as a file. */
export const planningWorkbook = (): Promise<Uint8Array> => planningFile(planningTemplate());

/** The planning workbook filled with an invented run. */
export const demoPlan = (): Promise<Uint8Array> => planningFile(planningTemplate(exampleData()));
