import type { Evaluation } from "../../engine/evaluate-formulas";
import { plainCall } from "../../engine/plain-call";
import { linesOf, type Request, readRequest, USAGE } from "../arguments";
import { asTyped, refuseSemicolons } from "../formula-given";
import { hasError, jsonText, plainText } from "../print";
import { type Command, STATUS, type Terminal } from "../run-command";

/** Answers formulas in their order. The engine is loaded where one of them is more than a plain call. */
async function answersTo(formulas: readonly string[]): Promise<readonly Evaluation[]> {
  const answers = new Map<string, Evaluation>();
  for (const formula of new Set(formulas)) {
    const rows = plainCall(asTyped(formula));
    if (rows !== undefined) answers.set(formula, { formula, rows });
  }
  const rest = [...new Set(formulas)].filter((formula) => !answers.has(formula));
  if (rest.length > 0) {
    const { evaluateFormulas } = await import("../../engine/evaluate-formulas");
    const found = await evaluateFormulas(rest.map(asTyped));
    rest.forEach((formula, at) => {
      const answer = found[at];
      if (answer !== undefined) answers.set(formula, { ...answer, formula });
    });
  }
  return formulas.flatMap((formula) => answers.get(formula) ?? []);
}

async function answerBeside(formula: string, table: string): Promise<Evaluation> {
  const [{ evaluateBeside }, { readTable }] = await Promise.all([
    import("../evaluate-beside"),
    import("../table-file"),
  ]);
  return evaluateBeside(formula, readTable(table));
}

async function answerOne(
  { formula, json, table }: Extract<Request, { kind: "formula" }>,
  terminal: Terminal,
): Promise<number> {
  refuseSemicolons(formula);
  const [answer] =
    table === undefined ? await answersTo([formula]) : [await answerBeside(asTyped(formula), table)];
  if (answer === undefined) throw new Error("the engine gave no answer");
  terminal.write(`${json ? jsonText(answer) : plainText(answer)}\n`);
  return hasError(answer) ? STATUS.attention : STATUS.done;
}

async function answerLines(terminal: Terminal): Promise<number> {
  const answers = await answersTo(linesOf(await terminal.input()));
  terminal.write(answers.map((answer) => `${jsonText(answer)}\n`).join(""));
  return STATUS.done;
}

async function run(given: readonly string[], terminal: Terminal): Promise<number> {
  const request = readRequest(given);
  return request.kind === "formula" ? answerOne(request, terminal) : answerLines(terminal);
}

export const calc: Command = { name: "calc", usage: USAGE, run };
