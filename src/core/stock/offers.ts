import { InvalidValue } from "../refusal";
import type { Steel } from "../steel/steel";
import type { BarSection } from "./bar-section";
import type { PieceLine } from "./cut-order";

/** A line of what is needed: pieces to be cut, or a mass. */
export interface NeedLine {
  readonly steel: Steel;
  readonly section: BarSection;
  /** Pieces of one length; `undefined` where a mass is needed. */
  readonly pieces: PieceLine | undefined;
  /** Mass needed, above 0 [kg]; `undefined` where pieces are needed. */
  readonly kilograms: number | undefined;
  /** Of this steel and section in the rack, 0 and more [kg]. */
  readonly inStock: number | undefined;
  /** Of the bars in the rack, 0.1 to 30,000 [mm]. */
  readonly barLength: number | undefined;
}

/** What prices count. */
export const PRICE_UNITS = ["kg", "bar", "m", "lb", "ft"] as const;

export type PriceUnit = (typeof PRICE_UNITS)[number];

/** A line of a supplier's answer. */
export interface OfferLine {
  readonly supplier: string;
  readonly steel: Steel;
  readonly section: BarSection;
  /** Of one `per`, 0 and more [money]. */
  readonly price: number;
  /** What the price counts. */
  readonly per: PriceUnit;
  /** Lengths to be had, 0.1 to 30,000; none where any mass is sold [mm]. */
  readonly barLengths: readonly number[];
  /** Bars of each length to be had; as many as needed where left out [-]. */
  readonly barsInStock: number | undefined;
  /** Least amount that the supplier charges for the goods of an order [money]. */
  readonly minimum: number | undefined;
  /** Added once to an order [money]. */
  readonly freight: number | undefined;
  /** Week of delivery in the supplier's words; empty where not given. */
  readonly week: string;
}

/** All that is needed of one steel and section. */
export interface NeedItem {
  readonly steel: Steel;
  readonly section: BarSection;
  /** Steel and section as an order writes them. */
  readonly name: string;
  /** The same for the same steel and section. */
  readonly key: string;
  /** To be cut; none where a mass is needed. */
  readonly pieces: readonly PieceLine[];
  /** Mass needed; 0 where pieces are needed [kg]. */
  readonly kilograms: number;
  /** In the rack [kg]. */
  readonly inStock: number;
  /** Of the bars in the rack [mm]. */
  readonly barLength: number | undefined;
}

/** A supplier with everything he offers. */
export interface Supplier {
  readonly name: string;
  /** Least amount charged for the goods of an order [money]. */
  readonly minimum: number;
  /** Added once to an order [money]. */
  readonly freight: number;
  /** All that he offers. */
  readonly lines: readonly OfferLine[];
}

/** Steels and sections of one order, and suppliers compared. */
export const MAX_ITEMS = 200;
const MAX_SUPPLIERS = 20;

export const itemKey = ({ steel, section }: Pick<NeedLine, "steel" | "section">): string =>
  `${steel.name} ${section.key}`;

/** A figure that belongs to several lines together: repeated it counts once. */
function once(given: readonly (number | undefined)[], whose: string, what: string): number | undefined {
  const figures = [...new Set(given.filter((figure) => figure !== undefined))];
  if (figures.length <= 1) return figures[0];
  throw new InvalidValue(`${whose}: ${what} is given as ${figures.join(" and ")}; give it once`);
}

function grouped<T>(list: readonly T[], keyOf: (entry: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const entry of list) {
    const key = keyOf(entry);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [entry]);
    else group.push(entry);
  }
  return [...groups.values()];
}

function itemOf(lines: readonly NeedLine[]): NeedItem[] {
  const [first] = lines;
  if (first === undefined) return [];
  const { steel, section } = first;
  const name = `${steel.name} ${section.text}`;
  const pieces = lines.flatMap((line) => line.pieces ?? []).filter(({ quantity }) => quantity > 0);
  const kilograms = lines.reduce((sum, line) => sum + (line.kilograms ?? 0), 0);
  if (pieces.length > 0 && kilograms > 0) {
    throw new InvalidValue(`${name}: pieces and kg are given; give one of them for one steel and section`);
  }
  if (pieces.length === 0 && kilograms === 0) return [];
  const inStock = once(
    lines.map((line) => line.inStock),
    name,
    "kg in stock",
  );
  const barLength = once(
    lines.map((line) => line.barLength),
    name,
    "bar length",
  );
  const rack = inStock ?? 0;
  return [{ steel, section, name, key: itemKey(first), pieces, kilograms, inStock: rack, barLength }];
}

/**
 * What is needed, by steel and section, in the order in which they first appear.
 *
 * @throws InvalidValue naming steel and section for figures that disagree, and for too many of them.
 */
export function neededItems(lines: readonly NeedLine[]): NeedItem[] {
  const items = grouped(lines, itemKey).flatMap(itemOf);
  if (items.length === 0)
    throw new InvalidValue("nothing is needed: give steels, sections, lengths and quantities, or kg");
  if (items.length <= MAX_ITEMS) return items;
  throw new InvalidValue(
    `${items.length} steels and sections given; up to ${MAX_ITEMS} are compared: split the order`,
  );
}

function supplierOf(lines: readonly OfferLine[]): Supplier {
  const name = lines[0]?.supplier ?? "";
  const figure = (key: "minimum" | "freight", what: string) =>
    once(
      lines.map((line) => line[key]),
      name,
      what,
    ) ?? 0;
  return { name, minimum: figure("minimum", "minimum charge"), freight: figure("freight", "freight"), lines };
}

/** Names of suppliers are compared without case and repeated spaces. */
const folded = (name: string) => name.toLowerCase().replace(/\s+/g, " ").trim();

/**
 * The suppliers by name.
 *
 * @throws InvalidValue naming the supplier whose figures disagree, and for too many of them.
 */
export function suppliersOf(lines: readonly OfferLine[]): Supplier[] {
  const suppliers = grouped(lines, ({ supplier }) => folded(supplier)).map(supplierOf);
  if (suppliers.length === 0)
    throw new InvalidValue("no offer is given: fill in supplier, steel, section and price");
  if (suppliers.length > MAX_SUPPLIERS) {
    throw new InvalidValue(`${suppliers.length} suppliers given; up to ${MAX_SUPPLIERS} are compared`);
  }
  return suppliers.sort((a, b) => (folded(a.name) < folded(b.name) ? -1 : 1));
}
