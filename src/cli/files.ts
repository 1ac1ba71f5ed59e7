import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { sentenceOf } from "../core/refusal";
import { FileRefusal } from "../workbook/file/package/file-refusal";
import { WrongArguments } from "./options";

/** A file as it was read, with what tells whether someone else has written it since. */
export interface FileRead {
  /** Where the bytes really lie, links followed. */
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly state: string;
}

/** What tells one state of a file from another: when it was written, how long it is, which file it is. */
export function stateOf(path: string): string {
  const { mtimeMs, size, ino } = statSync(path);
  return `${mtimeMs} ${size} ${ino}`;
}

/** What the codes of the system mean to a reader. */
const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file.",
  EISDIR: "it is a folder.",
  EACCES: "you may not read or write there.",
  EPERM: "you may not read or write there.",
  ENOSPC: "the disk is full.",
  EDQUOT: "the disk is full.",
  ELOOP: "the link leads back to itself.",
  EFBIG: "the file is too large.",
  ERR_FS_FILE_TOO_LARGE: "the file is too large.",
  ENAMETOOLONG: "the name is too long.",
  ENOTDIR: "a part of its path is a file, not a folder.",
  EROFS: "the disk cannot be written to.",
  EMFILE: "too many files are open.",
  EEXIST: "a file of that name is there already.",
};

/** True of what the system itself could not do with a file. */
export const isSystemError = (thrown: unknown): thrown is NodeJS.ErrnoException =>
  thrown instanceof Error && "syscall" in thrown && "code" in thrown;

/** Why the system could not do it, in words. */
export function reasonOf(problem: unknown): string {
  const { code } = problem as NodeJS.ErrnoException;
  if (code === undefined) return sentenceOf(problem);
  return REASONS[code] ?? "it cannot be read or written.";
}

function refusing<T>(file: string, action: () => T): T {
  try {
    return action();
  } catch (problem) {
    if (problem instanceof FileRefusal) throw problem;
    throw new FileRefusal(`${file}: ${reasonOf(problem)}`);
  }
}

/** No file that is read is larger; one that is would fill memory before it is refused. */
const MAX_BYTES = 128 * 2 ** 20;

/** Refuses what is no file with an end: a pipe or a device would be waited for. */
function refuseEndless(file: string, path: string): void {
  const state = statSync(path);
  if (state.isDirectory()) throw new FileRefusal(`${file}: it is a folder.`);
  if (!state.isFile()) throw new FileRefusal(`${file}: it is a pipe or a device, not a file.`);
  if (state.size > MAX_BYTES)
    throw new FileRefusal(`${file}: it has ${Math.round(state.size / 2 ** 20)} MB; at most 128 MB are read.`);
}

/** Reads a file whole. @throws FileRefusal where that cannot be done. */
export function readWhole(file: string): FileRead {
  return refusing(file, () => {
    const path = realpathSync(file);
    refuseEndless(file, path);
    const state = stateOf(path);
    return { path, bytes: readFileSync(path), state };
  });
}

/** Refuses a place where a file stands already, unless it was said to write over it. */
export function refuseExisting(file: string, isForced: boolean): void {
  if (!isForced && existsSync(file))
    throw new WrongArguments(`${file} is there already: give --force to write over it, or another name`);
}

/** Writes a file that only its owner may read. @throws FileRefusal where that cannot be done. */
export function writePrivate(file: string, bytes: Uint8Array): void {
  writeWhole(file, bytes, undefined, 0o600);
}

/** Makes a folder unless it is there. @throws FileRefusal where that cannot be done. */
export function makeFolder(folder: string): void {
  refusing(folder, () => mkdirSync(folder, { recursive: true }));
}

/** Files that spreadsheet programs lay beside a workbook while they have it open. */
function lockBeside(path: string): string | undefined {
  const name = basename(path);
  return [`~$${name}`, `.~lock.${name}#`].find((lock) => existsSync(join(dirname(path), lock)));
}

/** Refuses a workbook that someone has open: their next save would undo ours. */
export function refuseOpenWorkbook(path: string): void {
  const lock = lockBeside(path);
  if (lock !== undefined) {
    throw new FileRefusal(
      `The workbook is open in a spreadsheet program: close it first. (If it is not open, delete ${lock} beside it.)`,
    );
  }
}

function writeAll(handle: number, bytes: Uint8Array): void {
  let written = 0;
  while (written < bytes.length) written += writeSync(handle, bytes, written);
}

/**
 * Writes a file in one step: at any moment either the old file or the whole new one stands at its place.
 *
 * @param access - Who may read it, where it is new.
 * @param replaced - The file as it was read, where it is written back: refused if it has changed meanwhile.
 */
export function writeWhole(file: string, bytes: Uint8Array, replaced?: FileRead, access = 0o644): void {
  const path = replaced?.path ?? file;
  const draft = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  refusing(file, () => {
    const mode = existsSync(path) && access === 0o644 ? statSync(path).mode & 0o777 : access;
    const handle = openSync(draft, "wx", mode);
    try {
      try {
        writeAll(handle, bytes);
        fsyncSync(handle);
      } finally {
        closeSync(handle);
      }
      if (replaced !== undefined && stateOf(path) !== replaced.state)
        throw new FileRefusal("The workbook was saved by someone else meanwhile: nothing was written.");
      renameSync(draft, path);
    } catch (problem) {
      rmSync(draft, { force: true });
      throw problem;
    }
  });
}
