import { type InParts, toTheEnd } from "../parts";
import { InvalidValue, NotAvailable, Refusal } from "../refusal";
import { relation } from "../relation";
import { type BoughtBars, type Cutting, type ItemOffer, isInRack, itemOffer } from "./item-offer";
import {
  itemKey,
  type NeedItem,
  type NeedLine,
  neededItems,
  type OfferLine,
  type Supplier,
  suppliersOf,
} from "./offers";
import { cheapestMix, fewestSuppliers, type MixTask, type SupplierMix } from "./supplier-mix";

/** Offers of several suppliers, held against what is needed. */
export const SUPPLIER_MIX = relation({
  title: "Cheapest mix of suppliers",
  source: "shop-arithmetic",
  locator:
    "sum over the suppliers ordered from of freight and the larger of goods and minimum charge; every set of suppliers is tried",
  evidence: "common practice",
  inputs: {},
  output: { label: "cost of the order", unit: "money" },
  error: {
    size: null,
    unit: "money",
    kind: "none where the cost meets the lower bound to a hundredth; else at most the gap that is shown",
  },
  note:
    "One steel and section is bought from one supplier, so that it is of one heat where he has one; a supplier whose " +
    "stock is too small for all of it is not taken for it. Common practice, no source. Up to 20 suppliers; beyond " +
    "12 of them or after a fixed amount of work the gap to the bound is shown.",
});

export interface OfferRequest {
  /** What is needed, one line a length or a mass. */
  readonly need: readonly NeedLine[];
  /** All lines of all suppliers. */
  readonly offers: readonly OfferLine[];
  /** Most suppliers to order from; as many as there are where left out [-]. */
  readonly most: number | undefined;
  /** Width of a cut, 0 to 20 [mm]. */
  readonly kerf: number;
  /** Cut off each bar, both ends together, 0 to 1000 [mm]. */
  readonly trim: number;
}

/** One steel and section with what each supplier takes for it. */
export interface ComparedItem {
  /** What is needed. */
  readonly item: NeedItem;
  /** True where the rack holds enough. */
  readonly isInRack: boolean;
  /** By supplier: what it comes to, why it does not do, or `undefined` where it is not offered. */
  readonly offers: readonly (ItemOffer | Refusal | undefined)[];
}

export interface Comparison {
  /** Each with all that he offers. */
  readonly suppliers: readonly Supplier[];
  /** One for each steel and section. */
  readonly items: readonly ComparedItem[];
}

/** What is bought from one supplier. */
export interface SupplierOrder {
  readonly supplier: Supplier;
  /** What is bought for each steel and section. */
  readonly items: readonly { readonly item: NeedItem; readonly bought: readonly BoughtBars[] }[];
  /** Price of the steel alone [money]. */
  readonly goods: number;
  /** What is paid up to the minimum charge [money]. */
  readonly shortfall: number;
  /** Goods, shortfall and freight [money]. */
  readonly cost: number;
}

export interface BestOffer extends Comparison {
  /** One for each supplier that is bought from. */
  readonly orders: readonly SupplierOrder[];
  /** Of all orders together [money]. */
  readonly cost: number;
  /** No mix costs less [money]. */
  readonly bound: number;
  /** True where the cost meets the bound. */
  readonly isProved: boolean;
}

/** Work of all plans together and of a single one at most, in millions of steps: about a second. */
const ALL_EFFORT = 80;
const LEAST_EFFORT = 0.05;
/** Lengths of bar on offer for what is needed, of all suppliers together. */
const MAX_LENGTHS = 250;
const EQUAL = 1e-6;
/** A mix is the cheapest where nothing larger than this could be saved. */
const HUNDREDTH = 0.01;

const money = (value: number) => Number(value.toPrecision(12));

const linesFor = (supplier: Supplier, item: NeedItem) =>
  supplier.lines.filter((line) => itemKey(line) === item.key);

function checkLengths(lines: readonly OfferLine[]): void {
  const lengths = lines.reduce((sum, { barLengths }) => sum + Math.max(1, barLengths.length), 0);
  if (lengths <= MAX_LENGTHS) return;
  throw new InvalidValue(
    `${lengths} bar lengths are on offer for what is needed; up to ${MAX_LENGTHS} are compared at a time: split the order`,
  );
}

/**
 * What each supplier takes for each steel and section, minimum charges and freight left out.
 *
 * @param request - Lengths [mm], masses [kg], prices in one currency.
 * @throws InvalidValue for figures of one supplier or of one steel and section that disagree, and for more than 20
 * suppliers, 200 steels and sections or 250 bar lengths offered for them.
 * Error and source: {@link SUPPLIER_MIX}.
 */
export function compareOffers(request: OfferRequest): Comparison {
  return toTheEnd(compareOffersInParts(request));
}

function* comparedItem(
  item: NeedItem,
  suppliers: readonly Supplier[],
  cutting: Cutting,
): InParts<ComparedItem> {
  const offers: (ItemOffer | Refusal | undefined)[] = [];
  for (const supplier of suppliers) {
    const lines = linesFor(supplier, item);
    offers.push(lines.length === 0 ? undefined : yield* itemOffer(item, lines, cutting));
    yield;
  }
  return { item, isInRack: yield* isInRack(item, cutting), offers };
}

