import { MAX_WORDS, wordCount } from "./cell-text";
import { quantityText } from "./quantity-text";
import { NotAvailable } from "./refusal";
import { type SourceKey, sourceText } from "./sources";

export const EVIDENCE_KINDS = ["standard", "measured", "fitted", "compiled", "common practice"] as const;

/** How a figure came to be. `common practice` is a rule of the trade that no source was found for. */
export type Evidence = (typeof EVIDENCE_KINDS)[number];

/** The span of one input over which a relation may be used; `null` where the source gives none. */
export interface Limit {
  /** The input as a sentence names it. */
  readonly label: string;
  /** "" for a count or a share. */
  readonly unit: string;
  /** Lower end [in `unit`]; `null` where the source gives none. */
  readonly min: number | null;
  /** Upper end [in `unit`]; `null` where the source gives none. */
  readonly max: number | null;
}

/** The inputs of a relation by the names that code gives them. */
export type Inputs = Readonly<Record<string, Limit>>;

/** What is expected between an answer and a careful measurement. */
export interface ExpectedError {
  /** Half-width [in `unit`], 0 and more; `null` where nothing is known, which `kind` must then say. */
  readonly size: number | null;
  readonly unit: string;
  /** For example "half-width that covers 90 % of rows not used in the fit". */
  readonly kind: string;
}

/**
 * A published relation as data. The range check, the error sentence, EVIDENCE, the task pane and
 * the documentation all read this one record, so that none of them can drift from the others.
 */
export interface Relation<I extends Inputs = Inputs> {
  readonly title: string;
  /** Key of the source in the list of sources. */
  readonly source: SourceKey;
  /** Equation, table or clause in the source. */
  readonly locator: string;
  /** How it came to be: a standard, measured, fitted, compiled or common practice. */
  readonly evidence: Evidence;
  /** Span of each input over which it may be used. */
  readonly inputs: I;
  /** What it gives, and the unit of that. */
  readonly output: { readonly label: string; readonly unit: string };
  /** What is expected between an answer and a careful measurement. */
  readonly error: ExpectedError;
  /** What a reader has to know beside it. */
  readonly note?: string;
}

/**
 * Declares a relation. Its inputs keep their names and their figures in the type, so that
 * `checkRange` accepts no input that the relation lacks, and a parameter can take its limits from
 * `RELATION.inputs.temperC.max` instead of repeating the number.
 */
export function relation<const I extends Inputs>(record: Relation<I>): Relation<I> {
  return record;
}

/** The accepted span of an input in words, temperatures in both scales. */
export function limitText({ min, max, unit }: Limit): string {
  if (min === null && max === null) return "the source gives no range";
  if (min === null) return `up to ${quantityText(max as number, unit)}`;
  if (max === null) return `from ${quantityText(min, unit)}`;
  return `${quantityText(min, unit)} to ${quantityText(max, unit)}`;
}

/** True where a value lies within the span of an input, both ends included. */
export function isWithin({ min, max }: Limit, value: number): boolean {
  return (min === null || value >= min) && (max === null || value <= max);
}

/**
 * Refuses a value outside the range of a relation.
 *
 * @param relation - The relation about to be used.
 * @param input - The name of one of its inputs.
 * @param value - The value given, in the unit of that input.
 * @throws NotAvailable naming input, value, range and unit, and the source where it fits into 40 words.
 */
export function checkRange<I extends Inputs>(
  { title, source, locator, inputs }: Relation<I>,
  input: keyof I & string,
  value: number,
): void {
  const limit: Limit = inputs[input] as I[keyof I & string];
  if (isWithin(limit, value)) return;
  const missed = `${limit.label} ${quantityText(value, limit.unit)} is outside ${limitText(limit)}, the range of "${title}"`;
  const full = `${missed} (${sourceText(source)}, ${locator})`;
  // EVIDENCE names the source of every relation: here it stands where the sentence has room for it.
  throw new NotAvailable(wordCount(full) <= MAX_WORDS ? full : missed);
}
