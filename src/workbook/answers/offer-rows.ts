import { sentenceOf } from "../../core/refusal";
import { PRICE_UNITS } from "../../core/stock/offers";
import { OFFER_SHEETS } from "../sheets/offers-sheet";
import type { PlanSheet } from "../sheets/plan-sheet";
import type { Plan } from "./lines-asked";
import { pricePerKilogram } from "./money";
import type { Draft, PlanChange } from "./proposal";
import {
  againstLast,
  changeOf,
  draft,
  isHeldBy,
  type Read,
  type RowContext,
  rowWith,
  simple,
  type Target,
  unitsOf,
} from "./row-answers";

/** What says whose offer a row of the sheet Offers is, and of what. */
interface Offered {
  readonly supplier: string;
  readonly steel: string;
  readonly width: number | undefined;
  readonly thickness: number | undefined;
}

const HEADINGS = {
  supplier: "Supplier",
  steel: "Steel",
  width: "Width mm",
  thickness: "Thickness mm",
} as const;
const KEYS = Object.keys(HEADINGS) as (keyof Offered)[];

/** Names count without case and doubled blanks, as BEST_OFFER counts them. */
const folded = (value: unknown) =>
  String(value ?? "")
    .toLowerCase()
    .replace(/\s+/g, " ")
    .trim();
const figure = (value: unknown) => (typeof value === "number" ? value : undefined);

/** What a line of the cut list asks for, offered by somebody. */
function offeredBy(supplier: string, { plan, line }: RowContext): Offered {
  const cuts = plan.sheets.get("Cut list");
  const row = cuts && rowWith(cuts, { Line: String(line.told.Line ?? "") });
  const size = (heading: string) => (row === undefined ? undefined : figure(cuts?.under(heading, row).value));
  const [width, thickness] = [size("Width mm"), size("Thickness mm")];
  return { supplier, steel: String(line.told.Grade ?? ""), width, thickness };
}

/** A price in a unit that the sheet Offers counts: as given where it does, else turned into one a kg. */
function offeredPrice(price: number, unit: string): { readonly value: number; readonly per: string } {
  const per = PRICE_UNITS.find((known) => known === unit.trim().toLowerCase());
  if (per !== undefined) return { value: price, per };
  return { value: Number(pricePerKilogram(price, unit, {}).value), per: "kg" };
}

/** What an offer comes to a kg, held against the price that the plan counts with. */
function priceDoubts(context: RowContext, price: number, unit: string): string[] {
  const stock = context.plan.sheets.get("Steel and heats");
  const [, steel = ""] = context.line.line.split("/");
  const row = stock && rowWith(stock, { Steel: steel });
  const last = row === undefined ? undefined : stock?.under("Price a kg", row).value;
  try {
    const { value } = pricePerKilogram(price, unit, unitsOf(context));
    return againstLast(Number(value), last === undefined ? "" : String(last));
  } catch {
    // By the metre or foot: what it comes to a kg stands beside the offer on its sheet.
    return [];
  }
}

/** Finds rows of the sheet of offers: those of a supplier's steel and section, else free ones, each given once. */
export class OfferRows {
  private readonly sheet: PlanSheet | undefined;
  private readonly given = new Map<string, Target>();

  constructor(plan: Plan) {
    this.sheet = plan.sheets.get(OFFER_SHEETS.answers);
  }

  private isOf(row: number, offered: Offered): boolean {
    return KEYS.every((key) => {
      const [held, wanted] = [this.sheet?.under(HEADINGS[key], row).value, offered[key]];
      return typeof held === "number" && typeof wanted === "number"
        ? Math.abs(held - wanted) < 1e-6
        : folded(held) === folded(wanted);
    });
  }

  private isFree(row: number): boolean {
    return KEYS.every((key) => this.sheet?.under(HEADINGS[key], row).value === undefined);
  }

  private rowFor(offered: Offered): Target | undefined {
    const { sheet } = this;
    const key = JSON.stringify(KEYS.map((name) => folded(offered[name])));
    const known = this.given.get(key);
    if (sheet === undefined || known !== undefined) return known;
    const used = new Set([...this.given.values()].map(({ row }) => row));
    const own = sheet.tableRows.find((row) => this.isOf(row, offered));
    const row = own ?? sheet.tableRows.find((free) => this.isFree(free) && !used.has(free));
    if (row === undefined) return undefined;
    const target = { sheet, name: OFFER_SHEETS.answers, row };
    this.given.set(key, target);
    return target;
  }

