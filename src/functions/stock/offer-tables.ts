import { InvalidValue, Refusal } from "../../core/refusal";
import { type BarSection, flatSection } from "../../core/stock/bar-section";
import type { NeedLine, OfferLine } from "../../core/stock/offers";
import { type Cell, type Cells, isEmpty } from "../cells";
import { type Headings, type OtherWords, type RowValues, readHeadings } from "../run/heading-row";
import { filledRows, readRow } from "../run/table-rows";
import { NEED_HEADINGS, NEED_WORDS, OFFER_HEADINGS, OFFER_WORDS } from "./offer-headings";

/** A row that does not count, and why. */
export interface LeftOut {
  /** "row 3 of the offers" */
  readonly place: string;
  readonly supplier: string;
  readonly refusal: Refusal;
}

interface ReadTable<T> {
  readonly lines: readonly T[];
  readonly leftOut: readonly LeftOut[];
  readonly remarks: readonly string[];
}

interface Layout<H extends Headings, T> {
  readonly called: string;
  readonly headings: H;
  readonly words: OtherWords;
  readonly lineOf: (row: RowValues<H>) => T | undefined;
}

interface Sizes {
  readonly section?: BarSection | undefined;
  readonly width?: number | undefined;
  readonly thickness?: number | undefined;
}

function sectionOf({ section, width, thickness }: Sizes): BarSection {
  if (section !== undefined) return section;
  if (width !== undefined && thickness !== undefined) return flatSection(width, thickness);
  throw new InvalidValue('section is empty: give it as "50 x 3", or width and thickness in mm');
}

function readLine<H extends Headings, T>(
  row: readonly Cell[],
  columns: ReturnType<typeof readHeadings>,
  { headings, lineOf }: Layout<H, T>,
): T | Refusal | undefined {
  const read = readRow(row, columns, headings);
  if (read === undefined || read instanceof Refusal) return read;
  try {
    return lineOf(read);
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown;
    throw thrown;
  }
}

/** A faulty row is told and left out; the others count. */
function readTable<H extends Headings, T>(table: Cells, layout: Layout<H, T>): ReadTable<T> {
  const filled = filledRows(table);
  const top = filled.findIndex((row) => !row.every(isEmpty));
  const [headings = [], ...rows] = filled.slice(Math.max(0, top));
  const columns = readHeadings(headings, layout.headings, layout.words);
  const lines: T[] = [];
  const leftOut: LeftOut[] = [];
  rows.forEach((row, index) => {
    const line = readLine(row, columns, layout);
    if (line === undefined) return;
    if (!(line instanceof Refusal)) {
      lines.push(line);
      return;
    }
    const supplier = row[columns.known.get("supplier") ?? -1] ?? "";
    const place = `row ${index + 1} of the ${layout.called}`;
    leftOut.push({ place, supplier: supplier instanceof Refusal ? "" : String(supplier), refusal: line });
  });
  return { lines, leftOut, remarks: columns.remarks };
}

/** Pieces, or nothing where a mass is needed; what is neither is no line of the need. */
function amountOf({ length, quantity, kilograms }: RowValues<typeof NEED_HEADINGS>) {
  if (length !== undefined && quantity !== undefined)
    return { pieces: { length, quantity }, kilograms: undefined };
  if (kilograms !== undefined) return { pieces: undefined, kilograms };
  if (length === undefined && quantity === undefined) return undefined;
  throw new InvalidValue(`${length === undefined ? "length" : "quantity"} is empty: give both, or kg`);
}

function needLine(row: RowValues<typeof NEED_HEADINGS>): NeedLine | undefined {
  const amount = row.quantity === 0 ? undefined : amountOf(row);
  if (amount === undefined) return undefined;
  const { steel, inStock, barLength } = row;
  return { steel, section: sectionOf(row), ...amount, inStock, barLength };
}

function offerLine(row: RowValues<typeof OFFER_HEADINGS>): OfferLine {
  const { supplier, steel, price, per, barLengths = [], barsInStock, minimum, freight, week = "" } = row;
  if (per === "bar" && barLengths.length !== 1) {
    throw new InvalidValue("a price a bar needs one bar length; give each length a row of its own");
  }
  if (barLengths.length === 0 && per !== "kg" && per !== "lb") {
    throw new InvalidValue(`bar length is empty: a price a ${per} needs it`);
  }
  const section = sectionOf(row);
  return { supplier, steel, section, price, per, barLengths, barsInStock, minimum, freight, week };
}

/** @throws InvalidValue for headings that cannot be told apart. */
export const readNeed = (table: Cells): ReadTable<NeedLine> =>
  readTable(table, { called: "need", headings: NEED_HEADINGS, words: NEED_WORDS, lineOf: needLine });

/** @throws InvalidValue for headings that cannot be told apart. */
export const readOffers = (table: Cells): ReadTable<OfferLine> =>
  readTable(table, { called: "offers", headings: OFFER_HEADINGS, words: OFFER_WORDS, lineOf: offerLine });
