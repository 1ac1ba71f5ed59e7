import { readLiveWorkbook } from "../file/read/live-workbook";
import { AUDIENCES, type Choice, sheetsFor, visibleSheets } from "./audience";
import { type ShareCopy, shareCopy } from "./share-copy";

/** Somebody the workbook has sheets for. */
export interface Offer {
  readonly word: string;
  readonly label: string;
  readonly sheets: readonly string[];
}

/** What is asked before a copy is made: for whom it is, with the sheets each gets. */
export interface ShareQuestion {
  readonly offers: readonly Offer[];
  /** Names of all sheets that can be seen. */
  readonly sheets: readonly string[];
  /** Makes the copy; nothing is handed out by that. */
  copy(choice: Choice, date: string): Promise<ShareCopy>;
}

/** @throws FileRefusal for a file that cannot be read. */
export function shareQuestion(bytes: Uint8Array, source: string): ShareQuestion {
  const sheets = visibleSheets(readLiveWorkbook(bytes));
  const offers = AUDIENCES.map((audience) => ({
    word: audience.word,
    label: audience.label,
    sheets: sheetsFor(audience, sheets),
  }));
  return {
    offers: offers.filter(({ sheets: own }) => own.length > 0),
    sheets,
    copy: (choice, date) => shareCopy(bytes, { choice, date, source }),
  };
}
