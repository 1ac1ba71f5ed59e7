import { FileRefusal } from "../../workbook/file/package/file-refusal";
import { type Recalculation, recalculate } from "../../workbook/file/patch/recalculate";
import { type FileRead, readWhole, refuseExisting, refuseOpenWorkbook, stateOf, writeWhole } from "../files";
import { type Options, readOptions, WrongArguments } from "../options";
import { counted, listedRemarks } from "../remarks";
import { type Command, progressLine, STATUS, type Terminal } from "../run-command";
import { saves } from "../watch";

const USAGE = `Usage: recalc FILE.xlsx                     recalculate every formula and write the values into the file
       recalc --output OTHER.xlsx FILE.xlsx  write into another file; with --force also over one that is there
       recalc --check FILE.xlsx              write nothing; say whether anything would change
       recalc --watch FILE.xlsx              do so now and whenever another program saves the file, until Ctrl+C
With LibreOffice alone: 1. template writes a plan; 2. recalc --watch PLAN.xlsx in a terminal; 3. open the plan in
LibreOffice; 4. fill in the shaded cells; 5. save as .xlsx; 6. File > Reload shows the answers. The workbench is the
better way: it opens the file and calculates as you type.
Only values and broken names of our functions are written; everything else in the file stays as it is.
Exit status: 0 done (with --check: up to date), 1 with --check: out of date, 2 wrong arguments or a file refused.
`;

function summary(file: string, done: Recalculation, isCheck: boolean): string {
  const { formulas, changed, repaired, left, cutShort, errors } = done;
  const verb = isCheck ? "would change" : "changed";
  const repairs =
    repaired === 0 ? "" : `, ${counted(repaired, "broken name")} ${isCheck ? "to repair" : "repaired"}`;
  return (
    `${file}: ${counted(formulas, "formula")}, ${counted(changed, "value")} ${verb}${repairs}\n` +
    listedRemarks("Left as they were:", left) +
    listedRemarks("Only the first value shown:", cutShort) +
    listedRemarks("Errors:", errors)
  );
}

/** Refuses a place that must not be written to, before anything is worked out. */
function refuseTaken(read: FileRead, output: string | undefined, isForced: boolean): void {
  if (output === undefined) refuseOpenWorkbook(read.path);
  else refuseExisting(output, isForced);
}

/** Calculates a file once. @returns Its state once written, where the file itself was. */
async function calculated(file: string, output: string | undefined, terminal: Terminal) {
  const read = readWhole(file);
  const done = await recalculate(read.bytes);
  if (output !== undefined) writeWhole(output, done.bytes);
  else if (done.isChanged) writeWhole(file, done.bytes, read);
  terminal.write(summary(file, done, false));
  return output === undefined ? stateOf(read.path) : undefined;
}

/**
 * Calculates a file now and whenever another program has saved it. The program that has it open goes on: only values
 * are written, and what was typed there is in the file already.
 *
 * @param signal - Ends the watch.
 */
export async function watch(
  file: string,
  output: string | undefined,
  terminal: Terminal,
  signal?: AbortSignal,
): Promise<number> {
  let own = await calculated(file, output, terminal);
  terminal.write(`Watching ${file}: save it in any program, then load it again there. Ctrl+C ends.\n`);
  for await (const _ of saves(file, signal, () => own)) {
    try {
      own = await calculated(file, output, terminal);
    } catch (problem) {
      if (!(problem instanceof FileRefusal)) throw problem;
      terminal.complain(`recalc: ${problem.message}\n`);
    }
  }
  return STATUS.done;
}

async function calculateOnce(file: string, { flags, values }: Options, terminal: Terminal): Promise<number> {
  const isCheck = flags.has("check");
  const { output } = values;
  const read = readWhole(file);
  if (!isCheck) refuseTaken(read, output, flags.has("force"));
  const done = await recalculate(read.bytes, progressLine("recalc", terminal));
  if (!isCheck && output !== undefined) writeWhole(output, done.bytes);
  if (!isCheck && output === undefined && done.isChanged) writeWhole(file, done.bytes, read);
  terminal.write(summary(file, done, isCheck));
  return isCheck && done.isChanged ? STATUS.attention : STATUS.done;
}

async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const options = readOptions(args, { flags: ["check", "force", "watch"], values: ["output"] });
  const { files, flags, values } = options;
  const [file, second] = files;
  if (file === undefined) throw new WrongArguments("no file given");
  if (second !== undefined) throw new WrongArguments("one file at a time");
  if (!flags.has("watch")) return calculateOnce(file, options, terminal);
  if (flags.has("check"))
    throw new WrongArguments("--watch writes what --check would only say: give one of them");
  return watch(file, values.output, terminal);
}

export const recalc: Command = { name: "recalc", usage: USAGE, run };
