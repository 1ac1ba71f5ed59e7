import { type InParts, toTheEnd } from "../parts";
import { NotAvailable } from "../refusal";
import { relation } from "../relation";
import { type BarOffer, type CutOrder, type CutRequest, cutOrder } from "./cut-order";
import { inTenths, TENTHS } from "./cutting-grid";
import { type CuttingTask, costOf, isProved, type PatternUse } from "./cutting-task";
import { Effort } from "./effort";
import { leastStock } from "./least-stock";
import { type Solution, solve } from "./solve";

/** Plans of cutting. */
export const CUTTING_PLAN = relation({
  title: "Cheapest way to cut pieces from bars",
  source: "gilmore-gomory-1961",
  locator: "column generation for the bound; rounding and re-solving of the residue for the plan",
  evidence: "standard",
  inputs: {
    length: { label: "bar length", unit: "mm", min: 0, max: 30_000 },
    kinds: { label: "different lengths", unit: "", min: 1, max: 200 },
  },
  output: { label: "bars", unit: "" },
  error: {
    size: null,
    unit: "",
    kind: "none where the plan meets the bound; else at most the gap that is shown",
  },
  note:
    "In tenths of a millimetre: pieces, kerf and trim rounded up, bars down. A kerf is lost beside every piece, " +
    "save where the last piece ends at the end of the bar. The search ends after a fixed amount of work, about a " +
    "second, and then says so; the same order gives the same plan everywhere.",
});

/** Pieces of one length on one bar. */
export interface CutPieces {
  /** Of a piece [mm]. */
  readonly length: number;
  /** Pieces on one bar [-]. */
  readonly count: number;
}

/** Bars that are cut alike. */
export interface CutRow {
  /** On each of these bars. */
  readonly pieces: readonly CutPieces[];
  /** Bars that are cut so [-]. */
  readonly bars: number;
  /** Left of each bar after its last cut [mm]. */
  readonly drop: number;
  /** Length of the bar [mm]. */
  readonly barLength: number;
}

export interface CutPlan {
  /** Bars that are cut alike, one row each. */
  readonly rows: readonly CutRow[];
  /** Bars of each length on offer, in the order in which the lengths were given [-]. */
  readonly taken: readonly number[];
  /** All bars of the plan [-]. */
  readonly bars: number;
  /** What the bars cost [money]; `undefined` where no prices were given. */
  readonly cost: number | undefined;
  /** No plan needs fewer bars [-] or, with prices, costs less [money]. */
  readonly bound: number;
  /** True where the plan meets the bound. */
  readonly isProved: boolean;
  /** True where the search ended at its work limit, not at the bound. */
  readonly isStopped: boolean;
}

/** About a second of work on a machine of 2024. */
const USUAL_EFFORT = 1000;
const MILLION = 1e6;
/** A step takes longer for each further length of bar. */
const usualEffort = ({ stocks }: CuttingTask) => USUAL_EFFORT / (1 + (stocks.length - 1) / 10);

/** A sum of prices without the traces of binary fractions. */
function money(value: number): number {
  return Number(value.toPrecision(12));
}

/** No plan: says what is missing, as far as it is certain. */
function refuse({ task }: CutOrder, { isShort }: Solution): never {
  const bars = task.stocks.reduce((sum, { available }) => sum + available, 0);
  throw new NotAvailable(
    isShort
      ? `the ${bars} bars in stock do not hold all the pieces: leave bars in stock empty for a length that can be bought`
      : `no plan was found that holds all the pieces in the ${bars} bars in stock: allow one bar more`,
  );
}

/** Like patterns on one row. */
function merged(uses: readonly PatternUse[]): PatternUse[] {
  const byPattern = new Map<string, PatternUse>();
  for (const use of uses) {
    const key = `${use.pattern.stock}:${use.pattern.counts.join(",")}`;
    const before = byPattern.get(key)?.bars ?? 0;
    byPattern.set(key, { ...use, bars: use.bars + before });
  }
  return [...byPattern.values()];
}

function rowOf({ lengths, bars, kerf, trim }: CutOrder, use: PatternUse): CutRow {
  const { pattern } = use;
  const barLength = bars[pattern.stock]?.length ?? 0;
  const pieces = lengths.flatMap((length, id) => {
    const count = pattern.counts[id] ?? 0;
    return count > 0 ? [{ length: length / TENTHS, count }] : [];
  });
  const cut = inTenths(kerf, "up");
  const taken = pieces.reduce((sum, { length, count }) => sum + count * (length * TENTHS + cut), 0);
  const drop = Math.max(0, inTenths(barLength, "down") - inTenths(trim, "up") - Math.round(taken));
  return { pieces, bars: use.bars, drop: drop / TENTHS, barLength };
}

/** Bars of each offer, in the order given. */
function takenOf({ bars }: CutOrder, given: CutRequest, uses: readonly PatternUse[]): number[] {
  const taken = new Map<BarOffer | undefined, number>();
  for (const { pattern, bars: count } of uses) {
    const offer = bars[pattern.stock];
    taken.set(offer, (taken.get(offer) ?? 0) + count);
  }
  return given.bars.map((offer) => taken.get(offer) ?? 0);
}

/**
 * Cheapest way to cut pieces from bars: fewest bars or, where prices are given, least cost. Works in
 * tenths of a millimetre (pieces, kerf and trim rounded up, bars down). The same request gives the same
 * plan on every machine.
 *
 * @param request - Pieces and bars on offer, 0.1 to 30,000 [mm], quantities whole; kerf (1.2) and trim (10) [mm]
 * @returns The bars by pattern, the bound that no plan can beat and whether the plan meets it.
 * @throws InvalidValue for a piece longer than the bar, an empty order, what is no figure, or figures past the limits.
 * @throws NotAvailable where the bars in stock do not hold the pieces.
 * Error and source: {@link CUTTING_PLAN}.
 */
export function cutPlan(request: CutRequest): CutPlan {
  return toTheEnd(cutPlanInParts(request));
}

/** The same plan in parts of a few milliseconds. */
export function* cutPlanInParts(request: CutRequest): InParts<CutPlan> {
  const order = cutOrder(request);
  const effort = (request.effort ?? usualEffort(order.task)) * MILLION;
  const solution = yield* solve(order.task, new Effort(effort));
  if (solution.uses === undefined) return refuse(order, solution);
  const isCounted = order.priceStep === 0 && order.task.stocks.length > 1;
  const uses = merged(isCounted ? yield* leastStock(order.task, solution.uses, effort) : solution.uses);
  const rows = uses
    .map((use) => rowOf(order, use))
    .sort((a, b) => b.barLength - a.barLength || b.bars - a.bars || a.drop - b.drop);
  const hasPrices = order.priceStep > 0;
  const bound = money(Math.max(0, solution.bound) * (hasPrices ? order.priceStep : 1));
  return {
    rows,
    taken: takenOf(order, request, uses),
    bars: rows.reduce((sum, { bars }) => sum + bars, 0),
    cost: hasPrices ? money(solution.cost * order.priceStep) : undefined,
    bound,
    isProved: isProved(order.task, costOf(order.task, uses), solution.bound),
    isStopped: solution.isStopped,
  };
}
