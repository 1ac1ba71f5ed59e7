/** What was done, in words: a sentence, and what is to be known beside it. */
export interface FileReport {
  readonly sentence: string;
  readonly remarks: readonly string[];
}

export interface ShareWishes {
  /** As it is to stand in the copy. */
  readonly date: string;
  /** Names of the sheets to share; empty for all. */
  readonly sheets: readonly string[];
}

/** Whole workbooks that the pane can make; whoever opens the pane brings it, since the pane itself knows no file. */
export interface PaneFiles {
  /**
   * Opens a copy of the workbook that holds values only.
   *
   * @throws Error with a sentence for the smith.
   */
  share(wishes: ShareWishes): Promise<FileReport>;
  /**
   * Opens the planning workbook with empty lines.
   *
   * @throws Error with a sentence for the smith.
   */
  plan(): Promise<FileReport>;
}
