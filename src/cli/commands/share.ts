import { existsSync, realpathSync } from "node:fs";
import { basename, extname, join } from "node:path";
import { FileRefusal } from "../../workbook/file/package/file-refusal";
import { AUDIENCES, type Choice } from "../../workbook/share/audience";
import { csvFiles } from "../../workbook/share/csv";
import { registered, sendingOf } from "../../workbook/share/register";
import { type ShareCopy, shareCopy } from "../../workbook/share/share-copy";
import { shareList } from "../../workbook/share/share-report";
import { newKeyPair, type Signer, signerFrom } from "../../workbook/share/signature";
import { dateSerial } from "../../workbook/sheets/parts/table-sheet";
import {
  type FileRead,
  makeFolder,
  readWhole,
  refuseExisting,
  refuseOpenWorkbook,
  writePrivate,
  writeWhole,
} from "../files";
import { type Options, readOptions, WrongArguments } from "../options";
import { counted, listedRemarks } from "../remarks";
import { type Command, progressLine, STATUS, type Terminal } from "../run-command";

const WHOM = AUDIENCES.map(({ word }) => word).join(", ");

const USAGE = `Usage: share --for WHOM [options] FILE.xlsx            the sheets that concern one: ${WHOM}
       share --for WHOM NAME [options] FILE.xlsx       of a planning workbook, the lines of that one alone
       share --for supplier NAME [--lines L1,L4] ...     an enquiry to any supplier about all lines, or about these
       share --sheets "NAME, NAME" [options] FILE.xlsx   the sheets named
       share --all [options] FILE.xlsx                   every sheet that can be seen
       share --new-key KEY.json                          make a pair of keys to sign copies with
Options: [--date TEXT] [--by TEXT] [-o COPY.xlsx] [--csv FOLDER] [--sign KEY.json] [--force]
         [--no-register]
Makes a copy that holds values only, for someone without the add-in: "FILE for sharing.xlsx" beside the file, unless
-o (--output) names another. The copy is a new file made from values, looks and print set-up of the sheets chosen and
from formulas, as notes, that read cells of these sheets only; a list of all that travels is printed before anything is
written. The sheet Provenance says where the values come from, with the date that you give.
Of a planning workbook, --for adds a table on which the other side answers: price, heat number, readings and the like.
Only its shaded cells are not locked; --by says until when. --sheets beside --for takes only those of the papers.
A supplier whom the plan does not buy from yet gets an enquiry about all lines; --lines chooses them, for any supplier.
The answers come home with collect.
--csv also writes each sheet of the copy as a CSV file into a folder; a text that a spreadsheet program would run as
a formula gets an apostrophe in front.
--sign signs the copy; whoever has your public key can hold it against that with verify --key.
A plan with a sheet Register gets a row for the copy: day, whom, papers, revision, file, SHA-256; --no-register leaves
the plan alone.
--force writes over files that are there.
Exit status: 0 done, 1 done but some cells hold errors, 2 wrong arguments or a file refused.
`;

function copyName(file: string): string {
  const ending = extname(file);
  return `${file.slice(0, file.length - ending.length)} for sharing${ending || ".xlsx"}`;
}

const travelList = (copy: ShareCopy): string =>
  `What travels:\n${shareList(copy)
    .map((line) => `  ${line}\n`)
    .join("")}`;

function summary(output: string, { formulas, digest, left, errors, leftOut }: ShareCopy): string {
  const without = leftOut === 0 ? "" : `, ${counted(leftOut, "sheet")} left out`;
  return (
    `${output}: ${counted(formulas, "formula")} replaced by values${without}\nSHA-256 ${digest}\n` +
    listedRemarks("Not computed here, value as it stood:", left) +
    listedRemarks("Errors:", errors)
  );
}

/** Writes the sheets of a copy into a folder. @returns A line that says so. */
function writeCsv(folder: string, bytes: Uint8Array, isForced: boolean): string {
  const files = csvFiles(bytes).map(({ name, text }) => ({ path: join(folder, name), text }));
  for (const { path } of files) refuseExisting(path, isForced);
  makeFolder(folder);
  for (const { path, text } of files) writeWhole(path, new TextEncoder().encode(text));
  return `${folder}: ${counted(files.length, "CSV file")}\n`;
}

function refuseSamePlace(read: FileRead, output: string): void {
  if (existsSync(output) && realpathSync(output) === read.path)
    throw new WrongArguments("the copy would replace the workbook itself: give it another name");
}

