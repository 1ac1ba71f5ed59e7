export const USAGE = `Usage: calc '=FORMULA'          print the value; a spilled result as one JSON array a row
       calc --json '=FORMULA'   print {"formula":...,"value":...} or {"formula":...,"error":...,"message":...}
       calc --json -            read one formula a line from standard input, print one JSON object a line
Put the formula in single quotes. Exit status: 0 answered, 1 the answer holds an error, 2 wrong arguments;
with --json - it is 0 and each line says for itself.
`;

/** What the command line asks for. */
export type Request =
  | { readonly kind: "formula"; readonly formula: string; readonly json: boolean }
  | { readonly kind: "lines" }
  | { readonly kind: "help" }
  | { readonly kind: "wrong"; readonly reason: string };

const isOption = (argument: string) => /^--[a-z]/i.test(argument) || argument === "-h";

/** Reads the arguments after the script's name. */
export function readRequest(given: readonly string[]): Request {
  const args = given[0] === "--" ? given.slice(1) : given;
  if (args.includes("--help") || args.includes("-h")) return { kind: "help" };
  const unknown = args.find((argument) => isOption(argument) && argument !== "--json");
  if (unknown !== undefined) return { kind: "wrong", reason: `unknown option ${unknown}` };
  const json = args.includes("--json");
  const [formula, second] = args.filter((argument) => argument !== "--json");
  if (formula === undefined || formula.trim() === "") return { kind: "wrong", reason: "no formula given" };
  if (second !== undefined)
    return { kind: "wrong", reason: "more than one formula given: put it in single quotes, or use --json -" };
  if (formula !== "-") return { kind: "formula", formula, json };
  return json ? { kind: "lines" } : { kind: "wrong", reason: "formulas from standard input need --json" };
}

/** The lines of a text; the end of the last line starts no further one. */
export function linesOf(text: string): string[] {
  const lines = text.split(/\r?\n/);
  if (lines.at(-1) === "") lines.pop();
  return lines;
}