  /** Why there is no row for an offer. */
  private missing(supplier: string): string {
    if (supplier === "") return NOBODY;
    return this.sheet === undefined ? NO_SHEET : NO_ROOM;
  }

  /** The answers of one line as drafts, each with what makes its row an offer of that supplier. */
  readonly draftsFor = (context: RowContext, read: ReadonlyMap<string, Read>): Draft[] => {
    const supplier = context.whose || context.line.whom || context.from;
    const offered = offeredBy(supplier, context);
    const answers = [...read.values()].filter(({ field }) => field.heading !== "Price for");
    const target = answers.length === 0 || supplier === "" ? undefined : this.rowFor(offered);
    if (target === undefined) {
      const refusal = this.missing(supplier);
      return answers.map(({ field, given, shown }) => ({
        ...draft(context, field.heading, given, shown, ""),
        refusal,
      }));
    }
    const name = this.nameOf(target, offered);
    const unsure =
      context.whose === "" ? [`whose offer it is, the answer does not say: taken as ${supplier}'s`] : [];
    return answers.map((one): Draft => {
      const isPrice = one.field.heading === "Price";
      const made = isPrice ? price(context, one, read, target) : simple(context, one, target);
      const doubts = [...made.doubts, ...equalGrade(one), ...unsure];
      return made.refusal === undefined ? { ...made, changes: [...name, ...made.changes], doubts } : made;
    });
  };

  private nameOf(target: Target, offered: Offered): PlanChange[] {
    return KEYS.flatMap((key) => {
      const value = offered[key];
      // A row that is there already keeps the name as it is spelt.
      if (value === undefined || !this.isFree(target.row)) return [];
      return changeOf(target, HEADINGS[key], value).map((change) => ({ ...change, isName: true }));
    });
  }
}

/** What is doubtful in the price of an offer itself. */
function offerDoubts(
  { value, per }: ReturnType<typeof offeredPrice>,
  before: string,
  read: ReadonlyMap<string, Read>,
): string[] {
  const bars = String(read.get("Bar lengths in stock mm")?.value ?? "");
  const hasOneLength = bars !== "" && !bars.includes(";");
  return [
    ...(value === 0 ? ["a price of 0"] : []),
    ...(before === "" ? [] : [`an offer at ${before} stands in the plan already and would be replaced`]),
    ...(per === "bar" && !hasOneLength ? ["a price a bar needs one bar length beside it"] : []),
  ];
}

/** The price of an offer with what it is for, as the sheet Offers counts it. */
function price(
  context: RowContext,
  { field, given, value, per, doubt }: Read,
  read: ReadonlyMap<string, Read>,
  target: Target,
): Draft {
  const unit = per ?? String(read.get("Price for")?.value ?? "kg");
  const made = draft(context, field.heading, given, "", "");
  try {
    const offer = offeredPrice(Number(value), unit);
    const changes = changeOf(target, field.goesTo ?? "", offer.value);
    const [before = ""] = changes.map((change) => change.before);
    const all = [...changes, ...changeOf(target, "per", offer.per)];
    return {
      ...made,
      readAs: String(offer.value),
      unit: `${context.plan.currency} a ${offer.per}`.trim(),
      changes: all,
      isHeld: isHeldBy(target, field.goesTo, all),
      doubts: [
        ...(doubt === undefined ? [] : [doubt]),
        ...priceDoubts(context, Number(value), unit),
        ...offerDoubts(offer, before, read),
      ],
    };
  } catch (problem) {
    return { ...made, refusal: sentenceOf(problem) };
  }
}

const equalGrade = ({ field, shown }: Read): string[] =>
  field.heading === "Equal grade offered"
    ? [`another grade is offered: ${shown}; the log alone keeps it`]
    : [];

const NOBODY = "the answer does not say whose offer it is: send the copy itself, or note it in the register";
const NO_SHEET = "the plan has no sheet Offers: make a new one with template --from, then collect again";
const NO_ROOM = "no row of Offers is free: make room with template --from, then collect again";
