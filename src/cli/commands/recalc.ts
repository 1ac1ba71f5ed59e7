import { type Recalculation, recalculate } from "../../workbook/file/patch/recalculate";
import { type FileRead, readWhole, refuseExisting, refuseOpenWorkbook, writeWhole } from "../files";
import { readOptions, WrongArguments } from "../options";
import { counted, listedRemarks } from "../remarks";
import { type Command, progressLine, STATUS, type Terminal } from "../run-command";

const USAGE = `Usage: recalc FILE.xlsx                     calculate every formula anew and write the values into the file
       recalc --output OTHER.xlsx FILE.xlsx  write into another file; with --force also over one that is there
       recalc --check FILE.xlsx              write nothing; say whether anything would change
With LibreOffice alone: write a plan with template, fill it in there, save it as .xlsx, close it, run recalc, open it
again. The workbench is the shorter way: it opens the file and calculates as you type.
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

async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const { files, flags, values } = readOptions(args, { flags: ["check", "force"], values: ["output"] });
  const [file, second] = files;
  if (file === undefined) throw new WrongArguments("no file given");
  if (second !== undefined) throw new WrongArguments("one file at a time");
  const read = readWhole(file);
  const isCheck = flags.has("check");
  const output = values.output;
  if (!isCheck) refuseTaken(read, output, flags.has("force"));
  const done = await recalculate(read.bytes, progressLine("recalc", terminal));
  if (!isCheck && output !== undefined) writeWhole(output, done.bytes);
  if (!isCheck && output === undefined && done.isChanged) writeWhole(file, done.bytes, read);
  terminal.write(summary(file, done, isCheck));
  return isCheck && done.isChanged ? STATUS.attention : STATUS.done;
}

export const recalc: Command = { name: "recalc", usage: USAGE, run };
