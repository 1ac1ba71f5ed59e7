import { basename, extname } from "node:path";
import { type ShareCopy, shareCopy } from "../workbook/share/share-copy";
import { readWhole, writeWhole } from "./files";
import { readOptions, WrongArguments } from "./options";
import { counted, listedRemarks } from "./remarks";
import { progressLine, runCommand, STATUS } from "./run-command";

const USAGE = `Usage: share [--date TEXT] [--output COPY.xlsx] FILE.xlsx
Makes a copy that holds values only, for someone without the add-in: "FILE for sharing.xlsx" beside the file, unless
--output names another. Formulas become notes; the sheet Provenance says where the values come from, with the date
that you give. The heat-treat order and the steel order stand first.
Exit status: 0 done, 1 done but some cells hold errors, 2 wrong arguments or a file refused.
`;

function copyName(file: string): string {
  const ending = extname(file);
  return `${file.slice(0, file.length - ending.length)} for sharing${ending || ".xlsx"}`;
}

function summary(output: string, { formulas, digest, left, errors, hidden }: ShareCopy): string {
  const warning =
    hidden.length === 0
      ? ""
      : `Hidden sheets are in the copy, and whoever gets it can show them: ${hidden.join(", ")}\n`;
  return (
    `${output}: ${counted(formulas, "formula")} replaced by values\nSHA-256 of the values ${digest}\n${warning}` +
    listedRemarks("Not computed here, value as it stood:", left) +
    listedRemarks("Errors:", errors)
  );
}

async function share(args: readonly string[]): Promise<number> {
  const { files, values } = readOptions(args, { flags: [], values: ["output", "date"] });
  const [file, second] = files;
  if (file === undefined) throw new WrongArguments("no file given");
  if (second !== undefined) throw new WrongArguments("one file at a time");
  const read = readWhole(file);
  const copy = await shareCopy(read.bytes, {
    date: values.date ?? "",
    source: basename(file),
    onProgress: progressLine("share"),
  });
  const output = values.output ?? copyName(file);
  writeWhole(output, copy.bytes);
  process.stdout.write(summary(output, copy));
  return copy.errors.length === 0 ? STATUS.done : STATUS.attention;
}

runCommand("share", USAGE, share);
