import { ANSWER_FORMS, type AnswerForm } from "../answers/forms";
import { type AskedLine, linesAsked, type Plan } from "../answers/lines-asked";
import { FileRefusal } from "../file/package/file-refusal";
import { AUDIENCES } from "./audience";
import { ALL_LINES } from "./provenance";

/** Whom a copy is made for: somebody of a kind, or one of them by name. */
export interface Recipient {
  /** The kind, as the command line takes it. */
  readonly word: string;
  /** The one whose lines alone travel; all of that kind without it. */
  readonly name?: string;
  /** Lines of an enquiry, whoever they are bought from; none named means all. An enquiry carries no order. */
  readonly enquiry?: readonly string[];
}

const labelOf = (word: string) => AUDIENCES.find((audience) => audience.word === word)?.label ?? word;

/** A recipient in words: `Steel supplier: Old Quay Metals`. */
export const recipientWords = ({ word, name }: Recipient): string =>
  name === undefined ? labelOf(word) : `${labelOf(word)}: ${name}`;

/**
 * Reads those words; `undefined` where they name no recipient.
 *
 * @param enquiry - Lines of an enquiry in words.
 */
export function readRecipient(words: string, enquiry?: string): Recipient | undefined {
  const audience = AUDIENCES.find(({ label }) => words === label || words.startsWith(`${label}: `));
  if (audience === undefined) return undefined;
  const name = words.slice(audience.label.length + 2);
  const lines = enquiry === ALL_LINES ? [] : enquiry?.split(", ");
  return { word: audience.word, ...(name === "" ? {} : { name }), ...(lines && { enquiry: lines }) };
}

/** A form with the lines that a recipient is asked about. */
export interface AskedForm {
  readonly form: AnswerForm;
  readonly lines: readonly AskedLine[];
}

const formsFor = (word: string, papers: readonly string[]) =>
  ANSWER_FORMS.filter(({ audience, paper }) => audience === word && papers.includes(paper));

const lineOf = ({ told }: AskedLine) => String(told.Line ?? "");
const isSame = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase();

/**
 * The lines of an enquiry.
 *
 * @param chosen - Their names; all lines where none are given.
 * @throws FileRefusal for a line that nothing is bought for.
 */
function enquiryLines(plan: Plan, form: AnswerForm, chosen: readonly string[]): readonly AskedLine[] {
  const all = linesAsked(plan, form);
  const lost = chosen.find((line) => !all.some((asked) => isSame(lineOf(asked), line)));
  if (lost !== undefined) {
    const known = [...new Set(all.map(lineOf))].join(", ");
    throw new FileRefusal(
      `The plan buys no steel for a line "${lost.trim()}". ${known === "" ? "It buys none at all." : `It does for: ${known}.`}`,
    );
  }
  return chosen.length === 0
    ? all
    : all.filter((asked) => chosen.some((line) => isSame(lineOf(asked), line)));
}

/** The forms that a recipient gets beside the papers, and the lines in them. */
export function formsAsked(
  plan: Plan,
  { word, name, enquiry }: Recipient,
  papers: readonly string[],
): AskedForm[] {
  const forms = formsFor(word, papers);
  const asked =
    enquiry === undefined
      ? forms.map((form) => ({ form, lines: linesAsked(plan, form, name) }))
      : forms
          .filter(({ asksAnybody }) => asksAnybody)
          .map((form) => ({ form, lines: enquiryLines(plan, form, enquiry) }));
  return asked.filter(({ lines }) => lines.length > 0);
}

/** Whether somebody of a kind can be asked about lines that go to another, with these papers. */
const canAskAnybody = (word: string, papers: readonly string[]): boolean =>
  papersToAsk(word, papers).length > 0;

/** Names of the lines that anybody of a kind can be asked about with these papers; none where nobody can. */
export function linesToAsk(plan: Plan, word: string, papers: readonly string[]): string[] {
  const forms = formsFor(word, papers).filter(({ asksAnybody }) => asksAnybody);
  return [...new Set(forms.flatMap((form) => linesAsked(plan, form).map(lineOf)))];
}

/** The papers with which anybody of a kind can be asked. */
export const papersToAsk = (word: string, papers: readonly string[]): string[] =>
  formsFor(word, papers).flatMap(({ asksAnybody, paper }) => (asksAnybody ? [paper] : []));

/** Everybody of a kind whom the plan names. */
export function namesKnown(plan: Plan, word: string): string[] {
  const names = ANSWER_FORMS.filter(({ audience }) => audience === word).flatMap((form) =>
    linesAsked(plan, form).map(({ whom }) => whom),
  );
  return [...new Set(names)].filter((name) => name !== "");
}

/** What a copy for one is made by. */
interface Wished {
  readonly name: string;
  /** Lines of an enquiry; none named means all. */
  readonly enquiry?: readonly string[];
}

/**
 * A recipient by name, as the plan spells it. One that the plan does not buy from yet gets an enquiry about all lines.
 *
 * @param papers - Names of the sheets that are shared.
 * @throws FileRefusal where the plan has nothing for that one.
 */
export function recipientNamed(
  plan: Plan | undefined,
  word: string,
  { name, enquiry }: Wished,
  papers: readonly string[],
): Recipient {
  const label = labelOf(word).toLowerCase();
  if (plan === undefined)
    throw new FileRefusal(
      `Lines of one ${label} alone can be told only in a planning workbook: leave the name out, or name sheets.`,
    );
  const known = namesKnown(plan, word);
  const found = known.find((listed) => isSame(listed, name));
  const canAsk = canAskAnybody(word, papers);
  if (enquiry !== undefined && !canAsk)
    throw new FileRefusal(`Lines are chosen for an enquiry to a steel supplier, not for a ${label}.`);
  if (found !== undefined) return { word, name: found, ...(enquiry && { enquiry }) };
  if (canAsk && name.trim() !== "") return { word, name: name.trim(), enquiry: enquiry ?? [] };
  const others = known.length === 0 ? "It names nobody." : `It knows: ${known.join(", ")}.`;
  throw new FileRefusal(`The plan has nothing for a ${label} called "${name.trim()}". ${others}`);
}
