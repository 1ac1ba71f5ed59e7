import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BenchLine, growthLine } from "./line";
import { command, least, node } from "./processes";

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

interface Steps {
  readonly write: number;
  readonly recalc: number;
  readonly share: number;
  readonly verify: number;
}

function steps(folder: string, lines: number): Steps {
  const file = (name: string) => join(folder, `${name}-${lines}.xlsx`);
  const [plan, done, copy] = [file("plan"), file("done"), file("copy")];
  return {
    write: command("template", ["--lines", String(lines), "--output", plan, "--force"]).cpu,
    recalc: command("recalc", ["--force", "--output", done, plan]).cpu,
    share: command("share", ["--all", "--no-register", "--force", "--output", copy, done]).cpu,
    verify: command("verify", [done, copy]).cpu,
  };
}

/** Lines of the planning workbook. */
const SIZES = [8, 60, 200, 500] as const;
const STEPS = ["write", "recalc", "share", "verify"] as const;

/** A step at every size, and how it grows over the upper half of them. */
function growthOf(step: (typeof STEPS)[number], taken: readonly Steps[]): BenchLine[] {
  const times = taken.map((one) => one[step]);
  const [, few = Number.NaN, middle = Number.NaN, many = Number.NaN] = times;
  return [
    ...SIZES.map((lines, at): BenchLine => {
      const budget = step === "write" && lines === 60 ? 10 : undefined;
      return { what: `${step}, ${lines} lines`, value: (times[at] ?? Number.NaN) / 1000, unit: "s", budget };
    }),
    growthLine(step, [60, 200], [few, middle]),
    growthLine(step, [60, 500], [few, many]),
  ];
}

function plans(): BenchLine[] {
  const folder = mkdtempSync(join(tmpdir(), "blade-bench-"));
  try {
    const taken = SIZES.map((lines) => steps(folder, lines));
    return STEPS.flatMap((step) => growthOf(step, taken));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The command line: how soon it answers, and how its work grows with the lines of a plan. */
export const commands = (): BenchLine[] => [...calc(), ...plans()];
