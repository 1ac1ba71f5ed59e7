import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { kept } from "../kept";

/** True where LibreOffice is at hand; tests that need it are skipped elsewhere. */
export const hasLibreOffice: boolean = spawnSync("soffice", ["--version"]).status === 0;

/** Every sheet in a file of its own, comma, quotes where needed, UTF-8, values as shown. */
export const CSV_OF_ALL_SHEETS =
  "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1";

let profile: string | undefined;

/** One profile for all conversions of a process: making one anew takes LibreOffice longer than most of them. */
function profileFolder(): string {
  if (profile !== undefined) return profile;
  const made = mkdtempSync(join(tmpdir(), "office-profile-"));
  process.once("exit", () => rmSync(made, { recursive: true, force: true }));
  profile = made;
  return made;
}

/** Files by name, as LibreOffice reads and writes them. */
export type Files = ReadonlyMap<string, Uint8Array>;

/**
 * Opens files in LibreOffice without a screen and saves each in another form. Starting it takes longer than most files:
 * those that take the same form go together.
 *
 * @param form - As after `--convert-to`.
 * @param filter - As after `--infilter=`, for a form that needs to be told how it is read.
 * @returns What it wrote, by file name.
 */
export function allConverted(files: Files, form: string, filter?: string): Map<string, Buffer> {
  const folder = mkdtempSync(join(tmpdir(), "office-"));
  try {
    const out = join(folder, "out");
    mkdirSync(out);
    for (const [name, bytes] of files) writeFileSync(join(folder, name), bytes);
    const { status, stderr } = spawnSync(
      "soffice",
      [
        `-env:UserInstallation=${pathToFileURL(profileFolder())}`,
        "--headless",
        ...(filter === undefined ? [] : [`--infilter=${filter}`]),
        "--convert-to",
        form,
        "--outdir",
        out,
        ...[...files.keys()].map((name) => join(folder, name)),
      ],
      { encoding: "utf8", timeout: 240_000 },
    );
    if (status !== 0) throw new Error(`LibreOffice: ${stderr}`);
    return new Map(readdirSync(out).map((file) => [file, readFileSync(join(out, file))]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The same of one file. */
export const converted = (name: string, bytes: Uint8Array, form: string, filter?: string) =>
  allConverted(new Map([[name, bytes]]), form, filter);

/** A file as LibreOffice prints it, for all tests that look at the same one. */
export function printed(name: string, bytes: Uint8Array): Promise<Uint8Array> {
  const digest = createHash("sha256").update(bytes).digest("hex");
  return kept(`printed ${name} ${digest}`, () => {
    const [pdf] = converted(name, bytes, "pdf").values();
    if (pdf === undefined) throw new Error(`LibreOffice printed nothing of ${name}`);
    return pdf;
  });
}

/** True where the words of a PDF can be read. */
export const hasPdfToText: boolean = spawnSync("pdftotext", ["-v"]).status === 0;

/** The words of a PDF, in the places where they are printed. */
export function wordsOf(pdf: Uint8Array): string {
  const { status, stdout } = spawnSync("pdftotext", ["-layout", "-", "-"], { input: pdf, encoding: "utf8" });
  if (status !== 0) throw new Error("pdftotext cannot read the PDF");
  return stdout;
}
