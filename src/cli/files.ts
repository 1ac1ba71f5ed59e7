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

function stateOf(path: string): string {
  const { mtimeMs, size, ino } = statSync(path);
  return `${mtimeMs} ${size} ${ino}`;
}

function reasonOf(problem: unknown): string {
  const code = (problem as NodeJS.ErrnoException).code;
  if (code === "ENOENT") return "there is no such file.";
  if (code === "EISDIR") return "it is a folder.";
  if (code === "EACCES" || code === "EPERM") return "you may not read or write there.";
  if (code === "ENOSPC") return "the disk is full.";
  return sentenceOf(problem);
}

function refusing<T>(file: string, action: () => T): T {
  try {
    return action();
  } catch (problem) {
    if (problem instanceof FileRefusal) throw problem;
    throw new FileRefusal(`${file}: ${reasonOf(problem)}`);
  }
}

/** Reads a file whole. @throws FileRefusal where that cannot be done. */
export function readWhole(file: string): FileRead {
  return refusing(file, () => {
    const path = realpathSync(file);
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
