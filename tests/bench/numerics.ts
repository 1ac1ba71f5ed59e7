import { cutPlan } from "../../src/core/stock/cut-plan";
import { functionNamed } from "../../src/functions/catalogue";
import { evaluate } from "../../src/functions/evaluate";
import { triplets, uniform } from "../stock/drawn-orders";
import { type BenchLine, growthLine } from "./line";
import { cpuTime } from "./processes";

export function call(name: string, args: readonly unknown[]): unknown {
  const fn = functionNamed(name);
  if (fn === undefined) throw new Error(`no function ${name}`);
  return evaluate(fn, args);
}

const column = <T>(length: number, cell: (row: number) => T): T[][] =>
  Array.from({ length }, (_, row) => [cell(row)]);
const ms = (what: string, value: number, budget: number): BenchLine => ({ what, value, unit: "ms", budget });

/** One recipe, every line with a mass of its own: the hardest case of first fit. */
function loads(): BenchLine[] {
  const given = (n: number) => [
    column(n, () => "oil"),
    column(n, () => 10),
    column(n, (row) => 0.3 + ((row * 7919) % 9973) / 10_000),
    40,
    25,
  ];
  const [few, many] = [7000, 28_000].map((n) => cpuTime(() => call("LOADS", given(n)), 3)) as [
    number,
    number,
  ];
  return [
    ms("LOADS, 28,000 lines of one recipe", many, 500),
    growthLine("LOADS", [7000, 28_000], [few, many]),
  ];
}

function soak(): BenchLine[] {
  const furnace = (kinds: number) => [
    column(10_000, (row) => 1 + (row % 10)),
    column(10_000, (row) => 800 + (row % kinds)),
    "plain carbon",
  ];
  return [
    ms(
      "SOAK, 10,000 rows at 20 furnace temperatures",
      cpuTime(() => call("SOAK", furnace(20))),
      30,
    ),
  ];
}

function costRange(): BenchLine[] {
  const lots = [24, 200, 1000, 10_000];
  return lots.map((good) => {
    const lot = [good, 0.6, 0.8, 0.95, 8, 10, 14, 45, 60, 75, 110, 300];
    return ms(
      `COST_RANGE, a row of ${good} blades`,
      cpuTime(() => call("COST_RANGE", lot), 9),
      3,
    );
  });
}

/** Every grade of the library, twins as one, judged for a use in a section and a quench; the library is read beforehand. */
function steelChoice(): BenchLine[] {
  const ask = () => call("STEELS_FOR", ["European sword sharp", 6, "fast oil", 800]);
  ask();
  return [ms("STEELS_FOR, every grade of the library", cpuTime(ask, 9), 50)];
}

/** Sections are remembered: each run gets a width of its own. */
function sections(): BenchLine[] {
  let count = 0;
  const width = () => {
    count += 1;
    return 30 + count / 1000;
  };
  const bare = () => ["1084", width(), 4, 0.7, "fast oil"];
  const clayed = () => ["1084", width(), 6, 0.7, "fast oil", 0.004, 12];
  const measured = () => ["1084", width(), 6, 0.7, "fast oil", 0.004, 12, null, null, null, null, 14];
  const alike = () => [column(100, () => "1084"), width(), 4, 0.7, "fast oil"];
  return [
    ms(
      "SECTION_QUENCH, bare",
      cpuTime(() => call("SECTION_QUENCH", bare()), 30),
      5,
    ),
    ms(
      "SECTION_QUENCH, clayed",
      cpuTime(() => call("SECTION_QUENCH", clayed()), 30),
      5,
    ),
    ms(
      "SECTION_QUENCH, 100 rows alike",
      cpuTime(() => call("SECTION_QUENCH", alike()), 5),
      15,
    ),
    ms(
      "SECTION_FIT, clayed",
      cpuTime(() => call("SECTION_FIT", measured()), 10),
      25,
    ),
  ];
}

function wholeColumns(): BenchLine[] {
  const whole = (cell: unknown) => column(1_048_576, (row) => (row < 100 ? cell : null));
  const [steels, one] = [whole("1095"), whole(1)];
  return [
    ms(
      "CARBON(A:A)",
      cpuTime(() => call("CARBON", [steels]), 3),
      1000,
    ),
    ms(
      "LOADS(A:A, B:B, C:C)",
      cpuTime(() => call("LOADS", [steels, one, one, 10, 10]), 3),
      1000,
    ),
  ];
}

/** Bars beyond the optimum, in per cent of it. */
function over(lengths: readonly number[], bar: number, optimum?: number): number {
  const pieces = lengths.map((length) => ({ length, quantity: 1 }));
  const { bars, bound } = cutPlan({ pieces, bars: [{ length: bar }], kerf: 0, trim: 0 });
  return 100 * (bars / (optimum ?? bound) - 1);
}

function cutPlans(): BenchLine[] {
  const lengths = column(40, (row) => 180 + ((row * 397) % 900));
  const pieces = column(40, (row) => 1 + ((row * 7) % 20));
  return [
    ms(
      "CUT_PLAN, 40 kinds",
      cpuTime(() => call("CUT_PLAN", [lengths, pieces, 3660, 3])),
      50,
    ),
    ...[120, 250, 500].map((n): BenchLine => {
      return {
        what: `CUT_PLAN over the bound, ${n} uniform`,
        value: over(uniform(n, n), 150),
        unit: "%",
        budget: 2,
      };
    }),
    ...[60, 120, 249, 501].map((n): BenchLine => {
      const value = over(triplets(n, n), 1000, n / 3);
      return { what: `CUT_PLAN over the optimum, ${n} in triplets`, value, unit: "%", budget: 2 };
    }),
    ms(
      "CUT_PLAN, 501 in triplets",
      cpuTime(() => over(triplets(501, 501), 1000, 167), 1),
      3000,
    ),
  ];
}

/** The library's slow spots. */
export const numerics = (): BenchLine[] => [
  ...loads(),
  ...soak(),
  ...costRange(),
  ...steelChoice(),
  ...sections(),
  ...wholeColumns(),
  ...cutPlans(),
];
