import { triplets } from "../stock/drawn-orders";
import type { BenchLine } from "./line";
import { cpuTime } from "./processes";

/** A call at the ends of what a function accepts: the most rows of the slowest figures. */
export interface Extreme {
  readonly name: string;
  readonly what: string;
  readonly given: readonly unknown[];
}

const column = <T>(length: number, cell: (row: number) => T): T[][] =>
  Array.from({ length }, (_, row) => [cell(row)]);

/** 200 lengths, 100,000 pieces, 50 lengths of bar up to 30 m: all limits of CUT_PLAN at once. */
const KINDS = column(200, (row) => 150.3 + ((row * 7919) % 9973) / 4);
const PIECES = column(200, () => 500);
const BARS = column(50, (row) => 30_000 - row * 211.7);
const PRICES = column(50, (row) => 97.31 - row * 0.53);

/** 20 suppliers with 12 lengths of bar each for one section, the pieces of all of them different. */
const NEED = [
  ["steel", "section", "length", "quantity"],
  ...Array.from({ length: 100 }, (_, row) => ["1084", "50 x 3", 150.3 + ((row * 397) % 900), 9]),
];
const OFFERS = [
  ["supplier", "steel", "section", "price", "per", "bar length", "minimum charge", "freight"],
  ...Array.from({ length: 240 }, (_, row) => [
    `Supplier ${1 + (row % 20)}`,
    "1084",
    "50 x 3",
    9 + ((row * 31) % 17) / 10,
    "kg",
    2000 + ((row * 113) % 4000),
    row < 20 ? 50 + row : null,
    row < 20 ? 10 + row : null,
  ]),
];

const lot = (yields: readonly number[]) => [10_000, ...yields, 8, 10, 14, 45, 60, 75, 110, 300, 0.999999];
const worstBreaks = (rows: number) => {
  const quantities = column(rows, (row) => 10_000 - row);
  return [quantities, 350, 12, 0.5, "unit", 45, 60, 8, 120, 15, 0.35, 0.01, 0.01, 0.999999];
};
const loads = (kinds: number, pieces: number, mass: (row: number) => number) => [
  column(kinds, () => "oil"),
  column(kinds, () => pieces),
  column(kinds, mass),
];

/** @param kerf - [mm]; answers on offers are remembered, so that each asker takes one of his own. */
export const extremeCalls = (kerf: number): readonly Extreme[] => [
  { name: "PRICE_BREAKS", what: "200 rows of 10,000 at a yield of 0.01", given: worstBreaks(200) },
  { name: "PRICE_BREAKS", what: "1,000 rows of 10,000 at a yield of 0.01", given: worstBreaks(1000) },
  { name: "COST_RANGE", what: "10,000 at yields of 0.01 to 1", given: lot([0.01, 0.5, 1]) },
  { name: "COST_RANGE", what: "10,000 at yields of 0.01 to 0.0102", given: lot([0.01, 0.0101, 0.0102]) },
  {
    name: "CUT_PLAN",
    what: "501 in triplets",
    given: [column(501, (row) => triplets(501, 501)[row]), 1, 1000, 0, 0],
  },
  { name: "CUT_PLAN", what: "200 lengths from 50, bars counted", given: [KINDS, PIECES, BARS, 1.2, 10] },
  { name: "CUT_PLAN", what: "200 lengths from 50, priced", given: [KINDS, PIECES, BARS, 1.2, 10, PRICES] },
  { name: "LOADS", what: "a million loads of a piece each", given: [...loads(10, 100_000, () => 0.2), 1] },
  {
    name: "LOADS",
    what: "1,000 masses, 400,000 pieces by mass",
    given: [...loads(1000, 400, (row) => 0.3 + ((row * 7919) % 9973) / 10_000), 100_000, 25],
  },
  { name: "LOADS", what: "more loads than a sheet has rows", given: [...loads(11, 100_000, () => 0.2), 1] },
  { name: "BEST_OFFER", what: "20 suppliers of 12 lengths each", given: [NEED, OFFERS, null, kerf] },
];

const END_MS = 2000;

/** Processor time of each, to its answer or its sentence. */
export function extremes(call: (name: string, args: readonly unknown[]) => unknown): BenchLine[] {
  return extremeCalls(1.2).map(({ name, what, given }) => ({
    what: `${name}, ${what}`,
    value: cpuTime(() => call(name, given), 1),
    unit: "ms",
    budget: END_MS,
  }));
}
