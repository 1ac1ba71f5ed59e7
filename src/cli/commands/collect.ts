import { basename } from "node:path";
import { alteredLines } from "../../workbook/answers/altered";
import { type Collected, collect as collectAnswers } from "../../workbook/answers/collect";
import { canBeTaken, type Proposal } from "../../workbook/answers/proposal";
import { takeAnswers } from "../../workbook/answers/take";
import { countWords, proposalWords, STATE_WORDS } from "../../workbook/answers/told";
import { type FileRead, readWhole, refuseExisting, refuseOpenWorkbook, writeWhole } from "../files";
import { type Options, readOptions, WrongArguments } from "../options";
import { counted } from "../remarks";
import { type Command, STATUS, type Terminal } from "../run-command";

const USAGE = `Usage: collect PLAN.xlsx ANSWER [more ...]            show what came back; write nothing
       collect --accept PLAN.xlsx ANSWER [more ...]   take all answers that are fine
       collect --accept --also 3,7-9 ...              and these doubtful ones, by their numbers in the list
       collect --only 1,4 ...                         take exactly these
Options: [-o OUT.xlsx] [--date TEXT] [--dry-run] [--force]
An answer is a copy made by share --for that was filled in: the .xlsx, saved again by any program, its table as .csv, or
a text file with the table pasted in. Rows are found by their keys, wherever they stand. Prices are held against the
last ones, analyses against the grade, readings against the band; doubtful answers are left out unless they are named.
Answers are written into the plan's own sheets, with a line each on the sheet Answers; nothing is taken twice. PLAN.xlsx
itself is written unless -o (--output) names another file; --date is the day that the log says.
Exit status: 0 done, or all that came back was taken before; 1 answers are left to look at; 2 wrong arguments or a file
refused.
`;

/** Numbers such as `1,4-7`. */
function numbersIn(option: string, text: string | undefined, last: number): number[] {
  if (text === undefined) return [];
  return text.split(",").flatMap((part) => {
    const [, first, end = first] = /^\s*(\d+)\s*(?:-\s*(\d+)\s*)?$/.exec(part) ?? [];
    const [from, to] = [Number(first), Number(end)];
    if (first === undefined || from < 1 || to > last || to < from)
      throw new WrongArguments(
        `--${option} is "${text}"; give numbers of the list, 1 to ${last}, such as 1,4-7`,
      );
    return Array.from({ length: to - from + 1 }, (_, at) => from + at);
  });
}

/** The answers that are to be taken: consent is given by name. */
function acceptedOf({ flags, values }: Options, proposals: readonly Proposal[]): Proposal[] {
  const named = new Set([
    ...numbersIn("only", values.only, proposals.length),
    ...numbersIn("also", values.also, proposals.length),
  ]);
  const isNamed = ({ number }: Proposal) => named.has(number);
  const wrong = proposals.find((proposal) => isNamed(proposal) && !canBeTaken(proposal));
  if (wrong !== undefined)
    throw new WrongArguments(`answer ${wrong.number} cannot be taken: ${wrong.why.join("; ")}`);
  const takesFine = flags.has("accept") && values.only === undefined;
  return proposals.filter((proposal) => isNamed(proposal) || (takesFine && proposal.state === "fine"));
}

function listed({ proposals, remarks, altered }: Collected): string {
  const width = String(proposals.length).length;
  const lines = proposals.map(
    (proposal) =>
      `${String(proposal.number).padStart(width)}  ${STATE_WORDS[proposal.state].padEnd(8)}  ${proposalWords(proposal)}\n`,
  );
  const told = [...remarks, ...altered.flatMap(alteredLines)];
  return [...told.map((remark) => `${remark}\n`), ...lines].join("");
}

function outcomeWords(accepted: readonly Proposal[], output: string | undefined, options: Options): string {
  if (accepted.length > 0 && output !== undefined)
    return `${output}: ${counted(accepted.length, "answer")} taken\n`;
  return options.flags.has("accept") || options.values.only !== undefined
    ? `Nothing written${accepted.length > 0 ? `: ${counted(accepted.length, "answer")} would be taken` : ""}\n`
    : "Nothing written: --accept takes all that are fine, --only 1,4 those named\n";
}

/** Refuses a place that must not be written to, before anything is worked out. */
function refuseTaken(read: FileRead, { values, flags }: Options): void {
  if (values.output === undefined) refuseOpenWorkbook(read.path);
  else refuseExisting(values.output, flags.has("force"));
}

async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const options = readOptions(args, {
    flags: ["accept", "dry-run", "force"],
    values: ["output", "only", "also", "date"],
  });
  const [plan, ...answers] = options.files;
  if (plan === undefined || answers.length === 0)
    throw new WrongArguments("give the planning workbook and at least one answer");
  const read = readWhole(plan);
  const sources = answers.map((file) => ({ name: basename(file), bytes: readWhole(file).bytes }));
  const found = await collectAnswers(read.bytes, sources);
  const accepted = acceptedOf(options, found.proposals);
  terminal.write(`${listed(found)}${countWords(found)}\n`);
  const isWriting = accepted.length > 0 && !options.flags.has("dry-run");
  const output = isWriting ? (options.values.output ?? plan) : undefined;
  if (isWriting) await write(read, accepted, plan, options);
  terminal.write(outcomeWords(accepted, output, options));
  const left = found.proposals.filter(
    (one) => one.state !== "taken" && one.state !== "same" && !(isWriting && accepted.includes(one)),
  );
  return left.length + found.remarks.length + found.altered.length === 0 ? STATUS.done : STATUS.attention;
}

async function write(
  read: FileRead,
  accepted: readonly Proposal[],
  plan: string,
  options: Options,
): Promise<void> {
  refuseTaken(read, options);
  const bytes = await takeAnswers(read.bytes, accepted, options.values.date ?? "");
  if (options.values.output === undefined) writeWhole(plan, bytes, read);
  else writeWhole(options.values.output, bytes);
}

export const collect: Command = { name: "collect", usage: USAGE, run };
