import { text } from "node:stream/consumers";
import { evaluateFormulas } from "../engine/evaluate-formulas";
import { linesOf, readRequest, USAGE } from "./arguments";
import { hasError, jsonText, plainText } from "./print";

async function answerOne(formula: string, json: boolean): Promise<number> {
  const [answer] = await evaluateFormulas([formula]);
  if (answer === undefined) throw new Error("the engine gave no answer");
  process.stdout.write(`${json ? jsonText(answer) : plainText(answer)}\n`);
  return hasError(answer) ? 1 : 0;
}

async function answerLines(): Promise<number> {
  const formulas = linesOf(await text(process.stdin));
  const answers = await evaluateFormulas(formulas);
  process.stdout.write(answers.map((answer) => `${jsonText(answer)}\n`).join(""));
  return 0;
}

async function calc(given: readonly string[]): Promise<number> {
  const request = readRequest(given);
  if (request.kind === "formula") return answerOne(request.formula, request.json);
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
    process.stderr.write(`calc: ${thrown instanceof Error ? thrown.stack : String(thrown)}\n`);
    process.exitCode = 70;
  },
);
