import quenches from "../../data/hardening/quenches.json";
import { type Worded, wordFinder } from "../word-list";

export type QuenchKind = "oil" | "water" | "polymer" | "plates" | "air" | "gas" | "salt";

/** A quench as a smith names it. */
export interface QuenchMedium extends Worded {
  readonly kind: QuenchKind;
  readonly meaning: string;
}

type Row = readonly [string, readonly string[], QuenchKind, string];

/** Every quench word that the worksheet functions accept, liquids first. */
export const QUENCH_MEDIA: readonly QuenchMedium[] = (quenches.rows as unknown as readonly Row[]).map(
  ([word, aliases, kind, meaning]) => ({ word, aliases, kind, meaning }),
);

/**
 * Finds a quench by the word a smith uses for it.
 *
 * @throws NotAvailable naming the words that fit ("oil" alone fits several) or the nearest ones.
 */
export const findQuench = wordFinder(QUENCH_MEDIA, { noun: "quench", listedBy: "QUENCHES()" });
