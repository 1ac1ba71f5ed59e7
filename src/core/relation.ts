import { quantityText } from "./quantity-text";
import { NotAvailable } from "./refusal";
import { type SourceKey, sourceText } from "./sources";

/** How a figure came to be. `common practice` is a rule of the trade that no source was found for. */
export type Evidence = "standard" | "measured" | "fitted" | "compiled" | "common practice";

/** The span of one input over which a relation may be used; `null` where the source gives none. */
export interface Limit {
  readonly label: string;
  readonly unit: string;
  readonly min: number | null;
  readonly max: number | null;
}

/** What is expected between an answer and a careful measurement. */
export interface ExpectedError {
  /** Half-width in `unit`; `null` where nothing is known, which `kind` must then say. */
  readonly size: number | null;
  readonly unit: string;
  /** For example "half-width that covers 90 % of rows not used in the fit". */
  readonly kind: string;
}

/**
 * A published relation as data. The range check, the error sentence, EVIDENCE, the task pane and
 * the documentation all read this one record, so that none of them can drift from the others.
 */
export interface Relation {
  readonly title: string;
  readonly source: SourceKey;
  /** Equation, table or clause in the source. */
  readonly locator: string;
  readonly evidence: Evidence;
  readonly inputs: Readonly<Record<string, Limit>>;
  readonly output: { readonly label: string; readonly unit: string };
  readonly error: ExpectedError;
  readonly note?: string;
}

/** The accepted span of an input in words, temperatures in both scales. */
export function limitText({ min, max, unit }: Limit): string {
  if (min === null && max === null) return "the source gives no range";
  if (min === null) return `up to ${quantityText(max as number, unit)}`;
  if (max === null) return `from ${quantityText(min, unit)}`;
  return `${quantityText(min, unit)} to ${quantityText(max, unit)}`;
}

/**
 * Refuses a value outside the range of a relation.
 *
 * @param relation - The relation about to be used.
 * @param input - The name of the input in `relation.inputs`.
 * @param value - The value given, in the unit of that input.
 * @throws NotAvailable naming input, value, range, unit and source.
 */
export function checkRange(relation: Relation, input: string, value: number): void {
  const limit = relation.inputs[input];
  if (limit === undefined) throw new Error(`${relation.title} has no input ${input}`);
  const low = limit.min === null || value >= limit.min;
  const high = limit.max === null || value <= limit.max;
  if (low && high) return;
  throw new NotAvailable(
    `${limit.label} ${quantityText(value, limit.unit)} is outside ${limitText(limit)}, ` +
      `the range of "${relation.title}" (${sourceText(relation.source)}, ${relation.locator})`,
  );
}
