import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BenchLine, growthLine } from "./line";
import { command, least, node, type Taken } from "./processes";

const RECORD = "node_modules/.cache/blade-metallurgy/cli/src-cli-calc.json";

function calc(): BenchLine[] {
  const plain = () => command("calc", ['=BLADE.CARBON("1095")']).cpu;
  const first = least(3, () => {
    rmSync(RECORD, { force: true });
    return plain();
  });
  const nothing = least(9, () => node(["-e", "0"]).cpu);
  const many = Array.from({ length: 1000 }, (_, row) => `=BLADE.TEMPERED_HRC("1095",${150 + (row % 250)})`);
  const engine = least(5, () => command("calc", ["--json", "-"], "=1+1").cpu);
  const thousand = least(5, () => command("calc", ["--json", "-"], `=1+1\n${many.join("\n")}`).cpu);
  return [
    {
      what: "calc of one plain call, against node -e 0",
      value: least(9, plain) / nothing,
      unit: "×",
      budget: 3,
    },
    { what: "calc, first use", value: first / 1000, unit: "s", budget: 4 },
    {
      what: "calc, 1,000 formulas and one of the engine's, against that one",
      value: thousand / engine,
      unit: "×",
      budget: 2,
    },
  ];
}

/** What each command takes that a plan goes through once it is written. */
export interface Steps {
  readonly recalc: Taken;
  readonly share: Taken;
  readonly verify: Taken;
}

/** Works a plan out, makes a copy of all of it, and holds the copy against it. */
export function stepsOf(plan: string): Steps {
  const [done, copy] = [`${plan}.done.xlsx`, `${plan}.copy.xlsx`];
  return {
    recalc: command("recalc", ["--force", "--output", done, plan]),
    share: command("share", ["--all", "--no-register", "--force", "--output", copy, done]),
    verify: command("verify", [done, copy]),
  };
}

/** A step at every size, and how it grows over the upper ones: the smallest tells what a command takes to begin with. */
export function growthOf(
  step: string,
  sizes: readonly number[],
  taken: readonly Taken[],
  budgets: Readonly<Partial<Record<number, number>>> = {},
): BenchLine[] {
  const cpu = taken.map((one) => one.cpu / 1000);
  const upper = sizes.slice(1).map((lines, at) => [lines, cpu[at + 1] ?? Number.NaN] as const);
  const pairs = upper.slice(1).map((many, at) => [upper[at] ?? many, many] as const);
  return [
    ...sizes.map((lines, at): BenchLine => {
      const value = cpu[at] ?? Number.NaN;
      return { what: `${step}, ${lines} lines`, value, unit: "s", budget: budgets[lines] };
    }),
    { what: `${step}, ${sizes.at(-1)} lines`, value: taken.at(-1)?.memory ?? Number.NaN, unit: "MB" },
    ...pairs.map(([few, many]) => growthLine(step, [few[0], many[0]], [few[1], many[1]])),
  ];
}

/** Does something with a folder that is gone afterwards. */
export async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "blade-bench-"));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Lines of the planning workbook. */
export const SIZES = [8, 60, 200, 500] as const;

/** Blank plans are only written here: what becomes of a plan is asked of filled ones. */
function plans(): Promise<BenchLine[]> {
  return inFolder(async (folder) => {
    const taken = SIZES.map((lines) =>
      command("template", ["--lines", String(lines), "--output", join(folder, `${lines}.xlsx`), "--force"]),
    );
    return growthOf("blank plan, written", SIZES, taken, { 60: 10 });
  });
}

/** The command line: how soon it answers, and how its work grows with the lines of a plan. */
export const commands = async (): Promise<BenchLine[]> => [...calc(), ...(await plans())];
