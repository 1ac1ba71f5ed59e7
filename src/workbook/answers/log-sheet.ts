/** Name of the plan's sheet that remembers who answered what, and when it was taken. */
export const LOG_SHEET = "Answers";

/** Its headings, in the row in which every table of the plan has them. */
export const LOG_HEADINGS = [
  "Copy",
  "Paper",
  "From",
  "Date",
  "Line",
  "Asked",
  "Answer",
  "Read as",
  "Unit",
  "Went to",
  "Before",
  "Taken on",
  "File",
] as const;

export type LogHeading = (typeof LOG_HEADINGS)[number];
