import quenches from "../../data/hardening/quenches.json";
import { listOf, oneOf, records, text } from "../table";
import { type Worded, wordFinder } from "../word-list";

const KINDS = ["oil", "water", "polymer", "plates", "air", "gas", "salt"] as const;

export type QuenchKind = (typeof KINDS)[number];

/** A quench as a smith names it. */
export interface QuenchMedium extends Worded {
  /** What cools. */
  readonly kind: QuenchKind;
  /** What the word stands for, one sentence. */
  readonly meaning: string;
  /** The bath as an order asks for it. */
  readonly bath: string;
}

/** Every quench word that the worksheet functions accept, liquids first. */
export const QUENCH_MEDIA: readonly QuenchMedium[] = records(quenches, {
  word: text,
  aliases: listOf(text),
  kind: oneOf(KINDS),
  meaning: text,
  bath: text,
});

/**
 * Finds a quench by the word a smith uses for it.
 *
 * @throws NotAvailable naming the words that fit ("oil" alone fits several) or the nearest ones.
 */
export const findQuench = wordFinder(QUENCH_MEDIA, {
  noun: "quench",
  listedBy: "QUENCHES()",
  startsWithUsual: true,
});
