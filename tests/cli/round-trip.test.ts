import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { collect } from "../../src/cli/commands/collect";
import { share } from "../../src/cli/commands/share";
import { guidePage } from "../../src/taskpane/help/guide";
import { filledIn } from "../workbook/answers/fill";
import { ANSWERS_TO_EIGHT, ANSWERS_TO_R07, type InventedAnswer } from "../workbook/answers/invented-answers";
import { planOfEight, planR07 } from "../workbook/answers/plans";
import { type StoredValues, storedValues } from "../workbook/template-cells";
import { outcome } from "./in-process";

// Orders out to two steel suppliers and a heat treater by the command share, answered in another .xlsx library, and
// home by the command collect.

const LONG = 600_000;
let folder = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "round-trip-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Cells out, answered; answers taken, and doubtful ones that were left to the smith. */
interface Counts {
  out: number;
  answered: number;
  taken: number;
  doubted: number;
}

const figureIn = (text: string, pattern: RegExp) => Number(pattern.exec(text)?.[1] ?? Number.NaN);

/** All copies out, all answers home, and only what is fine taken. */
async function roundTrip(name: string, plan: Uint8Array, all: readonly InventedAnswer[]) {
  const at = (file: string) => join(folder, `${name} ${file}`);
  writeFileSync(at("plan.xlsx"), plan);
  let out = 0;
  const files: string[] = [];
  for (const [number, { whom, name: to, answers, head }] of all.entries()) {
    const [sent, back] = [at(`out ${number}.xlsx`), at(`back ${number}.xlsx`)];
    const done = await outcome(share, ["--for", whom, to, "-o", sent, at("plan.xlsx")]);
    out += figureIn(done.stdout, /Cells for an answer: (\d+)/);
    writeFileSync(back, await filledIn(readFileSync(sent), answers, head));
    files.push(back);
  }
  const done = await outcome(collect, ["--accept", "--date", "2026-10-20", at("plan.xlsx"), ...files]);
  const counts: Counts = {
    out,
    answered: figureIn(done.stdout, /answered (\d+);/),
    taken: figureIn(done.stdout, /: (\d+) answers taken/),
    doubted: figureIn(done.stdout, /doubtful (\d+),/),
  };
  expect(figureIn(done.stdout, /Cells out (\d+)/)).toBe(out);
  const again = await outcome(collect, ["--accept", at("plan.xlsx"), ...files]);
  expect(again.stdout).toContain("answers fine 0, ");
  return { counts, stdout: done.stdout, after: await storedValues(readFileSync(at("plan.xlsx"))) };
}

const logged = (values: StoredValues) =>
  values
    .rows("Answers")
    .slice(4)
    .filter(([copy]) => copy !== undefined);

describe("the orders of R-07", () => {
  it(
    "go out, come home and stand in the plan, as the guided run tells it",
    async () => {
      const { counts, after } = await roundTrip("R-07", await planR07(), ANSWERS_TO_R07);
      expect(after.figure("Steel and heats", "S1", "Heat no.")).toBe("TH-4512");
      expect(after.figure("Steel and heats", "S4", "C %")).toBe(0.6);
      expect(logged(after)).toHaveLength(counts.taken);
      const told = guidePage().body;
      expect(told).toContain(`${counts.out} cells went out, ${counts.answered} were filled in`);
      expect(told).toContain(`${counts.taken} were fine and taken`);
      expect(told).toContain(`${counts.doubted} were left to look at`);
    },
    LONG,
  );
});

describe("the orders of eight lines", () => {
  it(
    "go out, come home and stand in the plan",
    async () => {
      const { counts, after } = await roundTrip("T-08", await planOfEight(), ANSWERS_TO_EIGHT);
      expect(counts).toEqual({ out: 341, answered: 32, taken: 30, doubted: 2 });
      expect(after.figure("Steel and heats", "S6", "Heat no.")).toBe("T6-1");
      expect(logged(after)).toHaveLength(counts.taken);
    },
    LONG,
  );
});
