import { statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";
import { growthOf, inFolder, SIZES, type Steps, stepsOf } from "./commands";
import type { BenchLine } from "./line";
import type { Taken } from "./processes";

/**
 * A planning workbook with every line filled in: the lines of the invented run in turn, each under a name of its own
 * and a little longer than the one before, so that no two ask the same.
 */
export function filledPlan(lines: number): Promise<Uint8Array> {
  const data = exampleData();
  const kinds = data.lines;
  const filled = Array.from({ length: lines }, (_, at) => {
    const line = kinds[at % kinds.length];
    if (line === undefined) throw new Error("the invented run has no lines");
    return { ...line, line: `L${at + 1}`, length: line.length + at };
  });
  return planningFile(planningTemplate({ ...data, lines: filled }, lines));
}

/** Seconds for 60 lines. */
const BUDGET = 8;

/** Writes a filled plan of so many lines, every formula worked out, and says what that took. */
async function written(lines: number, file: string): Promise<Taken> {
  const before = process.cpuUsage();
  writeFileSync(file, await filledPlan(lines));
  const { user, system } = process.cpuUsage(before);
  return { cpu: (user + system) / 1000, memory: process.memoryUsage().rss / 1e6, status: 0 };
}

/** What plans of many filled lines take: written with every formula worked out, recalculated, shared and verified. */
export async function filledPlans(): Promise<BenchLine[]> {
  await filledPlan(1);
  return inFolder(async (folder) => {
    const taken: (Steps & { readonly written: Taken; readonly size: number })[] = [];
    for (const lines of SIZES) {
      const file = join(folder, `${lines}.xlsx`);
      const made = await written(lines, file);
      taken.push({ written: made, size: statSync(file).size, ...stepsOf(file) });
    }
    const of = (step: "written" | keyof Steps) => taken.map((one) => one[step]);
    return [
      ...growthOf("filled plan, written", SIZES, of("written"), { 60: BUDGET }),
      ...growthOf("filled plan, recalc", SIZES, of("recalc")),
      ...growthOf("filled plan, share", SIZES, of("share")),
      ...growthOf("filled plan, verify", SIZES, of("verify")),
      {
        what: `filled plan of ${SIZES.at(-1)} lines`,
        value: (taken.at(-1)?.size ?? 0) / 1e6,
        unit: "MB of file",
      },
    ];
  });
}
