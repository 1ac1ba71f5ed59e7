import { NotAvailable } from "../refusal";

/** What a question comes to: a value, or the sentence of a question that nothing published answers. */
export function attempt<T>(question: () => T): T | NotAvailable {
  try {
    return question();
  } catch (thrown) {
    if (thrown instanceof NotAvailable) return thrown;
    throw thrown;
  }
}

/** A sentence with a capital and a full stop, to stand among others. */
export function asSentence(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