/** The same comparison in parts of a few milliseconds. */
export function* compareOffersInParts(request: OfferRequest): InParts<Comparison> {
  const items = neededItems(request.need);
  const suppliers = suppliersOf(request.offers);
  const wanted = items.flatMap((item) => suppliers.map((supplier) => linesFor(supplier, item)));
  checkLengths(wanted.flat());
  const plans = wanted.filter((lines) => lines.length > 0).length;
  const effort = Math.max(LEAST_EFFORT, ALL_EFFORT / Math.max(1, plans + items.length));
  const cutting: Cutting = { kerf: request.kerf, trim: request.trim, effort };
  const compared: ComparedItem[] = [];
  for (const item of items) compared.push(yield* comparedItem(item, suppliers, cutting));
  return { suppliers, items: compared };
}

const isOffer = (offer: ItemOffer | Refusal | undefined): offer is ItemOffer =>
  offer !== undefined && !(offer instanceof Refusal);

/** True where somebody can deliver all of it. */
export const isOfferedByAnyone = ({ offers }: ComparedItem): boolean => offers.some(isOffer);

/** What has to be bought and can be. */
function toBuy({ items }: Comparison): ComparedItem[] {
  return items.filter((compared) => !compared.isInRack && isOfferedByAnyone(compared));
}

/** Items in an order of their own: of equal mixes the same is taken, however the rows stand. */
const inOneOrder = (items: readonly ComparedItem[]): ComparedItem[] =>
  [...items].sort((a, b) => (a.item.key < b.item.key ? -1 : 1));

function mixTask(
  items: readonly ComparedItem[],
  suppliers: readonly Supplier[],
  most: number,
  figure: (offer: ItemOffer) => number,
): MixTask {
  const costs = items.map(({ offers }) =>
    offers.map((offer) => (isOffer(offer) ? figure(offer) : undefined)),
  );
  return { costs, terms: suppliers, most };
}

/**
 * What is ordered from a supplier: his share of a mix, or everything.
 *
 * @param items - With what the supplier takes for each; those he does not offer are left out.
 */
export function supplierOrder(
  items: readonly ComparedItem[],
  suppliers: readonly Supplier[],
  place: number,
): SupplierOrder {
  const supplier = suppliers[place] as Supplier;
  const taken = items.flatMap(({ item, offers }) => {
    const offer = offers[place];
    return isOffer(offer) ? [{ item, bought: offer.bought, cost: offer.cost }] : [];
  });
  const goods = money(taken.reduce((sum, { cost }) => sum + cost, 0));
  const shortfall = money(Math.max(0, supplier.minimum - goods));
  return { supplier, items: taken, goods, shortfall, cost: money(goods + shortfall + supplier.freight) };
}

function refuseFew(task: MixTask, most: number): never {
  const fewest = fewestSuppliers(task);
  const needed = fewest === undefined ? "more are needed" : `at least ${fewest} are needed`;
  throw new NotAvailable(
    `no ${most === 1 ? "single supplier offers" : `${most} suppliers together offer`} everything: ${needed}; allow more suppliers`,
  );
}

/** A lower bound on the mix where some plans of cutting are not proved: the mix of their bounds. */
function* boundOf(task: MixTask, found: SupplierMix, bounds: MixTask): InParts<number> {
  const isExact = task.costs.every((row, item) =>
    row.every(
      (cost, supplier) => cost === undefined || cost - (bounds.costs[item]?.[supplier] ?? 0) <= EQUAL,
    ),
  );
  return isExact ? found.bound : Math.min(found.bound, (yield* cheapestMix(bounds))?.bound ?? 0);
}

/**
 * The cheapest mix of suppliers for what is needed: each steel and section from one supplier, minimum charges and
 * freight counted, no more suppliers than allowed.
 *
 * @param request - Lengths [mm], masses [kg], prices in one currency.
 * @throws InvalidValue for figures of one supplier or of one steel and section that disagree, and for more than 20
 * suppliers, 200 steels and sections or 250 bar lengths offered for them.
 * @throws NotAvailable where so many suppliers do not offer everything that somebody offers.
 * Error and source: {@link SUPPLIER_MIX}.
 */
export function bestOffer(request: OfferRequest): BestOffer {
  return toTheEnd(bestOfferInParts(request));
}

/** The same mix in parts of a few milliseconds. */
export function* bestOfferInParts(request: OfferRequest): InParts<BestOffer> {
  const compared = yield* compareOffersInParts(request);
  const { suppliers } = compared;
  const items = inOneOrder(toBuy(compared));
  const nothing = { ...compared, orders: [], cost: 0, bound: 0, isProved: true };
  if (items.length === 0) return nothing;
  const most = request.most ?? suppliers.length;
  const task = mixTask(items, suppliers, most, ({ cost }) => cost);
  const mix = yield* cheapestMix(task);
  if (mix === undefined) return refuseFew(task, most);
  const bounds = mixTask(items, suppliers, most, ({ bound }) => bound);
  const orders = [...new Set(mix.choice)]
    .sort((a, b) => a - b)
    .map((place) => {
      const own = items.filter((_, item) => mix.choice[item] === place);
      return supplierOrder(own, suppliers, place);
    });
  const cost = money(orders.reduce((sum, order) => sum + order.cost, 0));
  const bound = Math.min(cost, money(yield* boundOf(task, mix, bounds)));
  return { ...compared, orders, cost, bound, isProved: cost - bound <= HUNDREDTH };
}
