import type { InParts } from "../../core/parts";
import { quantityText } from "../../core/quantity-text";
import { NotAvailable, Refusal } from "../../core/refusal";
import { densityRelations } from "../../core/steel/density";
import {
  type BestOffer,
  bestOfferInParts,
  type ComparedItem,
  isOfferedByAnyone,
  SUPPLIER_MIX,
  type SupplierOrder,
  supplierOrder,
} from "../../core/stock/best-offer";
import { CUTTING_PLAN } from "../../core/stock/cut-plan";
import type { BoughtBars } from "../../core/stock/item-offer";
import type { NeedItem } from "../../core/stock/offers";
import type { Cell, Cells } from "../cells";
import { tableFunction } from "../declare";
import { numberOrNothing } from "../parameters";
import { kerf, trim } from "./arguments";
import { need, type OfferTables, offerRequest, offers, rememberedAnswers } from "./offer-request";
import { sumsOf, tidy } from "./offer-sums";
import type { LeftOut } from "./offer-tables";

/** Words of the first column of the rows that are no goods. */
const ROWS = {
  minimum: "minimum charge",
  freight: "freight",
  total: "total",
  bound: "lower bound",
  alone: "all from one",
  leftOut: "left out",
} as const;

function goodsRow({ steel, section }: NeedItem, supplier: string, bought: BoughtBars): Cell[] {
  const { length, bars, cost, kilograms, week } = bought;
  const counted = length === undefined ? "" : bars;
  return [steel.name, section.text, supplier, counted, length ?? "", cost, tidy(kilograms), week];
}

/** Why nobody's offer does for a steel and section. */
function nobody({ item, offers }: ComparedItem): Refusal {
  const refused = offers.find((offer) => offer instanceof Refusal);
  if (refused instanceof Refusal) return new NotAvailable(`${item.name}: ${refused.message}`);
  return new NotAvailable(`${item.name}: nobody offers it; it is not in the total`);
}

/** A row a steel and section, and a length of bar; in the order of what is needed. */
function itemRows({ items, orders }: BestOffer): Cell[][] {
  return items.flatMap((compared): Cell[][] => {
    const { item } = compared;
    const { steel, section } = item;
    if (compared.isInRack) return [[steel.name, section.text, "in stock", 0, "", 0, 0, ""]];
    if (!isOfferedByAnyone(compared)) {
      return [[steel.name, section.text, "no offer", "", "", nobody(compared), "", ""]];
    }
    return orders.flatMap(({ supplier, items: own }) =>
      own
        .filter(({ item: { key } }) => key === item.key)
        .flatMap(({ bought }) => bought.map((bars) => goodsRow(item, supplier.name, bars))),
    );
  });
}

function termRows({ supplier, shortfall }: SupplierOrder): Cell[][] {
  const rows: Cell[][] = [];
  if (shortfall > 0) rows.push([ROWS.minimum, "", supplier.name, "", "", shortfall, "", ""]);
  if (supplier.freight > 0) rows.push([ROWS.freight, "", supplier.name, "", "", supplier.freight, "", ""]);
  return rows;
}

function verdict({ cost, bound, isProved, orders }: BestOffer): string {
  if (orders.length === 0) return "nothing to buy";
  if (isProved) return "no mix costs less";
  return `a cheaper mix is not ruled out: at most ${quantityText(cost - bound, "")} could be saved`;
}

function totalRows(best: BestOffer): Cell[][] {
  const { bars, kilograms, week } = sumsOf(best.orders);
  const names = best.orders.map(({ supplier }) => supplier.name).join(", ");
  return [
    [ROWS.total, "", names, bars, "", best.cost, kilograms, week],
    [ROWS.bound, verdict(best), "", "", "", best.bound, "", ""],
  ];
}

/** The whole order from each supplier alone, or the first thing that he does not offer. */
function aloneRows({ suppliers, items }: BestOffer): Cell[][] {
  const wanted = items
    .filter((compared) => !compared.isInRack && isOfferedByAnyone(compared))
    .sort((a, b) => (a.item.name < b.item.name ? -1 : 1));
  if (wanted.length === 0) return [];
  return suppliers.map((supplier, place): Cell[] => {
    const order = supplierOrder(wanted, suppliers, place);
    const missing = wanted.filter(({ item }) => !order.items.some((own) => own.item.key === item.key));
    const [first] = missing;
    if (first !== undefined) {
      const more = missing.length > 1 ? ` and ${missing.length - 1} more` : "";
      return [ROWS.alone, `without ${first.item.name}${more}`, supplier.name, "", "", "", "", ""];
    }
    const { bars, kilograms, week } = sumsOf([order]);
    return [ROWS.alone, "", supplier.name, bars, "", order.cost, kilograms, week];
  });
}

function leftOutRow({ place, supplier, refusal }: LeftOut): Cell[] {
  return [ROWS.leftOut, place, supplier, "", "", refusal, "", ""];
}

function* answerOf(given: OfferTables): InParts<Cells> {
  const { request, leftOut, remarks } = offerRequest(given);
  const best = yield* bestOfferInParts({ ...request, most: given.most });
  return [
    ...itemRows(best),
    ...best.orders.flatMap(termRows),
    ...totalRows(best),
    ...aloneRows(best),
    ...leftOut.map(leftOutRow),
    ...remarks.map((remark): Cell[] => ["remark", remark, "", "", "", "", "", ""]),
  ];
}

const answers = rememberedAnswers(answerOf);

export const BEST_OFFER = tableFunction({
  name: "BEST_OFFER",
  takesLong: true,
  summary:
    "Cheapest mix of suppliers for an order: bars by steel, section and supplier, then minimum charges, freight, total, and each supplier alone.",
  parameters: {
    need,
    offers,
    most: numberOrNothing({
      label: "most suppliers",
      quantity: "count",
      unit: "",
      min: 1,
      max: 20,
      whole: true,
      help: "Suppliers to order from at most; as many as pay where left out.",
    }),
    kerf,
    trim,
  },
  result: [
    { label: "steel", unit: "text" },
    { label: "section", unit: "text" },
    { label: "supplier", unit: "text" },
    { label: "bars", unit: "" },
    { label: "bar length", unit: "mm" },
    { label: "cost", unit: "money" },
    { label: "mass", unit: "kg" },
    { label: "week", unit: "text" },
  ],
  relations: (steel) => [SUPPLIER_MIX, CUTTING_PLAN, ...densityRelations(steel)],
  compute: answers,
});
