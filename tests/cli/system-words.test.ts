import { execFileSync } from "node:child_process";
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  rmSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { constants, tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { calc } from "../../src/cli/commands/calc";
import { collect } from "../../src/cli/commands/collect";
import { recalc } from "../../src/cli/commands/recalc";
import { share } from "../../src/cli/commands/share";
import { template } from "../../src/cli/commands/template";
import { verify } from "../../src/cli/commands/verify";
import { reasonOf } from "../../src/cli/files";
import type { Command } from "../../src/cli/run-command";
import { outcome } from "./in-process";

const SAMPLE = resolve(import.meta.dirname, "../workbook/files/written-by-openpyxl.xlsx");
const folder = mkdtempSync(join(tmpdir(), "system-words-"));
const at = (name: string) => join(folder, name);
const good = at("good.xlsx");

beforeAll(() => {
  copyFileSync(SAMPLE, good);
  mkdirSync(at("folder.xlsx"));
  symlinkSync(at("loop.xlsx"), at("loop.xlsx"));
  execFileSync("mkfifo", [at("pipe.xlsx")]);
  writeFileSync(at("large.xlsx"), "");
  // A file with a hole: it takes no room on the disk.
  truncateSync(at("large.xlsx"), 129 * 2 ** 20);
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Names that lead to no file, and a word of the sentence that each is answered with. */
const NOT_READ: Readonly<Record<string, string>> = {
  "missing.xlsx": "there is no such file",
  "folder.xlsx": "it is a folder",
  "loop.xlsx": "the link leads back to itself",
  "pipe.xlsx": "a pipe or a device",
  "large.xlsx": "at most 128 MB are read",
  "good.xlsx/below.xlsx": "a part of its path is a file",
  [`${"a".repeat(300)}.xlsx`]: "the name is too long",
};
const NOT_WRITTEN: Readonly<Record<string, string>> = {
  "no such folder/out.xlsx": "there is no such file",
  "folder.xlsx": "it is a folder",
  "good.xlsx/below.xlsx": "a part of its path is a file",
  [`${"a".repeat(300)}.xlsx`]: "the name is too long",
};

/** Every command with every place in which it takes a file to read, or to write. */
const READING: readonly (readonly [what: string, command: Command, args: (file: string) => string[]])[] = [
  ["calc --table", calc, (file) => ["--table", file, "=ROWS(TABLE)"]],
  ["recalc", recalc, (file) => [file]],
  ["recalc --watch", recalc, (file) => ["--watch", file]],
  ["share", share, (file) => ["--all", file]],
  ["share --sign", share, (file) => ["--all", "--sign", file, "-o", at("signed.xlsx"), good]],
  ["verify, the plan", verify, (file) => [file, good]],
  ["verify, the copy", verify, (file) => [good, file]],
  ["collect, the plan", collect, (file) => [file, good]],
  ["collect, the answer", collect, (file) => [good, file]],
  ["template --from", template, (file) => ["--from", file, "--lines", "2", "-o", at("made.xlsx")]],
];
const WRITING: readonly (readonly [what: string, command: Command, args: (file: string) => string[]])[] = [
  ["recalc", recalc, (file) => ["--force", "--output", file, good]],
  ["share", share, (file) => ["--force", "--all", "-o", file, good]],
  [
    "share --csv",
    share,
    (file) => ["--force", "--all", "-o", at("copy.xlsx"), "--csv", join(file, "csv"), good],
  ],
  ["share --new-key", share, (file) => ["--new-key", file]],
  ["template", template, (file) => ["--force", "--output", file]],
];

/** Codes of the system, its calls, and the lines of a stack: words of the machine. */
const MACHINE = /\b(?:E[A-Z]{3,}|ERR_[A-Z_]+|errno|syscall)\b|\n\s+at /;

async function refused(command: Command, args: readonly string[]): Promise<string> {
  const { status, stderr } = await outcome(command, args);
  expect(status, args.join(" ")).toBe(2);
  expect(stderr).not.toMatch(MACHINE);
  return stderr;
}

describe.each(READING)("%s of a file that is none", (_what, command, args) => {
  test.each(Object.entries(NOT_READ))("%s: %s", async (name, words) => {
    expect(await refused(command, args(at(name)))).toContain(words);
  });
});

describe.each(WRITING)("%s to a place that is none", (what, command, args) => {
  const places = Object.entries(NOT_WRITTEN).filter(
    // A folder of CSV files may be made, and made inside another.
    ([name]) => what !== "share --csv" || !["folder.xlsx", "no such folder/out.xlsx"].includes(name),
  );
  test.each(places)("%s", async (name, words) => {
    const said = await refused(command, args(at(name)));
    expect(said.includes(words) || said.includes("is there already"), said).toBe(true);
  });
});

test("no code that the system knows is shown as it is", () => {
  for (const code of Object.keys(constants.errno)) {
    const reason = reasonOf(Object.assign(new Error(`${code}: raw words, open 'x'`), { code }));
    expect(reason).not.toMatch(MACHINE);
    expect(reason).not.toContain("raw words");
  }
  for (const code of ["EFBIG", "ERR_FS_FILE_TOO_LARGE"])
    expect(reasonOf(Object.assign(new Error("raw"), { code }))).toBe("the file is too large.");
});

test("what the system refuses outside the reading and writing of whole files is a sentence as well", async () => {
  const failing: Command = {
    name: "failing",
    usage: "",
    run: () => {
      throw Object.assign(new Error("EFBIG: raw words"), {
        code: "EFBIG",
        syscall: "write",
        path: "plan.xlsx",
      });
    },
  };
  expect(await outcome(failing, [])).toEqual({
    status: 2,
    stdout: "",
    stderr: "failing: plan.xlsx: the file is too large.\n",
  });
});
