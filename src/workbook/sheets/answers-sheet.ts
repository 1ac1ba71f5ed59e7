import { TableSheet, writtenColumns } from "./parts/table-sheet";
import { LOG_SHEET } from "./sheets-of-the-plan";

/** What the log keeps of each answer that was taken, by heading, in the order of the columns. */
export const LOG_HEADINGS = {
  copy: "Copy",
  paper: "Paper",
  from: "From",
  on: "Date",
  line: "Line",
  asked: "Asked",
  given: "Answer",
  readAs: "Read as",
  unit: "Unit",
  went: "Went to",
  before: "Before",
  takenOn: "Taken on",
  file: "File",
  digest: "Digest",
} as const;

export type LogKey = keyof typeof LOG_HEADINGS;

/** Pixels. */
const WIDTHS: Readonly<Record<LogKey, number>> = {
  copy: 84,
  paper: 174,
  from: 188,
  on: 90,
  line: 90,
  asked: 160,
  given: 188,
  readAs: 132,
  unit: 90,
  went: 244,
  before: 104,
  takenOn: 90,
  file: 188,
  digest: 132,
};

/** The log of answers, with room for so many: who said what, when it was taken, and a digest by which it is known. */
export function answersSheet(count: number): TableSheet<LogKey> {
  return new TableSheet(LOG_SHEET, writtenColumns(LOG_HEADINGS, WIDTHS), count, {
    title: "Answers: who said what, and when it was taken",
    note: "Written by collect and by Bring answers in. A row that is taken out lets its answer be taken again.",
    frozenColumns: 1,
  });
}
