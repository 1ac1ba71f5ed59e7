import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { BUDGET } from "../../src/engine/budget";
import { HOSTILE_FORMULAS, HOSTILE_SIZES } from "../security/hostile-set";
import type { BenchLine } from "./line";
import { node, type Taken } from "./processes";

/** A plan of 500 lines takes a quarter of it; a machine with 4 GB has it to spare. */
const MOST_MB = 1024;

/** The command that works a file out, in a process of its own; a file that is refused ends it with status 2. */
function taken(folder: string, bytes: Uint8Array): Taken {
  const file = join(folder, "hostile.xlsx");
  writeFileSync(file, bytes);
  return node([
    "src/cli/start.cjs",
    "src/cli/recalc.ts",
    file,
    "--output",
    join(folder, "out.xlsx"),
    "--force",
  ]);
}

/** What files made to hang a program take, each until its answer or its sentence. */
export function hostile(): BenchLine[] {
  const folder = mkdtempSync(join(tmpdir(), "hostile-"));
  const all = [...HOSTILE_FORMULAS, ...HOSTILE_SIZES].map(({ what, bytes }) => ({
    what,
    ...taken(folder, bytes()),
  }));
  rmSync(folder, { recursive: true });
  const lines = all.flatMap(({ what, cpu, memory }): BenchLine[] => [
    { what: `recalc, ${what}`, value: cpu, unit: "ms" },
    { what: `recalc, ${what}`, value: memory, unit: "MB" },
  ]);
  const most = (of: (one: Taken) => number) => Math.max(...all.map(of));
  return [
    ...lines,
    {
      what: "hostile set, largest time",
      value: most(({ cpu }) => cpu),
      unit: "ms",
      budget: 1000 * BUDGET.seconds,
    },
    { what: "hostile set, largest memory", value: most(({ memory }) => memory), unit: "MB", budget: MOST_MB },
  ];
}
