import { WrongArguments } from "./options";

export const USAGE = `Usage: calc '=FORMULA'          print the value; a spilled result as one JSON array a row,
                                a sentence that fills several cells of a row printed once
       calc --json '=FORMULA'   print {"formula":...,"value":...} or {"formula":...,"error":...,"message":...}
       calc --json -            read one formula a line from standard input, print one JSON object a line
       calc --table FILE '=BLADE.RUN_PLAN(TABLE)'   the name TABLE stands for the rows of a .csv, .json or .xlsx file;
                                of a planning workbook for its lines, brought together from its sheets
Put the formula in single quotes. Exit status: 0 answered, 1 the answer holds an error, 2 wrong arguments;
with --json - it is 0 and each line says for itself.
`;

/** What the command line asks for. */
export type Request =
  | { readonly kind: "formula"; readonly formula: string; readonly json: boolean; readonly table?: string }
  | { readonly kind: "lines" };

const isOption = (argument: string) => /^--[a-z]/i.test(argument) || argument === "-h";

/** Takes `--table FILE` out of the arguments. */
function splitTable(args: readonly string[]): { rest: readonly string[]; table?: string } {
  const at = args.indexOf("--table");
  if (at < 0) return { rest: args };
  const table = args[at + 1];
  if (table === undefined || isOption(table)) throw new WrongArguments("--table wants the name of a file");
  return { rest: [...args.slice(0, at), ...args.slice(at + 2)], table };
}

/** Reads the arguments after the script's name. @throws WrongArguments where they cannot be understood. */
export function readRequest(given: readonly string[]): Request {
  const args = given[0] === "--" ? given.slice(1) : given;
  const { rest, table } = splitTable(args);
  const unknown = rest.find((argument) => isOption(argument) && argument !== "--json");
  if (unknown !== undefined) throw new WrongArguments(`unknown option ${unknown}`);
  const json = rest.includes("--json");
  return formulaRequest(
    rest.filter((argument) => argument !== "--json"),
    json,
    table,
  );
}

function formulaRequest([formula, second]: readonly string[], json: boolean, table?: string): Request {
  if (formula === undefined || formula.trim() === "") throw new WrongArguments("no formula given");
  if (second !== undefined)
    throw new WrongArguments("more than one formula given: put it in single quotes, or use --json -");
  if (formula !== "-") return { kind: "formula", formula, json, ...(table === undefined ? {} : { table }) };
  if (table !== undefined) throw new WrongArguments("--table goes with one formula, not with -");
  if (!json) throw new WrongArguments("formulas from standard input need --json");
  return { kind: "lines" };
}

/** The lines of a text; the end of the last line starts no further one. */
export function linesOf(text: string): string[] {
  const lines = text.split(/\r?\n/);
  if (lines.at(-1) === "") lines.pop();
  return lines;
}
