import { planOf } from "../answers/lines-asked";
import { readLiveWorkbook } from "../file/read/live-workbook";
import { AUDIENCES, type Choice, sheetsFor, visibleSheets } from "./audience";
import { linesToAsk, namesKnown, papersToAsk } from "./recipient";
import { type ShareCopy, shareCopy } from "./share-copy";

/** Somebody the workbook has sheets for. */
export interface Offer {
  readonly word: string;
  readonly label: string;
  /** The one whose lines alone travel. */
  readonly name?: string;
  readonly sheets: readonly string[];
}

/** Somebody of a kind whom the plan does not name, and what that one can be asked about. */
export interface Enquiry {
  readonly word: string;
  readonly label: string;
  readonly sheets: readonly string[];
  readonly lines: readonly string[];
}

/** What is asked before a copy is made: for whom it is, with the sheets each gets. */
export interface ShareQuestion {
  readonly offers: readonly Offer[];
  readonly enquiries: readonly Enquiry[];
  /** Names of all sheets that can be seen. */
  readonly sheets: readonly string[];
  /** Makes the copy; nothing is handed out by that. */
  copy(choice: Choice, date: string): Promise<ShareCopy>;
}

/** @throws FileRefusal for a file that cannot be read. */
export function shareQuestion(bytes: Uint8Array, source: string): ShareQuestion {
  const live = readLiveWorkbook(bytes);
  const sheets = visibleSheets(live);
  const plan = planOf(live);
  const offers = AUDIENCES.flatMap((audience): Offer[] => {
    const { word, label } = audience;
    const papers = sheetsFor(audience, sheets);
    const names = plan === undefined ? [] : namesKnown(plan, word);
    const own = names.map((name) => ({ word, label: `${label} ${name} alone`, name, sheets: papers }));
    return [...own, { word, label, sheets: papers }];
  });
  const enquiries = AUDIENCES.map(({ word, label }): Enquiry => {
    const lines = plan === undefined ? [] : linesToAsk(plan, word, sheets);
    return { word, label, sheets: papersToAsk(word, sheets), lines };
  });
  return {
    enquiries: enquiries.filter(({ lines }) => lines.length > 0),
    offers: offers.filter(({ sheets: own }) => own.length > 0),
    sheets,
    copy: (choice, date) => shareCopy(bytes, { choice, date, source }),
  };
}
