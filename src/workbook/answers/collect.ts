import { sentenceOf } from "../../core/refusal";
import { FileRefusal } from "../file/package/file-refusal";
import { momentText } from "../share/moments";
import { calculatedSide } from "../share/verify/live-side";
import { REGISTER, REGISTER_HEADINGS } from "../sheets/register-sheet";
import { type AlteredFile, alteredFile } from "./altered";
import { type AnswerFile, type AnswerSource, readAnswerFile } from "./answer-file";
import { type AnswerRow, type AnswerTable, textIn } from "./answer-tables";
import { planNumber, planWords } from "./copy-number";
import { readDay } from "./days";
import { fieldsOf } from "./forms";
import { linesAsked, type Plan, planOf } from "./lines-asked";
import { answerDigest, logKey, TakenAnswers } from "./log-sheet";
import { OfferRows } from "./offer-rows";
import type { Draft, Proposal } from "./proposal";
import { ReadingRows } from "./reading-rows";
import { answersOfRow, type RowContext, type RowShapes } from "./row-answers";

/** What came back, line by line, before anything is taken. */
export interface Collected {
  readonly proposals: readonly Proposal[];
  /** What there is to say of whole files. */
  readonly remarks: readonly string[];
  /** Files whose values outside the answers are not those of the copy, with the cells. */
  readonly altered: readonly AlteredFile[];
  /** Cells that were open for answers in the rows that came back, and how many hold one. */
  readonly open: number;
  readonly answered: number;
}

/** Everything that the answers are held against. */
interface Known {
  readonly plan: Plan;
  readonly number: string;
  readonly taken: TakenAnswers;
  readonly shapes: RowShapes;
}

const answersIn = (plan: Plan, { form, rows }: AnswerTable): number =>
  rows.reduce(
    (sum, { cells }) =>
      sum + fieldsOf(form, plan.elements).filter(({ heading }) => isFilled(cells.get(heading))).length,
    0,
  );

const isFilled = (held: ReturnType<AnswerRow["cells"]["get"]>) =>
  held !== undefined && ("error" in held || textIn(held) !== "");

const openIn = (plan: Plan, { form, rows }: AnswerTable): number =>
  rows.length * fieldsOf(form, plan.elements).length;

function dayOf({ on }: AnswerTable): {
  readonly day: number | undefined;
  readonly on: string;
  readonly remark?: string;
} {
  const given = on !== undefined && "value" in on && typeof on.value !== "boolean" ? on.value : undefined;
  if (given === undefined) return { day: undefined, on: "" };
  try {
    const day = readDay(given);
    return { day, on: momentText(day, "date", false) ?? "" };
  } catch (problem) {
    return { day: undefined, on: "", remark: sentenceOf(problem) };
  }
}

/** The name that the copy was made for, without its kind. */
const nameIn = (audience = "") => audience.split(": ").slice(1).join(": ");

/** Whom the register of the plan says that a copy went to; empty where it does not say. */
function sentTo({ sheets }: Plan, number: string): string {
  const register = sheets.get(REGISTER);
  const row = register
    ?.rowsWith(REGISTER_HEADINGS.copy)
    .find((at) => register.under(REGISTER_HEADINGS.copy, at).value === number);
  const to = row === undefined ? undefined : register?.under(REGISTER_HEADINGS.to, row).value;
  return nameIn(to === undefined ? "" : String(to));
}

function lostLine(table: AnswerTable, row: AnswerRow, file: AnswerFile, answers: number): Draft {
  return {
    copy: row.key.number,
    paper: table.form.name,
    from: table.by,
    on: "",
    file: file.name,
    line: row.key.line,
    asked: "the whole line",
    given: `${answers} answers`,
    readAs: "",
    unit: "",
    changes: [],
    doubts: [],
    refusal: `line ${row.key.line} is no longer in the plan, or nothing is asked of it any more: its ${answers} answers stay out`,
  };
}

function draftsOfTable(known: Known, file: AnswerFile, table: AnswerTable): Draft[] {
  const { plan, shapes } = known;
  const lines = new Map(linesAsked(plan, table.form).map((line) => [line.line.toLowerCase(), line]));
  const { day, on } = dayOf(table);
  return table.rows.flatMap((row) => {
    const answers = answersIn(plan, { ...table, rows: [row] });
    const line = lines.get(row.key.line.toLowerCase());
    if (answers === 0) return [];
    if (line === undefined) return [lostLine(table, row, file, answers)];
    const whose = table.of || nameIn(file.statements?.audience) || sentTo(plan, row.key.number);
    const from = table.by || whose || line.whom;
    const context: RowContext = { plan, table, row, line, file: file.name, from, whose, day, on };
    return answersOfRow(context, shapes);
  });
}

/** Different answers to one question, and different values for one cell of the plan, are doubtful together. */
function withClashes(drafts: readonly Draft[]): Draft[] {
  const groups = (keysOf: (draft: Draft) => readonly (readonly [key: string, value: string])[]) => {
    const found = new Map<string, Set<string>>();
    for (const draft of drafts)
      for (const [key, value] of keysOf(draft)) found.set(key, (found.get(key) ?? new Set()).add(value));
    return found;
  };
  const question = (draft: Draft) => [[`${draft.paper}|${draft.line}|${draft.asked}`, draft.readAs]] as const;
  const cells = (draft: Draft) =>
    draft.changes.map(
      ({ sheet, row, column, value }) => [`${sheet}|${row}|${column}`, String(value)] as const,
    );
  const [asked, written] = [groups(question), groups(cells)];
  return drafts.map((draft) => {
    if (draft.refusal !== undefined) return draft;
    const two = question(draft).flatMap(([key]) => [...(asked.get(key) ?? [])]);
    const same = cells(draft).some(([key]) => (written.get(key)?.size ?? 0) > 1);
    const doubts =
      two.length > 1
        ? [`two answers to one question: ${two.join(" and ")}`]
        : same
          ? ["another line gives another value for the same cell of the plan"]
          : [];
    return { ...draft, doubts: [...draft.doubts, ...doubts] };
  });
}

