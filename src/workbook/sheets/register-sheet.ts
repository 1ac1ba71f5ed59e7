import { ANSWER_BY } from "../answers/forms";
import { DATE_FORMAT, TableSheet, writtenColumns } from "./parts/table-sheet";

export const REGISTER = "Register";

/** What is noted of each paper that went out, by heading. */
export const REGISTER_HEADINGS = {
  number: "No.",
  sent: "Sent on",
  to: "To",
  papers: "Papers",
  revision: "Run, revision",
  file: "File",
  copy: "Number of the copy",
  answerBy: ANSWER_BY,
  digest: "SHA-256",
  remark: "Remark",
} as const;

export type RegisterKey = keyof typeof REGISTER_HEADINGS;

const WIDTHS: Readonly<Record<RegisterKey, number>> = {
  number: 46,
  sent: 84,
  to: 190,
  papers: 200,
  revision: 110,
  file: 190,
  copy: 90,
  answerBy: 90,
  digest: 330,
  remark: 200,
};
/** Rows of the register of a new plan. */
export const REGISTER_ROWS = 30;

/** What was sent to whom and when: `share` adds a row for every copy, and writes over none. */
export function registerSheet(count = REGISTER_ROWS): TableSheet<RegisterKey> {
  const columns = writtenColumns(REGISTER_HEADINGS, WIDTHS, { sent: DATE_FORMAT });
  return new TableSheet(REGISTER, columns, count, {
    title: "Register: what was sent to whom, when, in which revision",
    note: "The command share adds a row for every copy. A paper sent otherwise is typed in by hand. Rows are never written over.",
    frozenColumns: 1,
  });
}
