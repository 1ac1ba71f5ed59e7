import { contentTypeOf } from "./content-types";
import { FileRefusal } from "./file-refusal";
import { Package } from "./package";
import { relationshipsOf } from "./relationships";

const COMPOUND_FILE = [0xd0, 0xcf, 0x11, 0xe0];
const ZIP = [0x50, 0x4b];
/** Parts that hold macros; a type that allows them says nothing of whether there are any. */
const MACROS = /(?:^|\/)(?:vbaProject\.bin|macrosheets\/)/i;
const LARGEST_FILE = 128 * 2 ** 20;

const startsWith = (bytes: Uint8Array, signature: readonly number[]) =>
  signature.every((byte, index) => bytes[index] === byte);

/** True where the UTF-16 text stands somewhere in the bytes, as names do in a compound file. */
function holdsWide(bytes: Uint8Array, text: string): boolean {
  const wanted = [...text].flatMap((letter) => [letter.charCodeAt(0), 0]);
  const first = wanted[0] ?? 0;
  for (let at = bytes.indexOf(first); at >= 0; at = bytes.indexOf(first, at + 1)) {
    if (wanted.every((byte, index) => bytes[at + index] === byte)) return true;
  }
  return false;
}

function refuseOtherKinds(bytes: Uint8Array): void {
  if (bytes.length > LARGEST_FILE)
    throw new FileRefusal(`The file has ${Math.round(bytes.length / 2 ** 20)} MB; at most 128 MB are read.`);
  if (startsWith(bytes, COMPOUND_FILE)) {
    throw new FileRefusal(
      holdsWide(bytes, "EncryptedPackage")
        ? "The workbook is locked with a password to open it: remove the password in the spreadsheet program first."
        : "The file is an old .xls workbook: save it as .xlsx first.",
    );
  }
  if (!startsWith(bytes, ZIP)) throw new FileRefusal("The file is not an .xlsx workbook.");
}

function mainPart(file: Package): string {
  if (file.has("mimetype"))
    throw new FileRefusal("The file is an OpenDocument file: save it as .xlsx first.");
  const main = relationshipsOf(file, "").find(({ kind }) => kind === "officeDocument")?.part;
  if (main === undefined) throw new FileRefusal("The file is a zip, but not an .xlsx workbook.");
  return main;
}

/**
 * Opens a workbook file.
 *
 * @returns Its parts, and the name of the part that lists the sheets.
 * @throws FileRefusal for a file that is no .xlsx workbook, or one with a password, with macros, too large or damaged.
 */
export function openWorkbook(bytes: Uint8Array): { readonly file: Package; readonly main: string } {
  refuseOtherKinds(bytes);
  const file = new Package(bytes);
  const main = mainPart(file);
  const type = contentTypeOf(file, main) ?? "";
  if (file.names().some((name) => MACROS.test(name)))
    throw new FileRefusal(
      "The workbook holds macros, which are never touched: save it as .xlsx without macros first.",
    );
  if (/binary/i.test(type))
    throw new FileRefusal("The file is a binary .xlsb workbook: save it as .xlsx first.");
  if (!/spreadsheetml|vnd\.ms-excel\.(?:sheet|template)\.macroEnabled|^$/.test(type))
    throw new FileRefusal("The file is an Office file, but not a workbook.");
  return { file, main };
}
