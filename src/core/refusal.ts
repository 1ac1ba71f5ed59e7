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
  readonly code = "#VALUE!";
}

/** A well-formed question without an answer: unknown name, outside a published range, no data held. */
export class NotAvailable extends Refusal {
  readonly code = "#N/A";
}
