import {
  chmodSync,
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { recalc as command } from "../../src/cli/commands/recalc";
import { outcome } from "./in-process";

const ROOT = resolve(import.meta.dirname, "../..");
const SAMPLE = join(ROOT, "tests/workbook/files/written-by-xlsxwriter.xlsx");
let folder = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "recalc-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const recalc = (...args: string[]) => outcome(command, args);

function copy(name: string): string {
  const path = join(folder, name);
  copyFileSync(SAMPLE, path);
  return path;
}

it("writes a workbook in place, keeps its mode, leaves nothing beside it, and is then done", async () => {
  const file = copy("plan.xlsx");
  chmodSync(file, 0o640);
  expect(await recalc("--check", file)).toMatchObject({
    status: 1,
    stdout: expect.stringContaining("would change"),
  });
  expect(readFileSync(file).equals(readFileSync(SAMPLE))).toBe(true);
  const first = await recalc(file);
  expect(first).toMatchObject({ status: 0, stderr: "" });
  expect(first.stdout).toContain("2 broken names repaired");
  expect(first.stdout).toContain("Plan lines!L2  it reads another workbook");
  expect(statSync(file).mode & 0o777).toBe(0o640);
  expect(readdirSync(folder)).toEqual(["plan.xlsx"]);
  expect(await recalc("--check", file)).toMatchObject({
    status: 0,
    stdout: expect.stringContaining("0 values"),
  });
}, 90_000);

it("writes into another file and leaves the first", async () => {
  const file = copy("first.xlsx");
  const other = join(folder, "second.xlsx");
  expect((await recalc("--output", other, file)).status).toBe(0);
  expect(readFileSync(file).equals(readFileSync(SAMPLE))).toBe(true);
  expect((await recalc("--check", other)).status).toBe(0);
}, 90_000);

it("refuses a workbook that is open, a damaged one and one that is not there, each with a sentence", async () => {
  const file = copy("open.xlsx");
  const lock = join(folder, ".~lock.open.xlsx#");
  writeFileSync(lock, "");
  expect(await recalc(file)).toMatchObject({
    status: 2,
    stdout: "",
    stderr: expect.stringContaining("close it first"),
  });
  rmSync(lock);
  writeFileSync(file, readFileSync(SAMPLE).subarray(0, 5000));
  expect(await recalc(file)).toMatchObject({
    status: 2,
    stderr: expect.stringMatching(/^recalc: .*damaged or cut short/),
  });
  expect(statSync(file).size).toBe(5000);
  expect(await recalc(join(folder, "none.xlsx"))).toMatchObject({
    status: 2,
    stderr: expect.stringContaining("no such file"),
  });
  expect(await recalc()).toMatchObject({ status: 2, stderr: expect.stringContaining("Usage") });
  expect(await recalc("--wrong", file)).toMatchObject({
    status: 2,
    stderr: expect.stringContaining("--wrong"),
  });
}, 90_000);
