import type { WorksheetFunction } from "../../src/functions/declare";
import { evaluate } from "../../src/functions/evaluate";
import { FLEX, RING } from "../../src/functions/mechanics";
import { type BenchLine, growthLine } from "./line";
import { cpuTime } from "./processes";

const BLADES = 1000;
const NOTHING = Array<null>(6).fill(null);

/** A blade tapering over 800 mm, measured at so many places; the seed makes each one a blade of its own. */
function lists(stations: number, seed: number): [x: number[], width: number[], thickness: number[]] {
  const share = Array.from({ length: stations }, (_, at) => at / (stations - 1));
  return [
    share.map((s) => 800 * s),
    share.map((s) => 50 - 28 * s - seed / 1000),
    share.map((s) => 6 - 2.6 * s - seed / 2000),
  ];
}

/** So many different blades in one call, one a row. */
function blades(count: number, stations: number, grind: string): unknown[] {
  const each = Array.from({ length: count }, (_, seed) => lists(stations, seed));
  return [[each[0]?.[0]], each.map(([, width]) => width), each.map(([, , thickness]) => thickness), grind];
}

const CASES: readonly (readonly [WorksheetFunction, (given: unknown[]) => unknown[]])[] = [
  [FLEX, (given) => [...given, ...NOTHING, 52]],
  [RING, (given) => given],
];

/** Answers a call and makes sure that every blade has its figures: a refusal would be quick. */
function answered(fn: WorksheetFunction, given: unknown[]): void {
  const rows = evaluate(fn, given);
  const refused = rows.find((row) => typeof row[1] !== "number");
  if (refused !== undefined) throw new Error(`${fn.name} refuses: ${refused[0]}`);
}

function inBulk(): BenchLine[] {
  return CASES.flatMap(([fn, asked]) =>
    ["diamond", "lenticular"].map((grind) => ({
      what: `${fn.name}, 1,000 ${grind} blades of 6 stations`,
      value: cpuTime(() => answered(fn, asked(blades(BLADES, 6, grind))), 3),
      unit: "ms",
      budget: 1000,
    })),
  );
}

/** Under some 40 stations the steps along the blade are as many as for a few; from there on they grow with them. */
const FEW = 100;
const MANY = 1600;

function growth(): BenchLine[] {
  return CASES.map(([fn, asked]) => {
    const time = (stations: number) =>
      cpuTime(() => answered(fn, asked(blades(MANY / stations, stations, "diamond"))), 7) / (MANY / stations);
    return growthLine(`${fn.name}, stations`, [FEW, MANY], [time(FEW), time(MANY)]);
  });
}

/** Bending and ringing of blades on one core. */
export const mechanics = (): BenchLine[] => [...inBulk(), ...growth()];
