/** What was done, in words: a sentence, and what is to be known beside it. */
export interface FileReport {
  readonly sentence: string;
  readonly remarks: readonly string[];
}

/** Somebody the workbook has sheets for, and which these are. */
export interface ShareOffer {
  readonly word: string;
  readonly label: string;
  /** The one whose lines alone travel. */
  readonly name?: string;
  readonly sheets: readonly string[];
}

/** Somebody of a kind whom the plan does not name, and the lines that one can be asked about. */
export interface ShareEnquiry {
  readonly word: string;
  readonly label: string;
  readonly sheets: readonly string[];
  readonly lines: readonly string[];
}

/** An enquiry to one, about lines of the plan. */
export interface EnquiryWish {
  readonly whom: string;
  readonly name: string;
  readonly enquiry: readonly string[];
}

/** For whom a copy is made, or the names of the sheets that go into it. */
export type ShareWish =
  | EnquiryWish
  | { readonly whom: string; readonly name?: string }
  | { readonly sheets: readonly string[] };

/** A copy that is made but not yet handed out. */
export interface ReadyCopy {
  /** All that is in it, a line each. */
  readonly list: readonly string[];
  /** Opens it. */
  open(): Promise<FileReport>;
}

/** What is asked before a copy is made. */
export interface ShareQuestion {
  readonly offers: readonly ShareOffer[];
  readonly enquiries: readonly ShareEnquiry[];
  /** Names of the sheets that can be seen. */
  readonly sheets: readonly string[];
  /** @param date - As it is to stand in the copy. */
  make(wish: ShareWish, date: string): Promise<ReadyCopy>;
}

/** An answer that came back, as the list shows it. */
export interface AnswerEntry {
  readonly number: number;
  readonly state: string;
  readonly words: string;
  readonly canBeTaken: boolean;
  readonly isFine: boolean;
}

/** What came back to a copy. */
export interface AnswersFound {
  readonly entries: readonly AnswerEntry[];
  readonly remarks: readonly string[];
  readonly counts: string;
}

/** What came back, and how some of it is taken. */
export interface AnswersToTake extends AnswersFound {
  /** Opens the plan with these answers in it. @param date - As it is to stand in the log. */
  take(numbers: readonly number[], date: string): Promise<FileReport>;
}

/** Whole workbooks that the pane can make; whoever opens the pane brings it, since the pane itself knows no file. */
export interface PaneFiles {
  /**
   * Reads the workbook and says for whom it has sheets.
   *
   * @throws Error with a sentence for the smith.
   */
  share(): Promise<ShareQuestion>;
  /**
   * Reads answers to copies of the open workbook; nothing is written by that.
   *
   * @throws Error with a sentence for the smith.
   */
  answers(sources: readonly { readonly name: string; readonly bytes: Uint8Array }[]): Promise<AnswersToTake>;
  /**
   * Opens the planning workbook with empty lines.
   *
   * @throws Error with a sentence for the smith.
   */
  plan(): Promise<FileReport>;
  /**
   * Opens the planning workbook filled with an invented run.
   *
   * @throws Error with a sentence for the smith.
   */
  demo(): Promise<FileReport>;
}
