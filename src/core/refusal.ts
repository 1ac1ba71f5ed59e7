/**
 * The two ways in which this library declines to answer. A worksheet cell shows the code, and the
 * message is the sentence that a bladesmith reads: what was given, what is accepted, and why.
 */
export abstract class Refusal extends Error {
  /** The error value that a cell shows. */
  abstract readonly code: "#VALUE!" | "#N/A";
}

/** Malformed input: text where a number is wanted, a negative length, a unit of the wrong kind. */
export class InvalidValue extends Refusal {
  override readonly name = "InvalidValue";
  readonly code = "#VALUE!";
}

/** A well-formed question without an answer: unknown name, outside a published range, no data held. */
export class NotAvailable extends Refusal {
  override readonly name = "NotAvailable";
  readonly code = "#N/A";
}

type Kind<R extends Refusal> = abstract new (message: string) => R;

/**
 * What a question comes to: its value, or the refusal in its place.
 *
 * @param question - Asked once.
 * @param kind - The kind of refusal that stands for an answer; any where left out.
 * @throws whatever else the question throws: another kind of refusal, or a fault.
 */
export function attempt<T>(question: () => T): T | Refusal;
export function attempt<T, R extends Refusal>(question: () => T, kind: Kind<R>): T | R;
export function attempt<T>(question: () => T, kind: Kind<Refusal> = Refusal): T | Refusal {
  try {
    return question();
  } catch (thrown) {
    if (thrown instanceof kind) return thrown;
    throw thrown;
  }
}

/** What went wrong, in words: the sentence of a refusal or of a fault. */
export function sentenceOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}

/**
 * What a question comes to, or something else where it is refused.
 *
 * @throws whatever the question throws that is no refusal.
 */
export function attemptOr<T, F>(otherwise: F, question: () => T): T | F {
  const found = attempt(question);
  return found instanceof Refusal ? otherwise : found;
}
