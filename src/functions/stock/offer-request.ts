import { BoundedMap } from "../../core/bounded-map";
import type { InParts } from "../../core/parts";
import { Refusal } from "../../core/refusal";
import type { OfferRequest } from "../../core/stock/best-offer";
import type { Cells } from "../cells";
import { table } from "../parameters";
import { type LeftOut, readNeed, readOffers } from "./offer-tables";

export const need = table({
  label: "need",
  help: "What is needed, headings in the first row: steel, section (or width, thickness), length and quantity, or kg; kg in stock, bar length.",
  accepts: "a table whose first row holds steel, section, length, quantity, or kg",
});

export const offers = table({
  label: "offers",
  help: "A row an offer, headings in the first row: supplier, steel, section, price, per, bar length, bars in stock, minimum charge, freight, week.",
  accepts: "a table whose first row holds supplier, steel, section, price",
});

export interface OfferTables {
  readonly need: Cells;
  readonly offers: Cells;
  readonly most?: number | undefined;
  readonly kerf: number;
  readonly trim: number;
}

/**
 * Both tables as one request. Faulty rows are told and left out.
 *
 * @throws Refusal of the first faulty row where no other row is left.
 */
export function offerRequest({ need, offers, kerf, trim }: OfferTables): {
  readonly request: Omit<OfferRequest, "most">;
  readonly leftOut: readonly LeftOut[];
  readonly remarks: readonly string[];
} {
  const needed = readNeed(need);
  const offered = readOffers(offers);
  const leftOut = [...needed.leftOut, ...offered.leftOut];
  const [first] = leftOut;
  if (first !== undefined && (needed.lines.length === 0 || offered.lines.length === 0)) throw first.refusal;
  return {
    request: { need: needed.lines, offers: offered.lines, kerf, trim },
    leftOut,
    remarks: [...needed.remarks, ...offered.remarks],
  };
}

const REMEMBERED = 8;

/** A sheet that holds a cell of the answer each asks the same question a hundred times: it is worked out once. */
export function rememberedAnswers(
  answerOf: (given: OfferTables) => InParts<Cells>,
): (given: OfferTables) => InParts<Cells> {
  const known = new BoundedMap<string, Cells>(REMEMBERED);
  return function* (given) {
    const key = JSON.stringify(given, (_, value) =>
      value instanceof Refusal ? [value.code, value.message] : value,
    );
    const before = known.get(key);
    if (before !== undefined) return before;
    const answer = yield* answerOf(given);
    known.set(key, answer);
    return answer;
  };
}
