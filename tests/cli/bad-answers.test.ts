import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { collect } from "../../src/cli/commands/collect";
import { collect as collectAnswers } from "../../src/workbook/answers/collect";
import { planNumber } from "../../src/workbook/answers/copy-number";
import { badFiles } from "../workbook/answers/bad-files";
import { planR07 } from "../workbook/answers/plans";
import { outcome } from "./in-process";

// Even where all answers that are fine are to be taken, nothing of a bad one gets into the plan: every byte of it is as
// it was. What is said of each stands in tests/workbook/answers/bad-input.test.ts.

const LONG = 300_000;
let folder = "";
let plan: Uint8Array;
let files: Readonly<Record<string, Uint8Array>>;
const at = (name: string) => join(folder, name);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "bad-answers-"));
  plan = await planR07();
  files = badFiles(`${await planNumber({ run: "R-07", forge: "Tern Hollow Forge" })}0000`);
  for (const [name, bytes] of Object.entries(files)) writeFileSync(at(name), bytes);
}, LONG);
afterAll(() => rmSync(folder, { recursive: true }));

/** The command on the plan as it was made, and whether every byte of it is as it was. */
async function collected(...args: string[]) {
  writeFileSync(at("plan.xlsx"), plan);
  const { status, stdout, stderr } = await outcome(collect, args);
  expect(stderr).toBe("");
  return { status, stdout, isAsItWas: readFileSync(at("plan.xlsx")).equals(plan) };
}

const BAD: readonly (readonly [what: string, names: readonly string[]])[] = [
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
];

// The command takes what is fine where all is accepted, and nothing else: each file by itself is held against that.
it.each(BAD)("finds nothing fine in %s", async (_, names) => {
  const sources = names.map((name) => ({ name, bytes: files[name] ?? new Uint8Array() }));
  const { proposals, remarks } = await collectAnswers(plan, sources);
  expect(proposals.length + remarks.length).toBeGreaterThan(0);
  expect(proposals.filter(({ state }) => state === "fine")).toEqual([]);
});

it(
  "writes nothing of any of them, even where all is accepted",
  async () => {
    const all = BAD.flatMap(([, names]) => names.map(at));
    const { status, stdout, isAsItWas } = await collected("--accept", at("plan.xlsx"), ...all);
    expect(status).toBe(1);
    expect(stdout).toContain("answers fine 0, ");
    expect(stdout).toContain("Nothing written");
    expect(isAsItWas).toBe(true);
  },
  LONG,
);

it(
  "writes nothing of a good answer either until it is accepted",
  async () => {
    const { stdout, isAsItWas } = await collected(at("plan.xlsx"), at("formula.csv"));
    expect(stdout).toContain("answers fine 1, ");
    expect(stdout).toContain("Nothing written: --accept takes all that are fine");
    expect(isAsItWas).toBe(true);
  },
  LONG,
);
