import { planningTemplate } from "./template/planning-template";
import { writeWorkbook } from "./template/write-workbook";

export { shareCopy as copyForSharing } from "./share/share-copy";
export { shareReport } from "./share/share-report";

/** The planning workbook with empty lines, as a file. */
export const planningWorkbook = (): Promise<Uint8Array> => writeWorkbook(planningTemplate());
