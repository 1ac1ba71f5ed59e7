import { COMPUTED_BY } from "../../workbook/share/provenance";
import { TOLERANCE } from "../../workbook/share/verify/agreement";
import { remarkGroups } from "../../workbook/share/verify/told";
import { type SignatureFound, type Verification, verifyCopy } from "../../workbook/share/verify/verify-copy";
import { readWhole } from "../files";
import { readOptions, WrongArguments } from "../options";
import { counted, listedRemarks } from "../remarks";
import { type Command, progressLine, STATUS, type Terminal } from "../run-command";

const USAGE = `Usage: verify [--tolerance PART] [--key PUBLIC] LIVE.xlsx COPY.xlsx
Recalculates LIVE.xlsx, makes the copy again and compares all that the shared copy shows with it: values, number
formats, colours, hidden rows and columns, merged cells, notes, and what Provenance says; it checks the SHA-256 that
the copy states and its signature. Numbers agree when they lie within PART of the larger one, and at the least of 1
(${TOLERANCE} unless given). Neither file is written. The SHA-256 alone is no signature: whoever alters a copy can
calculate it again. State says apart whether the copy was altered, answered in the cells that are open for that, saved
again by another program, and whether the plan changed since. --key holds the signature against the sender's public key.
Exit status: 0 all agrees, 1 something differs, 2 wrong arguments or a file refused.
`;

function origin({ computedBy, isThisVersion, date }: Verification): string {
  if (computedBy === undefined) return "The copy has no Provenance sheet that says what calculated it.\n";
  const given = date === undefined ? "" : `, date given by the sender: ${date}`;
  const here = isThisVersion ? ", as here" : `; here: ${COMPUTED_BY}`;
  return `Calculated by ${computedBy}${here}${given}\n`;
}

const DIGESTS: Readonly<Record<Verification["digest"], string>> = {
  "as stated": "SHA-256: as stated\n",
  "not as stated": "SHA-256: NOT as stated; the copy was changed after it was made\n",
  "not stated": "SHA-256: not stated\n",
};

const SIGNATURES: Readonly<Record<SignatureFound, string>> = {
  none: "",
  good: "Signature: right for the key ",
  "another key": "Signature: NOT by the key given, but by ",
  wrong: "Signature: WRONG or missing\n",
};

function signatureWords({ signatureFound, key = "" }: Verification): string {
  const words = SIGNATURES[signatureFound];
  return words.endsWith("\n") || words === "" ? words : `${words}${key}\n`;
}

/** What became of the copy, told apart: whatever of it is true. */
function stateWords(found: Verification): string {
  const { answers, isAltered, isSavedElsewhere, isPlanChanged } = found;
  const states = [
    ...(isAltered ? ["altered: the copy shows what the sender did not make"] : []),
    ...(answers > 0 ? [`answered: ${counted(answers, "cell")} filled in; collect takes them`] : []),
    ...(isPlanChanged ? ["plan changed since: the copy is as it was made"] : []),
    ...(isSavedElsewhere ? ["saved again by another program"] : []),
  ];
  return `State: ${states.length === 0 ? "as it was made" : states.join("; ")}\n`;
}

const sheetsOnly = (where: string, names: readonly string[]) =>
  names.length === 0 ? "" : `Sheets only in the ${where}: ${names.join(", ")}\n`;

/** Sheets left out on purpose are told apart from sheets that someone took out later. */
function leftOut({ sheetsOfLive, leftOut: count }: Verification): string {
  const isStated = count === sheetsOfLive.length;
  return isStated && count > 0
    ? `Left out by the sender: ${counted(count, "sheet")}\n`
    : sheetsOnly(`live workbook (the copy says ${count} left out)`, sheetsOfLive);
}

function summary(file: string, found: Verification): string {
  const differ = found.differences.length;
  return (
    `${file}: ${counted(found.cells, "value")} compared, ${differ === 0 ? "none differs" : `${differ} differ`}\n` +
    stateWords(found) +
    origin(found) +
    DIGESTS[found.digest] +
    signatureWords(found) +
    leftOut(found) +
    sheetsOnly("copy", found.sheetsOfCopy) +
    remarkGroups(found)
      .map(({ title, remarks }) => listedRemarks(title, remarks))
      .join("")
  );
}

function toleranceIn(text: string | undefined): number {
  if (text === undefined) return TOLERANCE;
  const tolerance = Number(text);
  if (text.trim() !== "" && tolerance >= 0 && tolerance < 1) return tolerance;
  throw new WrongArguments(`--tolerance is ${text}; give a part from 0 up to 1, such as 0.001`);
}

async function run(args: readonly string[], terminal: Terminal): Promise<number> {
  const { files, values } = readOptions(args, { flags: [], values: ["tolerance", "key"] });
  const [live, copy, third] = files;
  if (live === undefined || copy === undefined || third !== undefined)
    throw new WrongArguments("give two files: the live workbook and the copy");
  const tolerance = toleranceIn(values.tolerance);
  const [ours, theirs] = [readWhole(live), readWhole(copy)];
  const found = await verifyCopy(ours.bytes, theirs.bytes, {
    tolerance,
    ...(values.key === undefined ? {} : { key: values.key }),
    onProgress: progressLine("verify", terminal),
  });
  terminal.write(summary(copy, found));
  return found.isSound ? STATUS.done : STATUS.attention;
}

export const verify: Command = { name: "verify", usage: USAGE, run };
