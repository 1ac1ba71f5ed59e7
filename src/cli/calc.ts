import { text } from "node:stream/consumers";
import { evaluateFormulas } from "../engine/evaluate-formulas";
import { linesOf, type Request, readRequest, USAGE } from "./arguments";
import { evaluateBeside } from "./evaluate-beside";
import { hasError, jsonText, plainText } from "./print";
import { readTable, TableRefusal } from "./table-file";

async function answerOne({ formula, json, table }: Extract<Request, { kind: "formula" }>): Promise<number> {
  const [answer] =
    table === undefined
      ? await evaluateFormulas([formula])
      : [await evaluateBeside(formula, readTable(table))];
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
