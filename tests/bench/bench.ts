import { spawnSync } from "node:child_process";
import { functionNamed } from "../../src/functions/catalogue";
import type { WorksheetFunction } from "../../src/functions/declare";
import { besideEmptyFunction } from "./dispatcher";
import { growthWithRows } from "./growth";
import { besideLibreOffice } from "./libreoffice";
import { besideClone, timed, warm } from "./measure";
import { pages } from "./pages";

/** One line of the report: what, the figure, the budget. */
type Line = readonly [what: string, figure: string, budget: string];

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

const ratio = (ours: number, other: number) => (ours / other).toFixed(2);

/** Column calls against the copy that the host makes of the same cells anyway. */
function columns(): Line[] {
  const stations = [0, 150, 300, 450, 600, 750];
  const cases: readonly [name: string, args: unknown[], rows: number, budget: string][] = [
    ["CARBON", [column(ROWS, steelAt)], ROWS, "1"],
    ["HARDNESS", [column(ROWS, (row) => 20.5 + (row % 470) / 10), "HRC", "HV"], ROWS, "1"],
    ["TEMPERED_HRC", [column(ROWS, steelAt), column(ROWS, (row) => 200 + (row % 200))], ROWS, "3"],
    ["TEMPER_FOR", [column(ROWS, steelAt), column(ROWS, (row) => 50 + (row % 60) / 10)], ROWS, "6"],
    [
      "STATIONS",
      [
        [stations],
        Array.from({ length: BLADES }, (_, row) => stations.map((_x, at) => 50 - at * 5 - (row % 10) / 10)),
        Array.from({ length: BLADES }, (_, row) => stations.map((_x, at) => 6 - at / 2 - (row % 7) / 10)),
        "diamond",
      ],
      BLADES,
      "3",
    ],
  ];
  return cases.map(([name, args, rows, budget]) => {
    const { ours, clone } = besideClone(named(name), args);
    return [`${name}, ${rows} rows, against structuredClone`, `${ratio(ours, clone)} ×`, `≤ ${budget} ×`];
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

function growth(): Line[] {
  const plan = named("RUN_PLAN");
  const times = [200, 1000, 5000].map((lines) => [lines, warm(plan, [runTable(lines)], 5)] as const);
  const budgets: Readonly<Record<number, string>> = { 200: "≤ 100 ms", 5000: "≤ 2000 ms" };
  const lines = times.map(
    ([count, ms]): Line => [`RUN_PLAN, ${count} lines, warm`, `${ms.toFixed(0)} ms`, budgets[count] ?? ""],
  );
  const [, [, middle] = [0, 1], [, last] = [0, 1]] = times;
  const exponent = Math.log(last / middle) / Math.log(5);
  return [
    ...lines,
    ["RUN_PLAN, growth from 1,000 to 5,000 lines", `lines to the power ${exponent.toFixed(2)}`, "linear: 1"],
  ];
}

function solvers(): Line[] {
  const section = warm(named("SECTION_QUENCH"), ["1084", 30, 4, 0.7, "fast oil"]);
  const lengths = column(40, (row) => 180 + ((row * 397) % 900));
  const pieces = column(40, (row) => 1 + ((row * 7) % 20));
  const cut = warm(named("CUT_PLAN"), [lengths, pieces, 3660, 3], 3);
  return [
    ["SECTION_QUENCH, warm", `${section.toFixed(1)} ms`, "≤ 10 ms"],
    ["CUT_PLAN, 40 kinds", `${cut.toFixed(0)} ms`, "≤ 1000 ms"],
  ];
}

function calcTime(formulas: number): number {
  const input = Array.from(
    { length: formulas },
    (_, row) => `=BLADE.TEMPERED_HRC("1095",${150 + (row % 250)})`,
  ).join("\n");
  return timed(() =>
    spawnSync(process.execPath, ["src/cli/start.cjs", "src/cli/calc.ts", "--json", "-"], { input }),
  );
}

function commandLine(): Line[] {
  calcTime(1);
  const ratios = Array.from({ length: 5 }, () => {
    const one = calcTime(1);
    return calcTime(1000) / one;
  });
  return [
    ["calc, 1,000 formulas against one", `${[...ratios].sort((a, b) => a - b)[2]?.toFixed(2)} ×`, "≤ 2 ×"],
  ];
}

async function bench(): Promise<void> {
  const report = [
    ...columns(),
    ...growthWithRows(),
    ...growth(),
    ...solvers(),
    ...(await besideEmptyFunction()),
    ...commandLine(),
    ...besideLibreOffice(),
    ...(await pages()),
  ];
  const width = Math.max(...report.map(([what]) => what.length));
  for (const [what, figure, budget] of report)
    console.log(`${what.padEnd(width)}  ${figure.padStart(26)}  ${budget}`);
}

void bench();
