import { text } from "node:stream/consumers";
import type { Evaluation } from "../engine/evaluate-formulas";
import { plainCall } from "../engine/plain-call";
import { linesOf, type Request, readRequest, TableRefusal, USAGE } from "./arguments";
import { hasError, jsonText, plainText } from "./print";

/** Answers formulas in their order. The engine is loaded where one of them is more than a plain call. */
async function answersTo(formulas: readonly string[]): Promise<readonly Evaluation[]> {
  const answers = new Map<string, Evaluation>();
  for (const formula of new Set(formulas)) {
    const rows = plainCall(formula);
    if (rows !== undefined) answers.set(formula, { formula, rows });
  }
  const rest = [...new Set(formulas)].filter((formula) => !answers.has(formula));
  if (rest.length > 0) {
    const { evaluateFormulas } = await import("../engine/evaluate-formulas");
    for (const answer of await evaluateFormulas(rest)) answers.set(answer.formula, answer);
  }
  return formulas.flatMap((formula) => answers.get(formula) ?? []);
}

async function answerBeside(formula: string, table: string): Promise<Evaluation> {
  const [{ evaluateBeside }, { readTable }] = await Promise.all([
    import("./evaluate-beside"),
    import("./table-file"),
  ]);
  return evaluateBeside(formula, readTable(table));
}

async function answerOne({ formula, json, table }: Extract<Request, { kind: "formula" }>): Promise<number> {
  const [answer] = table === undefined ? await answersTo([formula]) : [await answerBeside(formula, table)];
  if (answer === undefined) throw new Error("the engine gave no answer");
  process.stdout.write(`${json ? jsonText(answer) : plainText(answer)}\n`);
  return hasError(answer) ? 1 : 0;
}

async function answerLines(): Promise<number> {
  const answers = await answersTo(linesOf(await text(process.stdin)));
  process.stdout.write(answers.map((answer) => `${jsonText(answer)}\n`).join(""));
  return 0;
}

async function calc(given: readonly string[]): Promise<number> {
  const request = readRequest(given);
  if (request.kind === "formula") return answerOne(request);
  if (request.kind === "lines") return answerLines();
  if (request.kind === "help") {
    process.stdout.write(USAGE);
    return 0;
  }
  process.stderr.write(`calc: ${request.reason}\n${USAGE}`);
  return 2;
}

calc(process.argv.slice(2)).then(
  (status) => {
    process.exitCode = status;
  },
  (thrown: unknown) => {
    if (thrown instanceof TableRefusal) {
      process.stderr.write(`calc: ${thrown.message}\n`);
      process.exitCode = 2;
      return;
    }
    process.stderr.write(`calc: ${thrown instanceof Error ? thrown.stack : String(thrown)}\n`);
    process.exitCode = 70;
  },
);
