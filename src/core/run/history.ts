import { numberText } from "../quantity-text";
import { attempt, InvalidValue, type Refusal } from "../refusal";
import { relation } from "../relation";
import { yieldFloor } from "./yield-floor";

/** Means over past lots. */
export const SHOP_RECORD = relation({
  title: "Yield, hours and energy of past lots",
  source: "shop-arithmetic",
  locator: "sums of the lots of one item; hours ÷ starts and kWh ÷ loads over the lots where both are known",
  evidence: "measured",
  inputs: {},
  output: { label: "mean", unit: "" },
  error: { size: null, unit: "", kind: "as good as the shop's own record" },
});

/** One lot as it went. */
export interface PastLot {
  /** What was made, in the shop's words. */
  readonly item: string;
  /** Pieces started [-]. */
  readonly started: number;
  /** Pieces that came out good, up to those started [-]. */
  readonly good: number;
  /** Bench hours of the whole lot [h]. */
  readonly hours: number | undefined;
  /** Furnace loads of the lot [-]. */
  readonly loads: number | undefined;
  /** Energy of all its loads [kWh]. */
  readonly kilowattHours: number | undefined;
}

/** What the lots of one item say for the next one. */
export interface ItemRecord {
  /** Lots of the item [-]. */
  readonly lots: number;
  /** Pieces started in all of them [-]. */
  readonly started: number;
  /** Pieces that came out good [-]. */
  readonly good: number;
  /** Good as a share of started, 0 to 1 [-]. */
  readonly yieldShare: number;
  /** Share that the counts support with the confidence asked, 0 to 1 [-]. */
  readonly yieldFloor: number;
  /** Bench hours a start, over the lots whose hours are known [h]. */
  readonly hoursAStart: number | undefined;
  /** Energy a load, over the lots whose loads and energy are known [kWh]. */
  readonly energyALoad: number | undefined;
}

export interface ItemHistory {
  /** What was made, in the shop's words. */
  readonly item: string;
  /** What its lots say, or why they say nothing. */
  readonly record: ItemRecord | Refusal;
}

/** A row of the history: a lot, or a refused one with the item it belongs to. */
export type PastRow =
  | PastLot
  | {
      /** What was made, in the shop's words. */ readonly item: string /** Why the row cannot be read. */;
      readonly refusal: Refusal;
    };

/** A mean over those lots where both figures are known: one without the other would bend it. */
function ratio(
  lots: readonly PastLot[],
  top: (lot: PastLot) => number | undefined,
  bottom: (lot: PastLot) => number | undefined,
): number | undefined {
  let [above, below] = [0, 0];
  for (const lot of lots) {
    const [a, b] = [top(lot), bottom(lot)];
    if (a === undefined || b === undefined) continue;
    above += a;
    below += b;
  }
  return below > 0 ? above / below : undefined;
}

function checkLot({ started, good }: PastLot): void {
  if (good <= started) return;
  throw new InvalidValue(
    `good: ${numberText(good)} of ${numberText(started)} started given; more cannot come out than went in`,
  );
}

function recordOf(lots: readonly PastLot[], confidence: number): ItemRecord {
  for (const lot of lots) checkLot(lot);
  const started = lots.reduce((sum, lot) => sum + lot.started, 0);
  const good = lots.reduce((sum, lot) => sum + lot.good, 0);
  return {
    lots: lots.length,
    started,
    good,
    yieldShare: good / started,
    yieldFloor: yieldFloor(good, started, confidence),
    hoursAStart: ratio(
      lots,
      (lot) => lot.hours,
      (lot) => lot.started,
    ),
    energyALoad: ratio(
      lots,
      (lot) => lot.kilowattHours,
      (lot) => lot.loads,
    ),
  };
}

function refusable(rows: readonly PastRow[], confidence: number): ItemRecord | Refusal {
  const lots: PastLot[] = [];
  for (const row of rows) {
    if ("refusal" in row) return row.refusal;
    lots.push(row);
  }
  return attempt(() => recordOf(lots, confidence));
}

/**
 * Yield, hours and energy of past lots by item.
 *
 * @param rows - Blades started and good, hours [h], energy [kWh]; items are compared without case and spaces at the ends.
 * @param confidence - Of the floor under the yield, above 0, below 1 [-]
 * @returns In the order in which the items first appear; an item with a faulty row is refused as a
 *   whole, since leaving a bad lot out would raise its yield.
 * Limits: a faulty row stands as its refusal; nothing is thrown. Error and source: {@link SHOP_RECORD}, {@link YIELD_BOUND}.
 */
export function itemHistories(rows: readonly PastRow[], confidence: number): ItemHistory[] {
  const groups = new Map<string, PastRow[]>();
  for (const row of rows) {
    const key = row.item.trim().toLowerCase();
    const members = groups.get(key);
    if (members === undefined) groups.set(key, [row]);
    else members.push(row);
  }
  return [...groups.values()].map((members) => ({
    item: members[0]?.item.trim() ?? "",
    record: refusable(members, confidence),
  }));
}
