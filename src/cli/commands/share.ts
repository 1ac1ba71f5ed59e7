import { existsSync, realpathSync } from "node:fs";
import { basename, extname, join } from "node:path";
import { csvFiles } from "../../workbook/share/csv";
import { type ShareCopy, shareCopy } from "../../workbook/share/share-copy";
import { type FileRead, makeFolder, readWhole, writeWhole } from "../files";
import { readOptions, WrongArguments } from "../options";
import { counted, listedRemarks } from "../remarks";
import { type Command, progressLine, STATUS, type Terminal } from "../run-command";

const USAGE = `Usage: share [--date TEXT] [--sheets "NAME, NAME"] [-o COPY.xlsx] [--csv FOLDER] FILE.xlsx
Makes a copy that holds values only, for someone without the add-in: "FILE for sharing.xlsx" beside the file, unless
-o (--output) names another. Every formula, ours or not, becomes a value and a note; the sheet Provenance says where
the values come from, with the date that you give. The heat-treat order and the steel order stand first.
--sheets shares only the sheets named, and nothing of the others: a supplier needs no costs.
--csv also writes each sheet of the copy as a CSV file into a folder; a text that a spreadsheet program would run as
a formula gets an apostrophe in front.
Exit status: 0 done, 1 done but some cells hold errors, 2 wrong arguments or a file refused.
`;

function copyName(file: string): string {
  const ending = extname(file);
  return `${file.slice(0, file.length - ending.length)} for sharing${ending || ".xlsx"}`;
}

function summary(output: string, { formulas, digest, left, errors, hidden, leftOut }: ShareCopy): string {
  const without = leftOut === 0 ? "" : `, ${counted(leftOut, "sheet")} left out`;
  const warning =
    hidden.length === 0
      ? ""
      : `Hidden sheets are in the copy, and whoever gets it can show them: ${hidden.join(", ")}\n`;
  return (
    `${output}: ${counted(formulas, "formula")} replaced by values${without}\nSHA-256 of the values ${digest}\n${warning}` +
    listedRemarks("Not computed here, value as it stood:", left) +
    listedRemarks("Errors:", errors)
  );
}

/** Writes the sheets of a copy into a folder. @returns A line that says so. */
function writeCsv(folder: string, bytes: Uint8Array): string {
  const files = csvFiles(bytes);
  makeFolder(folder);
  for (const { name, text } of files) writeWhole(join(folder, name), new TextEncoder().encode(text));
  return `${folder}: ${counted(files.length, "CSV file")}\n`;
}

function refuseSamePlace(read: FileRead, output: string): void {
  if (existsSync(output) && realpathSync(output) === read.path)
    throw new WrongArguments("the copy would replace the workbook itself: give it another name");
}

async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const { files, values } = readOptions(args, { flags: [], values: ["output", "date", "sheets", "csv"] });
  const [file, second] = files;
  if (file === undefined) throw new WrongArguments("no file given");
  if (second !== undefined) throw new WrongArguments("one file at a time");
  const read = readWhole(file);
  const output = values.output ?? copyName(file);
  refuseSamePlace(read, output);
  const copy = await shareCopy(read.bytes, {
    date: values.date ?? "",
    source: basename(file),
    ...(values.sheets === undefined ? {} : { sheets: values.sheets.split(",") }),
    onProgress: progressLine("share", terminal),
  });
  writeWhole(output, copy.bytes);
  const csv = values.csv === undefined ? "" : writeCsv(values.csv, copy.bytes);
  terminal.write(summary(output, copy) + csv);
  return copy.errors.length === 0 ? STATUS.done : STATUS.attention;
}

export const share: Command = { name: "share", usage: USAGE, run };
