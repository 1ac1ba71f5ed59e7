import { planningFile } from "../../src/workbook/sheets/planning-file";
import { planningTemplate } from "../../src/workbook/sheets/planning-template";
import { exampleData } from "../../src/workbook/sheets/template-data";
import { type BenchLine, growthLine } from "./line";

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

const SIZES = [8, 16, 32, 60, 200];
/** Seconds for 60 lines. */
const BUDGET = 8;

/** Processor time of making a filled plan, every formula worked out, s. */
async function secondsOf(lines: number): Promise<number> {
  const before = process.cpuUsage();
  await filledPlan(lines);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** How long plans of many lines take to be worked out and written. */
export async function filledPlans(): Promise<BenchLine[]> {
  await secondsOf(1);
  const times = new Map<number, number>();
  for (const lines of SIZES) times.set(lines, await secondsOf(lines));
  const time = (lines: number) => times.get(lines) ?? Number.NaN;
  return [
    ...SIZES.map((lines): BenchLine => {
      const what = `plan of ${lines} filled lines, worked out and written`;
      return { what, value: time(lines), unit: "s", budget: lines === 60 ? BUDGET : undefined };
    }),
    growthLine("filled plan", [60, 200], [time(60), time(200)]),
  ];
}
