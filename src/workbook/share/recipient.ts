import { ANSWER_FORMS, type AnswerForm } from "../answers/forms";
import { type AskedLine, linesAsked, type Plan } from "../answers/lines-asked";
import { FileRefusal } from "../file/package/file-refusal";
import { AUDIENCES } from "./audience";

/** Whom a copy is made for: somebody of a kind, or one of them by name. */
export interface Recipient {
  /** The kind, as the command line takes it. */
  readonly word: string;
  /** The one whose lines alone travel; all of that kind without it. */
  readonly name?: string;
}

const labelOf = (word: string) => AUDIENCES.find((audience) => audience.word === word)?.label ?? word;

/** A recipient in words: `Steel supplier: Old Quay Metals`. */
export const recipientWords = ({ word, name }: Recipient): string =>
  name === undefined ? labelOf(word) : `${labelOf(word)}: ${name}`;

/** Reads those words; `undefined` where they name no recipient. */
export function readRecipient(words: string): Recipient | undefined {
  const audience = AUDIENCES.find(({ label }) => words === label || words.startsWith(`${label}: `));
  if (audience === undefined) return undefined;
  const name = words.slice(audience.label.length + 2);
  return { word: audience.word, ...(name === "" ? {} : { name }) };
}

/** A form with the lines that a recipient is asked about. */
export interface AskedForm {
  readonly form: AnswerForm;
  readonly lines: readonly AskedLine[];
}

const formsFor = (word: string, papers: readonly string[]) =>
  ANSWER_FORMS.filter(({ audience, paper }) => audience === word && papers.includes(paper));

/** The forms that a recipient gets beside the papers, and the lines in them. */
export function formsAsked(plan: Plan, { word, name }: Recipient, papers: readonly string[]): AskedForm[] {
  return formsFor(word, papers)
    .map((form) => ({ form, lines: linesAsked(plan, form, name) }))
    .filter(({ lines }) => lines.length > 0);
}

/** Everybody of a kind whom the plan names. */
export function namesKnown(plan: Plan, word: string): string[] {
  const names = ANSWER_FORMS.filter(({ audience }) => audience === word).flatMap((form) =>
    linesAsked(plan, form).map(({ whom }) => whom),
  );
  return [...new Set(names)].filter((name) => name !== "");
}

/**
 * The name of a recipient as the plan spells it.
 *
 * @throws FileRefusal where the plan knows nobody of that name.
 */
export function knownName(plan: Plan | undefined, word: string, name: string): string {
  const label = labelOf(word).toLowerCase();
  if (plan === undefined)
    throw new FileRefusal(
      `Lines of one ${label} alone can be told only in a planning workbook: leave the name out, or name sheets.`,
    );
  const known = namesKnown(plan, word);
  const found = known.find((listed) => listed.toLowerCase() === name.trim().toLowerCase());
  if (found !== undefined) return found;
  const others = known.length === 0 ? "It names nobody." : `It knows: ${known.join(", ")}.`;
  throw new FileRefusal(`The plan has nothing for a ${label} called "${name.trim()}". ${others}`);
}
