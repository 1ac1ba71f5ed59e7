import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { collect } from "../../src/cli/commands/collect";
import { planNumber } from "../../src/workbook/answers/copy-number";
import { badFiles } from "../workbook/answers/bad-files";
import { planR07 } from "../workbook/answers/plans";
import { outcome } from "./in-process";

// Even where all answers that are fine are to be taken, nothing of a bad one gets into the plan: every byte of it is as
// it was. What is said of each stands in tests/workbook/answers/bad-input.test.ts.

const LONG = 300_000;
let folder = "";
let plan: Buffer;
const at = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "bad-answers-"));
  plan = Buffer.from(await planR07());
  const copy = `${await planNumber({ run: "R-07", forge: "Tern Hollow Forge" })}0000`;
  for (const [name, bytes] of Object.entries(badFiles(copy))) writeFileSync(at(name), bytes);
}, LONG);
afterAll(() => rmSync(folder, { recursive: true }));

it.each([
  ["an answer to another plan", ["other-plan.csv"]],
  ["a line that no longer exists", ["gone.csv"]],
  ["a price in another unit", ["unit.csv"]],
  ["a price in another currency", ["currency.csv"]],
  ["a price that reads in two ways", ["thousands.csv"]],
  ["an analysis with C 95", ["carbon.csv"]],
  ["readings in HV, and a reading above its band", ["vickers.csv"]],
  ["a half-filled row", ["half.csv"]],
  ["two answers for one line", ["first.csv", "second.csv"]],
  ["a file of noise", ["noise.bin"]],
  ["a text that is no table", ["empty.csv"]],
  ["a zip that is no workbook", ["no-workbook.xlsx"]],
  ["a workbook with entities", ["entities.xlsx"]],
  ["a workbook with macros", ["macros.xlsx"]],
])(
  "writes nothing of %s",
  async (_, names) => {
    writeFileSync(at("plan.xlsx"), plan);
    const { status, stdout, stderr } = await outcome(collect, [
      "--accept",
      at("plan.xlsx"),
      ...names.map(at),
    ]);
    expect(stderr).toBe("");
    expect(status).toBe(1);
    expect(stdout).toContain("Nothing written");
    expect(readFileSync(at("plan.xlsx")).equals(plan)).toBe(true);
  },
  LONG,
);

it(
  "writes nothing of a good answer either until it is accepted",
  async () => {
    writeFileSync(at("plan.xlsx"), plan);
    const { stdout } = await outcome(collect, [at("plan.xlsx"), at("formula.csv")]);
    expect(stdout).toContain("answers fine 1, ");
    expect(stdout).toContain("Nothing written: --accept takes all that are fine");
    expect(readFileSync(at("plan.xlsx")).equals(plan)).toBe(true);
  },
  LONG,
);
