import { type ListedFunction, NAMESPACE } from "../../functions/catalogue";
import { resultText } from "../../functions/metadata";

/** True where a function fits every word typed: by name, purpose, topic, and the words of its arguments and results. */
export function fitsFunction(fn: ListedFunction, typed: string): boolean {
  const words = typed.toLowerCase().split(/\s+/);
  const labels = Object.values(fn.parameters).map(({ label }) => label);
  const text = [NAMESPACE, fn.name, fn.summary, fn.topic, resultText(fn), ...labels].join(" ").toLowerCase();
  return words.every((word) => text.includes(word));
}
