import { attemptInParts, type InParts } from "../parts";
import { InvalidValue, NotAvailable, Refusal } from "../refusal";
import { barMass, wholeBars } from "./bar-mass";
import type { BarOffer } from "./cut-order";
import { cutPlanInParts } from "./cut-plan";
import { massCover } from "./mass-cover";
import type { NeedItem, OfferLine } from "./offers";

/** Bars of one length that are bought. */
export interface BoughtBars {
  /** Of a bar [mm]; `undefined` where a mass is bought. */
  readonly length: number | undefined;
  /** Of that length [-]. */
  readonly bars: number;
  /** Of all of them [kg]. */
  readonly kilograms: number;
  /** Of all of them [money]. */
  readonly cost: number;
  /** Of delivery, in the supplier's words; empty where not given. */
  readonly week: string;
}

/** What a supplier takes for one steel and section. */
export interface ItemOffer {
  /** Bars of each length, or the mass. */
  readonly bought: readonly BoughtBars[];
  /** Of all that is bought [money]. */
  readonly cost: number;
  /** No way to cut the pieces from the supplier's bars costs less [money]. */
  readonly bound: number;
}

export interface Cutting {
  readonly kerf: number;
  readonly trim: number;
  /** Limit of the search of one plan, in millions of steps. */
  readonly effort: number;
}

interface Bar {
  readonly length: number;
  readonly price: number;
  readonly available: number;
  readonly kilograms: number;
  readonly week: string;
}

const KILOGRAMS_A_POUND = 0.45359237;
const MM_A_METRE = 1000;
const MM_A_FOOT = 304.8;

/** Plans of several lengths compare bars to the hundredth: in whole steps of money a plan is proved sooner. */
const PRICE_STEPS = 100;
const stepped = (price: number) => Math.round(price * PRICE_STEPS) / PRICE_STEPS;

/** A sum of money without the traces of binary fractions. */
const money = (value: number) => Number(value.toPrecision(12));

function priceOfBar({ price, per }: OfferLine, length: number, kilograms: number): number {
  switch (per) {
    case "kg":
      return price * kilograms;
    case "lb":
      return (price * kilograms) / KILOGRAMS_A_POUND;
    case "m":
      return (price * length) / MM_A_METRE;
    case "ft":
      return (price * length) / MM_A_FOOT;
    case "bar":
      return price;
  }
}

function barsOf(line: OfferLine): Bar[] {
  const { steel, section, week } = line;
  return line.barLengths.map((length) => {
    const kilograms = barMass(steel, section.area, length);
    const price = money(priceOfBar(line, length, kilograms));
    return { length, price, available: line.barsInStock ?? Number.POSITIVE_INFINITY, kilograms, week };
  });
}

function boughtOf(bars: readonly Bar[], taken: readonly number[]): BoughtBars[] {
  return bars.flatMap(({ length, price, kilograms, week }, place) => {
    const count = taken[place] ?? 0;
    if (count === 0) return [];
    return [{ length, bars: count, kilograms: count * kilograms, cost: money(count * price), week }];
  });
}

/** Bars of the rack, which cost nothing. */
function rackOf({ inStock, barLength, steel, section, name }: NeedItem): BarOffer[] {
  if (inStock <= 0) return [];
  if (barLength === undefined) {
    throw new InvalidValue(
      `${name}: kg in stock is given without a bar length; give the length of the bars in the rack`,
    );
  }
  const bars = wholeBars(inStock, barMass(steel, section.area, barLength));
  return bars < 1 ? [] : [{ length: barLength, price: 0, inStock: bars }];
}

/** The plan from bars of several lengths and prices; of one length the fewest bars are the cheapest. */
function* cutOffer(item: NeedItem, bars: readonly Bar[], cutting: Cutting): InParts<ItemOffer> {
  const rack = rackOf(item);
  const priced = rack.length > 0 || bars.length > 1;
  const offers = bars.map(({ length, price, available }): BarOffer => {
    const inStock = Number.isFinite(available) ? available : undefined;
    return { length, inStock, price: priced ? stepped(price) : undefined };
  });
  const plan = yield* cutPlanInParts({ pieces: item.pieces, bars: [...offers, ...rack], ...cutting });
  const bought = boughtOf(bars, plan.taken);
  const cost = money(bought.reduce((sum, each) => sum + each.cost, 0));
  const bound = priced ? plan.bound : plan.bound * (bars[0]?.price ?? 0);
  // Where every bar is free the plan counts bars, and its bound is no amount.
  return {
    bought,
    cost,
    bound: plan.isProved || (plan.cost === undefined && priced) ? cost : Math.min(cost, bound),
  };
}

function massOffer(item: NeedItem, lines: readonly OfferLine[], bars: readonly Bar[]): ItemOffer {
  const needed = Math.max(0, item.kilograms - item.inStock);
  const byMass = lines.filter(({ barLengths }) => barLengths.length === 0);
  const perKg = (line: OfferLine) => priceOfBar(line, 0, 1);
  const [cheapest] = [...byMass].sort((a, b) => perKg(a) - perKg(b));
  const cover = massCover(
    needed,
    bars.map(({ kilograms, price, available }) => ({ kilograms, cost: price, available })),
  );
  const weighed = cheapest === undefined ? Number.POSITIVE_INFINITY : money(needed * perKg(cheapest));
  if (cheapest !== undefined && weighed <= (cover?.cost ?? Number.POSITIVE_INFINITY)) {
    const bought = { length: undefined, bars: 0, kilograms: needed, cost: weighed, week: cheapest.week };
    return { bought: [bought], cost: weighed, bound: Math.min(weighed, cover?.bound ?? weighed) };
  }
  if (cover === undefined) throw new NotAvailable("the bars in stock weigh less than is needed");
  return { bought: boughtOf(bars, cover.taken), cost: money(cover.cost), bound: cover.bound };
}

function* offerOf(item: NeedItem, lines: readonly OfferLine[], cutting: Cutting): InParts<ItemOffer> {
  const bars = lines.flatMap(barsOf);
  if (item.kilograms > 0) return massOffer(item, lines, bars);
  if (bars.length === 0) throw new InvalidValue("no bar length is given: pieces are cut from bars");
  return yield* cutOffer(item, bars, cutting);
}

/** True where what is in the rack is enough. */
export function* isInRack(item: NeedItem, cutting: Cutting): InParts<boolean> {
  if (item.kilograms > 0) return item.inStock >= item.kilograms;
  const rack = rackOf(item);
  if (rack.length === 0) return false;
  const plan = yield* attemptInParts(cutPlanInParts({ pieces: item.pieces, bars: rack, ...cutting }));
  return !(plan instanceof Refusal);
}

/** What one supplier's lines for a steel and section come to, or why they do not do. */
export function itemOffer(
  item: NeedItem,
  lines: readonly OfferLine[],
  cutting: Cutting,
): InParts<ItemOffer | Refusal> {
  return attemptInParts(offerOf(item, lines, cutting));
}
