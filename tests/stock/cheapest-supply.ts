import { leastCost, type SmallBar } from "./brute-force";

/** One supplier's offer for one item: bars in whole millimetres and whole money. */
export interface SmallOffer {
  readonly supplier: number;
  readonly item: number;
  readonly bars: readonly SmallBar[];
}

export interface SmallOrder {
  /** Pieces of each item, mm. */
  readonly items: readonly (readonly number[])[];
  readonly offers: readonly SmallOffer[];
  readonly terms: readonly { readonly minimum: number; readonly freight: number }[];
  readonly most: number;
  readonly kerf: number;
  readonly trim: number;
}

/** Every way to give each item a supplier. */
function* assignments(items: number, suppliers: number): Generator<number[]> {
  const total = suppliers ** items;
  for (let code = 0; code < total; code += 1) {
    yield Array.from({ length: items }, (_, item) => Math.floor(code / suppliers ** item) % suppliers);
  }
}

function costOf(order: SmallOrder, cut: readonly (readonly number[])[], chosen: readonly number[]): number {
  const used = new Set(chosen);
  if (used.size > order.most) return Number.POSITIVE_INFINITY;
  let sum = 0;
  for (const supplier of used) {
    const goods = chosen.reduce(
      (of, by, item) => of + (by === supplier ? (cut[item]?.[supplier] ?? 0) : 0),
      0,
    );
    const { minimum = 0, freight = 0 } = order.terms[supplier] ?? {};
    sum += freight + Math.max(minimum, goods);
  }
  return sum;
}

/**
 * The cheapest order by trying everything: every supplier for every item, every way to place each piece in a bar. It
 * shares no code with the functions. `Infinity` where no choice serves all items.
 */
export function cheapestSupply(order: SmallOrder): number {
  const { items, offers, terms, kerf, trim } = order;
  const cut = items.map((pieces, item) =>
    terms.map((_, supplier) => {
      const own = offers.filter((offer) => offer.item === item && offer.supplier === supplier);
      const bars = own.flatMap((offer) => offer.bars);
      return bars.length === 0 ? Number.POSITIVE_INFINITY : leastCost(pieces, bars, kerf, trim);
    }),
  );
  let best = Number.POSITIVE_INFINITY;
  for (const chosen of assignments(items.length, terms.length))
    best = Math.min(best, costOf(order, cut, chosen));
  return best;
}
