import { ErrorType, ErrorValueObject } from "@univerjs/engine-formula";
import { InvalidValue, NotAvailable, type Refusal } from "../core/refusal";

/** What travels with an error value, so that the cell it ends up in can still say why. */
interface Carried {
  readonly refusal: string;
}

/** The engine's error value for a refusal, with the sentence attached. */
export function refusedValue(refusal: Refusal): ErrorValueObject {
  const type = refusal.code === "#N/A" ? ErrorType.NA : ErrorType.VALUE;
  const carried: Carried = { refusal: refusal.message };
  return ErrorValueObject.create(type, refusal.message).withCustomData({ ...carried });
}

/** The sentence that travels with a calculated cell, if its error came from one of our functions. */
export function carriedSentence(custom: unknown): string | undefined {
  if (typeof custom !== "object" || custom === null || !("refusal" in custom)) return undefined;
  return typeof custom.refusal === "string" ? custom.refusal : undefined;
}

/** An error in an argument: one of our own keeps its sentence, any other is an error object as Excel sends it. */
export function errorArgument(error: ErrorValueObject): unknown {
  const code = error.getErrorType();
  const sentence = carriedSentence(error.getCustomData());
  if (sentence === undefined) return { type: "Error", basicValue: code };
  return code === ErrorType.NA ? new NotAvailable(sentence) : new InvalidValue(sentence);
}
