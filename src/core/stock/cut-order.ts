import { lengthText } from "../quantity-text";
import { InvalidValue } from "../refusal";
import { gridOf, inTenths, TENTHS } from "./cutting-grid";
import { checkBar, checkCut, checkPieces, USUAL_KERF, USUAL_TRIM } from "./cutting-limits";
import type { CuttingTask } from "./cutting-task";
import { priceSteps } from "./price-steps";

/** Pieces of one length. */
export interface PieceLine {
  /** Of a piece, 0.1 to 30,000 [mm]. */
  readonly length: number;
  /** Pieces, whole, 0 to 100,000 [-]. */
  readonly quantity: number;
}

/** A length of bar on offer. */
export interface BarOffer {
  /** Of a bar, 0.1 to 30,000 [mm]. */
  readonly length: number;
  /** Of a bar, 0 and more; all offers carry one, or none [money]. */
  readonly price?: number | undefined;
  /** Bars to be had, whole; as many as needed where left out [-]. */
  readonly inStock?: number | undefined;
}

export interface CutRequest {
  /** One line a length. */
  readonly pieces: readonly PieceLine[];
  /** Lengths on offer. */
  readonly bars: readonly BarOffer[];
  /** Width of a cut, 0 to 20; 1.2 where left out [mm]. */
  readonly kerf?: number | undefined;
  /** Cut off a bar before the first piece, both ends together, 0 to 1000; 10 where left out [mm]. */
  readonly trim?: number | undefined;
  /** Limit of the search; the usual one where left out [millions of steps]. */
  readonly effort?: number | undefined;
}

/** More than these are not planned at once. */
const MAX_KINDS = 200;
const MAX_PIECES = 100_000;
const MAX_BAR_LENGTHS = 50;

/** A request in grid steps, with what is needed to turn patterns back into lengths. */
export interface CutOrder {
  readonly task: CuttingTask;
  /** Lengths of the kinds by id, tenths of a mm. */
  readonly lengths: readonly number[];
  readonly bars: readonly BarOffer[];
  /** Width of a cut and what is cut off a bar, mm. */
  readonly kerf: number;
  readonly trim: number;
  readonly priceStep: number;
}

function pooled(pieces: readonly PieceLine[]): Map<number, number> {
  const wanted = new Map<number, number>();
  for (const { length, quantity } of pieces) {
    if (quantity === 0) continue;
    const tenths = inTenths(length, "up");
    wanted.set(tenths, (wanted.get(tenths) ?? 0) + quantity);
  }
  return new Map([...wanted].sort(([a], [b]) => b - a));
}

function checkSizes(wanted: ReadonlyMap<number, number>, bars: readonly BarOffer[]): void {
  const pieces = [...wanted.values()].reduce((sum, count) => sum + count, 0);
  if (wanted.size === 0) throw new InvalidValue("no pieces to cut: give lengths in mm and quantities");
  if (bars.length === 0) throw new InvalidValue("no bar length given: give the length of the bars in mm");
  if (bars.length > MAX_BAR_LENGTHS) {
    throw new InvalidValue(
      `${bars.length} bar lengths given; one plan takes up to ${MAX_BAR_LENGTHS}: leave out those that differ little`,
    );
  }
  if (wanted.size > MAX_KINDS || pieces > MAX_PIECES) {
    throw new InvalidValue(
      `${wanted.size} lengths and ${pieces} pieces given; one plan takes up to ${MAX_KINDS} lengths ` +
        `and ${MAX_PIECES} pieces: split the order`,
    );
  }
}

function checkFit(bars: readonly BarOffer[], trim: number, lengths: readonly number[]): void {
  const longestBar = Math.max(...bars.map(({ length }) => length));
  const usable = inTenths(longestBar, "down") - inTenths(trim, "up");
  const tooLong = lengths.find((length) => length > usable);
  if (tooLong === undefined) return;
  throw new InvalidValue(
    `a piece of ${lengthText(tooLong / TENTHS)} is longer than the bar: ${lengthText(longestBar)} ` +
      `less ${lengthText(trim)} trim leaves ${lengthText(Math.max(0, usable / TENTHS))}`,
  );
}

/** The bars in an order of their own: the plan must not depend on that in which they were given. */
function inOneOrder(bars: readonly BarOffer[]): BarOffer[] {
  const rank = ({ price = 0, inStock = Number.POSITIVE_INFINITY }: BarOffer) => [price, -inStock] as const;
  return [...bars].sort((a, b) => {
    const [[priceA, stockA], [priceB, stockB]] = [rank(a), rank(b)];
    return b.length - a.length || priceA - priceB || (stockA === stockB ? 0 : stockA - stockB);
  });
}

/**
 * Pools pieces of one length and puts everything on the grid.
 *
 * @throws InvalidValue for a piece longer than the bar, an empty order, what is no figure, or figures past the limits.
 */
export function cutOrder(request: CutRequest): CutOrder {
  const { kerf = USUAL_KERF, trim = USUAL_TRIM } = request;
  checkCut(kerf, trim);
  for (const { length, quantity } of request.pieces) checkPieces(length, quantity);
  for (const bar of request.bars) checkBar(bar);
  const bars = inOneOrder(request.bars);
  const wanted = pooled(request.pieces);
  checkSizes(wanted, bars);
  const lengths = [...wanted.keys()];
  checkFit(bars, trim, lengths);
  const cut = inTenths(kerf, "up");
  const grid = gridOf(lengths.map((length) => length + cut));
  const rooms = bars.map(({ length }) => inTenths(length, "down") - inTenths(trim, "up") + cut);
  const prices = priceSteps(bars.map(({ price }) => price));
  const kinds = lengths.map((length, id) => {
    return { id, size: (length + cut) / grid, demand: wanted.get(length) ?? 0 };
  });
  const stocks = bars.map(({ inStock }, index) => ({
    room: Math.max(0, Math.floor((rooms[index] ?? 0) / grid)),
    cost: prices.steps[index] ?? 1,
    available: inStock ?? Number.POSITIVE_INFINITY,
  }));
  const task = { kinds, stocks, width: kinds.length, wholeCosts: prices.isWhole };
  return { task, lengths, bars, kerf, trim, priceStep: prices.step };
}
