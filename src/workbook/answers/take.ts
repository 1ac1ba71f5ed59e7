import { cellName } from "../../formula/addresses";
import { FileRefusal } from "../file/package/file-refusal";
import { addSheet } from "../file/patch/add-sheet";
import { type ChangedCell, patchWorkbook } from "../file/patch/patch-workbook";
import { readLiveWorkbook } from "../file/read/live-workbook";
import { answersSheet, LOG_HEADINGS, type LogKey } from "../sheets/answers-sheet";
import { HEADINGS } from "../sheets/parts/table-sheet";
import { LOG_SHEET } from "../sheets/sheets-of-the-plan";
import { type Plan, planOf } from "./lines-asked";
import { answerDigest, firstFreeRow } from "./log-sheet";
import { canBeTaken, type PlanChange, type Proposal, valueBefore } from "./proposal";

const KEYS = Object.keys(LOG_HEADINGS) as LogKey[];

/** A character of the usual font is so many pixels wide. */
const CHARACTER = 7;

const filled = (row: number, column: number, value: number | string): ChangedCell => ({
  row,
  column,
  content: { value },
});

const placeOf = ({ sheet, row, column }: PlanChange) => `${sheet}!${cellName(row, column)}`;

/** Cells of the plan that an answer goes to; those that only name a row of their own are not told. */
export const toldChanges = ({ changes }: Proposal): PlanChange[] => changes.filter(({ isName }) => !isName);

/** Where an answer without a change of the plan is kept. */
export const keptWords = ({ isHeld }: Pick<Proposal, "isHeld">): string =>
  isHeld === true ? "the plan holds it already" : "kept on the sheet Answers alone";

/** Column of each heading of the log; an older log gets what it lacks behind the rest. */
function logColumns({ sheets }: Plan): ReadonlyMap<LogKey, number> {
  const sheet = sheets.get(LOG_SHEET);
  return new Map(KEYS.map((key, at) => [key, sheet?.columnOf(LOG_HEADINGS[key]) ?? at] as const));
}

async function logRow(
  proposal: Proposal,
  row: number,
  takenOn: string,
  columns: ReadonlyMap<LogKey, number>,
): Promise<ChangedCell[]> {
  const changes = toldChanges(proposal);
  const words: Readonly<Record<LogKey, string>> = {
    ...proposal,
    went: changes.length === 0 ? keptWords(proposal) : changes.map(placeOf).join(", "),
    before: changes.map(valueBefore).join(", "),
    takenOn,
    digest: await answerDigest(proposal),
  };
  return KEYS.flatMap((key, at) =>
    words[key] === "" ? [] : [filled(row, columns.get(key) ?? at, words[key])],
  );
}

/** Title, note and headings of the log. */
function headCells(columns: ReadonlyMap<LogKey, number>): ChangedCell[] {
  const [[title] = [], [note] = []] = answersSheet(1).model().rows;
  return [
    filled(0, 0, title?.content ?? ""),
    filled(1, 0, note?.content ?? ""),
    ...KEYS.map((key, at) => filled(HEADINGS, columns.get(key) ?? at, LOG_HEADINGS[key])),
  ];
}

/** The workbook with a log in it. */
function withLog(bytes: Uint8Array): Uint8Array {
  const live = readLiveWorkbook(bytes);
  if (live.main.listed.includes(LOG_SHEET)) return bytes;
  const { columnWidths } = answersSheet(1).model();
  addSheet(
    live,
    LOG_SHEET,
    columnWidths.map((width) => width / CHARACTER),
  );
  return live.file.save();
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
  const logged = withLog(bytes);
  const plan = planOf(readLiveWorkbook(logged));
  if (plan === undefined) throw new FileRefusal("The workbook is no planning workbook.");
  const first = firstFreeRow(plan);
  const changes = bySheet(accepted.flatMap((proposal) => proposal.changes));
  const columns = logColumns(plan);
  const lines = await Promise.all(
    accepted.map((proposal, at) => logRow(proposal, first + at, takenOn, columns)),
  );
  changes.set(LOG_SHEET, [...headCells(columns), ...lines.flat()]);
  return (await patchWorkbook(logged, changes)).bytes;
}
