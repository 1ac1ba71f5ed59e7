import { readFileSync } from "node:fs";
import { Refusal } from "../../src/core/refusal";
import { catalogue } from "../../src/functions/catalogue";
import { across, numericArguments, type OneArgument } from "./one-argument";

/** Arguments whose answer stands still at an end of their span, each with the reason for it. */
export const STILL_ENDS = "tests/robustness/still-ends.json";

/** The figures of the answer, as one text; `undefined` where any cell of it is refused or it has none. */
function figures({ ask }: OneArgument, value: number): string | undefined {
  const cells = ask(value).flat();
  if (cells.some((cell) => cell instanceof Refusal)) return undefined;
  const numbers = cells.filter((cell) => typeof cell === "number");
  return numbers.length === 0 ? undefined : JSON.stringify(numbers);
}

/** Whether answers differ along the span and yet the last two or the first two are the same. */
function standsStill(one: OneArgument): boolean {
  const values = across(one.span, one.parameter.kind === "count");
  const answers = values.map((value) => figures(one, value)).filter((text) => text !== undefined);
  if (answers.length < 4 || new Set(answers).size === 1) return false;
  return answers[0] === answers[1] || answers[answers.length - 1] === answers[answers.length - 2];
}

export function frozenStillEnds(): Readonly<Record<string, string>> {
  return JSON.parse(readFileSync(STILL_ENDS, "utf8")) as Record<string, string>;
}

/** Names of the arguments that stand still now, by the alphabet. */
export function stillEnds(): readonly string[] {
  return catalogue
    .flatMap(numericArguments)
    .filter((one) => one.parameter.takes === "cell" && standsStill(one))
    .map(({ fn, parameter }) => `${fn.name}, ${parameter.label}`)
    .sort();
}
