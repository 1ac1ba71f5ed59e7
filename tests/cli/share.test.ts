import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { recalc } from "../../src/cli/commands/recalc";
import { share } from "../../src/cli/commands/share";
import { template } from "../../src/cli/commands/template";
import { verify } from "../../src/cli/commands/verify";
import type { Command } from "../../src/cli/run-command";
import { newKeyPair } from "../../src/workbook/share/signature";
import { outcome } from "./in-process";

const ROOT = resolve(import.meta.dirname, "../..");
const SAMPLE = join(ROOT, "tests/workbook/files/written-by-openpyxl.xlsx");
let folder = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "share-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const run = (command: Command, ...args: string[]) => outcome(command, args);

it("shares beside the workbook, leaves it alone, and the copy verifies", async () => {
  const live = join(folder, "plan.xlsx");
  copyFileSync(SAMPLE, live);
  const shared = await run(share, "--all", "--date", "25 November 2026", "--csv", join(folder, "csv"), live);
  // The sample holds a steel that is in no table, on purpose.
  expect(shared).toMatchObject({ status: 1, stderr: "" });
  expect(shared.stdout).toMatch(
    /plan for sharing\.xlsx: 17 formulas replaced by values\nSHA-256 [0-9a-f]{64}\n/,
  );
  expect(shared.stdout).toContain('Plan lines!B4  #N/A: "no such steel" is not in the grade table');
  expect(readFileSync(live).equals(readFileSync(SAMPLE))).toBe(true);
  expect(readdirSync(folder).sort()).toEqual(["csv", "plan for sharing.xlsx", "plan.xlsx"]);
  expect(readdirSync(join(folder, "csv")).sort()).toEqual(["Notes.csv", "Plan lines.csv", "Provenance.csv"]);
  const copy = join(folder, "plan for sharing.xlsx");
  const verified = await run(verify, live, copy);
  expect(verified).toMatchObject({ status: 0, stderr: "" });
  expect(verified.stdout).toContain("none differs");
  expect(verified.stdout).toContain("date given by the sender: 25 November 2026");
  const other = await run(verify, copy, live);
  expect(other.status).toBe(2);
  expect(other.stderr).toContain("it is a copy itself");
}, 120_000);

it("refuses wrong arguments and files, each with a sentence, and never writes over the workbook", async () => {
  const live = join(folder, "live.xlsx");
  copyFileSync(SAMPLE, live);
  symlinkSync(live, join(folder, "link.xlsx"));
  const cases = [
    [await run(share), "no file given"],
    [await run(share, live, live), "one file at a time"],
    [await run(share, live), "say what is shared"],
    [await run(share, "--all", "--for", "customer", live), "say what is shared"],
    [await run(share, "--for", "customer", live), "no sheet for the customer"],
    [await run(share, "--all", "--sign", live, live), "holds no private key"],
    [await run(share, "--all", "-o", join(folder, "link.xlsx"), live), "replace the workbook itself"],
    [await run(share, "--sheets", "Prices", live), "It has: Plan lines, Notes."],
    [await run(share, "--all", join(folder, "none.xlsx")), "there is no such file"],
    [await run(verify, live), "give two files"],
    [await run(verify, "--tolerance", "5", live, live), "a part from 0 up to 1"],
    [await run(verify, live, join(ROOT, "README.md")), "not an .xlsx workbook"],
  ] as const;
  for (const [{ status, stdout, stderr }, words] of cases) {
    expect({ status, stdout }, words).toEqual({ status: 2, stdout: "" });
    expect(stderr).toContain(words);
  }
  expect(readFileSync(live).equals(readFileSync(SAMPLE))).toBe(true);
}, 120_000);

it("writes over nothing that is there unless told so, and lists what travels before it writes", async () => {
  const live = join(folder, "keep.xlsx");
  const plan = join(folder, "other plan.xlsx");
  copyFileSync(SAMPLE, live);
  copyFileSync(SAMPLE, plan);
  const before = readFileSync(plan);
  const csv = join(folder, "csv kept");
  mkdirSync(csv);
  writeFileSync(join(csv, "Notes.csv"), "mine");
  for (const [command, args] of [
    [share, ["--all", "-o", plan, live]],
    [share, ["--all", "-o", join(folder, "new.xlsx"), "--csv", csv, live]],
    [share, ["--new-key", plan]],
    [recalc, ["--output", plan, live]],
    [template, ["--output", plan]],
  ] as const) {
    const { status, stderr } = await run(command, ...args);
    expect([status, stderr], command.name).toEqual([
      2,
      expect.stringContaining("give --force to write over it"),
    ]);
  }
  expect(readFileSync(plan).equals(before)).toBe(true);
  expect(readFileSync(join(csv, "Notes.csv"), "utf8")).toBe("mine");
  expect(existsSync(join(folder, "new.xlsx"))).toBe(false);
  const forced = await run(share, "--all", "--force", "-o", plan, "--csv", csv, live);
  expect(forced.stdout).toMatch(/^What travels:\n {2}Sheets: Plan lines, Notes \(/);
  expect(readFileSync(join(csv, "Notes.csv"), "utf8")).not.toBe("mine");
}, 120_000);

it("signs with a key made by command, and verify holds the signature against the public key", async () => {
  const [live, key, copy] = [
    join(folder, "sign.xlsx"),
    join(folder, "key.json"),
    join(folder, "signed.xlsx"),
  ];
  copyFileSync(SAMPLE, live);
  const made = await run(share, "--new-key", key);
  const [, publicKey = ""] = /: (ECDSA-P256 \S+)\n/.exec(made.stdout) ?? [];
  expect(statSync(key).mode & 0o077).toBe(0);
  await run(share, "--all", "--sign", key, "-o", copy, live);
  const right = await run(verify, "--key", publicKey, live, copy);
  expect([right.status, right.stdout]).toEqual([
    0,
    expect.stringContaining(`right for the key ${publicKey}`),
  ]);
  const other = await newKeyPair();
  const wrong = await run(verify, "--key", other.publicKey, live, copy);
  expect([wrong.status, wrong.stdout]).toEqual([1, expect.stringContaining("NOT by the key given")]);
}, 120_000);
