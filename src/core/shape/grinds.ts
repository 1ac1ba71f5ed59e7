import grinds from "../../data/shape/grinds.json";
import { flag, listOf, oneOf, records, text } from "../table";
import { type Worded, wordFinder } from "../word-list";

const WORDS = [
  "flat",
  "part flat",
  "chisel",
  "hollow",
  "convex",
  "lenticular",
  "diamond",
  "hexagonal",
  "rectangle",
  "t-back",
] as const;

export type GrindWord = (typeof WORDS)[number];

/** A cross-section as a smith names it, and which figures describe it. */
export interface Grind extends Worded {
  readonly word: GrindWord;
  /** Takes a thickness behind the edge. */
  readonly edge: boolean;
  /** Whether it takes a bevel height: not at all, always, or the whole width where left out. */
  readonly bevel: "" | "needed" | "full";
  /** Whether it takes a radius of the wheel or a bulge. */
  readonly curve: "" | "wheel radius" | "bulge";
  /** Whether it takes the width of a flat or of a rib. */
  readonly flat: "" | "flat width" | "rib width";
  /** The cross-section in words, one sentence. */
  readonly meaning: string;
}

/** The grind of a blade of which none is given. */
export const USUAL_GRIND = "flat";

/** Every grind word that the worksheet functions accept. */
export const GRINDS: readonly Grind[] = records(grinds, {
  word: oneOf(WORDS),
  aliases: listOf(text),
  edge: flag,
  bevel: oneOf(["", "needed", "full"]),
  curve: oneOf(["", "wheel radius", "bulge"]),
  flat: oneOf(["", "flat width", "rib width"]),
  meaning: text,
});

/**
 * Finds a grind by the word a smith uses for it.
 *
 * @throws NotAvailable naming the words that fit or the nearest ones.
 */
export const findGrind = wordFinder(GRINDS, { noun: "grind", listedBy: "GRINDS()" });
