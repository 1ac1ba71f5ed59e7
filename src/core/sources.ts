import general from "../data/sources/general.json";
import hardening from "../data/sources/hardening.json";
import hardness from "../data/sources/hardness.json";
import mechanics from "../data/sources/mechanics.json";
import plan from "../data/sources/plan.json";
import steel from "../data/sources/steel.json";
import stock from "../data/sources/stock.json";
import tempering from "../data/sources/tempering.json";
import trade from "../data/sources/trade.json";

/** One entry of the source lists in `src/data/sources`. */
export interface Source {
  readonly author: string;
  readonly title: string;
  readonly edition: string;
  readonly licence: string;
  /** READ: the figure was seen in a text. MEMORY: recalled, no text seen. COMMON: trade practice. DERIVED: computed from the others. */
  readonly seen: string;
}

const lists = {
  ...general,
  ...steel,
  ...tempering,
  ...hardening,
  ...hardness,
  ...stock,
  ...trade,
  ...plan,
  ...mechanics,
};

export type SourceKey = keyof typeof lists;

export const SOURCES: Readonly<Record<SourceKey, Source>> = lists;

/** Author, title and edition of a source on one line. */
export function sourceText(key: SourceKey): string {
  const { author, title, edition } = SOURCES[key];
  return [author, title, edition].filter((part) => part !== "").join(", ");
}