/** @param name - Of the one whose lines alone travel. */
function choiceIn({ flags, values }: Options, name: string | undefined): Choice {
  const { sheets, for: whom } = values;
  const given = [flags.has("all"), sheets !== undefined || whom !== undefined].filter(Boolean).length;
  if (given !== 1)
    throw new WrongArguments(
      `say what is shared: --for ${WHOM.replaceAll(", ", "|")}, --sheets "NAME, NAME", or --all for everything`,
    );
  const names = sheets?.split(",");
  const enquiry = values.lines?.split(",").map((line) => line.trim());
  if (enquiry !== undefined && (name === undefined || whom === undefined))
    throw new WrongArguments("--lines are those of an enquiry to one: --for supplier NAME --lines L1,L4");
  if (whom !== undefined)
    return { kind: "for", whom, ...(name && { name }), ...(names && { names }), ...(enquiry && { enquiry }) };
  return names === undefined ? { kind: "all" } : { kind: "sheets", names };
}

/** The file stands last; a name in front of it belongs to `--for`. */
function fileAndName({ files, values }: Options): {
  readonly file: string;
  readonly name: string | undefined;
} {
  const [name, file, third] = files.length === 1 ? [undefined, ...files] : files;
  if (file === undefined) throw new WrongArguments("no file given");
  if (third !== undefined || (name !== undefined && values.for === undefined))
    throw new WrongArguments("one file at a time");
  return { file, name };
}

async function makeKey(file: string, isForced: boolean, terminal: Terminal): Promise<number> {
  refuseExisting(file, isForced);
  const { privateText, publicKey } = await newKeyPair();
  writePrivate(file, new TextEncoder().encode(privateText));
  terminal.write(
    `${file}: private key, for you alone: whoever has it can sign in your name\nPublic key, for those who verify: ${publicKey}\n`,
  );
  return STATUS.done;
}

function signerIn(file: string | undefined): Promise<Signer> | undefined {
  return file === undefined ? undefined : signerFrom(new TextDecoder().decode(readWhole(file).bytes));
}

/** Notes the copy in the register of the plan; a plan that cannot be written now is told, the copy stands. */
async function register(
  read: FileRead,
  copy: ShareCopy,
  {
    output,
    name,
    values,
  }: { readonly output: string; readonly name: string | undefined } & Pick<Options, "values">,
  terminal: Terminal,
): Promise<void> {
  const sent = values.date ?? dateSerial(new Date().toISOString().slice(0, 10));
  const answerBy = values.by ?? "";
  const sending = sendingOf(copy, { word: values.for, name }, { sent, file: basename(output), answerBy });
  try {
    const plan = await registered(read.bytes, sending);
    if (plan === undefined) return;
    refuseOpenWorkbook(read.path);
    writeWhole(read.path, plan, read);
    terminal.write("Noted in the register of the plan.\n");
  } catch (problem) {
    if (!(problem instanceof FileRefusal)) throw problem;
    terminal.complain(`share: not noted in the register of the plan: ${problem.message}\n`);
  }
}

async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const options = readOptions(args, {
    flags: ["all", "force", "no-register"],
    values: ["output", "date", "by", "sheets", "for", "lines", "csv", "sign", "new-key"],
  });
  const { flags, values } = options;
  const isForced = flags.has("force");
  const newKey = values["new-key"];
  if (newKey !== undefined) return makeKey(newKey, isForced, terminal);
  const { file, name } = fileAndName(options);
  const choice = choiceIn(options, name);
  const read = readWhole(file);
  const output = values.output ?? copyName(file);
  refuseSamePlace(read, output);
  refuseExisting(output, isForced);
  const signer = await signerIn(values.sign);
  const copy = await shareCopy(read.bytes, {
    date: values.date ?? "",
    by: values.by ?? "",
    source: basename(file),
    choice,
    ...(signer && { signer }),
    onProgress: progressLine("share", terminal),
  });
  terminal.write(travelList(copy));
  const csv = values.csv === undefined ? "" : writeCsv(values.csv, copy.bytes, isForced);
  writeWhole(output, copy.bytes);
  terminal.write(summary(output, copy) + csv);
  if (!flags.has("no-register")) await register(read, copy, { output, name, values }, terminal);
  return copy.errors.length === 0 ? STATUS.done : STATUS.attention;
}

export const share: Command = { name: "share", usage: USAGE, run };
