import { type CellRemark, type Recalculation, recalculate } from "../workbook/xlsx/recalculate";
import { readWhole, refuseOpenWorkbook, writeWhole } from "./files";
import { readOptions, WrongArguments } from "./options";
import { progressLine, runCommand, STATUS } from "./run-command";

const USAGE = `Usage: recalc FILE.xlsx                     calculate every formula anew and write the values into the file
       recalc --output OTHER.xlsx FILE.xlsx  write into another file
       recalc --check FILE.xlsx              write nothing; say whether anything would change
Only values and broken names of our functions are written; everything else in the file stays as it is.
Exit status: 0 done (with --check: up to date), 1 with --check: out of date, 2 wrong arguments or a file refused.
`;

const SHOWN = 20;

function listed(title: string, remarks: readonly CellRemark[]): string {
  if (remarks.length === 0) return "";
  const lines = remarks.slice(0, SHOWN).map(({ sheet, cell, text }) => `  ${sheet}!${cell}  ${text}\n`);
  const more = remarks.length > SHOWN ? `  and ${remarks.length - SHOWN} more\n` : "";
  return `${title}\n${lines.join("")}${more}`;
}

const counted = (count: number, one: string, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;

function summary(file: string, done: Recalculation, isCheck: boolean): string {
  const { formulas, changed, repaired, left, cutShort, errors } = done;
  const verb = isCheck ? "would change" : "changed";
  const repairs =
    repaired === 0 ? "" : `, ${counted(repaired, "broken name")} ${isCheck ? "to repair" : "repaired"}`;
  return (
    `${file}: ${counted(formulas, "formula")}, ${counted(changed, "value")} ${verb}${repairs}\n` +
    listed("Left as they were:", left) +
    listed("Only the first value shown:", cutShort) +
    listed("Errors:", errors)
  );
}

async function recalc(args: readonly string[]): Promise<number> {
  const { files, flags, values } = readOptions(args, { flags: ["check"], values: ["output"] });
  const [file, second] = files;
  if (file === undefined) throw new WrongArguments("no file given");
  if (second !== undefined) throw new WrongArguments("one file at a time");
  const read = readWhole(file);
  const isCheck = flags.has("check");
  const output = values.output;
  if (!isCheck && output === undefined) refuseOpenWorkbook(read.path);
  const done = await recalculate(read.bytes, progressLine("recalc"));
  if (!isCheck && output !== undefined) writeWhole(output, done.bytes);
  if (!isCheck && output === undefined && done.isChanged) writeWhole(file, done.bytes, read);
  process.stdout.write(summary(file, done, isCheck));
  return isCheck && done.isChanged ? STATUS.attention : STATUS.done;
}

runCommand("recalc", USAGE, recalc);
