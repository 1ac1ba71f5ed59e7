import type { RowOrder } from "./reordered-rows";

const places = (count: number) => Array.from({ length: count }, (_, at) => at);

/** A blank row at a place; those below move down, the last one leaves. */
export const withRowAt = (count: number, place: number): RowOrder =>
  places(count).map((at) => (at < place ? at : at === place ? undefined : at - 1));

/** A row taken out; those below move up, the last one is blank. */
export const withoutRow = (count: number, place: number): RowOrder =>
  places(count).map((at) => (at < place ? at : at + 1 < count ? at + 1 : undefined));

export type SortValue = number | string | boolean;

const inWords = new Intl.Collator("en", { numeric: true, sensitivity: "base" });

/** Numbers stand before words, words in the order of a list in which K2 comes before K10. */
function compared(a: SortValue, b: SortValue): number {
  if (typeof a === "number" && typeof b === "number") return a - b;
  if (typeof a === "number" || typeof b === "number") return typeof a === "number" ? -1 : 1;
  return inWords.compare(String(a), String(b));
}

/**
 * The order of rows sorted by what one column shows. Rows alike keep their order.
 *
 * @param values - Of the column, row by row; an empty text stands after all others either way.
 * @param isFilled - Whether a row holds a line at all; blank rows stay below.
 */
export function sortedBy(
  values: readonly SortValue[],
  isFilled: (at: number) => boolean,
  direction: "up" | "down",
): RowOrder {
  const rank = (at: number) => (isFilled(at) ? (values[at] === "" ? 1 : 0) : 2);
  return places(values.length).sort((a, b) => {
    const apart = rank(a) - rank(b);
    if (apart !== 0 || rank(a) > 0) return apart || a - b;
    const order = compared(values[a] ?? "", values[b] ?? "");
    return (direction === "up" ? order : -order) || a - b;
  });
}
