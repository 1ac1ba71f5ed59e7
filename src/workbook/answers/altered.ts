import { sentenceOf } from "../../core/refusal";
import { type RemarkGroup, remarkGroups } from "../share/verify/told";
import { verifyCopy } from "../share/verify/verify-copy";
import type { AnswerSource } from "./answer-file";

/** A copy in which more was changed than the cells that are open for answers. */
export interface AlteredFile {
  readonly name: string;
  /** What was changed, cell by cell, as verify tells it. */
  readonly groups: readonly RemarkGroup[];
  /** Why the copy could not be held against the plan. */
  readonly problem?: string;
}

/** Holds an altered copy against the plan. */
export async function alteredFile(plan: Uint8Array, { name, bytes }: AnswerSource): Promise<AlteredFile> {
  try {
    return { name, groups: remarkGroups(await verifyCopy(plan, bytes)) };
  } catch (problem) {
    return { name, groups: [], problem: sentenceOf(problem) };
  }
}

/** Cells that a list shows of one file. */
const SHOWN = 20;

/** What was changed in a file, a line a cell. */
export function alteredLines({ name, groups, problem }: AlteredFile): string[] {
  const cells = groups.flatMap(({ title, remarks }) =>
    remarks.map(({ sheet, cell, text }) => `${title} ${sheet}!${cell} ${text}`),
  );
  const more = cells.length > SHOWN ? [`and ${cells.length - SHOWN} more; verify shows them all`] : [];
  const told = problem === undefined ? [] : [`it cannot be held against the plan: ${problem}`];
  const lines = [...cells.slice(0, SHOWN), ...more, ...told].map((line) => `${name}: ${line}`);
  return [`${name}: values outside the cells for answers were changed.`, ...lines];
}
