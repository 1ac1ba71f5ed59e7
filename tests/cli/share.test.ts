import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { share } from "../../src/cli/commands/share";
import { verify } from "../../src/cli/commands/verify";
import type { Command } from "../../src/cli/run-command";
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
  const shared = await run(share, "--date", "25 November 2026", "--csv", join(folder, "csv"), live);
  // The sample holds a steel that is in no table, on purpose.
  expect(shared).toMatchObject({ status: 1, stderr: "" });
  expect(shared.stdout).toMatch(
    /plan for sharing\.xlsx: 17 formulas replaced by values\nSHA-256 of the values [0-9a-f]{64}\n/,
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
  expect(other.status).toBe(1);
  expect(other.stdout).toContain("no Provenance sheet");
}, 120_000);

it("refuses wrong arguments and files, each with a sentence, and never writes over the workbook", async () => {
  const live = join(folder, "live.xlsx");
  copyFileSync(SAMPLE, live);
  symlinkSync(live, join(folder, "link.xlsx"));
  const cases = [
    [await run(share), "no file given"],
    [await run(share, live, live), "one file at a time"],
    [await run(share, "-o", join(folder, "link.xlsx"), live), "replace the workbook itself"],
    [await run(share, "--sheets", "Prices", live), "It has: Plan lines, Notes."],
    [await run(share, join(folder, "none.xlsx")), "there is no such file"],
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
