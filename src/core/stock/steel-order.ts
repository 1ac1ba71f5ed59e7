import { checkFigure } from "../figure-limits";
import { attemptInParts, type InParts, toTheEnd } from "../parts";
import { quantityText } from "../quantity-text";
import { InvalidValue, Refusal } from "../refusal";
import type { Steel } from "../steel/steel";
import { barMass, wholeBars } from "./bar-mass";
import { flatSection } from "./bar-section";
import { cutPlanInParts } from "./cut-plan";
import {
  BAR_SIDE,
  checkCut,
  KG_IN_STOCK,
  PIECE_LENGTH,
  PIECES,
  USUAL_KERF,
  USUAL_TRIM,
} from "./cutting-limits";

/** A line of blanks to be cut. Lengths in mm. */
export interface BlankLine {
  readonly steel: Steel;
  /** Of the bar, 0.1 to 1000 [mm]. */
  readonly width: number;
  /** Of the bar, 0.1 to 1000 [mm]. */
  readonly thickness: number;
  /** Of a blank, 0.1 to 30,000 [mm]. */
  readonly length: number;
  /** Blanks, whole, 0 to 100,000 [-]. */
  readonly quantity: number;
  /** Of the bars on offer, 0.1 to 30,000 [mm]. */
  readonly barLength: number;
  /** Of this steel and section in the rack; none where left out [kg]. */
  readonly inStock?: number | undefined;
}

/** What to buy of one steel and section. */
export interface OrderLine {
  readonly steel: string;
  /** "50 × 3 mm" */
  readonly section: string;
  /** Bars to buy [-]. */
  readonly bars: number;
  /** Steel to buy [kg]. */
  readonly kilograms: number;
  /** Off-cuts of all bars of the plan, those in stock included [mm]. */
  readonly drop: number;
}

function checkLine(line: BlankLine, index: number): void {
  const name = `line ${index + 1}, `;
  checkFigure(line.quantity, `${name}quantity`, PIECES);
  checkFigure(line.width, `${name}width`, BAR_SIDE);
  checkFigure(line.thickness, `${name}thickness`, BAR_SIDE);
  checkFigure(line.length, `${name}length`, PIECE_LENGTH);
  checkFigure(line.barLength, `${name}bar length`, PIECE_LENGTH);
  if (line.inStock !== undefined) checkFigure(line.inStock, `${name}kg in stock`, KG_IN_STOCK);
}

interface Pool {
  readonly first: BlankLine;
  readonly lines: readonly BlankLine[];
}

const sectionText = ({ width, thickness }: BlankLine): string => flatSection(width, thickness).text;

function pools(lines: readonly BlankLine[]): Pool[] {
  const byKey = new Map<string, BlankLine[]>();
  for (const line of lines) {
    const key = JSON.stringify([line.steel.name, line.width, line.thickness]);
    byKey.set(key, [...(byKey.get(key) ?? []), line]);
  }
  return [...byKey.values()].flatMap((of) => {
    const [first] = of;
    return first === undefined ? [] : [{ first, lines: of }];
  });
}

/** Stock of one steel and section is one figure: repeated on its lines it counts once. */
function stockOf({ first, lines }: Pool): number {
  const given = new Set(lines.map(({ inStock = 0 }) => inStock).filter((kilograms) => kilograms > 0));
  if (given.size <= 1) return [...given][0] ?? 0;
  throw new InvalidValue(
    `${first.steel.name} ${sectionText(first)}: kg in stock is given as ${[...given].join(" and ")}; ` +
      "give the stock of one steel and section once",
  );
}

function barLengthOf({ first, lines }: Pool): number {
  const other = lines.find(({ barLength }) => barLength !== first.barLength);
  if (other === undefined) return first.barLength;
  throw new InvalidValue(
    `${first.steel.name} ${sectionText(first)}: bar lengths ${quantityText(first.barLength, "mm")} and ` +
      `${quantityText(other.barLength, "mm")} given; lines that share bars need one length of bar`,
  );
}

function* orderOf(pool: Pool, kerf: number, trim: number): InParts<OrderLine> {
  const { first, lines } = pool;
  const barLength = barLengthOf(pool);
  const { bars, rows } = yield* cutPlanInParts({ pieces: lines, bars: [{ length: barLength }], kerf, trim });
  const barKilograms = barMass(first.steel, first.width * first.thickness, barLength);
  const inRack = wholeBars(stockOf(pool), barKilograms);
  const toBuy = Math.max(0, bars - inRack);
  return {
    steel: first.steel.name,
    section: sectionText(first),
    bars: toBuy,
    kilograms: toBuy * barKilograms,
    drop: rows.reduce((sum, row) => sum + row.bars * row.drop, 0),
  };
}

/**
 * Bars to buy for a run: lines of one steel and section share bars, cut by the best plan found; stock in
 * hand is deducted in whole bars of the length ordered.
 *
 * @param lines - Blanks by line: sides 0.1 to 1000, lengths 0.1 to 30,000 [mm]; quantities whole; stock [kg]
 * @param kerf - Width of a cut, 0 to 20 [mm]
 * @param trim - Cut off each bar, both ends together, 0 to 1000 [mm]
 * @returns One line a steel and section, in the order in which they first appear.
 * @throws InvalidValue naming the line whose figure cannot be, or steel and section for a blank longer than the bar
 * or figures that disagree.
 * Error and source: {@link CUTTING_PLAN}.
 */
export function steelOrder(lines: readonly BlankLine[], kerf = USUAL_KERF, trim = USUAL_TRIM): OrderLine[] {
  return toTheEnd(steelOrderInParts(lines, kerf, trim));
}

/** The same order in parts of a few milliseconds. */
export function* steelOrderInParts(
  lines: readonly BlankLine[],
  kerf: number,
  trim: number,
): InParts<OrderLine[]> {
  checkCut(kerf, trim);
  lines.forEach(checkLine);
  const wanted = lines.filter(({ quantity }) => quantity > 0);
  if (wanted.length === 0) throw new InvalidValue("no blanks to order: give steels, sizes and quantities");
  const orders: OrderLine[] = [];
  for (const pool of pools(wanted)) {
    const named = `${pool.first.steel.name} ${sectionText(pool.first)}`;
    const order = yield* attemptInParts(orderOf(pool, kerf, trim));
    if (order instanceof Refusal)
      throw order.message.startsWith(named) ? order : new InvalidValue(`${named}: ${order.message}`);
    orders.push(order);
  }
  return orders;
}