interface Circumstances {
  /** The same answer was taken; the question was answered otherwise; the files hold the answer twice. */
  readonly isTaken: boolean;
  readonly isAnswered: boolean;
  readonly isRepeated: boolean;
}

function stateOf(draft: Draft, { isTaken, isAnswered, isRepeated }: Circumstances): Proposal["state"] {
  if (draft.refusal !== undefined) return "refused";
  if (isTaken) return "taken";
  if (draft.doubts.length > 0 || isAnswered) return "doubtful";
  return isRepeated ? "same" : "fine";
}

async function proposalsOf(drafts: readonly Draft[], taken: TakenAnswers): Promise<Proposal[]> {
  const seen = new Set<string>();
  const digests = await Promise.all(drafts.map(answerDigest));
  return drafts.map(({ doubts, refusal, ...draft }, at): Proposal => {
    const before = taken.before(draft);
    const same = taken.same(draft, digests[at] ?? "");
    const isRepeated = seen.size === seen.add(`${logKey(draft)}|${draft.readAs}`).size;
    const circumstances = { isTaken: same !== undefined, isAnswered: before !== undefined, isRepeated };
    const state = stateOf({ ...draft, doubts, ...(refusal && { refusal }) }, circumstances);
    const why = {
      refused: [refusal ?? ""],
      taken: [`taken already${same?.on === "" ? "" : ` on ${same?.on}`}`],
      same: ["stands in these files twice"],
      fine: [],
      doubtful: [...(before === undefined ? [] : [`answered before: ${before.readAs}`]), ...doubts],
    }[state];
    return { ...draft, number: at + 1, state, why };
  });
}

/** Tables of this plan; of another one it is said whose they are not. */
function ofThisPlan(
  known: Known,
  file: AnswerFile,
): { readonly tables: readonly AnswerTable[]; readonly remarks: string[] } {
  const own = file.tables
    .map((table) => ({ ...table, rows: table.rows.filter(({ key }) => key.plan === known.number) }))
    .filter(({ rows }) => rows.length > 0);
  const lost =
    file.tables.reduce((sum, { rows }) => sum + rows.length, 0) -
    own.reduce((sum, { rows }) => sum + rows.length, 0);
  const remarks =
    lost === 0
      ? []
      : [
          `${file.name}: ${lost === 1 ? "1 row answers" : `${lost} rows answer`} a copy of another plan; this one is ${planWords(known.plan.name)}. They stay out.`,
        ];
  return { tables: own, remarks };
}

async function readAll(sources: readonly AnswerSource[]) {
  const files: AnswerFile[] = [];
  const remarks: string[] = [];
  for (const source of sources) {
    try {
      files.push(await readAnswerFile(source));
    } catch (problem) {
      const sentence = sentenceOf(problem);
      remarks.push(sentence.startsWith(source.name) ? sentence : `${source.name}: ${sentence}`);
    }
  }
  return { files, remarks };
}

/**
 * Reads answers and says, line by line, what each would change in the plan and what is doubtful in it. Nothing is
 * written.
 *
 * @param plan - The planning workbook.
 * @throws FileRefusal where the plan cannot be read or is no planning workbook.
 */
export async function collect(bytes: Uint8Array, sources: readonly AnswerSource[]): Promise<Collected> {
  const { workbook } = await calculatedSide(bytes);
  const plan = planOf(workbook);
  if (plan === undefined)
    throw new FileRefusal(
      "The first file is no planning workbook: answers are brought into one made by template.",
    );
  const known: Known = {
    plan,
    number: await planNumber(plan.name),
    taken: new TakenAnswers(plan),
    shapes: { R: new ReadingRows(plan).draftsFor, E: new OfferRows(plan).draftsFor },
  };
  const { files, remarks } = await readAll(sources);
  const sorted = files.map((file) => ({ file, ...ofThisPlan(known, file) }));
  const tables = sorted.flatMap(({ file, tables: own }) => own.map((table) => ({ file, table })));
  const drafts = tables.flatMap(({ file, table }) => draftsOfTable(known, file, table));
  const isChanged = (name: string) =>
    tables.some(({ file }) => file.name === name && file.statements?.digest === "not as stated");
  const changed = sources.filter(({ name }) => isChanged(name));
  const days = tables.flatMap(({ file, table }) => {
    const { remark } = dayOf(table);
    return remark === undefined ? [] : [`${file.name}: ${remark}`];
  });
  return {
    proposals: await proposalsOf(withClashes(drafts), known.taken),
    remarks: [...remarks, ...sorted.flatMap(({ remarks: own }) => own), ...new Set(days)],
    altered: await Promise.all(changed.map((source) => alteredFile(bytes, source))),
    open: tables.reduce((sum, { table }) => sum + openIn(plan, table), 0),
    answered: tables.reduce((sum, { table }) => sum + answersIn(plan, table), 0),
  };
}
