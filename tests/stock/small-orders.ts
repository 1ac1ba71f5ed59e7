import { evaluate } from "../../src/functions/evaluate";
import { BEST_OFFER } from "../../src/functions/stock";
import { randomFrom } from "./brute-force";
import type { SmallOrder } from "./cheapest-supply";

const STEELS = ["1075", "52100", "80CrV2"] as const;
export const NEED = ["steel", "section", "length", "quantity"];
export const OFFERS = [
  "supplier",
  "steel",
  "section",
  "price",
  "per",
  "bar length",
  "bars in stock",
  "minimum charge",
  "freight",
];

export type Row = (string | number | null)[];
export interface Tables {
  readonly need: Row[];
  readonly offers: Row[];
}

export function ask({ need, offers }: Tables, most: number | null = null, kerf = 0, trim = 0) {
  return evaluate(BEST_OFFER, [[NEED, ...need], [OFFERS, ...offers], most, kerf, trim]);
}

export const costUnder = (rows: ReturnType<typeof ask>, word: string) =>
  rows.find(([first]) => first === word)?.[5];
export const total = (rows: ReturnType<typeof ask>) => costUnder(rows, "total");

/** A small order: 1 to 3 items of 1 to 4 pieces, 2 to 4 suppliers, whole money. */
export function drawn(seed: number): SmallOrder {
  const random = randomFrom(seed);
  const upTo = (most: number) => 1 + Math.floor(random() * most);
  const items = Array.from({ length: upTo(3) }, () => Array.from({ length: upTo(4) }, () => 80 + upTo(300)));
  const terms = Array.from({ length: 1 + upTo(3) }, () => ({
    minimum: random() < 0.5 ? upTo(60) : 0,
    freight: random() < 0.7 ? upTo(15) : 0,
  }));
  const offers = items.flatMap((_, item) =>
    terms.flatMap((_, supplier) => {
      if (random() < 0.2) return [];
      const bars = Array.from({ length: upTo(2) }, () => ({
        length: 420 + upTo(600),
        price: 5 + upTo(20),
        inStock: random() < 0.3 ? upTo(4) : 99,
      }));
      return [{ supplier, item, bars }];
    }),
  );
  return { items, offers, terms, most: upTo(terms.length), kerf: upTo(3), trim: upTo(10) };
}

export function tablesOf({ items, offers, terms }: SmallOrder): Tables {
  const need = items.flatMap((pieces, item) =>
    pieces.map((length): Row => [STEELS[item] ?? "", "40 x 4", length, 1]),
  );
  const rows = offers.flatMap(({ supplier, item, bars }) =>
    bars.map(({ length, price, inStock }): Row => {
      const { minimum = 0, freight = 0 } = terms[supplier] ?? {};
      return [`S${supplier}`, STEELS[item] ?? "", "40 x 4", price, "bar", length, inStock, minimum, freight];
    }),
  );
  return { need, offers: rows };
}
