import { functionNamed } from "../../src/functions/catalogue";
import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { commands } from "./commands";
import { besideEmptyFunction } from "./dispatcher";
import { extremes } from "./extremes";
import { filledPlans } from "./filled-plan";
import { grid } from "./grid";
import { growthWithRows } from "./growth";
import { hostile } from "./hostile";
import { besideLibreOffice } from "./libreoffice";
import { type BenchLine, growthLine, report } from "./line";
import { besideClone } from "./measure";
import { mechanics } from "./mechanics";
import { call, numerics } from "./numerics";
import { pages } from "./pages";
import { cpuTime } from "./processes";
import { tasks } from "./tasks";

function named(name: string): WorksheetFunction {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no function ${name}`);
  return fn;
}

const column = <T>(length: number, cell: (row: number) => T): T[][] =>
  Array.from({ length }, (_, row) => [cell(row)]);
const STEELS = ["1095", "1084", "5160", "O1", "4140"];
const steelAt = (row: number) => STEELS[row % STEELS.length] ?? "1095";
const ROWS = 100_000;
const BLADES = 10_000;

/** Column calls against the copy that the host makes of the same cells anyway. */
function columns(): BenchLine[] {
  const stations = [0, 150, 300, 450, 600, 750];
  const cases: readonly [name: string, args: unknown[], rows: number, budget: number][] = [
    ["CARBON", [column(ROWS, steelAt)], ROWS, 1],
    ["HARDNESS", [column(ROWS, (row) => 20.5 + (row % 470) / 10), "HRC", "HV"], ROWS, 1],
    ["TEMPERED_HRC", [column(ROWS, steelAt), column(ROWS, (row) => 200 + (row % 200))], ROWS, 3],
    ["TEMPER_FOR", [column(ROWS, steelAt), column(ROWS, (row) => 50 + (row % 60) / 10)], ROWS, 6],
    [
      "STATIONS",
      [
        [stations],
        Array.from({ length: BLADES }, (_, row) => stations.map((_x, at) => 50 - at * 5 - (row % 10) / 10)),
        Array.from({ length: BLADES }, (_, row) => stations.map((_x, at) => 6 - at / 2 - (row % 7) / 10)),
        "diamond",
      ],
      BLADES,
      3,
    ],
  ];
  return cases.map(([name, args, rows, budget]) => {
    const { ours, clone } = besideClone(named(name), args);
    return { what: `${name}, ${rows} rows, against structuredClone`, value: ours / clone, unit: "×", budget };
  });
}

/** A run of so many lines, five kinds of blade in turn. */
function runTable(lines: number): unknown[][] {
  const headings = [
    "line",
    "use",
    "steel",
    "good",
    "yield",
    "length",
    "width",
    "thickness",
    "target HRC",
    "quench",
    "bar length",
  ];
  const rows = Array.from({ length: lines }, (_, row) => [
    `L${row + 1}`,
    "Field camp bushcraft",
    steelAt(row),
    6 + (row % 40),
    0.9 + (row % 10) / 100,
    241 + (row % 100),
    38,
    4,
    57,
    "fast oil",
    3000,
  ]);
  return [headings, ...rows];
}

function runPlan(): BenchLine[] {
  const plan = named("RUN_PLAN");
  const times = [200, 1000, 5000].map((lines) => cpuTime(() => evaluate(plan, [runTable(lines)])));
  const [few = 0, middle = 0, many = 0] = times;
  return [
    { what: "RUN_PLAN, 200 lines", value: few, unit: "ms", budget: 100 },
    { what: "RUN_PLAN, 5,000 lines", value: many, unit: "ms", budget: 2000 },
    growthLine("RUN_PLAN", [1000, 5000], [middle, many]),
  ];
}

/** Parts of the bench by name: `npm run bench -- numerics` runs one alone. */
const PARTS: Readonly<Record<string, () => readonly BenchLine[] | Promise<readonly BenchLine[]>>> = {
  columns,
  growth: growthWithRows,
  plan: runPlan,
  numerics,
  mechanics,
  extremes: () => extremes(call),
  hostile,
  tasks,
  dispatcher: besideEmptyFunction,
  commands,
  filled: filledPlans,
  libreoffice: besideLibreOffice,
  pages,
  grid,
};

async function bench(asked: readonly string[]): Promise<number> {
  const parts = asked.length > 0 ? asked : Object.keys(PARTS);
  const lines: BenchLine[] = [];
  for (const name of parts) {
    const part = PARTS[name];
    if (part === undefined) throw new Error(`no part "${name}": ${Object.keys(PARTS).join(", ")}`);
    const began = performance.now();
    lines.push(...(await part()));
    // A whole run takes minutes: it says how far it has come.
    console.error(`${name}: ${Math.round((performance.now() - began) / 1000)} s`);
  }
  return report(lines);
}

bench(process.argv.slice(2).filter((argument) => !argument.startsWith("--"))).then(
  (status) => {
    process.exitCode = status;
  },
  (fault) => {
    console.error(fault);
    process.exitCode = 70;
  },
);
