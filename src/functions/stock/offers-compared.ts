import type { InParts } from "../../core/parts";
import { Refusal } from "../../core/refusal";
import { densityRelations } from "../../core/steel/density";
import {
  type ComparedItem,
  type Comparison,
  compareOffersInParts,
  SUPPLIER_MIX,
  supplierOrder,
} from "../../core/stock/best-offer";
import { CUTTING_PLAN } from "../../core/stock/cut-plan";
import type { Cell, Cells } from "../cells";
import { type Column, tableFunction } from "../declare";
import { kerf, trim } from "./arguments";
import { need, type OfferTables, offerRequest, offers, rememberedAnswers } from "./offer-request";
import { sumsOf, tidy } from "./offer-sums";

const COLUMNS: readonly Column[] = [
  { label: "steel", unit: "text" },
  { label: "section", unit: "text" },
  { label: "needed", unit: "text" },
];

const NOT_OFFERED = "not offered";
const IN_STOCK = "in stock";

function neededText({ pieces, kilograms }: ComparedItem["item"]): string {
  const count = pieces.reduce((sum, { quantity }) => sum + quantity, 0);
  return count === 0 ? `${tidy(kilograms)} kg` : `${count} pieces`;
}

function itemRow({ item, isInRack, offers }: ComparedItem): Cell[] {
  const told = offers.map((offer) => {
    if (isInRack) return IN_STOCK;
    if (offer === undefined) return NOT_OFFERED;
    return offer instanceof Refusal ? offer.message : offer.cost;
  });
  return [item.steel.name, item.section.text, neededText(item), ...told];
}

/** What a supplier delivers of all that is needed, charges added; empty where he leaves something out. */
function supplierFigures({
  suppliers,
  items,
}: Comparison): readonly (readonly [label: string, row: Cell[]])[] {
  const wanted = items.filter(({ isInRack }) => !isInRack);
  const orders = suppliers.map((_, place) => supplierOrder(wanted, suppliers, place));
  const isWhole = orders.map((order) => order.items.length === wanted.length);
  const each = (figure: (place: number) => Cell) => orders.map((_, place) => figure(place));
  const some = (place: number, figure: Cell) => (orders[place]?.items.length === 0 ? "" : figure);
  return [
    ["goods", each((place) => some(place, orders[place]?.goods ?? 0))],
    ["up to the minimum charge", each((place) => some(place, orders[place]?.shortfall ?? 0))],
    ["freight", each((place) => some(place, suppliers[place]?.freight ?? 0))],
    ["all that is offered", each((place) => some(place, orders[place]?.cost ?? 0))],
    ["whole order", each((place) => (isWhole[place] ? (orders[place]?.cost ?? 0) : ""))],
    ["last delivery", orders.map((order) => sumsOf([order]).week)],
  ];
}

function* tableOf(given: OfferTables): InParts<Cells> {
  const { request, remarks } = offerRequest(given);
  const compared = yield* compareOffersInParts({ ...request, most: undefined });
  const blanks = [...COLUMNS.slice(2), ...compared.suppliers].map((): Cell => "");
  return [
    [...COLUMNS.map(({ label }) => label), ...compared.suppliers.map(({ name }) => name)],
    ...compared.items.map(itemRow),
    ...supplierFigures(compared).map(([label, row]) => [label, "", "", ...row]),
    ...remarks.map((remark): Cell[] => ["remark", remark, ...blanks]),
  ];
}

const answers = rememberedAnswers(tableOf);

export const OFFERS_COMPARED = tableFunction({
  name: "OFFERS_COMPARED",
  takesLong: true,
  summary:
    "Offers side by side: a row a steel and section, a column a supplier, then goods, minimum charge, freight, whole order and delivery.",
  parameters: { need, offers, kerf, trim },
  result: [...COLUMNS, { label: "a supplier a column", unit: "money" }],
  relations: (steel) => [SUPPLIER_MIX, CUTTING_PLAN, ...densityRelations(steel)],
  compute: answers,
});
