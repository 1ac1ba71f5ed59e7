import { functionNamed } from "../../../functions/catalogue";
import { evaluate } from "../../../functions/evaluate";

/** The words that a listing function gives, first column only, for a drop-down. */
export function listedWords(functionName: string): string[] {
  const fn = functionNamed(functionName);
  if (fn === undefined) return [];
  return evaluate(fn, [])
    .map(([word]) => word)
    .filter((word): word is string => typeof word === "string" && word !== "");
}
