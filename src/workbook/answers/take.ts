import { cellName } from "../../formula/addresses";
import { FileRefusal } from "../file/package/file-refusal";
import { addSheet } from "../file/patch/add-sheet";
import { type ChangedCell, patchWorkbook } from "../file/patch/patch-workbook";
import { readLiveWorkbook } from "../file/read/live-workbook";
import { HEADINGS } from "../sheets/parts/table-sheet";
import { planOf } from "./lines-asked";
import { firstFreeRow, LOG_HEADINGS, LOG_SHEET } from "./log-sheet";
import { canBeTaken, type PlanChange, type Proposal } from "./proposal";

/** Widths of the log's columns, in characters. */
const WIDTHS = [11, 24, 26, 12, 12, 22, 26, 18, 12, 34, 14, 12, 26] as const;

const TITLE = "Answers: who said what, and when it was taken";

const filled = (row: number, column: number, value: number | string): ChangedCell => ({
  row,
  column,
  content: { value },
});

const placeOf = ({ sheet, row, column }: PlanChange) => `${sheet}!${cellName(row, column)}`;

function logRow(proposal: Proposal, row: number, takenOn: string): ChangedCell[] {
  const { copy, paper, from, on, line, asked, given, readAs, unit, changes, file } = proposal;
  const went = changes.length === 0 ? "here alone" : changes.map(placeOf).join(", ");
  const before = changes.map((change) => change.before || "empty").join(", ");
  const words = [copy, paper, from, on, line, asked, given, readAs, unit, went, before, takenOn, file];
  return words.flatMap((value, column) => (value === "" ? [] : [filled(row, column, value)]));
}

function headCells(): ChangedCell[] {
  return [filled(0, 0, TITLE), ...LOG_HEADINGS.map((heading, column) => filled(HEADINGS, column, heading))];
}

/** The workbook with a log in it. */
function withLog(bytes: Uint8Array): { readonly bytes: Uint8Array; readonly isNew: boolean } {
  const live = readLiveWorkbook(bytes);
  if (live.main.listed.includes(LOG_SHEET)) return { bytes, isNew: false };
  addSheet(live, LOG_SHEET, WIDTHS);
  return { bytes: live.file.save(), isNew: true };
}

function bySheet(changes: readonly PlanChange[]): Map<string, ChangedCell[]> {
  const sheets = new Map<string, ChangedCell[]>();
  for (const { sheet, row, column, value } of changes) {
    const cells = sheets.get(sheet) ?? [];
    // Of several answers for one cell the last that was named stands.
    sheets.set(sheet, [
      ...cells.filter((cell) => cell.row !== row || cell.column !== column),
      filled(row, column, value),
    ]);
  }
  return sheets;
}

/**
 * Writes answers into the plan's own sheets, each in its cell, with a line in the log; every other byte of the file
 * stays as it is but for what the formulas come to.
 *
 * @param bytes - The planning workbook that the proposals were made for.
 * @param accepted - Those that are to be taken.
 * @param takenOn - As it is to stand in the log.
 * @throws FileRefusal where an answer among them cannot be taken.
 */
export async function takeAnswers(
  bytes: Uint8Array,
  accepted: readonly Proposal[],
  takenOn: string,
): Promise<Uint8Array> {
  const wrong = accepted.find((proposal) => !canBeTaken(proposal));
  if (wrong !== undefined)
    throw new FileRefusal(`Answer ${wrong.number} cannot be taken: ${wrong.why.join("; ")}.`);
  if (accepted.length === 0) return bytes;
  const { bytes: logged, isNew } = withLog(bytes);
  const plan = planOf(readLiveWorkbook(logged));
  if (plan === undefined) throw new FileRefusal("The workbook is no planning workbook.");
  const first = firstFreeRow(plan);
  const changes = bySheet(accepted.flatMap((proposal) => proposal.changes));
  const lines = accepted.flatMap((proposal, at) => logRow(proposal, first + at, takenOn));
  changes.set(LOG_SHEET, [...(isNew ? headCells() : []), ...lines]);
  return (await patchWorkbook(logged, changes)).bytes;
}
